"""What stands beside the levels of the worn view: the name, the girth before and as worn."""

from __future__ import annotations

from typing import NamedTuple

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from workbench.body import LEVEL_LABEL, LevelName
from workbench.document import Picture
from workbench.draft import Level
from workbench.ui.board.lettering import put, width_of
from workbench.ui.board.pens import pen
from workbench.ui.board.scene import speaker
from workbench.ui.look import fonts, look
from workbench.ui.worn.stage import Stage
from workbench.worn import Seen

ROOM = 108.0
"""Pixels at the right that the labels take up."""
_LINE = 15.0
_APART = 2 * _LINE + 6.0
_LEADER = 14.0


class Label(NamedTuple):
    """The words beside one level line."""

    level: LevelName
    name: str
    girths: str


def labels_of(picture: Picture) -> tuple[Label, ...]:
    """One for each level that shapes the style, bottom to top; as for the last good draft."""
    outcome = picture.good
    if outcome is None:
        return ()
    say = speaker(picture.project.unit, picture.project.fraction)
    return tuple(
        Label(level.name, LEVEL_LABEL[level.name], _girths(level, say(level.body), say(level.finished)))
        for level in outcome.levels
    )


def _girths(level: Level, body: str, finished: str) -> str:
    if body == finished:
        return finished
    percent = f"{level.percent:+.1f}"[1:].rstrip("0").rstrip(".")
    sign = "−" if level.reduction > 0 else "+"
    return f"{body} → {finished}  {sign}{percent} %"


def paint_labels(
    painter: QPainter,
    labels: tuple[Label, ...],
    shown: Seen,
    stage: Stage,
    room: QRectF,
    lit: LevelName | None,
) -> None:
    """Each at the right, level with its line where the others leave it room, and joined to it."""
    left = room.right() - max(_widest(labels), 1.0)
    ends = [stage.pixels(shown.levels[label.level][-1:])[0].tolist() for label in labels]
    for label, (x, y), at in zip(labels, ends, _spread([y for _, y in ends], room), strict=True):
        chosen = label.level == lit
        painter.setPen(pen(look().selected if chosen else look().level))
        painter.drawLine(round(x) + 2, round(y), round(left - _LEADER), round(y))
        painter.drawLine(round(left - _LEADER), round(y), round(left - 3), round(at))
        painter.setPen(look().selected if chosen else look().ink)
        put(painter, label.name, left, at - 0.5 * _LINE, fonts().strong)
        put(painter, label.girths, left, at + 0.5 * _LINE, fonts().small)


def _widest(labels: tuple[Label, ...]) -> float:
    return max(
        (max(width_of(each.name, fonts().strong), width_of(each.girths, fonts().small)) for each in labels),
        default=0.0,
    )


def _spread(heights: list[float], room: QRectF) -> list[float]:
    """The heights, bottom to top, moved up as far as needed so that no label lies on another."""
    placed: list[float] = []
    for height in heights:
        lowest = placed[-1] - _APART if placed else room.bottom() - _LINE
        placed.append(min(height, lowest))
    return placed
