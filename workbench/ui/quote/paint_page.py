"""Paints the client's page: the design, what is included, the price, the dates, the cautions.

Sizes are in hundredths of the width of the paper, so that the page looks the same however
large it is shown. Words are set smaller where there are many.
"""

from __future__ import annotations

from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QPainter

from workbench.body import CAUTIONS
from workbench.ui.quote.page_pen import BODY, SMALL, SOFT, PagePen
from workbench.ui.quote.page_words import PageWords

_PAPER = QColor("#FFFFFF")
_EDGE, _GUTTER = 7.0, 5.0
_TITLE, _PRICE = 3.6, 5.2
_FITS = ((1.0, 44.0), (1.0, 34.0), (0.9, 34.0), (0.9, 26.0), (0.8, 22.0), (0.7, 18.0))
"""How large the words are, and how tall the picture may be; the first that fits is taken."""
_INVENTED = "Client and figures are invented for demonstration."
_PROVISIONAL = "Provisional: not every price is known yet, so this amount will change."
_EMPTY = "The page is filled in as soon as there is a draft."
_TOO_MUCH = "This is more than one page holds: write less about what is included."


def paint_page(painter: QPainter, sheet: QRectF, words: PageWords | None) -> None:
    """The page in a box on the screen."""
    painter.save()
    painter.fillRect(sheet, _PAPER)
    pen = PagePen(painter, sheet, sheet.width() / 100.0)
    if words is None:
        pen.text(_EMPTY, _EDGE, 12.0, 100 - 2 * _EDGE, BODY, SOFT)
    else:
        painter.setClipRect(sheet)
        _paint(pen, words)
    painter.restore()


def _paint(pen: PagePen, words: PageWords) -> None:
    y = _head(pen, words)
    foot = pen.height - 5.0 - _cautions(pen, None)
    most = _FITS[-1][1]
    for pen.factor, most in _FITS:
        pen.dry = True
        if _body(pen, words, y, most) <= foot - 1.0:
            break
    else:
        pen.dry = False
        pen.text(_TOO_MUCH, _EDGE, foot - 3.0, 100.0 - 2 * _EDGE, SMALL, bold=True)
    pen.dry = False
    _body(pen, words, y, most)
    pen.factor = 1.0
    _cautions(pen, foot)


def _head(pen: PagePen, words: PageWords) -> float:
    """Whose it is; where the next thing may begin."""
    wide = 100.0 - 2 * _EDGE
    pen.rule(_EDGE, 6.2, wide, strong=True)
    y = 7.6 + pen.text(words.client, _EDGE, 7.6, wide, _TITLE, bold=True)
    y += pen.text(words.about, _EDGE, y + 0.4, wide, BODY + 0.4) + 0.8
    if words.invented:
        y += pen.text(_INVENTED, _EDGE, y, wide, SMALL, bold=True) + 0.4
    return y


def _body(pen: PagePen, words: PageWords, y: float, most: float) -> float:
    """Picture and both columns; where the longer of them ends."""
    wide = 100.0 - 2 * _EDGE
    column = 0.5 * (wide - _GUTTER)
    y += pen.garment(words.garment, QRectF(_EDGE, y + 2.5, wide, most)) + 5.5
    left = _included(pen, words, y, column)
    return max(left, _price(pen, words, _EDGE + column + _GUTTER, y, column))


def _included(pen: PagePen, words: PageWords, y: float, wide: float) -> float:
    y += pen.heading("What is included", _EDGE, y, wide)
    for line in words.of("included"):
        pen.rule(_EDGE, y + 0.62 * BODY * pen.factor, 0.9, strong=False)
        y += pen.text(line.name, _EDGE + 1.8, y, wide - 1.8, BODY) + 0.6 * pen.factor
    return y


def _price(pen: PagePen, words: PageWords, left: float, y: float, wide: float) -> float:
    """The price large, how it comes about, how it is paid; then the dates."""
    prices = words.of("price")
    y += pen.heading(prices[-1].name if prices else "Price", left, y, wide)
    if prices:
        y += pen.text(words.say(prices[-1]), left, y, wide, _PRICE, bold=True) + 0.8
    if not words.complete:
        y += pen.text(_PROVISIONAL, left, y, wide, BODY, bold=True) + 0.8
    for line in (*prices[:-1], *words.of("paid")):
        pen.rule(left, y - 0.2, wide, strong=False)
        pen.text(words.say(line), left, y, wide, BODY, right=True)
        y += pen.text(line.name, left, y, 0.6 * wide, BODY)
        y += (pen.text(line.words, left, y, wide, SMALL, SOFT) if line.words else 0.0) + 0.7
    return _dates(pen, words, left, y, wide)


def _dates(pen: PagePen, words: PageWords, left: float, y: float, wide: float) -> float:
    dates = words.of("date")
    if dates:
        y += 1.6 + pen.heading("Dates", left, y + 1.6, wide)
    for line in dates:
        y += pen.text(line.name, left, y, wide, SMALL, SOFT)
        y += pen.text(line.words, left, y, wide, BODY) + 0.7
    return y


def _cautions(pen: PagePen, top: float | None) -> float:
    """The cautions at the foot of the page; with no ``top``, only how tall they are."""
    wide, y = 100.0 - 2 * _EDGE, 1.2
    pen.dry = top is None
    for caution in CAUTIONS:
        y += pen.text(caution, _EDGE, (top or 0.0) + y, wide, SMALL, SOFT) + 0.2
    pen.dry = False
    if top is not None:
        pen.rule(_EDGE, top, wide, strong=False)
    return y
