"""The bounds of cloths, lay plans and quotes in the schema of project files."""

from __future__ import annotations

from workbench.cloth import MOST_DECIMALS, MOST_IN_PACK, MOST_ROWS, NAME_MOST, SYMBOL_MOST, TEXT_MOST
from workbench.document.cloth_checks import (
    FARTHEST_MM,
    LONGEST_NAME,
    LONGEST_WORDS,
    MOST_CLOTHS,
    MOST_CORNERS,
    MOST_LEFT,
    MOST_PLACED,
)
from workbench.document.cloth_table import CLOTH_TABLE
from workbench.document.project import LARGER_NUMBERS
from workbench.document.schema_parts import Schema, numbers


def bound_cloths(schema: Schema) -> None:
    """Add the bounds that the records of cloth and money do not carry."""
    records = schema["$defs"]
    schema["properties"]["cloths"]["maxItems"] = MOST_CLOTHS
    schema["properties"]["plans"]["maxItems"] = MOST_CLOTHS
    _bound_cloth(records["Cloth"]["properties"])
    _bound_plan(records["KeptPlan"]["properties"], records["Placed"]["properties"])
    _bound_quoting(records)


def _bound_cloth(cloth: Schema) -> None:
    cloth["name"].update(minLength=1, maxLength=LONGEST_NAME)
    cloth["layers"]["uniqueItems"] = True
    for row in CLOTH_TABLE:
        cloth[row.key].update(minimum=row.low, maximum=row.high)
    remnant = next(kind for kind in cloth["remnant"]["anyOf"] if kind["type"] == "array")
    remnant.update(minItems=3, maxItems=MOST_CORNERS)
    for figure in numbers(remnant):
        figure.update(minimum=-FARTHEST_MM, maximum=FARTHEST_MM)


def _bound_plan(plan: Schema, placed: Schema) -> None:
    plan["made_from"]["maxLength"] = LONGEST_NAME
    plan["how"]["maxLength"] = LONGEST_WORDS
    plan["length_mm"].update(minimum=0, maximum=FARTHEST_MM)
    plan["placed"]["maxItems"] = MOST_PLACED
    placed["piece"]["maxLength"] = LONGEST_NAME
    placed["copy"].update(minimum=1, maximum=MOST_PLACED)
    for name in ("x", "y", "degrees"):
        placed[name].update(minimum=-FARTHEST_MM, maximum=FARTHEST_MM)


def _bound_quoting(records: Schema) -> None:
    quoting, row = records["Quoting"]["properties"], records["PriceRow"]["properties"]
    for name, (_, most) in TEXT_MOST.items():
        quoting[name]["maxLength"] = most
    quoting["prices"]["maxItems"] = MOST_ROWS
    quoting["not_bought"].update(maxItems=MOST_LEFT, uniqueItems=True)
    row["key"].update(minLength=1, maxLength=NAME_MOST)
    row["name"]["maxLength"] = NAME_MOST
    row["pack_count"].update(minimum=1, maximum=MOST_IN_PACK)
    row["pack_mm"].update(minimum=0, maximum=LARGER_NUMBERS["quoting"])
    currency = records["Currency"]["properties"]
    currency["symbol"]["maxLength"] = SYMBOL_MOST
    currency["decimals"].update(minimum=0, maximum=MOST_DECIMALS)
    records["HoursRow"]["properties"]["step"]["maxLength"] = NAME_MOST
