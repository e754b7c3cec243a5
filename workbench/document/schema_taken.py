"""The bounds of earlier measurements in the schema of project files."""

from __future__ import annotations

from workbench.body import BY_KEY
from workbench.document.project import TEXT_LENGTHS
from workbench.document.schema_parts import Schema
from workbench.document.taken_checks import MOST_EARLIER


def bound_taken(schema: Schema) -> None:
    """Add the bounds that the record of one sitting does not carry."""
    schema["properties"]["earlier"]["maxItems"] = MOST_EARLIER
    taken = schema["$defs"]["Taken"]["properties"]
    for name in ("date", "measured_by", "worn"):
        taken[name]["maxLength"] = TEXT_LENGTHS[name]
    taken["measurements"]["propertyNames"] = {"enum": list(BY_KEY)}
