"""Outlines drawn from the sentences of a guide alone, against the draft they were made from."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np
import pytest
import shapely

from tests.marking.bodies import outcomes
from tests.marking.reader import Array, Sheet, read
from workbench.body import LEVEL_LABEL
from workbench.document import picture_of, read_project
from workbench.draft import Outcome, Panel
from workbench.marking import ROUNDINGS, Guide, PieceGuide, RoundingName, guide_of, rounding_of
from workbench.pieces import Making, layer_of

DEMOS = Path(__file__).parents[2] / "demo_projects"
SIXTEENTH, EIGHTH = 25.4 / 16, 25.4 / 8
FINE: tuple[RoundingName, ...] = ("eighth", "sixteenth", "mm")
SEEDS = range(8)
EACH = 25
"""Bodies of one seed: 200 in all."""


@dataclass(frozen=True)
class Case:
    """One body, its guide, and what was drawn from the guide's sentences."""

    outcome: Outcome
    guide: Guide
    sheets: tuple[Sheet, ...]


@cache
def cases(seed: int) -> tuple[Case, ...]:
    return tuple(
        case(outcome, FINE[number % len(FINE)]) for number, outcome in enumerate(outcomes(EACH, seed))
    )


def case(outcome: Outcome, name: RoundingName) -> Case:
    making = Making()
    made = guide_of(outcome, making, layer_of(outcome, making, "fashion"), ROUNDINGS[name])
    return Case(outcome, made, tuple(drawn(piece) for piece in made.pieces))


def drawn(piece: PieceGuide) -> Sheet:
    return read((step.title, step.lines) for step in piece.steps)


def apart(one: Array, other: Array) -> float:
    """The largest distance of either line's points from the other, mm."""
    lines = shapely.LineString(one), shapely.LineString(other)
    return max(
        float(shapely.distance(shapely.points(points), line).max())
        for points, line in ((one, lines[1]), (other, lines[0]))
    )


def exact(panel: Panel, sheet: Sheet) -> Iterator[tuple[str, Array]]:
    """The four edges of a panel as seen from where its upright crosses the waist."""
    upright = panel.right if sheet.left else panel.left
    corner = np.array([np.interp(0.0, upright[:, 1], upright[:, 0]), 0.0])
    for name in ("left", "right", "neckline", "hem"):
        yield name, getattr(panel, name) - corner


@pytest.mark.parametrize("seed", SEEDS)
def test_every_outline_is_rebuilt_within_a_sixteenth_and_what_the_guide_states(seed: int) -> None:
    for one in cases(seed):
        assert one.outcome.draft is not None
        for panel, piece, sheet in zip(one.outcome.draft.panels, one.guide.pieces, one.sheets, strict=True):
            for name, line in exact(panel, sheet):
                assert apart(line, sheet.edge(name)) <= SIXTEENTH + piece.error, (panel.name, name)


@pytest.mark.parametrize("seed", SEEDS)
def test_the_stated_error_is_small_for_how_finely_it_is_marked(seed: int) -> None:
    # every distance is half a step off at most, a width shared out a whole one
    for one in cases(seed):
        step = one.guide.rounding.step
        assert all(piece.error <= 1.2 * step + 0.8 for piece in one.guide.pieces)


@pytest.mark.parametrize("seed", SEEDS)
def test_the_finished_girth_is_rebuilt_within_an_eighth_round_the_body(seed: int) -> None:
    tried = 0
    for one in cases(seed):
        for row in (row for row in one.guide.girths if row.whole):
            half = sum(sheet.width(LEVEL_LABEL[row.level].lower()) for sheet in one.sheets)
            finished = 2 * half + one.outcome.design.opening_mm
            # the draft's own tape may be a tenth of a millimetre out
            assert abs(finished - one.outcome.level(row.level).finished) <= EIGHTH + 0.1, row.level
            assert finished - row.finished == pytest.approx(row.error, abs=1e-6)
            tried += 1
    assert tried >= EACH


def test_the_waist_closes_on_every_body() -> None:
    for one in cases(0):
        waist = next(row for row in one.guide.girths if row.level == "waist")
        step = one.guide.rounding.step
        assert waist.whole
        assert waist.half == pytest.approx(round(sum(waist.exact_widths) / step) * step, abs=1e-9)
        assert sum(sheet.width("waist") for sheet in one.sheets) == pytest.approx(waist.half)


@pytest.mark.parametrize("path", sorted(DEMOS.glob("*.bodice")), ids=lambda path: path.stem)
def test_the_demos_are_rebuilt_in_their_own_unit(path: Path) -> None:
    project = read_project(path)
    outcome = picture_of(project).good
    assert outcome is not None
    assert outcome.draft is not None
    one = case(outcome, rounding_of(project.unit, project.fraction).name)
    for panel, piece, sheet in zip(outcome.draft.panels, one.guide.pieces, one.sheets, strict=True):
        for name, line in exact(panel, sheet):
            assert apart(line, sheet.edge(name)) <= SIXTEENTH + piece.error, (panel.name, name)
    for row in (row for row in one.guide.girths if row.whole):
        half = sum(sheet.width(LEVEL_LABEL[row.level].lower()) for sheet in one.sheets)
        assert abs(2 * half + outcome.design.opening_mm - outcome.level(row.level).finished) <= EIGHTH + 0.1
