"""Pictures of the wish in a project: added, noted, laid behind the panels, and held to their bounds."""

from __future__ import annotations

import base64
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.document import example
from tests.document.wish_values import jpeg, picture
from workbench.document import Project, to_bytes
from workbench.document.file import project_from
from workbench.document.jpeg import NotJpegError, jpeg_size
from workbench.document.keeping import differences
from workbench.document.wish import Behind, WishPicture
from workbench.document.wish_checks import MOST_PICTURES, wish_problems
from workbench.document.wish_edits import (
    add_wish,
    lay_behind,
    move_behind,
    remove_wish,
    scale_behind,
    scale_between,
    set_behind,
    set_wish_note,
    take_away_behind,
    wish_named,
)
from workbench.fitting import Fitting


def with_one(name: str = "front", wide: int = 6, high: int = 4) -> Project:
    return add_wish(example(), picture(name, wide, high))


def behind(project: Project) -> Behind:
    assert project.behind is not None
    return project.behind


def on_canvas(project: Project, across: float, down: float) -> tuple[float, float]:
    """Where a pixel of the picture lies, mm from the centre front and up from the waist."""
    lies = behind(project)
    return lies.x_mm + lies.mm_per_pixel * across, lies.walk_mm - lies.mm_per_pixel * down


def test_a_picture_of_a_taken_name_gets_a_number() -> None:
    project = add_wish(add_wish(with_one(), picture()), picture())
    assert [each.name for each in project.pictures] == ["front", "front 2", "front 3"]


def test_a_long_name_that_is_taken_stays_within_its_length() -> None:
    project = add_wish(with_one("x" * 80), picture("x" * 80))
    assert [len(each.name) for each in project.pictures] == [80, 79]


def test_there_is_room_for_so_many() -> None:
    project = example()
    for _ in range(MOST_PICTURES):
        project = add_wish(project, picture())
    with pytest.raises(ValueError, match=r"There are 6 pictures already; remove one first\."):
        add_wish(project, picture())


def test_a_removed_picture_is_gone_from_behind_the_panels_too() -> None:
    project = remove_wish(lay_behind(with_one(), "front"), "front")
    assert project.pictures == ()
    assert project.behind is None


def test_another_picture_that_is_removed_leaves_the_one_behind() -> None:
    project = lay_behind(add_wish(with_one(), picture("back")), "front")
    assert behind(remove_wish(project, "back")).picture == "front"


def test_a_fitting_lets_go_of_a_removed_picture() -> None:
    project = replace(with_one(), fittings=(Fitting(picture="front"), Fitting(date="2026-11-20")))
    left = remove_wish(project, "front")
    assert [fitting.picture for fitting in left.fittings] == ["", ""]
    assert project_from(to_bytes(left)) == left


@pytest.mark.parametrize("act", [remove_wish, lay_behind, wish_named])
def test_a_picture_that_is_not_there_is_named(act: object) -> None:
    with pytest.raises(ValueError, match="no picture called “side”"):
        act(with_one(), "side")  # type: ignore[operator]


def test_a_note_is_kept_without_the_blanks_round_it() -> None:
    assert set_wish_note(with_one(), "front", "  this neckline \n").pictures[0].note == "this neckline"


def test_a_note_that_is_too_long_is_refused() -> None:
    with pytest.raises(ValueError, match="longer than 500 characters"):
        set_wish_note(with_one(), "front", "x" * 501)


def test_it_lies_with_its_middle_on_the_centre_front() -> None:
    project = lay_behind(with_one(wide=300, high=600), "front")
    assert on_canvas(project, 150, 0)[0] == pytest.approx(0)


@pytest.mark.parametrize(("wide", "high"), [(300, 600), (800, 300)])
def test_it_lies_whole_in_the_middle_of_what_is_on_show(wide: int, high: int) -> None:
    left, bottom, right, top = 10.0, -80.0, 610.0, 240.0
    project = lay_behind(with_one(wide=wide, high=high), "front", (left, bottom, right, top))
    assert on_canvas(project, wide / 2, high / 2) == pytest.approx((310, 80))
    x, low = on_canvas(project, 0, high)
    assert x >= left - 0.05 * 600
    assert low >= bottom - 0.05 * 320


def test_laid_behind_again_it_stays_where_it_was_put() -> None:
    project = move_behind(lay_behind(with_one(), "front"), 30, -20)
    assert lay_behind(project, "front") is project


def test_another_one_behind_is_as_strong_as_the_one_before() -> None:
    project = set_behind(lay_behind(add_wish(with_one(), picture("back")), "front"), opacity=0.8)
    assert behind(lay_behind(project, "back")).opacity == 0.8


def test_taken_away_it_stays_among_the_pictures() -> None:
    project = take_away_behind(lay_behind(with_one(), "front"))
    assert project.behind is None
    assert len(project.pictures) == 1


@given(
    st.tuples(st.floats(0, 300), st.floats(0, 600)),
    st.tuples(st.floats(0, 300), st.floats(0, 600)),
    st.floats(50, 800),
)
def test_two_points_with_a_known_distance_set_the_scale(
    one: tuple[float, float], other: tuple[float, float], mm: float
) -> None:
    project = move_behind(lay_behind(with_one(wide=300, high=600), "front"), 17, 23)
    if (one[0] - other[0]) ** 2 + (one[1] - other[1]) ** 2 < 100:
        return
    scaled = scale_between(project, one, other, mm)
    left, right = on_canvas(scaled, *one), on_canvas(scaled, *other)
    assert ((left[0] - right[0]) ** 2 + (left[1] - right[1]) ** 2) ** 0.5 == pytest.approx(mm)
    middle = 0.5 * (one[0] + other[0]), 0.5 * (one[1] + other[1])
    assert on_canvas(scaled, *middle) == pytest.approx(on_canvas(project, *middle), abs=1e-6)


def test_two_points_on_top_of_each_other_give_no_scale() -> None:
    with pytest.raises(ValueError, match="too close together"):
        scale_between(lay_behind(with_one(), "front"), (2, 2), (3, 3), 254)


def test_a_length_that_makes_it_enormous_is_refused() -> None:
    project = lay_behind(with_one(wide=300, high=600), "front")
    with pytest.raises(ValueError, match="too small or too large"):
        scale_between(project, (0, 0), (10, 0), 9000)


def test_a_slider_keeps_the_middle_where_it_lies() -> None:
    project = lay_behind(with_one(wide=300, high=600), "front")
    scaled = scale_behind(project, 2.5)
    assert on_canvas(scaled, 150, 300) == pytest.approx(on_canvas(project, 150, 300))


@pytest.mark.parametrize("changes", [{"opacity": 1.2}, {"mm_per_pixel": 0.0}, {"x_mm": 1e5}])
def test_what_is_out_of_range_is_refused(changes: dict[str, float]) -> None:
    with pytest.raises(ValueError, match="Behind"):
        set_behind(lay_behind(with_one(), "front"), **changes)


def test_nothing_can_be_moved_where_nothing_lies() -> None:
    with pytest.raises(ValueError, match="No picture lies behind"):
        move_behind(with_one(), 1, 1)


def test_the_size_is_read_from_the_picture_itself() -> None:
    assert jpeg_size(jpeg(37, 11)) == (37, 11)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "no picture"),
        ("é" * 8, "Base64"),
        ("abc", "Base64"),
        ("ab cd", "Base64"),
        (base64.b64encode(b"GIF89a").decode(), "no picture"),
        (base64.b64encode(b"\xff\xd8").decode(), "damaged"),
        (base64.b64encode(b"\xff\xd8\xff\xff\xff").decode(), "damaged"),
        (base64.b64encode(b"\xff\xd8\xff\xda\0\4").decode(), "damaged"),
        (base64.b64encode(b"\xff\xd8" + b"\xff\xe0\0\0" * 9).decode(), "damaged"),
        (base64.b64encode(b"\xff\xd8" + b"\xff\xd0" * 9).decode(), "damaged"),
    ],
)
def test_what_is_no_jpeg_is_found_without_decoding_it(text: str, said: str) -> None:
    with pytest.raises(NotJpegError, match=said):
        jpeg_size(text)


def test_a_picture_that_says_a_smaller_size_than_it_has_is_found() -> None:
    bomb = replace(picture(wide=1300, high=1300), width=6, height=4)
    assert [reason for _, reason in wish_problems((bomb,), None)] == [
        "is a picture of 1300 × 1300 pixels, not of the size beside it"
    ]


@pytest.mark.parametrize(
    ("pictures", "lies", "place"),
    [
        ((picture(),) * 2, None, ("pictures",)),
        (tuple(picture(str(number)) for number in range(7)), None, ("pictures",)),
        ((picture(" "),), None, ("pictures", 0, "name")),
        ((replace(picture(), note="x" * 501),), None, ("pictures", 0, "note")),
        ((replace(picture(), jpeg="A" * 500_000),), None, ("pictures", 0, "jpeg")),
        ((replace(picture(), width=0),), None, ("pictures", 0, "width")),
        ((picture(),), Behind("side", 1, 0, 0), ("behind", "picture")),
        ((picture(),), Behind("front", float("nan"), 0, 0), ("behind", "mm_per_pixel")),
        ((picture(),), Behind("front", 1, 0, float("inf")), ("behind", "walk_mm")),
        ((picture(),), Behind("front", 1, 0, 0, -0.1), ("behind", "opacity")),
    ],
)
def test_each_bound_is_held(
    pictures: tuple[WishPicture, ...], lies: Behind | None, place: tuple[str | int, ...]
) -> None:
    assert place in [found for found, _ in wish_problems(pictures, lies)]


def test_what_differs_is_said_in_words() -> None:
    before = with_one()
    after = set_behind(lay_behind(before, "front"), opacity=0.5)
    assert differences(example(), before) == ("Pictures",)
    assert differences(before, after) == ("Picture behind the panels",)
    assert differences(before, replace(before, style_name="Plunge")) == (
        "Shape begun from: “Plunge”, was nothing",
    )
