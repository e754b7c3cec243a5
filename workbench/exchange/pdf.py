"""One page with everything on it: for a copy shop, for trying in paper, or for a projector."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from io import BytesIO

from workbench.body import CAUTION_SHORT
from workbench.draft import Finding
from workbench.exchange.choice import ExportChoice, Projector
from workbench.exchange.layers import ROLE_LAYER, STYLES
from workbench.exchange.page import HEAD, MARGIN, LargePage
from workbench.exchange.said import INVENTED, scale_words
from workbench.exchange.things import Thing
from workbench.sheets import (
    Heading,
    LineStyle,
    Pen,
    blank_canvas,
    clean,
    fitted,
    path_code,
    set_size,
    wrapped,
)

Colour = tuple[float, float, float]

SQUARE = 50.0
"""Side of the test square, mm on paper whatever the scale."""
INK: Colour = (0.11, 0.10, 0.09)
SOFT: Colour = (0.40, 0.38, 0.35)
ATTEND: Colour = (0.66, 0.18, 0.13)
_SMALL = 3.2
"""Height of the small print, mm."""
_STRONG = ("cut", "stitch")
_WORDS_IN, _WORDS_UP, _WORDS_SIZE = 60.0, 27.0, 9.0
"""Where the words on a projector sheet stand, and how large they are, mm."""
_GRID_PART = 0.35
"""How strong the grid is against the lines."""


def pdf_bytes(
    page: LargePage, choice: ExportChoice, words: Heading, title: str, over: Sequence[Finding] = ()
) -> bytes:
    """A PDF of the page. The same input gives the same bytes."""
    buffer = BytesIO()
    canvas = blank_canvas(buffer, title)
    set_size(canvas, page.width, page.height)
    if choice.projector is None:
        _copy_page(Pen(canvas), page, choice, words, over)
    else:
        _projected(Pen(canvas), page, choice, choice.projector)
    canvas.showPage()
    canvas.save()
    return buffer.getvalue()


# --- for a copy shop, and for trying in paper -------------------------------------------------


def _copy_page(
    pen: Pen, page: LargePage, choice: ExportChoice, words: Heading, over: Sequence[Finding]
) -> None:
    left, top = MARGIN, page.height - MARGIN
    pen.rectangle(left, top - SQUARE, SQUARE, SQUARE, LineStyle(0.25, INK))
    pen.text(left + 0.5 * SQUARE, top - 0.5 * SQUARE, "50 mm", 5.0, bold=True, align="middle")
    pen.text(left + 0.5 * SQUARE, top - 0.5 * SQUARE - 5.0, "on this sheet", 3.0, colour=SOFT, align="middle")
    x, room = left + SQUARE + 8.0, page.width - 2 * MARGIN - SQUARE - 8.0
    pen.text(x, top - 6.0, fitted(clean(words.client) or "Pieces", 6.0, room, bold=True), 6.0, bold=True)
    for number, line in enumerate(_told(page, choice, words)):
        pen.text(x, top - 13.5 - 5.6 * number, fitted(line, 4.0, room), 4.0)
    room = page.width - 2 * MARGIN
    if over:
        for number, line in enumerate(wrapped(_over_words(over, words), _SMALL, room, most=2)):
            pen.text(left, top - SQUARE - 5.0 - 4.2 * number, line, _SMALL, colour=ATTEND)
    pen.text(left, top - HEAD + 10.0, fitted(CAUTION_SHORT, _SMALL, room), _SMALL, colour=SOFT)
    pen.line(left, top - HEAD + 8.0, page.width - MARGIN, top - HEAD + 8.0, LineStyle(0.2, SOFT))
    styles = {
        name: LineStyle(style.width, _colour(style.colour), style.dash) for name, style in STYLES.items()
    }
    for thing in page.things:
        draw_thing(pen, thing, styles, INK)


def _told(page: LargePage, choice: ExportChoice, words: Heading) -> list[str]:
    """What is said in the head, a line each."""
    lines = [
        f"{scale_words(choice.scale)}. Print at 100 %, no fit to page, and measure the square.",
        f"One sheet of {page.name}: {page.width:.0f} × {page.height:.0f} mm.",
    ]
    if choice.scale != 1.0:
        lines.insert(1, "For trying in paper; not for cutting cloth.")
    if words.date:
        lines.append(clean(words.date))
    if words.invented:
        lines.append(INVENTED)
    return lines


def _over_words(over: Sequence[Finding], words: Heading) -> str:
    """What is above a limit, the first of it in full."""
    more = f" And {len(over) - 1} more." if len(over) > 1 else ""
    return f"Above the limit you set: {over[0].text(words.unit, words.fraction)}{more}"


def _colour(text: str) -> Colour:
    red, green, blue = (int(text[place : place + 2], 16) / 255 for place in (1, 3, 5))
    return red, green, blue


def draw_thing(pen: Pen, thing: Thing, styles: Mapping[str, LineStyle], ink: Colour) -> None:
    """One thing at its place, each kind of line in its style, words in ``ink``.

    A stitch line without a cut line round it is drawn unbroken.
    """
    alone = not any(stroke.role == "cut" for stroke in thing.drawing.strokes)
    with pen.moved(thing.dx, thing.dy):
        for layer, style in styles.items():
            if layer == "stitch" and alone:
                style = replace(style, dash=())
            strokes = [stroke for stroke in thing.drawing.strokes if ROLE_LAYER[stroke.role] == layer]
            if strokes:
                pen.style(style)
            for stroke in strokes:
                pen.code(path_code(stroke.points, stroke.closed))
        for label in thing.drawing.labels:
            pen.label(label, bold=label.role == "title", colour=ink)


# --- for a projector --------------------------------------------------------------------------


def _projected(pen: Pen, page: LargePage, choice: ExportChoice, projector: Projector) -> None:
    ground, line = _grounds(projector)
    pen.rectangle(0.0, 0.0, page.width, page.height, fill=ground)
    _grid(pen, page, projector, _mixed(ground, line, _GRID_PART))
    styles = {
        name: LineStyle(projector.line_mm * (1.0 if name in _STRONG else 0.5), line, _dash(name, projector))
        for name in STYLES
    }
    for thing in page.things:
        draw_thing(pen, thing, styles, line)
    said = (
        f"{scale_words(choice.scale)}. Every square is {_side(projector)}: "
        "move and square the picture until it measures so both ways."
    )
    said = fitted(said, _WORDS_SIZE, page.width - 2 * _WORDS_IN)
    pen.text(_WORDS_IN, _WORDS_UP, said, _WORDS_SIZE, colour=line)


def _grounds(projector: Projector) -> tuple[Colour, Colour]:
    """Colours of ground and lines."""
    black, white = (0.0, 0.0, 0.0), (1.0, 1.0, 1.0)
    ground, line = (white, black) if projector.ground == "light" else (black, white)
    return ground, _mixed(ground, line, projector.contrast)


def _mixed(one: Colour, other: Colour, share: float) -> Colour:
    red, green, blue = (a + share * (b - a) for a, b in zip(one, other, strict=True))
    return red, green, blue


def _dash(name: str, projector: Projector) -> tuple[float, ...]:
    """Dashes long enough for lines of this width."""
    return tuple(max(part, 2.0 * projector.line_mm) for part in STYLES[name].dash)


def _grid(pen: Pen, page: LargePage, projector: Projector, colour: Colour) -> None:
    """Squares from the middle of the page outwards, its own axes twice as wide."""
    thin = max(0.25 * projector.line_mm, 0.2)
    for axis, length in ((0, page.width), (1, page.height)):
        count = int(0.5 * length // projector.grid_mm)
        for number in range(-count, count + 1):
            at = 0.5 * length + number * projector.grid_mm
            style = LineStyle(thin * (2.0 if number == 0 else 1.0), colour)
            if axis == 0:
                pen.line(at, 0.0, at, page.height, style)
            else:
                pen.line(0.0, at, page.width, at, style)


def _side(projector: Projector) -> str:
    """The side of a square in the unit it is whole in."""
    inches = projector.grid_mm / 25.4
    whole = abs(inches - round(inches)) < 1e-6
    return f"{round(inches)} in" if whole else f"{projector.grid_mm / 10:g} cm"
