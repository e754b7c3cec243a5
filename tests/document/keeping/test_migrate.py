"""A file of every version ever written opens, and says what it said when it was written."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from workbench.document import FileTrouble, Project, to_bytes
from workbench.document.file import project_from
from workbench.document.keeping import open_project
from workbench.document.migrate import STEPS, VERSION, Tree, brought_up
from workbench.document.tree import TreeError

FIXTURES = Path(__file__).parents[2] / "data" / "versions"


def fixture(version: int) -> Path:
    """A file as the program wrote it at that version. It is never written again."""
    return FIXTURES / f"version_{version}.bodice"


def test_there_is_a_file_of_every_version_and_a_step_from_each_to_the_next() -> None:
    named = {path.name for path in FIXTURES.iterdir()}
    assert named == {fixture(version).name for version in range(1, VERSION + 1)}
    assert set(STEPS) == set(range(1, VERSION))


@pytest.mark.parametrize("version", range(1, VERSION + 1))
def test_the_file_is_of_the_version_that_its_name_says(version: int) -> None:
    assert json.loads(fixture(version).read_bytes())["version"] == version


@pytest.mark.parametrize("version", range(1, VERSION + 1))
def test_every_version_opens_as_the_same_project(version: int) -> None:
    said_then(open_project(fixture(version)).project)


def said_then(project: Project) -> None:
    """What was put into the file at the time."""
    assert project.client.name == "Soprano, second dress (invented)"
    assert project.client.notes == "Two\nlines."
    assert project.unit == "cm"
    assert {key: length.typed for key, length in project.measurements.items()} == {
        "bust_girth": "36",
        "bust_span": "7 1/4",
        "underbust_girth": "31 1/8",
        "waist_girth": "27 3/4",
        "top_hip_girth": "35",
    }
    assert project.design.reductions.waist == 50.8
    assert project.design.front.seams[0].shares[0].pin_mm == 6.35
    assert project.design.hem is not None
    assert project.limits.waist_percent == 8.0
    assert project.cloths[0].width_mm == 1400.0
    assert project.plans[0].placed[0].y == 250.5


def test_version_2_opens_with_what_came_with_it() -> None:
    project = open_project(fixture(2)).project
    assert (project.client.worn, project.client.next_fitting) == ("chemise", "2031-06-02")
    assert [taken.date for taken in project.earlier] == ["2026-03-02"]
    assert project.fittings[0].gaps is not None
    assert (project.fittings[0].gaps.top, project.fittings[0].changes[0].kind) == (76.2, "seam")
    assert [picture.name for picture in project.pictures] == ["Sketch"]
    assert project.behind is not None
    assert (project.style_name, project.done) == ("Sweetheart", ("sewing.measure",))
    assert project.beads.runs


def test_the_newest_file_is_written_again_byte_for_byte() -> None:
    # an entry added without a new version would show here, before a client's file is refused
    path = fixture(VERSION)
    assert to_bytes(open_project(path).project) == path.read_bytes()


def test_what_an_older_file_could_not_say_is_empty() -> None:
    project = open_project(fixture(1)).project
    assert (project.earlier, project.pictures, project.done, project.client.next_fitting) == ((), (), (), "")


def as_version(version: int, **entries: Any) -> Tree:
    return {"format": "bodice", "version": version, **entries}


def named(tree: Tree) -> Tree:
    return {**tree, "name": tree["called"], "path": ["named"]}


def numbered(tree: Tree) -> Tree:
    return {**tree, "path": [*tree["path"], "numbered"]}


def test_the_steps_are_taken_one_after_the_other_in_order() -> None:
    tree = brought_up(as_version(1, called="Anna"), {1: named, 2: numbered}, newest=3)
    assert tree["version"] == 3
    assert tree["name"] == "Anna"
    assert tree["path"] == ["named", "numbered"]


def test_a_file_begins_at_its_own_step() -> None:
    assert brought_up(as_version(2, path=[]), {1: named, 2: numbered}, newest=3)["path"] == ["numbered"]


def test_a_version_without_a_step_is_refused_by_name() -> None:
    with pytest.raises(TreeError, match="files of version 2 can no longer be read"):
        brought_up(as_version(1, called="Anna"), {1: named}, newest=3)


def test_an_older_file_that_lacks_what_a_step_reads_is_refused() -> None:
    with pytest.raises(TreeError, match="no sound file of version 1"):
        brought_up(as_version(1), {1: named}, newest=2)


@pytest.mark.parametrize("version", [VERSION + 1, 9000])
def test_a_newer_file_is_refused_and_both_versions_named(version: int, tmp_path: Path) -> None:
    tree = json.loads(fixture(VERSION).read_bytes())
    path = tmp_path / "newer.bodice"
    path.write_text(json.dumps({**tree, "version": version}), encoding="utf-8")
    with pytest.raises(FileTrouble, match=rf"version {version}; this program reads up to version {VERSION}"):
        open_project(path)


@pytest.mark.parametrize(
    "data", [b"", b"{", b"[]", b"\xff", b'{"format": "bodice", "version": 0}', b'{"version": true}']
)
def test_what_is_no_project_is_refused_before_any_step(data: bytes) -> None:
    with pytest.raises(TreeError):
        project_from(data)
