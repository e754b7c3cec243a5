"""The JSON Schema of project files, from the same records that read them."""

from __future__ import annotations

from collections.abc import Mapping

from workbench.body import BY_KEY
from workbench.document.done_edits import bound_done
from workbench.document.file import FORMAT
from workbench.document.making_table import MAKING_TABLE, MakingGroup
from workbench.document.migrate import VERSION
from workbench.document.project import LARGEST_NUMBER, MOST_POINTS, TEXT_LENGTHS, Project
from workbench.document.schema_beads import bound_beads
from workbench.document.schema_cloth import bound_cloths
from workbench.document.schema_fitting import bound_fittings
from workbench.document.schema_parts import Schema, amounts_as_text, numbers
from workbench.document.schema_taken import bound_taken
from workbench.document.schema_wish import bound_wish
from workbench.document.torso_edits import bound_torso
from workbench.draft import FEWEST_PANELS, MOST_PANELS
from workbench.pieces import LAYERS

_MAKING_RECORDS: Mapping[MakingGroup, str] = {
    "": "Making",
    "allowances": "Allowances",
    "own_allowance": "OwnAllowance",
    "layer": "LayerChoice",
    "marks": "Marks",
    "opening": "Opening",
    "boning": "Boning",
}


def json_schema() -> Schema:
    """The schema (draft 2020-12) of a project file; the program is stricter still where a schema cannot be.

    A schema cannot say that an entry must not stand twice, that each layer stands there
    once, or that the words of a measurement must come to its figure.
    """
    # only here: it takes longer to load than opening a project does
    from pydantic import TypeAdapter

    schema = TypeAdapter(Project).json_schema()
    _bounded(schema)
    schema["properties"] = {
        "format": {"const": FORMAT},
        "version": {"const": VERSION},
        **schema["properties"],
    }
    for record in (schema, *schema["$defs"].values()):
        _all_required(record)
    described = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Bodice project",
        "description": "One client's bodice: measurements, design, making, cloth, prices. Lengths in mm.",
    }
    return {**schema, **described}


def _all_required(record: Schema) -> None:
    """Every entry must be in a file: a default that steps in for a lost one would be cut in cloth."""
    record["required"] = list(record["properties"])
    for described in record["properties"].values():
        described.pop("default", None)


def _bounded(schema: Schema) -> None:
    """Add the bounds that the records themselves do not carry."""
    for figure in numbers(schema):
        figure.update(minimum=-LARGEST_NUMBER, maximum=LARGEST_NUMBER)
    amounts_as_text(schema)
    schema["properties"]["measurements"]["propertyNames"] = {"enum": list(BY_KEY)}
    records = schema["$defs"]
    for name, most in TEXT_LENGTHS.items():
        records["Client"]["properties"][name]["maxLength"] = most
    for line in ("neckline", "hem"):
        points = next(
            kind for kind in records["Design"]["properties"][line]["anyOf"] if kind["type"] == "array"
        )
        points.update(minItems=2, maxItems=MOST_POINTS)
    records["Quarter"]["properties"]["seams"].update(minItems=FEWEST_PANELS - 1, maxItems=MOST_PANELS - 1)
    _bounded_making(records)
    bound_cloths(schema)
    bound_fittings(schema)
    bound_beads(schema)
    bound_taken(schema)
    bound_wish(schema)
    bound_done(schema)
    bound_torso(schema)


def _bounded_making(records: Schema) -> None:
    for row in MAKING_TABLE:
        for figure in numbers(records[_MAKING_RECORDS[row.group]]["properties"][row.key]):
            figure.update(minimum=row.low, maximum=row.high)
    choice, making = records["LayerChoice"]["properties"], records["Making"]["properties"]
    for panel in (choice["left_out"]["items"], records["OwnAllowance"]["properties"]["panel"]):
        panel.update(minimum=0, maximum=2 * MOST_PANELS - 1)
    making["layers"].update(minItems=len(LAYERS), maxItems=len(LAYERS))
    for once in (choice["left_out"], records["Boning"]["properties"]["places"]):
        once["uniqueItems"] = True
