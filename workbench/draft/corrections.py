"""What was pinned at fittings, laid over a draft. The design stays as she drew it.

Taking in goes on top of what the ledger places, in the quarter it lies in; the block and so
the place of every other seam stays. Lengthening moves levels apart, away from the waist, and
what lies on them along; the widths of the panels stay.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

import numpy as np

from workbench.body import LEAST_GAP_MM, LEVEL_LABEL, LevelName
from workbench.draft.design import Design, ShapePoint
from workbench.draft.fitted import Corrections, Lengthened, TakenIn
from workbench.draft.monotone import Array
from workbench.draft.names import Findings, low_label, panel_name, seam_name, stop
from workbench.draft.raised import Lifts
from workbench.draft.result import Finding, LedgerLine, Level, LineName, Outcome, Place, Taking
from workbench.draft.trouble_drawn import THINNEST


def corrected_levels(levels: tuple[Level, ...], corrections: Corrections) -> tuple[Level, ...]:
    """The levels with the girths and walks that the corrections leave them."""
    return tuple(
        _corrected_level(level, shift, _round_the_body(level.name, corrections))
        for level, shift in zip(levels, _shifts(levels, corrections), strict=True)
    )


def _corrected_level(level: Level, shift: float, less: float) -> Level:
    """``reckoned`` goes down with the girth, so that a reduction is still taken from it as designed."""
    return replace(
        level,
        walk=level.walk + shift,
        finished=level.finished - less,
        fabric=level.fabric - less,
        reckoned=level.reckoned - less,
        fitted=less,
    )


def _round_the_body(level: LevelName, corrections: Corrections) -> float:
    """mm that the girth loses: every seam is there twice."""
    return 2 * sum(taken.amount for taken in corrections.taken_in if taken.level == level)


def _shifts(levels: tuple[Level, ...], corrections: Corrections) -> list[float]:
    """How far each level moves away from the waist, up positive."""
    names = [level.name for level in levels]
    waist = names.index("waist")
    shifts = [0.0] * len(levels)
    for longer in corrections.lengthened:
        low = names.index(longer.level)
        moved = range(low + 1, len(levels)) if low >= waist else range(low + 1)
        for index in moved:
            shifts[index] += longer.amount if low >= waist else -longer.amount
    return shifts


def corrected_ledger(
    ledger: tuple[LedgerLine, ...], corrections: Corrections, design: Design
) -> tuple[LedgerLine, ...]:
    """The ledger with what was taken in placed on its seams, and needed there."""
    side = design.front.panel_count
    lines = []
    for line in ledger:
        here = [taken for taken in corrections.taken_in if taken.level == line.level]
        added = dict.fromkeys((taking.seam for taking in line.takings), 0.0)
        for taken in here:
            if taken.seam in added:
                added[taken.seam] += taken.amount * (0.5 if taken.seam == side else 1.0)
        lines.append(_corrected_line(line, added, design) if any(added.values()) else line)
    return tuple(lines)


def _corrected_line(line: LedgerLine, added: dict[int, float], design: Design) -> LedgerLine:
    takings = tuple(_corrected_taking(taking, added[taking.seam], line, design) for taking in line.takings)
    return replace(line, needed=line.needed + sum(added.values()), takings=takings)


def _corrected_taking(taking: Taking, more: float, line: LedgerLine, design: Design) -> Taking:
    if not more:
        return taking
    left = more * _left_part(taking.seam, line, design)
    return taking._replace(left=taking.left + left, right=taking.right + more - left, fitted=more)


def _left_part(seam: int, line: LedgerLine, design: Design) -> float:
    """The part of it that comes off the panel to its left; at the side each quarter has its own side."""
    front = design.front.panel_count
    if seam == front:
        return 1.0 if line.quarter == "front" else 0.0
    described = design.front.seams[seam - 1] if seam < front else design.back.seams[seam - front - 1]
    for share in described.shares:
        if share.level == line.level and share.left_part is not None:
            return share.left_part
    return described.left_part


def moved_points(
    points: tuple[ShapePoint, ...], before: Sequence[Level], after: Sequence[Level]
) -> tuple[ShapePoint, ...]:
    """Shape points carried along by levels that have moved apart."""
    return tuple(replace(point, t=moved_walk(point.t, before, after)) for point in points)


def moved_walk(t: float, before: Sequence[Level], after: Sequence[Level]) -> float:
    """Where a walk has gone: in proportion between two levels, along with the outermost beyond them."""
    if t <= before[0].walk:
        return t + (after[0].walk - before[0].walk)
    for (low, high), (new_low, new_high) in zip(pairwise(before), pairwise(after), strict=True):
        if t <= high.walk:
            share = (t - low.walk) / (high.walk - low.walk)
            return new_low.walk + share * (new_high.walk - new_low.walk)
    return t + (after[-1].walk - before[-1].walk)


def lifts_of(line: LineName, corrections: Corrections) -> list[Lifts]:
    """What each fitting raised of a line, by place (u); two at one place add up."""
    groups = []
    for group in corrections.raised:
        lifts: dict[float, float] = {}
        for raised in group:
            if raised.line == line:
                lifts[raised.u] = lifts.get(raised.u, 0.0) + raised.amount
        groups.append(lifts)
    return [lifts for lifts in groups if lifts]


def walk_designed(
    outcome: Outcome, t: float, line: LineName | None = None, number: int | None = None
) -> float:
    """The walk to design so that, after what fittings changed, it comes to ``t``.

    For a shape point of a line, by its number, what was raised there is taken off too.
    """
    if not outcome.designed:
        return t
    if outcome.draft is not None and line is not None and number is not None:
        drawn = outcome.draft.line(line)
        carried = moved_walk(drawn.designed[number].t, outcome.designed, outcome.levels)
        t -= drawn.points[number].t - carried
    return moved_walk(t, outcome.levels, outcome.designed)


# --- what cannot be ---------------------------------------------------------------------------


def in_lengths(levels: tuple[Level, ...], corrections: Corrections) -> Findings:
    """Levels that shortening has brought too close; the last correction between them is named."""
    by_level = {longer.level: longer for longer in corrections.lengthened}
    return tuple(
        _eaten_up(low, high, by_level[low.name])
        for low, high in pairwise(levels)
        if low.name in by_level and not high.walk - low.walk >= LEAST_GAP_MM
    )


def _eaten_up(low: Level, high: Level, longer: Lengthened) -> Finding:
    left = high.walk - low.walk
    return stop(
        "fitting_length",
        "{said} shortens by {amount} between {low} and {high}: "
        + ("{left} is left there." if left > 0 else "nothing is left there."),
        Place(field=longer.field, level=high.name),
        "Shorten by less, or switch the line off.",
        said=longer.said,
        amount=float(-longer.amount),
        low=low_label(low.name),
        high=low_label(high.name),
        left=max(left, 0.0),
    )


def in_widths(
    x: Array,
    levels: tuple[Level, ...],
    ledger: tuple[LedgerLine, ...],
    corrections: Corrections,
    design: Design,
) -> Findings:
    """Panels of which more was taken in than they have; x (2 * panels, levels) is what is left of them."""
    left = x[1::2] - x[::2]
    if left.min() > THINNEST:
        return ()
    had = left + _taken_off(left, levels, ledger, design)
    gone = np.argwhere((left <= THINNEST) & (had > THINNEST)).tolist()
    return tuple(_too_much_in(gone, had, levels, corrections, design))


def _taken_off(
    like: Array, levels: tuple[Level, ...], ledger: tuple[LedgerLine, ...], design: Design
) -> Array:
    """What fittings took off each panel (panels, levels), in mm."""
    off = np.zeros_like(like)
    row = {level.name: i for i, level in enumerate(levels)}
    for line in ledger:
        for taking in line.takings:
            part = _left_part(taking.seam, line, design)
            off[taking.seam - 1, row[line.level]] += taking.fitted * part
            off[taking.seam, row[line.level]] += taking.fitted * (1 - part)
    return off


def _too_much_in(
    places: list[list[int]],
    had: Array,
    levels: tuple[Level, ...],
    corrections: Corrections,
    design: Design,
) -> Iterator[Finding]:
    for panel, index in places:
        touching = [
            taken
            for taken in corrections.taken_in
            if taken.level == levels[index].name and taken.seam in (panel, panel + 1) and taken.amount > 0
        ]
        if touching:
            most = max(touching, key=lambda taken: taken.amount)
            yield _too_much(most, panel, float(had[panel, index]), design)


def _too_much(taken: TakenIn, panel: int, width: float, design: Design) -> Finding:
    return stop(
        "fitting_takes_all",
        "{said} takes in {amount} at the {seam}, {level}: {panel} is {width} wide there without it.",
        Place(field=taken.field, level=taken.level, seam=taken.seam, panel=panel),
        "Take in less there, or switch the line off.",
        said=taken.said,
        amount=taken.amount,
        seam=seam_name(taken.seam, design),
        level=LEVEL_LABEL[taken.level].lower(),
        panel=panel_name(panel, design),
        width=width,
    )
