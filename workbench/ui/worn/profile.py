"""The girth profile: body, finished, laced shut and the limit by height, with the breath at the ribs."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import ceil, floor

import numpy as np
from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.body import LEVEL_LABEL, LevelName
from workbench.document import Picture
from workbench.draft import Level
from workbench.ui.board.lettering import put, width_of
from workbench.ui.board.pens import across, pen, upright
from workbench.ui.board.polygons import Array, polygon
from workbench.ui.board.scene import speaker
from workbench.ui.desk import Desk
from workbench.ui.look import GRID, fonts, look
from workbench.worn import Profile, profile_of

_LEFT, _RIGHT, _TOP, _FOOT = 92.0, 20.0, 48.0, 148.0
_LINE = 15.0
_TICK = 7.0
_INCH, _TWO_INCHES = 25.4, 50.8
_EMPTY = "The girths are drawn as soon as the bodice can be worked out from the measurements."
_LEGEND = (
    ("body", "Her body"),
    ("finished", "Finished, as worn"),
    ("shut", "Laced shut"),
    ("limit", "The limit you set"),
    ("breath", "Full exhale to full inhale"),
)


@dataclass(frozen=True)
class _Scale:
    """Where girths and heights lie in the pane."""

    left: float
    per_mm: float
    least: float
    foot: float
    per_walk: float
    lowest: float

    def x(self, girth: float) -> float:
        return self.left + self.per_mm * (girth - self.least)

    def y(self, walk: float) -> float:
        return self.foot - self.per_walk * (walk - self.lowest)

    def curve(self, walks: Array, girths: Array) -> QPolygonF:
        points = np.stack((self.left + self.per_mm * (girths - self.least), walks), axis=1)
        points[:, 1] = self.foot - self.per_walk * (walks - self.lowest)
        return polygon(points)


class GirthProfile(QWidget):
    """Shows the girths of a picture by height; a click lights up a level."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._picture: Picture | None = None
        self._profile: Profile | None = None
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setMinimumSize(70 * GRID, 90 * GRID)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName("Girths by height")

    @property
    def profile(self) -> Profile | None:
        """What is on show; None while there is no draft."""
        return self._profile

    def sizeHint(self) -> QSize:
        """As tall as it is wide, and the legend."""
        return QSize(80 * GRID, 120 * GRID)

    def show_picture(self, picture: Picture) -> None:
        """Show the girths of a picture, or of its last good draft."""
        self._picture = picture
        good = picture.good
        self._profile = profile_of(good, picture.project.limits) if good is not None else None
        if not self._desk.gesturing:
            self.setAccessibleDescription(self.said())
        self.update()

    def said(self) -> str:
        """Every level with its girths, and where she is drawn in most."""
        profile, picture = self._profile, self._picture
        if profile is None or picture is None:
            return _EMPTY
        say = speaker(picture.project.unit, picture.project.fraction)
        opening = picture.good.design.opening_mm if picture.good is not None else 0.0
        levels = [
            f"{LEVEL_LABEL[level.name]}: body {say(level.body)}, finished {say(level.finished)}, "
            f"laced shut {say(level.finished - opening)}{_limit_said(profile, level.name, say)}."
            for level in profile.levels
        ]
        return " ".join((*levels, _foot_said(profile)))

    def paintEvent(self, event: QPaintEvent) -> None:
        """The curves over a scale of girths, the legend below, and one sentence."""
        painter = QPainter(self)
        painter.fillRect(event.rect(), look().paper)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._profile is None or self._picture is None:
            painter.setFont(fonts().body)
            painter.setPen(look().soft_ink)
            box = self.rect().adjusted(6 * GRID, 0, -6 * GRID, 0)
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap, _EMPTY)
            return
        scale = self._scale(self._profile)
        self._paint_scale(painter, scale, self._picture)
        self._paint_levels(painter, scale, self._profile)
        _paint_curves(painter, scale, self._profile)
        _paint_limits(painter, scale, self._profile)
        self._paint_foot(painter, self._profile)

    def _scale(self, profile: Profile) -> _Scale:
        low, high = profile.span
        low, high = min(low, *profile.limits.values()), high
        low, high = _TWO_INCHES * floor(low / _TWO_INCHES), _TWO_INCHES * ceil(high / _TWO_INCHES)
        lowest, highest = float(profile.walks[0]), float(profile.walks[-1])
        wide, tall = self.width() - _LEFT - _RIGHT, self.height() - _TOP - _FOOT
        return _Scale(
            _LEFT,
            max(wide, 1.0) / (high - low),
            low,
            self.height() - _FOOT,
            max(tall, 1.0) / (highest - lowest),
            lowest,
        )

    def _paint_scale(self, painter: QPainter, scale: _Scale, picture: Picture) -> None:
        """Girths along the top, in whole figures of her unit, as many as there is room for."""
        unit = picture.project.unit
        step = _TWO_INCHES if unit == "in" else 50.0
        say = speaker(unit, picture.project.fraction)
        while step * scale.per_mm < 44.0:
            step *= 2
        girth = step * ceil(scale.least / step)
        while scale.x(girth) <= self.width() - _RIGHT + 1:
            x = scale.x(girth)
            upright(painter, x, _TOP - 4, scale.foot, look().hairline)
            painter.setPen(look().soft_ink)
            put(painter, say(girth), x, _TOP - 18, fonts().small, "middle")
            girth += step
        put(painter, f"Girth, {unit}", 3 * GRID, _TOP - 18, fonts().small)

    def _paint_levels(self, painter: QPainter, scale: _Scale, profile: Profile) -> None:
        selection = self._desk.selection
        chosen = selection.level if selection is not None else None
        heights = [scale.y(level.walk) for level in profile.levels]
        for level, y, at in zip(profile.levels, heights, _apart(heights), strict=True):
            lit = level.name == chosen
            across(painter, y, _LEFT - 6, self.width() - _RIGHT, look().selected if lit else look().rule)
            painter.setPen(look().selected if lit else look().ink)
            put(painter, LEVEL_LABEL[level.name], 3 * GRID, at, fonts().strong)

    def _paint_foot(self, painter: QPainter, profile: Profile) -> None:
        top = self.height() - _FOOT + 22.0
        column = max(width_of(words, fonts().small) for _, words in _LEGEND) + 46.0
        columns = max(int((self.width() - 6 * GRID) / column), 1)
        rows = ceil(len(_LEGEND) / columns)
        for number, (kind, words) in enumerate(_LEGEND):
            x, y = 3 * GRID + (number // rows) * column, top + (number % rows) * _LINE
            _paint_sample(painter, kind, x, y)
            painter.setPen(look().ink)
            put(painter, words, x + 34, y, fonts().small)
        painter.setFont(fonts().body)
        painter.setPen(look().ink)
        words = _foot_said(profile)
        box = QRectF(3 * GRID, top + rows * _LINE - 2, self.width() - 6 * GRID, self.height())
        painter.drawText(box, Qt.TextFlag.TextWordWrap, words)

    def changeEvent(self, event: QEvent) -> None:
        """Light and dark can change under it."""
        if event.type() == QEvent.Type.PaletteChange:
            self.update()
        super().changeEvent(event)


def _limit_said(profile: Profile, name: LevelName, say: Callable[[float], str]) -> str:
    least = profile.limits.get(name)
    return "" if least is None else f", your limit {say(least)}"


def _most_said(profile: Profile) -> str:
    """Where she is drawn in most, as a part of the girth there: no word of how hard it presses."""
    most = profile.draws_in_most
    if most is None:
        return "She is drawn in nowhere."
    return f"Draws in most at the {_named(most)}: {most.percent:.1f} % of her girth there."


def _foot_said(profile: Profile) -> str:
    """Where she is drawn in most, what is above a limit, and what is assumed."""
    over = [_named(level) for level in profile.over]
    said = [_most_said(profile)]
    if over:
        said.append(f"Above the limit you set at the {' and the '.join(over)}.")
    if profile.breath_assumed:
        said.append("Her breath is assumed.")
    return " ".join(said)


def _named(level: Level) -> str:
    return LEVEL_LABEL[level.name].lower()


def _apart(heights: list[float]) -> list[float]:
    """The heights, bottom to top, moved up so that no name lies on another."""
    placed: list[float] = []
    for height in heights:
        placed.append(min(height, placed[-1] - _LINE) if placed else height)
    return placed


def _pen_of(kind: str) -> QPen:
    shown = look()
    return {
        "body": pen(shown.rule, 1.0, Qt.PenStyle.DashLine),
        "finished": pen(shown.ink, 2.2),
        "shut": pen(shown.soft_ink, 1.4, Qt.PenStyle.DotLine),
        "limit": pen(shown.limit, 2.0),
    }[kind]


def _paint_curves(painter: QPainter, scale: _Scale, profile: Profile) -> None:
    at, out, full = profile.breath
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(look().breath)
    painter.drawPolygon(scale.curve(np.concatenate((at, at[::-1])), np.concatenate((out, full[::-1]))))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for kind, girths in (("body", profile.body), ("shut", profile.shut), ("finished", profile.finished)):
        painter.setPen(_pen_of(kind))
        painter.drawPolyline(scale.curve(profile.walks, girths))


def _paint_limits(painter: QPainter, scale: _Scale, profile: Profile) -> None:
    """An upright mark at each level that has a limit, and a foot that points to where there is room."""
    for level in profile.levels:
        if level.name in profile.limits:
            _paint_limit(painter, scale.x(profile.limits[level.name]), scale.y(level.walk))


def _paint_limit(painter: QPainter, x: float, y: float) -> None:
    painter.setPen(_pen_of("limit"))
    painter.drawLine(QPointF(x, y - _TICK), QPointF(x, y + _TICK))
    painter.drawLine(QPointF(x, y - _TICK), QPointF(x + 4, y - _TICK))
    painter.drawLine(QPointF(x, y + _TICK), QPointF(x + 4, y + _TICK))


def _paint_sample(painter: QPainter, kind: str, x: float, y: float) -> None:
    if kind == "breath":
        painter.fillRect(QRectF(x, y - 4, 26, 8), look().breath)
    elif kind == "limit":
        _paint_limit(painter, x + 11, y)
    else:
        painter.setPen(_pen_of(kind))
        painter.drawLine(QPointF(x, y), QPointF(x + 26, y))
