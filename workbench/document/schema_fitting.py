"""The bounds of fittings in the schema of project files."""

from __future__ import annotations

from workbench.document.fitting_checks import (
    FITTING_TEXTS,
    LONGEST_NOTE,
    MOST_CHANGES,
    MOST_FITTINGS,
    MOST_MM,
    WIDEST_GAP_MM,
)
from workbench.document.schema_parts import Schema, groups, numbers
from workbench.draft import FEWEST_PANELS, MOST_PANELS


def bound_fittings(schema: Schema) -> None:
    """Add the bounds that the records of fittings do not carry."""
    records = schema["$defs"]
    schema["properties"]["fittings"]["maxItems"] = MOST_FITTINGS
    fitting, change = records["Fitting"]["properties"], records["Change"]["properties"]
    for name, most in FITTING_TEXTS.items():
        fitting[name]["maxLength"] = most
    for count in fitting["panels"]["prefixItems"]:
        count.update(minimum=FEWEST_PANELS, maximum=MOST_PANELS)
    fitting["changes"]["maxItems"] = MOST_CHANGES
    change["amount_mm"].update(minimum=-MOST_MM, maximum=MOST_MM)
    for whole in groups(change["seam"]):
        if whole.get("type") == "integer":
            whole.update(minimum=1, maximum=2 * MOST_PANELS - 1)
    for part in numbers(change["u"]):
        part.update(minimum=0, maximum=2 * MOST_PANELS)
    change["note"]["maxLength"] = LONGEST_NOTE
    for gap in numbers(records["Gaps"]):
        gap.update(minimum=0, maximum=WIDEST_GAP_MM)
