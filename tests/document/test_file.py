"""A project comes back from its file as it was, or not at all and with a reason."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings

from tests.document import example, projects
from workbench.document import (
    Client,
    FileTrouble,
    Project,
    move_point,
    picture_of,
    read_project,
    set_client,
    set_measurement,
    to_bytes,
    write_project,
)
from workbench.document.file import project_from

Tree = dict[str, Any]


@pytest.fixture
def tree() -> Tree:
    project = example("over_bust")
    draft = picture_of(project).outcome
    assert draft is not None
    assert draft.draft is not None
    drawn = move_point(project, "hem", 1, 1.0, -60.0, draft.draft.hem.points)
    read: Tree = json.loads(to_bytes(drawn))
    return read


def trouble_with(content: bytes | str | Tree, folder: Path) -> str:
    """What is said about a file with this content; never half a project."""
    path = folder / "client.bodice"
    if isinstance(content, dict):
        content = json.dumps(content)
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    with pytest.raises(FileTrouble) as caught:
        read_project(path)
    said = str(caught.value)
    assert said.startswith(f"{path}: ")
    assert said.endswith(".")
    assert "\n" not in said
    return said.removeprefix(f"{path}: ")


@given(projects)
@settings(max_examples=150, deadline=None)
def test_any_project_comes_back_equal(project: Project) -> None:
    assert project_from(to_bytes(project)) == project


def test_same_project_gives_the_same_bytes_however_it_came_about() -> None:
    one = set_measurement(example(), "bust_span", "7")
    other = example()
    for key in ("bust_span", *reversed(list(other.measurements))):
        typed = {"bust_span": "7"}.get(key) or other.measurements[key].typed
        other = set_measurement(set_measurement(other, key, ""), key, typed)
    assert one == other
    assert to_bytes(one) == to_bytes(other)


def test_file_is_readable_text_that_ends_with_a_line_end(tmp_path: Path) -> None:
    path = tmp_path / "client.bodice"
    write_project(set_client(example(), name="Soprano · ½ finished"), path)
    text = path.read_text("utf-8")
    assert text.startswith('{\n  "format": "bodice",\n  "version": 2,\n')
    assert "Soprano · ½ finished" in text
    assert text.endswith("}\n")


def test_what_was_typed_comes_back_as_typed(tmp_path: Path) -> None:
    path = tmp_path / "client.bodice"
    write_project(set_measurement(example(), "bust_span", "7 1⁄8"), path)
    assert read_project(path).measurements["bust_span"].typed == "7 1⁄8"


def test_empty_file(tmp_path: Path) -> None:
    assert trouble_with(b"", tmp_path) == "the file is empty."
    assert trouble_with(b" \n\t", tmp_path) == "the file is empty."


def test_binary_file_names_the_line(tmp_path: Path) -> None:
    assert "line 3 is no text" in trouble_with(b"{\n\n\xff\xfe\x00", tmp_path)
    trouble_with(bytes(range(256)), tmp_path)


def test_other_files_are_not_taken_for_projects(tmp_path: Path) -> None:
    for content in ("{}", "[]", "3", '"bodice"', "null", '{"format": "recipe", "version": 1}', "%PDF-1.7\n"):
        said = trouble_with(content, tmp_path)
        assert "no bodice project" in said or "damaged" in said


def test_truncated_anywhere(tmp_path: Path) -> None:
    whole = to_bytes(example("over_bust"))
    for length in range(1, len(whole) - 2, 97):
        said = trouble_with(whole[:length], tmp_path)
        assert "line" in said


def test_a_byte_destroyed_anywhere_is_noticed() -> None:
    whole = to_bytes(example())
    for place in range(0, len(whole), 41):
        damaged = whole[:place] + b"\x01" + whole[place + 1 :]
        with pytest.raises(ValueError, match="line"):
            project_from(damaged)


def test_newer_version_is_refused_with_both_numbers(tree: Tree, tmp_path: Path) -> None:
    said = trouble_with({**tree, "version": 3}, tmp_path)
    assert said == "the file has version 3; this program reads up to version 2."


@pytest.mark.parametrize("version", [0, -1, 1.0, "1", True, None, [1]])
def test_version_that_is_none(tree: Tree, tmp_path: Path, version: object) -> None:
    assert trouble_with({**tree, "version": version}, tmp_path).startswith("version ")


def test_duplicate_key_is_named_with_its_place(tree: Tree, tmp_path: Path) -> None:
    text = json.dumps(tree).replace('"waist_girth":', '"bust_girth":', 1)
    assert trouble_with(text, tmp_path) == "measurements › bust_girth stands there twice."
    text = json.dumps(tree).replace('"unit": "in"', '"unit": "in", "unit": "cm"', 1)
    assert trouble_with(text, tmp_path) == "unit stands there twice."


def test_every_single_missing_key_is_named(tree: Tree, tmp_path: Path) -> None:
    seen = 0
    for place in _places(tree, ()):
        if place[0] in ("format", "version") or place[:-1] == ("measurements",):
            continue
        shorter = _without(tree, place)
        said = trouble_with(shorter, tmp_path)
        assert str(place[-1]) in said
        assert "is missing" in said
        seen += 1
    assert seen > 80


def test_unknown_key_is_named(tree: Tree, tmp_path: Path) -> None:
    tree["design"]["front"]["seams"][1]["colour"] = "red"
    assert trouble_with(tree, tmp_path) == "design › front › seams › no. 2 › colour is not known here."


Change = Callable[[Tree], object]


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (lambda t: t.update(unit="ell"), "unit must be in or cm"),
        (lambda t: t.update(fraction=7), "fraction must be 8 or 16"),
        (lambda t: t.update(client=[]), "client must be a group of entries"),
        (lambda t: t["client"].update(name=3), "client › name must be text"),
        (lambda t: t["client"].update(name="x" * 81), "client › name is longer than 80"),
        (lambda t: t["client"].update(date="next week"), "client › date must be written as year-month-day"),
        (lambda t: t["client"].update(invented="yes"), "client › invented must be true or false"),
        (lambda t: t["design"].update(opening_mm="wide"), "design › opening_mm must be a number"),
        (lambda t: t["design"].update(opening_mm=True), "design › opening_mm must be a number"),
        (lambda t: t["design"].update(opening_mm=1e9), "design › opening_mm is too large"),
        (lambda t: t["design"].update(style="cape"), "design › style must be under_bust or over_bust"),
        (lambda t: t["design"].update(hem={}), "design › hem must be a list"),
        (lambda t: t["design"].update(hem=[]), "design › hem has 0 points"),
        (lambda t: t["design"].update(hem=t["design"]["hem"] * 20), "design › hem has "),
        (lambda t: t["design"]["hem"][0].update(t="low"), "design › hem › no. 1 › t must be a number"),
        (lambda t: t["design"]["front"].update(seams=[]), "design › front › seams has 0 seams"),
        (
            lambda t: t["design"]["back"]["seams"].extend(t["design"]["front"]["seams"]),
            "design › back › seams has 4 seams",
        ),
        (
            lambda t: t["design"]["back"].update(side_shares=_two_shares()),
            "design › back › side_shares names the level waist twice",
        ),
        (
            lambda t: t["measurements"].update(hat_girth=_length(24)),
            "measurements › hat_girth is no measurement",
        ),
        (lambda t: t["measurements"].update(bust_girth=_length(-36)), "cannot be negative"),
        (lambda t: t["measurements"].update(bust_girth=_length("wide")), "cannot be read as a length"),
        (lambda t: t["measurements"].update(bust_girth=_length("91 cm")), "must be a bare figure in in"),
        (
            lambda t: t["measurements"]["bust_girth"].update(mm=900),
            "measurements › bust_girth › mm is 900, but",
        ),
        (lambda t: t["measurements"].update(bust_girth=None), "measurements › bust_girth must be a group"),
        (lambda t: t["making"].update(front="cape"), "making › front must be fold or busk"),
        (
            lambda t: t["making"]["allowances"].update(side=-1),
            "making › allowances › side must be between 0 and 101.6 mm",
        ),
        (
            lambda t: t["making"].update(own_allowances=_own_edges((6,))),
            "making › own_allowances › no. 1 › panel names panel 6, where the panels are numbered 0 to 5",
        ),
        (
            lambda t: t["making"].update(own_allowances=_own_edges((0, 5, 0))),
            "making › own_allowances names one edge of one piece twice",
        ),
        (
            lambda t: t["making"]["own_allowances"].append(_own_edges((0.5,))[0]),
            "making › own_allowances › no. 1 › panel must be a whole number",
        ),
        (
            lambda t: t["making"]["layers"][1].update(layer="fashion"),
            "making › layers names the layer fashion twice",
        ),
        (lambda t: t["making"]["layers"].pop(), "making › layers lacks the layer waist_tape"),
        (lambda t: t["making"]["layers"][3].update(turn_mm=-9), "no. 4 › turn_mm must be between −6.35"),
        (lambda t: t["making"]["layers"][0].update(left_out=[-1]), "no. 1 › left_out names panel -1"),
        (lambda t: t["making"]["layers"][0].update(left_out=[2, 2]), "left_out names the panel 2 twice"),
        (lambda t: t["making"].update(corner_limit=0.5), "making › corner_limit must be between 1 and 5"),
        (lambda t: t["making"].update(busk_mm="long"), "making › busk_mm must be a number"),
        (
            lambda t: t["making"]["boning"].update(places=["seams", "seams"]),
            "making › boning › places names the place seams twice",
        ),
        (lambda t: t["making"]["opening"].update(pitch_mm=0), "making › opening › pitch_mm must be between"),
        (lambda t: t["limits"].update(waist_percent=99), "limits › waist_percent must be between 0 % and"),
        (lambda t: t["paper"].update(name="A9"), "paper › name must be A4, Letter, A3, A0 or roll"),
        (lambda t: t["paper"].update(overlap_mm=-1), "paper › overlap_mm cannot be less"),
    ],
)
def test_a_wrong_entry_is_named_with_the_reason(
    tree: Tree, tmp_path: Path, change: Change, said: str
) -> None:
    change(tree)
    assert said in trouble_with(tree, tmp_path)


@pytest.mark.parametrize("spelling", ["NaN", "Infinity", "-Infinity", "1e999", "1" * 5000])
def test_figures_that_are_none(tree: Tree, tmp_path: Path, spelling: str) -> None:
    tree["design"]["opening_mm"] = 12345
    text = json.dumps(tree).replace("12345", spelling)
    assert trouble_with(text, tmp_path) == "design › opening_mm is no usable number."


def test_nested_without_end(tmp_path: Path) -> None:
    assert "nested too deeply" in trouble_with("[" * 100_000, tmp_path)
    assert "nested too deeply" in trouble_with('{"a":' * 100 + "1" + "}" * 100, tmp_path)


def test_half_a_character_is_refused(tree: Tree, tmp_path: Path) -> None:
    tree["client"]["name"] = "\ud800"
    assert "client › name" in trouble_with(tree, tmp_path)


def test_fifty_megabytes_are_refused_unread(tmp_path: Path) -> None:
    path = tmp_path / "client.bodice"
    with path.open("wb") as file:
        file.truncate(50_000_000)
    with pytest.raises(FileTrouble, match="larger than 6 MB"):
        read_project(path)


def test_shape_point_out_of_reach_opens_and_is_a_finding(tree: Tree, tmp_path: Path) -> None:
    """It can be dragged back or the line reset, so the rest of her work must not be lost for it."""
    path = tmp_path / "client.bodice"
    for number, change in ((1, {"t": 5000.0}), (1, {"u": -3.0}), (2, {"u": 0.5}), (0, {"u": 1.0})):
        damaged = json.loads(json.dumps(tree))
        damaged["design"]["hem"][number].update(change)
        path.write_text(json.dumps(damaged))
        picture = picture_of(read_project(path))
        assert picture.stopped
        assert picture.findings[0].place.line == "hem"


def test_what_would_not_open_again_is_not_written(tmp_path: Path) -> None:
    path = tmp_path / "client.bodice"
    write_project(example(), path)
    before = path.read_bytes()
    for client in (Client(name="x" * 81), Client(notes="\ud800"), Client(date="2031-2-3")):
        with pytest.raises(FileTrouble, match="not written, it would not open again: client"):
            write_project(Project(client=client), path)
    assert path.read_bytes() == before


def _length(typed: object) -> Tree:
    return {"mm": 609.6, "typed": str(typed), "unit": "in"}


def _own_edges(panels: tuple[float, ...]) -> list[Tree]:
    return [{"layer": "lining", "panel": panel, "edge": "hem", "allowance_mm": 9.5} for panel in panels]


def _two_shares() -> list[Tree]:
    return [{"level": "waist", "pin_mm": 3.0, "weight": None, "left_part": None}] * 2


def _places(value: object, place: tuple[str | int, ...]) -> list[tuple[str | int, ...]]:
    found: list[tuple[str | int, ...]] = []
    if isinstance(value, dict):
        for name, inner in value.items():
            found += [(*place, name), *_places(inner, (*place, name))]
    elif isinstance(value, list):
        for number, inner in enumerate(value):
            found += _places(inner, (*place, number))
    return found


def _without(tree: Tree, place: tuple[str | int, ...]) -> Tree:
    shorter: Tree = json.loads(json.dumps(tree))
    inner: Any = shorter
    for step in place[:-1]:
        inner = inner[step]
    del inner[place[-1]]
    return shorter
