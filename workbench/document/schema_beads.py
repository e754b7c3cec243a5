"""The bounds of the bead plan in the schema of project files."""

from __future__ import annotations

from collections.abc import Mapping

from workbench.document.bead_checks import (
    BAND_SPANS,
    KIND_SPANS,
    MOST_IN_PATTERN,
    MOST_KINDS,
    MOST_LINE_POINTS,
    MOST_RUNS,
    MOST_SCATTERS,
    PLAN_SPANS,
    RUN_SPANS,
    SCATTER_SPANS,
    WEIGHT_SPAN,
    Span,
)
from workbench.document.cloth_checks import LONGEST_NAME
from workbench.document.schema_parts import Schema
from workbench.draft import MOST_PANELS


def bound_beads(schema: Schema) -> None:
    """Add the bounds that the records of beads do not carry."""
    records = {name: record["properties"] for name, record in schema["$defs"].items()}
    plan, run, scatter = records["BeadPlan"], records["BeadRun"], records["BeadScatter"]
    for entries, most in (("kinds", MOST_KINDS), ("runs", MOST_RUNS), ("scatters", MOST_SCATTERS)):
        plan[entries]["maxItems"] = most
    for record in (records["BeadKind"], run, scatter):
        record["name"].update(minLength=1, maxLength=LONGEST_NAME)
    for record, spans in (
        (plan, PLAN_SPANS),
        (records["BeadKind"], KIND_SPANS),
        (run, RUN_SPANS),
        (scatter, SCATTER_SPANS),
        (records["BeadBands"], BAND_SPANS),
        (records["BeadWeight"], {"weight": WEIGHT_SPAN}),
    ):
        _bound(record, spans)
    run["pattern"].update(minItems=1, maxItems=MOST_IN_PATTERN)
    scatter["mix"].update(minItems=1, maxItems=MOST_IN_PATTERN)
    scatter["panels"].update(uniqueItems=True)
    scatter["panels"]["items"].update(minimum=0, maximum=2 * MOST_PANELS - 1)
    run["points"]["maxItems"] = scatter["thin_to"]["maxItems"] = MOST_LINE_POINTS


def _bound(record: Schema, spans: Mapping[str, Span]) -> None:
    """Where an entry may be left out, the bounds go to what it is otherwise."""
    for name, (low, high) in spans.items():
        kinds = record[name].get("anyOf", (record[name],))
        for kind in kinds:
            if kind.get("type") in ("number", "integer"):
                kind.update(minimum=low, maximum=high)
