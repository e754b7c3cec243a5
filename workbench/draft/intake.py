"""Girths, block and ledger: from the body and the design to what every seam takes in.

A quarter is drafted and worn four times over, so every figure here is either *round the
body* or *per quarter* and says which.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from workbench.body import Body, LevelName, girths, walks
from workbench.draft.design import Design, QuarterName, Share
from workbench.draft.result import LedgerLine, Level, Taking

QUARTERS: tuple[QuarterName, QuarterName] = ("front", "back")


def levels_of(body: Body, design: Design) -> tuple[Level, ...]:
    """The levels of this style, bottom to top, with their girths round the body."""
    walk, girth = walks(body), girths(body)
    levels = []
    for name in design.levels:
        reckoned, reduction = _reckoned(name, girth, design)
        finished = reckoned - reduction
        levels.append(Level(name, walk[name], girth[name], finished, finished - design.opening_mm, reckoned))
    return tuple(levels)


def _reckoned(name: LevelName, girth: Mapping[LevelName, float], design: Design) -> tuple[float, float]:
    """The girth a reduction is taken from, and the reduction, round the body.

    *One figure* holds waist and underbust to the smaller of the two (traditional, no source).
    """
    if design.rule == "one_figure" and name in ("waist", "underbust"):
        return min(girth["waist"], girth["underbust"]), design.reductions.waist
    return girth[name], design.reductions.at(name)


def share_of(quarter: QuarterName, design: Design) -> float:
    """The quarter's part of a girth round the body: a fourth each, unless front and back differ."""
    return 0.5 * (design.front_share if quarter == "front" else 1 - design.front_share)


def blocks_of(levels: tuple[Level, ...], design: Design) -> dict[QuarterName, float]:
    """Width of the block of each quarter: its largest finished quarter girth."""
    widest = max(level.finished for level in levels)
    return {quarter: share_of(quarter, design) * widest for quarter in QUARTERS}


def ledger_of(
    levels: tuple[Level, ...], blocks: Mapping[QuarterName, float], design: Design
) -> tuple[LedgerLine, ...]:
    """One line for each quarter and level: what must be taken in per quarter, and which seam takes it."""
    lines = []
    for quarter in QUARTERS:
        takers = _takers(quarter, design)
        for level in levels:
            needed = blocks[quarter] - share_of(quarter, design) * level.finished
            lines.append(LedgerLine(quarter, level.name, needed, _shared(needed, level.name, takers)))
    return tuple(lines)


class _Taker(NamedTuple):
    """A seam that takes intake; ``left_part`` is 1 or 0 at the side seam, where a quarter owns one side."""

    seam: int
    weight: float
    left_part: float
    shares: Mapping[LevelName, Share]
    side: bool = False

    def at(self, level: LevelName) -> tuple[float | None, float, float]:
        """Pin, weight and left part at a level."""
        share = self.shares.get(level)
        if share is None:
            return None, self.weight, self.left_part
        weight = self.weight if share.weight is None else share.weight
        left_part = self.left_part if share.left_part is None or self.side else share.left_part
        return share.pin_mm, weight, left_part


def _takers(quarter: QuarterName, design: Design) -> tuple[_Taker, ...]:
    """The takers of a quarter in drawing order, the side seam last in front and first in back."""
    side_seam = design.front.panel_count
    described = design.front if quarter == "front" else design.back
    first = 1 if quarter == "front" else side_seam + 1
    inner = tuple(
        _Taker(first + number, seam.weight, seam.left_part, _by_level(seam.shares))
        for number, seam in enumerate(described.seams)
    )
    side_left = 1.0 if quarter == "front" else 0.0
    side = _Taker(side_seam, described.side_weight, side_left, _by_level(described.side_shares), side=True)
    return (*inner, side) if quarter == "front" else (side, *inner)


def _by_level(shares: tuple[Share, ...]) -> dict[LevelName, Share]:
    return {share.level: share for share in shares}


def _shared(needed: float, level: LevelName, takers: tuple[_Taker, ...]) -> tuple[Taking, ...]:
    """Pinned amounts stay; what is left goes to the others by weight, never less than nothing."""
    here = [taker.at(level) for taker in takers]
    pinned = whole = 0.0
    for pin, weight, _ in here:
        if pin is None:
            whole += weight
        else:
            pinned += pin
    rest = max(needed - pinned, 0.0)
    each = rest / whole if whole > 0 else 0.0
    takings = []
    for taker, (pin, weight, left_part) in zip(takers, here, strict=True):
        amount = each * weight if pin is None else pin
        left = amount * left_part
        takings.append(Taking(taker.seam, left, amount - left, pin is not None))
    return tuple(takings)
