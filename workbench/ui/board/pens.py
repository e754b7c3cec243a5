"""Pens and hairlines that several painters of the board use."""

from __future__ import annotations

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QColor, QPainter, QPen


def pen(colour: QColor, width: float = 1.0, style: Qt.PenStyle = Qt.PenStyle.SolidLine) -> QPen:
    """A pen of so many pixels at any zoom.

    At one pixel Qt draws long lines thirty times as quickly as at any greater width: what
    has to look stronger is drawn twice.
    """
    made = QPen(colour, width, style)
    made.setCosmetic(True)
    made.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return made


def across(painter: QPainter, y: float, left: float, right: float, colour: QColor) -> None:
    """A level hairline, one whole row of pixels: filled, which is fifty times as quick as drawn."""
    painter.fillRect(QRect(round(left), int(y), round(right - left), 1), colour)


def upright(painter: QPainter, x: float, top: float, bottom: float, colour: QColor) -> None:
    """An upright hairline, one whole column of pixels."""
    painter.fillRect(QRect(int(x), round(top), 1, round(bottom - top)), colour)


def faint(colour: QColor, part: float) -> QColor:
    """The colour with only part of its strength."""
    made = QColor(colour)
    made.setAlphaF(made.alphaF() * part)
    return made


def mixed(one: QColor, other: QColor, part: float) -> QColor:
    """So much of the other colour in the first."""
    return QColor(
        round(one.red() + part * (other.red() - one.red())),
        round(one.green() + part * (other.green() - one.green())),
        round(one.blue() + part * (other.blue() - one.blue())),
    )
