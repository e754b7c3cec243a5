"""The names of the pieces under them, and how each is cut."""

from __future__ import annotations

from functools import lru_cache

from PySide6.QtGui import QFont, QPainter

from workbench.ui.board.lettering import box_of, put, width_of
from workbench.ui.board.view import View
from workbench.ui.look import fonts, look
from workbench.ui.pieces.spread import LaidPiece, Spread

_DROP, _LEADING = 14.0, 15.0
_BETWEEN = 6.0
"""Pixels between the words of two pieces."""
_SMALLEST_SCALE = 0.2
_MANNERS = 4
Words = tuple[tuple[str, ...], tuple[str, ...]]
"""The lines of a name, and those of how it is cut."""
_LEFT, _RIGHT = "her left half", "her right half: the same, turned over"


def ways(laid: LaidPiece) -> tuple[Words, ...]:
    """Its name and how it is cut: on as few lines as may be, then on more and shorter ones."""
    piece = laid.piece
    return _ways(piece.name, piece.count, piece.cut_words, piece.on_fold, piece.mirrored)


@lru_cache(256)
def _ways(name: str, number: int, cut: str, on_fold: bool, mirrored: bool) -> tuple[Words, ...]:
    count = f"cut {number}"
    broken = tuple(name.split())
    least: Words = ((f"{name[0]}{broken[-1]}" if len(broken) > 1 else name[0],), ())
    if not (on_fold or mirrored):
        return ((name,), (count,)), ((name,), (count,)), (broken, (count,)), least
    long, short = ("on the fold", "fold") if on_fold else ("left and right", "L and R")
    return ((name,), (cut,)), ((name,), (count, long)), (broken, (count, short)), least


def paint_names(painter: QPainter, spread: Spread, view: View) -> None:
    """Under each piece its name and how it is cut; all in one manner, the fullest that fits."""
    if view.scale < _SMALLEST_SCALE or not spread.pieces:
        return
    for manner in range(_MANNERS):
        if _fits(spread, view, manner):
            for laid in spread.pieces:
                _write(painter, laid, view, manner)
            break
    if spread.halves:
        _halves(painter, spread, view)


def _fits(spread: Spread, view: View, manner: int) -> bool:
    """Whether no piece's words run into those of the next."""
    reach = None
    for laid in spread.pieces:
        middle = view.x(0.5 * (laid.box[0] + laid.box[2]))
        name, cut = ways(laid)[manner]
        widths = [width_of(line, fonts().strong) for line in name]
        half = 0.5 * max(widths + [width_of(line, fonts().small) for line in cut])
        if reach is not None and middle - half < reach + _BETWEEN:
            return False
        reach = middle + half
    return True


def _write(painter: QPainter, laid: LaidPiece, view: View, manner: int) -> None:
    x, y = view.x(0.5 * (laid.box[0] + laid.box[2])), view.y(laid.box[1]) + _DROP
    name, cut = ways(laid)[manner]
    for number, words in enumerate((*name, *cut)):
        font = fonts().strong if number < len(name) else fonts().small
        _on_paper(painter, words, x, y + number * _LEADING, font, soft=number >= len(name))


def _halves(painter: QPainter, spread: Spread, view: View) -> None:
    """Which half is which, over them."""
    _, _, right, top = spread.bounds
    y = view.y(top) - _DROP
    for words, x in ((_LEFT, view.x(0.5 * right)), (_RIGHT, view.x(-0.5 * right))):
        _on_paper(painter, words, x, y, fonts().small, soft=True)


def _on_paper(painter: QPainter, words: str, x: float, y: float, font: QFont, *, soft: bool) -> None:
    """Words on paper, so that no level line runs through them."""
    painter.fillRect(box_of(words, x, y, font, "middle").adjusted(-3, 2, 3, -2), look().paper)
    painter.setPen(look().soft_ink if soft else look().ink)
    put(painter, words, x, y, font, "middle")
