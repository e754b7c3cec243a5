"""The names of the pieces under them, and how each is cut."""

from __future__ import annotations

from PySide6.QtGui import QFont, QPainter

from workbench.ui.board.lettering import box_of, put, width_of
from workbench.ui.board.view import View
from workbench.ui.look import fonts, look
from workbench.ui.pieces.spread import LaidPiece, Spread

_DROP, _LEADING = 14.0, 15.0
_BETWEEN = 6.0
"""Pixels between the words of two pieces."""
_SMALLEST_SCALE = 0.2
_LEFT, _RIGHT = "her left half", "her right half: the same, turned over"


def cut_lines(laid: LaidPiece) -> tuple[tuple[str, ...], ...]:
    """How it is cut, in words: on as few lines as may be, and then on more."""
    piece = laid.piece
    count = f"cut {piece.count}"
    if piece.on_fold:
        return (piece.cut_words,), (count, "on the fold"), (count, "fold")
    if piece.mirrored:
        return (piece.cut_words,), (count, "left and right"), (count, "L and R")
    return ((piece.cut_words,),)


def paint_names(painter: QPainter, spread: Spread, view: View) -> None:
    """Under each piece its name and how it is cut; all in one manner, the widest that fits."""
    if view.scale < _SMALLEST_SCALE or not spread.pieces:
        return
    manner = next((m for m in range(3) if _fits(spread, view, m)), 2)
    for laid in spread.pieces:
        _write(painter, laid, view, manner)
    if spread.halves:
        _halves(painter, spread, view)


def _manner(laid: LaidPiece, manner: int) -> tuple[str, ...]:
    ways = cut_lines(laid)
    return ways[min(manner, len(ways) - 1)]


def _fits(spread: Spread, view: View, manner: int) -> bool:
    """Whether no piece's words run into those of the next."""
    reach = None
    for laid in spread.pieces:
        middle = view.x(0.5 * (laid.box[0] + laid.box[2]))
        words = (laid.piece.name, *_manner(laid, manner))
        half = 0.5 * max(width_of(line, fonts().small) for line in words)
        if reach is not None and middle - half < reach + _BETWEEN:
            return False
        reach = middle + half
    return True


def _write(painter: QPainter, laid: LaidPiece, view: View, manner: int) -> None:
    x, y = view.x(0.5 * (laid.box[0] + laid.box[2])), view.y(laid.box[1]) + _DROP
    name = fonts().strong
    room = view.scale * (laid.box[2] - laid.box[0])
    if width_of(laid.piece.name, name) > room:
        name = fonts().small
    _on_paper(painter, laid.piece.name, x, y, name, soft=False)
    for number, words in enumerate(_manner(laid, manner), 1):
        _on_paper(painter, words, x, y + number * _LEADING, fonts().small, soft=True)


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
