"""Intake figures: what each side of a seam takes in, standing where the seam crosses the level."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import Literal, NamedTuple

import numpy as np
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QFont

from workbench.body import LevelName
from workbench.draft import Draft, LedgerLine, Outcome, QuarterName, Taking
from workbench.frozen import dataclass
from workbench.sheets import Placement
from workbench.ui.board.lettering import Align, box_of, width_of
from workbench.ui.board.view import View
from workbench.ui.look import fonts

Side = Literal["left", "right"]
Say = Callable[[float], str]

NOTHING = 0.01
"""mm: less than this is no intake worth a figure."""
_INSET = 4.0
"""Pixels between a seam and its figure."""
_RISE = 9.0
"""Pixels from the level line to the middle of a figure."""
_ROOMY, _LEAST = 30.0, 15.0
"""Pixels of the narrowest panel for figures of full size, and for any at all."""
_HEAD = 20.0
"""Pixels that must be left up to the neckline for a figure to stand above its line."""
_BETWEEN = 6.0
"""Pixels between two figures that face each other in one panel."""
_PIN = 8.0
"""Pixels kept for the mark of a pinned figure."""


class FigureKey(NamedTuple):
    """Which figure: it stays the same from draft to draft."""

    seam: int
    level: LevelName
    side: Side

    @property
    def panel(self) -> int:
        """The number of the panel it stands on."""
        return self.seam - 1 if self.side == "left" else self.seam

    @property
    def facing(self) -> FigureKey:
        """The figure at the other edge of the same panel."""
        if self.side == "left":
            return FigureKey(self.seam - 1, self.level, "right")
        return FigureKey(self.seam + 1, self.level, "left")


class Said(NamedTuple):
    """How a figure reads."""

    words: str
    pinned: bool


@dataclass(frozen=True)
class Figure:
    """One side of a seam at one level, where it is shown; mm."""

    key: FigureKey
    quarter: QuarterName
    amount: float
    other: float
    """What the other side of an inner seam takes; nothing at the side seam, where each quarter has one."""
    fitted: float
    """What of both sides was taken in at fittings: it is no part of what is pinned."""
    inner: bool
    pinned: bool
    words: str
    x: float
    y: float
    inward: int
    """+1 where its panel lies to the right of the seam as shown, -1 to the left."""
    room: float
    """Width of its panel at the level."""
    above: float
    """From the level up to the neckline, along the seam."""
    narrowest: float
    """The least width of any panel that has figures: all of them are written in one size."""
    facing: Said | None
    """The figure at the other edge of the panel, which needs its room too."""

    def box(self, view: View) -> QRectF:
        """The pixels that its words cover."""
        return box_of(self.words, *self.spot(view), self.font(view), self.align)

    def font(self, view: View) -> QFont:
        """Smaller where the panels are narrow on the screen."""
        return fonts().body if self.narrowest * view.scale >= _ROOMY else fonts().small

    def shown(self, view: View) -> bool:
        """Whether the view is large enough for figures at all."""
        return self.narrowest * view.scale >= _LEAST

    def spot(self, view: View) -> tuple[float, float]:
        """The pixel at which its words stand, by the end that is next to the seam."""
        return view.x(self.x) + self.inward * (_INSET + (_PIN if self.pinned else 0.0)), self._middle(view)

    @property
    def align(self) -> Align:
        """Which end of the words stands at the seam."""
        return "left" if self.inward > 0 else "right"

    def pin_at(self, view: View) -> QPointF:
        """The pixel of its pin mark, between the seam and the words."""
        return QPointF(view.x(self.x) + self.inward * (_INSET + 0.4 * _PIN), self._middle(view))

    def _middle(self, view: View) -> float:
        """Above its line unless the neckline is there; in a narrow panel one goes above and one below."""
        return view.y(self.y) + (_RISE if self.below(view) else -_RISE)

    def below(self, view: View) -> bool:
        """Whether it stands under its level line."""
        font = self.font(view)
        wanted = _width(Said(self.words, self.pinned), font) + _BETWEEN
        wanted += _width(self.facing, font) if self.facing else 0.0
        crowded = wanted > self.room * view.scale
        low = self.above * view.scale < _HEAD
        return (self.inward < 0) != low if crowded else low


def figures_of(
    outcome: Outcome, ledger: tuple[LedgerLine, ...], placements: tuple[Placement, ...], say: Say
) -> tuple[Figure, ...]:
    """The ledger's figures at every crossing of seam and level, for each copy of the panels on show."""
    if outcome.draft is None:
        return ()
    copies: dict[int, list[Placement]] = {}
    for placement in placements:
        copies.setdefault(placement.panel, []).append(placement)
    anchors = _anchors(outcome, outcome.draft)
    shown = [
        (line, taking, side)
        for line in ledger
        for taking in line.takings
        if _worth_showing(line, taking)
        for side in _sides(line, taking, outcome)
        if FigureKey(taking.seam, line.level, side) in anchors
    ]
    said = {
        FigureKey(taking.seam, line.level, side): Said(say(getattr(taking, side)), taking.pinned)
        for line, taking, side in shown
    }
    panels = outcome.draft.panels
    narrowest = min((panels[key.panel].widths[key.level] for key in said), default=0.0)
    return tuple(
        figure
        for line, taking, side in shown
        for figure in _copies(line, taking, side, outcome, anchors, copies, said, narrowest)
    )


def _width(said: Said, font: QFont) -> float:
    """Pixels from the seam to the far end of a figure."""
    return width_of(said.words, font) + _INSET + (_PIN if said.pinned else 0.0)


Anchors = dict[FigureKey, tuple[float, float]]


def _anchors(outcome: Outcome, draft: Draft) -> Anchors:
    """x and y, on its own panel, of each side of each seam at the levels between its hem and neckline."""
    keys, panels, sides, walks = [], [], [], []
    for seam in draft.seams:
        for level in outcome.levels:
            if seam.hem_walk <= level.walk <= seam.neckline_walk:
                keys += [
                    FigureKey(seam.index, level.name, "left"),
                    FigureKey(seam.index, level.name, "right"),
                ]
                panels += [seam.index - 1, seam.index]
                sides += [1.0, 0.0]
                walks += [level.walk, level.walk]
    if not keys:
        return {}
    points = draft.surface.points(np.array(panels, dtype=np.intp), np.array(sides), np.array(walks))
    return {key: (x, y) for key, (x, y) in zip(keys, points.tolist(), strict=True)}


def _worth_showing(line: LedgerLine, taking: Taking) -> bool:
    return taking.pinned or line.needed > NOTHING or abs(taking.total) > NOTHING


def _sides(line: LedgerLine, taking: Taking, outcome: Outcome) -> tuple[Side, ...]:
    """The sides of a seam that a taking speaks of: at the side seam each quarter has one."""
    if taking.seam != outcome.design.front.panel_count:
        return ("left", "right")
    return ("left",) if line.quarter == "front" else ("right",)


def _copies(
    line: LedgerLine,
    taking: Taking,
    side: Side,
    outcome: Outcome,
    anchors: Anchors,
    copies: dict[int, list[Placement]],
    said: dict[FigureKey, Said],
    narrowest: float,
) -> Iterator[Figure]:
    """One figure for each copy of its panel."""
    draft = outcome.draft
    if draft is None:
        return
    seam, level, left = taking.seam, line.level, side == "left"
    key = FigureKey(seam, level, side)
    x, y = anchors[key]
    for copy in copies.get(key.panel, ()):
        yield Figure(
            key=key,
            quarter=line.quarter,
            amount=taking.left if left else taking.right,
            other=taking.right if left else taking.left,
            fitted=taking.fitted,
            inner=seam != outcome.design.front.panel_count,
            pinned=taking.pinned,
            words=said[key].words,
            x=copy.dx - x if copy.flip else copy.dx + x,
            y=y,
            inward=-1 if left != copy.flip else 1,
            room=draft.panels[key.panel].widths[level],
            narrowest=narrowest,
            above=draft.seams[seam - 1].neckline_walk - outcome.level(level).walk,
            facing=said.get(key.facing),
        )


def figure_at(figures: Iterable[Figure], view: View, pixel: QPointF) -> Figure | None:
    """The figure under a pixel, with a little room around it for the hand."""
    for figure in figures:
        if figure.shown(view) and figure.box(view).adjusted(-4, -2, 4, 2).contains(pixel):
            return figure
    return None
