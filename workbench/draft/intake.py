"""Girths, block and ledger: from the body and the design to what every seam takes in.

A quarter is drafted and worn four times over, so every figure here is either *round the
body* or *per quarter* and says which.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from workbench.body import Body, LevelName, girths, walks
from workbench.draft.design import Design, Quarter, QuarterName, Share
from workbench.draft.result import LedgerLine, Level, Taking

QUARTERS: tuple[QuarterName, QuarterName] = ("front", "back")


def levels_of(body: Body, design: Design) -> tuple[Level, ...]:
    """The levels of this style, bottom to top, with their girths round the body."""
    walk, girth = walks(body), girths(body)
    levels = []
    for name in design.levels:
        reckoned, reduction = _reckoned(name, girth, design)
        finished = reckoned - reduction
        levels.append(
            Level(name, walk[name], girth[name], finished, finished - design.opening_mm, reckoned)
        )
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
        takers = tuple(_takers(quarter, design))
        for level in levels:
            needed = blocks[quarter] - share_of(quarter, design) * level.finished
            lines.append(LedgerLine(quarter, level.name, needed, _shared(needed, level.name, takers)))
    return tuple(lines)


@dataclass(frozen=True)
class _Taker:
    """A seam that takes intake; ``left_part`` is 1 or 0 at the side seam, where a quarter owns one side."""

    seam: int
    weight: float
    left_part: float
    shares: tuple[Share, ...]
    side: bool

    def at(self, level: LevelName) -> Share:
        for share in self.shares:
            if share.level == level:
                return share
        return Share(level)

    def left_at(self, level: LevelName) -> float:
        own = None if self.side else self.at(level).left_part
        return self.left_part if own is None else own

    def weight_at(self, level: LevelName) -> float:
        own = self.at(level).weight
        return self.weight if own is None else own


def _takers(quarter: QuarterName, design: Design) -> Iterator[_Taker]:
    """The takers of a quarter in drawing order, the side seam last in front and first in back."""
    side_seam = design.front.panel_count
    described: Quarter = design.front if quarter == "front" else design.back
    first = 1 if quarter == "front" else side_seam + 1
    side = _Taker(
        side_seam, described.side_weight, 1.0 if quarter == "front" else 0.0, described.side_shares, side=True
    )
    if quarter == "back":
        yield side
    for number, seam in enumerate(described.seams):
        yield _Taker(first + number, seam.weight, seam.left_part, seam.shares, side=False)
    if quarter == "front":
        yield side


def _shared(needed: float, level: LevelName, takers: tuple[_Taker, ...]) -> tuple[Taking, ...]:
    """Pinned amounts stay; what is left goes to the others by weight, never less than nothing."""
    pins = [taker.at(level).pin_mm for taker in takers]
    weights = [taker.weight_at(level) if pin is None else 0.0 for taker, pin in zip(takers, pins, strict=True)]
    rest = max(needed - sum(pin for pin in pins if pin is not None), 0.0)
    whole = sum(weights)
    takings = []
    for taker, pin, weight in zip(takers, pins, weights, strict=True):
        amount = pin if pin is not None else (rest * weight / whole if whole > 0 else 0.0)
        left = amount * taker.left_at(level)
        takings.append(Taking(taker.seam, left, amount - left, pin is not None))
    return tuple(takings)
