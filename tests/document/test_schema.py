"""The JSON Schema agrees with the reader: what it allows opens, what it forbids is refused."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings

from tests.document import example, projects
from tests.document.bead_values import BEADED
from tests.document.fitting_values import FITTED
from tests.document.wish_values import picture
from workbench.body import BY_KEY
from workbench.document import Project, json_schema, to_bytes
from workbench.document.file import project_from
from workbench.document.records import plain
from workbench.document.wish import Behind

Tree = dict[str, Any]
PICTURE = plain(picture())
BEHIND = plain(Behind("front", 1.0, 0.0, 0.0))
SCHEMA = json_schema()


def faults(value: Any, schema: Tree, place: str = "") -> list[str]:
    """What is wrong with a value, by the few keywords of JSON Schema 2020-12 that the schema uses."""
    if "$ref" in schema:
        return faults(value, SCHEMA["$defs"][schema["$ref"].removeprefix("#/$defs/")], place)
    if "anyOf" in schema:
        tried = [faults(value, one, place) for one in schema["anyOf"]]
        return [] if [] in tried else tried[0]
    if "const" in schema:
        return [] if value == schema["const"] and type(value) is type(schema["const"]) else [place]
    if "enum" in schema and value not in schema["enum"]:
        return [place]
    if "type" in schema and not _is(value, schema["type"]):
        return [place]
    return _inner_faults(value, schema, place)


def _is(value: Any, kind: str) -> bool:
    kinds: dict[str, tuple[type, ...]] = {
        "object": (dict,),
        "array": (list,),
        "string": (str,),
        "boolean": (bool,),
        "null": (type(None),),
        "integer": (int,),
        "number": (int, float),
    }
    return isinstance(value, kinds[kind]) and (kind == "boolean" or not isinstance(value, bool))


def _inner_faults(value: Any, schema: Tree, place: str) -> list[str]:
    found = []
    if isinstance(value, dict):
        named = schema.get("properties", {})
        others = schema.get("additionalProperties", True)
        found += [f"{place}.{name}" for name in schema.get("required", ()) if name not in value]
        for name, inner in value.items():
            rule = named.get(name, others)
            allowed = schema.get("propertyNames", {}).get("enum", [name])
            if rule is False or name not in allowed:
                found.append(f"{place}.{name}")
            elif isinstance(rule, dict):
                found += faults(inner, rule, f"{place}.{name}")
    elif isinstance(value, list):
        if not schema.get("minItems", 0) <= len(value) <= schema.get("maxItems", 10**9):
            found.append(place)
        if schema.get("uniqueItems") and any(value.count(inner) > 1 for inner in value):
            found.append(place)
        for number, inner in enumerate(value):
            own = schema.get("prefixItems", [])[number : number + 1] or [schema.get("items", {})]
            found += faults(inner, own[0], f"{place}[]")
    elif isinstance(value, str):
        found += [place] * (not schema.get("minLength", 0) <= len(value) <= schema.get("maxLength", 10**9))
        found += [place] * (re.search(schema.get("pattern", ""), value) is None)
    elif isinstance(value, int | float) and not isinstance(value, bool):
        found += [place] * (not schema.get("minimum", value) <= value <= schema.get("maximum", value))
    return found


@given(projects)
@settings(max_examples=60, deadline=None)
def test_every_project_file_agrees_with_the_schema(project: Project) -> None:
    assert faults(json.loads(to_bytes(project)), SCHEMA) == []


@pytest.mark.parametrize(
    ("place", "value"),
    [
        (("version",), 3),
        (("unit",), "ell"),
        (("fraction",), 7),
        (("client", "name"), "x" * 81),
        (("client", "colour"), "red"),
        (("design", "opening_mm"), "wide"),
        (("design", "opening_mm"), 1e9),
        (("design", "front", "seams"), []),
        (("design", "hem"), [{"u": 0, "t": 1, "smooth": True}]),
        (("measurements", "hat_girth"), {"mm": 254.0, "typed": "10", "unit": "in"}),
        (("measurements", "bust_girth"), 914.4),
        (("making", "front"), "cape"),
        (("making", "busk_mm"), 3.0),
        (("making", "layers"), []),
        (("making", "layers", 0, "left_out"), [8]),
        (("making", "layers", 0, "left_out"), [1, 1]),
        (("making", "allowances", "hem"), -0.1),
        (("making", "boning", "places"), ["seams", "seams"]),
        (("making", "opening", "pitch_mm"), 0.0),
        (("limits", "waist_percent"), None),
        (("paper", "name"), "A9"),
        (("cloths", 0, "width_mm"), 0.0),
        (("cloths", 0, "shrinkage_percent"), 51.0),
        (("cloths", 0, "layers"), ["lining", "cape"]),
        (("cloths", 0, "run"), "any_way"),
        (("cloths", 0, "price"), 38.5),
        (("cloths", 0, "price"), "38.5 or so"),
        (("cloths", 0, "name"), ""),
        (("cloths", 0, "remnant"), [[0, 0], [500, 0]]),
        (("cloths", 0, "remnant"), [[0, 0], [500, 0], [0]]),
        (("plans",), [{}] * 40),
        (("quoting", "round_to"), 5),
        (("quoting", "currency", "decimals"), 9),
        (("quoting", "ready_by"), "x" * 81),
        (("style_name",), "x" * 81),
        (("pictures",), [PICTURE] * 7),
        (("pictures",), [{**PICTURE, "name": ""}]),
        (("pictures",), [{**PICTURE, "note": "x" * 501}]),
        (("pictures",), [{**PICTURE, "jpeg": "no Base64"}]),
        (("pictures",), [{**PICTURE, "jpeg": "A" * 400_004}]),
        (("pictures",), [{**PICTURE, "width": 0}]),
        (("pictures",), [{**PICTURE, "height": 1201}]),
        (("behind",), {**BEHIND, "opacity": 1.5}),
        (("behind",), {**BEHIND, "mm_per_pixel": 0.001}),
        (("behind",), {**BEHIND, "x_mm": 10_001.0}),
        (("done",), ["sewing.busk", "sewing.busk"]),
        (("done",), ["x" * 121]),
        (("client", "worn"), "x" * 201),
        (("torso", "waist"), 0.39),
        (("torso", "short_at_hip"), 14.1),
        (("earlier",), [{"date": "", "measured_by": "", "worn": "", "measurements": {}}] * 61),
        (("beads", "per_minute"), -1.0),
        (("beads", "reserve_percent"), 501.0),
        (("beads", "bands", "arm_mm"), -0.5),
        (("beads", "kinds"), [{}] * 61),
        (("beads", "kinds", 0, "name"), ""),
        (("beads", "kinds", 0, "size_mm"), 0.5),
        (("beads", "kinds", 0, "per_inch"), 0.0),
        (("beads", "kinds", 0, "per_strand"), 2.5),
        (("beads", "kinds", 0, "price"), 4.5),
        (("beads", "kinds", 0, "mark"), "star"),
        (("beads", "runs", 0, "spacing_mm"), -1.0),
        (("beads", "runs", 0, "along"), "sleeve"),
        (("beads", "runs", 0, "rows"), 0),
        (("beads", "runs", 0, "end"), 1.01),
        (("beads", "runs", 0, "seam"), 8),
        (("beads", "runs", 0, "pattern"), []),
        (("beads", "runs", 0, "points"), [{"u": 0, "t": 0, "smooth": True}] * 41),
        (("beads", "scatters", 0, "panels"), [1, 1]),
        (("beads", "scatters", 0, "panels"), [8]),
        (("beads", "scatters", 0, "mix", 0, "weight"), -1.0),
        (("beads", "scatters", 0, "per_square_inch"), 10_001.0),
        (("beads", "scatters", 0, "seed"), 1.5),
        (("beads", "scatters", 0, "thin_from"), "waist"),
        (("fittings",), [{}] * 41),
        (("fittings", 0, "cloth"), "x" * 81),
        (("fittings", 0, "panels"), [3, 5]),
        (("fittings", 0, "gaps", "waist"), 1000.5),
        (("fittings", 0, "changes"), [{}] * 81),
        (("fittings", 0, "changes", 0, "kind"), "sleeve"),
        (("fittings", 0, "changes", 0, "amount_mm"), -200.5),
        (("fittings", 0, "changes", 0, "level"), "knee"),
        (("fittings", 0, "changes", 0, "seam"), 8),
        (("fittings", 0, "changes", 2, "u"), -0.1),
        (("fittings", 0, "changes", 2, "note"), "x" * 401),
        (("earlier",), [{"date": "", "measured_by": "x" * 81, "worn": "", "measurements": {}}]),
        (("earlier",), [{"date": "", "measured_by": "", "worn": "", "measurements": {"hat": 1.0}}]),
    ],
)
def test_schema_and_reader_refuse_the_same(place: tuple[str | int, ...], value: object) -> None:
    tree: Tree = json.loads(to_bytes(replace(example(), beads=BEADED, fittings=FITTED)))
    inner: Any = tree
    for step in place[:-1]:
        inner = inner[step]
    inner[place[-1]] = value
    assert faults(tree, SCHEMA) != []
    with pytest.raises(ValueError, match=str(place[-1]).split("_", maxsplit=1)[0]):
        project_from(json.dumps(tree).encode())


def test_another_format_is_refused_by_both() -> None:
    tree: Tree = {**json.loads(to_bytes(example())), "format": "recipe"}
    assert faults(tree, SCHEMA) == [".format"]
    with pytest.raises(ValueError, match="no bodice project"):
        project_from(json.dumps(tree).encode())


def test_every_entry_is_required_and_no_other_allowed() -> None:
    for record in (SCHEMA, *SCHEMA["$defs"].values()):
        assert sorted(record["required"]) == sorted(record["properties"])
        assert record["additionalProperties"] is False


def test_measurements_are_those_of_the_table() -> None:
    assert SCHEMA["properties"]["measurements"]["propertyNames"]["enum"] == list(BY_KEY)
    assert "required" not in SCHEMA["properties"]["measurements"]
