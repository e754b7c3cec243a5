"""Shapes of her own: what is kept of a project, what is not, and what else lies in the folder."""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path

import pytest

from tests.document import example
from tests.document.wish_values import picture
from workbench.body import Length, Limits
from workbench.cloth import Quoting
from workbench.document import (
    FileTrouble,
    Project,
    add_wish,
    lay_behind,
    picture_of,
    read_project,
    set_client,
    set_measurement,
    set_panels,
    set_pin,
    to_bytes,
    write_project,
)
from workbench.document.taken import Taken
from workbench.draft import ShapePoint
from workbench.fitting import Change, Fitting
from workbench.styles import (
    REFERENCE,
    NameTakenError,
    begun_from,
    drawn_shapes,
    own_shapes,
    remove_shape,
    save_shape,
    try_on,
)

SECRET = "Zoraide Quillfeather"


def hers() -> Project:
    """A project with something of the client in every corner."""
    project = set_client(
        example("over_bust"),
        name=SECRET,
        wish=f"{SECRET} sings",
        notes=SECRET,
        measured_by=SECRET,
        worn=SECRET,
        date="2026-11-20",
        next_fitting="2026-12-04",
    )
    project = lay_behind(add_wish(project, replace(picture(SECRET), note=SECRET)), SECRET)
    return replace(
        project,
        limits=replace(Limits(), waist_percent=7.0),
        earlier=(Taken("2025-01-02", SECRET, SECRET, project.measurements),),
        fittings=(Fitting("2026-11-21", SECRET, notes=SECRET, changes=(Change("hem", 5.0, u=0.5),)),),
        quoting=Quoting(included=SECRET, fitting_dates=SECRET, ready_by=SECRET, valid_until=SECRET),
        cloths=tuple(replace(cloth, name=f"{SECRET} {cloth.name}") for cloth in project.cloths),
    )


def test_nothing_of_the_client_goes_along(tmp_path: Path) -> None:
    project = hers()
    shape = save_shape(project, "Singer", "For a long evening", tmp_path / "shapes")
    assert shape.path is not None
    text = shape.path.read_text(encoding="utf-8")
    assert SECRET not in text
    assert "2026-11" not in text
    assert "2026-12" not in text
    assert str(project.measurements["waist_girth"].mm) not in text
    assert shape.project.measurements == REFERENCE
    assert shape.project.limits == Limits()
    assert read_project(shape.path) == shape.project


def test_what_was_kept_is_listed_by_name(tmp_path: Path) -> None:
    for name in ("singer", "Dancer", "Bride"):
        save_shape(hers(), name, f"For a {name}", tmp_path)
    own = own_shapes(tmp_path)
    assert [shape.name for shape in own.shapes] == ["Bride", "Dancer", "singer"]
    assert own.shapes[0].purpose == "For a Bride"
    assert own.troubles == ()


def test_put_back_on_her_it_is_the_shape_it_was(tmp_path: Path) -> None:
    """Lines and seams go to the invented body and back without a loss; pins too."""
    project = set_panels(example(), "front", 4)
    lines = (ShapePoint(0, 118.0, False), ShapePoint(2.5, 96.0), ShapePoint(7, 104.0))
    hem = (ShapePoint(0, -150.0), ShapePoint(4, -31.0), ShapePoint(7, -77.0))
    project = replace(project, design=replace(project.design, neckline=lines, hem=hem))
    project = set_pin(project, "front", 1, "waist", 9.5)
    shape = save_shape(project, "Mine", "", tmp_path)
    again = try_on(shape, project).project
    assert again.design.neckline is not None
    assert [point.t for point in again.design.neckline] == pytest.approx([point.t for point in lines])
    assert again.design.hem is not None
    assert [point.t for point in again.design.hem] == pytest.approx([point.t for point in hem])
    pin = next(share for share in again.design.front.seams[0].shares if share.level == "waist")
    assert pin.pin_mm == pytest.approx(9.5)


def test_a_name_that_is_taken_is_said_and_nothing_is_written(tmp_path: Path) -> None:
    first = save_shape(example(), "Mine", "one", tmp_path)
    before = [path.read_bytes() for path in tmp_path.iterdir()]
    with pytest.raises(NameTakenError, match="called “Mine” already") as caught:
        save_shape(example("over_bust"), " mine ", "other", tmp_path)
    assert caught.value.shape == first
    assert [path.read_bytes() for path in tmp_path.iterdir()] == before


def test_replaced_it_is_in_the_same_file(tmp_path: Path) -> None:
    save_shape(example(), "Mine", "one", tmp_path)
    save_shape(example("over_bust"), "Mine", "other", tmp_path, replacing=True)
    own = own_shapes(tmp_path)
    assert [shape.purpose for shape in own.shapes] == ["other"]
    assert own.shapes[0].project.design.style == "over_bust"


@pytest.mark.parametrize("name", ["../../outside", "a/b", "con", "..", "ligne 1: “été”", "x" * 80])
def test_a_name_makes_a_file_inside_the_folder(name: str, tmp_path: Path) -> None:
    folder = tmp_path / "shapes"
    shape = save_shape(example(), name, "", folder)
    assert shape.path is not None
    assert shape.path.parent == folder
    assert shape.path.name in os.listdir(folder)
    assert own_shapes(folder).shapes[0].name == name


@pytest.mark.parametrize(
    ("name", "purpose", "said"),
    [
        ("", "", "needs a name"),
        (" \n", "", "needs a name"),
        ("x" * 81, "", "longer than 80"),
        ("x", "y" * 201, "longer than 200"),
        ("\ud800", "", "half a character"),
    ],
)
def test_a_text_that_cannot_be_kept_is_refused(name: str, purpose: str, said: str, tmp_path: Path) -> None:
    with pytest.raises(ValueError, match=said):
        save_shape(example(), name, purpose, tmp_path)
    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_is_not_there_holds_nothing(tmp_path: Path) -> None:
    own = own_shapes(tmp_path / "none")
    assert (own.shapes, own.troubles) == ((), ())


def test_what_is_no_shape_is_named_and_the_others_are_listed(tmp_path: Path) -> None:
    save_shape(example(), "Mine", "", tmp_path)
    (tmp_path / "broken.bodice").write_text("{", encoding="utf-8")
    (tmp_path / "loop.bodice").symlink_to(tmp_path / "loop.bodice")
    (tmp_path / "folder.bodice").mkdir()
    (tmp_path / "notes.txt").write_text("not ours", encoding="utf-8")
    own = own_shapes(tmp_path)
    assert [shape.name for shape in own.shapes] == ["Mine"]
    assert len(own.troubles) == 3
    assert any("broken.bodice" in trouble for trouble in own.troubles)


def test_any_project_serves_but_notes_about_its_client_are_not_shown(tmp_path: Path) -> None:
    write_project(hers(), tmp_path / "For the choir.bodice")
    shape = own_shapes(tmp_path).shapes[0]
    assert (shape.name, shape.purpose) == ("For the choir", "")
    assert try_on(shape, example()).project.style_name == "For the choir"
    write_project(hers(), tmp_path / f"{'x' * 100}.bodice")
    long = own_shapes(tmp_path).shapes[1]
    assert to_bytes(try_on(long, example()).project)
    write_project(try_on(long, example()).project, tmp_path / "opens.bodice")


def test_a_folder_that_is_a_file_cannot_keep_one(tmp_path: Path) -> None:
    (tmp_path / "shapes").write_text("")
    assert len(own_shapes(tmp_path / "shapes").troubles) == 1
    with pytest.raises(FileTrouble, match="shapes"):
        save_shape(example(), "Mine", "", tmp_path / "shapes")


def test_a_removed_shape_is_gone(tmp_path: Path) -> None:
    remove_shape(save_shape(example(), "Mine", "", tmp_path))
    assert own_shapes(tmp_path).shapes == ()


def test_a_shape_of_the_program_stays() -> None:
    with pytest.raises(ValueError, match="cannot be removed"):
        remove_shape(drawn_shapes()[0])


def test_begun_from_a_shape_nothing_is_measured_and_nobody_named() -> None:
    project = begun_from(drawn_shapes("cm")[3], "cm")
    assert (project.client.name, project.client.notes, project.client.invented) == ("", "", False)
    assert (dict(project.measurements), project.unit) == ({}, "cm")
    assert project.style_name == drawn_shapes()[3].name


def test_measured_later_without_heights_its_lines_lie_as_in_the_shape() -> None:
    """The invented body has the heights of a usual torso, which is what is taken until she is measured."""
    shape = next(shape for shape in drawn_shapes() if shape.name == "Sweetheart")
    project = begun_from(shape, "in")
    for key, text in {"bust_girth": "41", "waist_girth": "33"}.items():
        project = set_measurement(project, key, text)
    assert try_on(shape, project).project.design.neckline == project.design.neckline


def test_the_saved_shape_is_the_same_whoever_wore_it(tmp_path: Path) -> None:
    """Two clients of one shape give the same lines, so nobody’s body can be read back from it."""
    shape = drawn_shapes()[7]
    kept = []
    for number, waist in enumerate(("26", "35")):
        project = begun_from(shape, "in")
        for key, text in {
            "bust_girth": "40",
            "waist_girth": waist,
            "shoulder_to_waist": f"{17 + number}",
        }.items():
            project = set_measurement(project, key, text)
        worn = try_on(shape, project).project
        kept.append(save_shape(worn, f"Number {number}", "", tmp_path).project.design)
    for one, other in ((kept[0].neckline, kept[1].neckline), (kept[0].hem, kept[1].hem)):
        assert one is not None
        assert other is not None
        assert [point.t for point in one] == pytest.approx([point.t for point in other], abs=1e-6)


def test_the_file_opens_as_a_style_for_many(tmp_path: Path) -> None:
    shape = save_shape(example(), "Mine", "", tmp_path)
    assert shape.path is not None
    assert picture_of(read_project(shape.path)).current
    assert to_bytes(read_project(shape.path)) == shape.path.read_bytes()


def test_a_length_is_kept_in_the_unit_of_the_workroom(tmp_path: Path) -> None:
    shape = save_shape(replace(example(), unit="cm"), "Mine", "", tmp_path)
    assert shape.project.unit == "cm"
    assert isinstance(shape.project.measurements["waist_girth"], Length)
