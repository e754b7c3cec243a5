"""One panel as strokes and labels: its lines are the draft's own, its words stand inside it."""

from __future__ import annotations

import numpy as np
import pytest
import shapely

from tests.sheets.conftest import Job
from workbench.draft import Panel
from workbench.sheets import Drawing, Label, panel_drawing
from workbench.sheets.fonts import text_width


def panels(job: Job) -> tuple[Panel, ...]:
    assert job.outcome.draft is not None
    return job.outcome.draft.panels


def drawn(job: Job, panel: Panel, joins: tuple[float, ...] = ()) -> Drawing:
    return panel_drawing(panel, job.outcome, ("A client of some renown", "2031-03-01"), joins)


def box(label: Label) -> shapely.Polygon:
    """Room a label takes, from its baseline to the top of its capitals (0.714 of the size in this font)."""
    width = text_width(label.text, label.size, bold=label.role == "title")
    shift = {"left": 0.0, "middle": -0.5, "right": -1.0}[label.align] * width
    plain = shapely.box(shift, 0.0, shift + width, 0.714 * label.size)
    turned = shapely.affinity.rotate(plain, label.angle, origin=(0, 0))
    return shapely.affinity.translate(turned, label.x, label.y)


def test_stitch_and_level_lines_are_the_drafts_own(either: Job) -> None:
    for panel in panels(either):
        strokes = drawn(either, panel).strokes
        by_role = {
            role: [s for s in strokes if s.role == role] for role in ("stitch", "cut", "level", "waist")
        }
        assert np.array_equal(by_role["stitch"][0].points, panel.outline)
        assert not by_role["cut"]
        assert len(by_role["waist"]) == ("waist" in panel.level_lines)
        assert len(by_role["level"]) + len(by_role["waist"]) == len(panel.level_lines)


def test_the_grain_is_square_to_the_waist_line(either: Job) -> None:
    for panel in panels(either):
        lines = [s.points for s in drawn(either, panel).strokes if s.role == "grain" and len(s.points) == 2]
        assert lines
        assert all(line[0, 0] == line[1, 0] for line in lines)


@pytest.mark.parametrize("joins", [(), (0.0,), (60.0,), (-40.0, 140.0)])
def test_words_stand_inside_the_panel_and_clear_of_each_other(either: Job, joins: tuple[float, ...]) -> None:
    for panel in panels(either):
        outline = shapely.Polygon(panel.outline)
        boxes = [(label, box(label)) for label in drawn(either, panel, joins).labels]
        for label, room in boxes:
            assert outline.contains(room), (panel.name, label.text)
        for number, (label, room) in enumerate(boxes):
            for other, its_room in boxes[number + 1 :]:
                assert not room.intersects(its_room), (panel.name, label.text, other.text)


@pytest.mark.parametrize("join", [-60.0, 30.0, 120.0])
def test_words_keep_clear_of_a_join(gown: Job, join: float) -> None:
    line = shapely.LineString([(-1000.0, join), (1000.0, join)])
    for panel in panels(gown):
        for label in drawn(gown, panel, (join,)).labels:
            if label.align == "middle":
                assert not box(label).intersects(line), (panel.name, label.text)


def test_each_side_says_what_it_is_sewn_to(gown: Job) -> None:
    names = [panel.name for panel in panels(gown)]
    for number, panel in enumerate(panels(gown)):
        said = " ".join(label.text for label in drawn(gown, panel).labels if label.angle)
        assert f"to {names[number - 1]}" in said if number else "centre front" in said
        assert f"to {names[number + 1]}" in said if number + 1 < len(names) else "centre back" in said


def test_without_a_cut_line_none_is_drawn(gown: Job) -> None:
    drawing = panel_drawing(panels(gown)[0], gown.outcome)
    assert not [stroke for stroke in drawing.strokes if stroke.role == "cut"]
