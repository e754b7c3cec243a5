"""The page of one piece that is marked by hand: drawing and steps in the largest type that fits."""

from __future__ import annotations

from collections.abc import Iterator

from workbench.marking import PieceGuide, Rounding, Step
from workbench.sheets.block import HEAD, LARGE, LEADING, Block, beside, paragraph, stack
from workbench.sheets.drawing import Drawing, Role
from workbench.sheets.fonts import clean, fitted, text_width
from workbench.sheets.heading import Heading
from workbench.sheets.marking_drawing import MarkingPicture, marking_picture
from workbench.sheets.marking_rows import mark_rows, plain_lines
from workbench.sheets.pen import INK, SOFT, LineStyle, Pen, path_code
from workbench.sheets.sections import INVENTED
from workbench.sheets.setter import FOOT, FOOTER, SIDE, TOP, Page

EXACT = 0.05
"""mm that nobody can measure."""
NAME = 8.0
"""Height of a piece's name, mm."""
SIZES = (4.6, 4.3, 4.0, 3.7, 3.4)
"""Heights of type of the steps, from the roomiest to the smallest that is read at arm's length, mm."""
_GUTTER = 8.0
_DRAWN = 0.46
"""The drawing's part of the width."""
_MOST_MOVED, _LEAST_DRAWN = 5, 0.4
"""So many steps may stand below the drawing, which keeps so large a part of the height."""
_BOX = 0.72
"""Side of the box to tick, as a part of the type."""
_STYLES: dict[Role, LineStyle] = {
    "grain": LineStyle(0.25, SOFT, (6.0, 1.5)),
    "waist": LineStyle(0.25, SOFT, (6.0, 1.5)),
    "level": LineStyle(0.18, SOFT, (1.2, 1.0)),
    "mark": LineStyle(0.30, INK),
    "stitch": LineStyle(0.55, INK),
    "cut": LineStyle(0.18, SOFT),
}


def piece_pages(
    piece: PieceGuide, rounding: Rounding, words: Heading, size: tuple[float, float]
) -> list[Page]:
    """The page of a piece: the largest type that fits; a second page where even the smallest does not."""
    width, top = size[0] - 2 * SIDE, size[1] - TOP
    head = _head(piece, words, width)
    room = top - head.height - FOOT - FOOTER - 2.0
    drawn = _DRAWN * (width - _GUTTER)
    told = width - _GUTTER - drawn
    for type_size in SIZES:
        columns = _columns(piece, rounding, type_size, told, drawn, room)
        if columns is not None:
            page = Page(*size)
            page.put(SIDE, top, head)
            page.put(SIDE, top - head.height, beside([(0.0, columns[0]), (told + _GUTTER, columns[1])]))
            return [page]
    return _broken(piece, rounding, words, size)


def _head(piece: PieceGuide, words: Heading, width: float) -> Block:
    name = NAME * min(1.0, 0.7 * width / text_width(piece.name, NAME, bold=True))
    about = f"{piece.layer_label}: {piece.cut_words}" if piece.layer_label != piece.name else piece.cut_words

    def paint(pen: Pen, left: float, top: float) -> None:
        pen.text(left, top - 0.85 * NAME, piece.name, name, bold=True)
        used = text_width(piece.name, name, bold=True) + 5.0
        pen.text(left + width, top - 0.85 * NAME, fitted(about, LARGE, width - used), LARGE, align="right")
        client = clean(words.client)
        below = f"{client}. {INVENTED}" if words.invented else client
        pen.text(
            left + width,
            top - 0.85 * NAME - 4.6,
            fitted(below, HEAD, width),
            HEAD,
            colour=SOFT,
            align="right",
        )
        pen.line(left, top - NAME - 5.4, left + width, top - NAME - 5.4, LineStyle(0.4, INK))

    return Block(NAME + 8.5, paint)


def _columns(
    piece: PieceGuide, rounding: Rounding, size: float, left: float, right: float, room: float
) -> tuple[Block, Block] | None:
    """The first steps at the left; at the right the drawing, and below it the others. None where too tall."""
    at_left, at_right = (
        [step_block(step, number, piece, rounding, wide, size) for number, step in enumerate(piece.steps, 1)]
        for wide in (left, right)
    )
    told = paragraph(_stated(piece, rounding), right, size)
    gap = 0.55 * size
    for moved in range(min(_MOST_MOVED, len(at_left)) + 1):
        kept = len(at_left) - moved
        first, lower = stack(at_left[:kept], gap), stack([*at_right[kept:], told], gap)
        tall = room - lower.height - gap
        if first.height <= room and tall >= _LEAST_DRAWN * room:
            return first, stack([drawing_block(piece, right, tall), lower], gap)
    return None


def _stated(piece: PieceGuide, rounding: Rounding) -> str:
    if piece.error < EXACT:
        return "Marked like this, the outline is the exact one."
    return f"Marked like this, the outline lies at most {rounding.say_error(piece.error)} off the exact one."


def _broken(piece: PieceGuide, rounding: Rounding, words: Heading, size: tuple[float, float]) -> list[Page]:
    """The drawing on a page, the steps on as many as they need."""
    width, top, floor = size[0] - 2 * SIDE, size[1] - TOP, FOOT + FOOTER
    head, told = _head(piece, words, width), paragraph(_stated(piece, rounding), width, SIZES[0])
    first = Page(*size)
    first.put(SIDE, top, head)
    room = top - head.height - floor - told.height - 4.0
    first.put(SIDE, top - head.height, stack([drawing_block(piece, width, room), told], 2.0))
    pages, at = [first], 0.0
    for number, step in enumerate(piece.steps, 1):
        block = step_block(step, number, piece, rounding, width, SIZES[0])
        if len(pages) == 1 or at - block.height < floor:
            pages.append(Page(*size))
            pages[-1].put(SIDE, top, head)
            at = top - head.height
        pages[-1].put(SIDE, at, block)
        at -= block.height + 2.5
    return pages


def step_block(
    step: Step, number: int, piece: PieceGuide, rounding: Rounding, width: float, size: float
) -> Block:
    """One step: a box to tick, its title, a row for each mark, then what to draw and to check."""
    indent = 1.5 * size
    title = paragraph(f"{number}  {step.title}", width - indent, size, bold=True)
    rows = [_row_block(cells, width - indent, size) for cells in _cells(step, piece, rounding)]
    before, after = ([paragraph(line, width - indent, size) for line in lines] for lines in plain_lines(step))
    inside = stack([title, *before, *rows, *after], 0.1 * size)

    def paint(pen: Pen, left: float, top: float) -> None:
        side = _BOX * size
        pen.rectangle(left, top - 0.1 * size - side, side, side, LineStyle(0.3, INK))
        inside.paint(pen, left + indent, top)

    return Block(inside.height, paint)


def _cells(step: Step, piece: PieceGuide, rounding: Rounding) -> Iterator[tuple[str, str, str, str]]:
    for row in mark_rows(step, piece, rounding):
        yield row.number, row.name, row.first, row.second


_SHARES = (0.0, 0.09, 0.36, 0.72)
"""Where the columns of a row begin: number, name, and the two distances."""


def _row_block(cells: tuple[str, str, str, str], width: float, size: float) -> Block:
    number, name, first, second = cells
    starts = [share * width for share in _SHARES]
    if not name:
        starts[2] = starts[1]

    def paint(pen: Pen, left: float, top: float) -> None:
        drop = top - 0.78 * size
        pen.text(left, drop, number, size, bold=True)
        for start, text, room in (
            (starts[1], name, starts[2] - starts[1] - 1.0 if name else 0.0),
            (starts[2], first, starts[3] - starts[2] - 1.0),
            (starts[3], second, width - starts[3]),
        ):
            if text:
                fit = min(1.0, room / text_width(text, size))
                pen.text(left + start, drop, text, fit * size)

    return Block(LEADING * size, paint)


def drawing_block(piece: PieceGuide, width: float, height: float) -> Block:
    """The finished drawing with its numbers, as large as there is room for."""
    figure = 4.2
    picture = marking_picture(piece, figure)
    for _ in range(3):
        # numbers keep their height on paper, so how far they stick out depends on the scale
        scale = _scale(picture, width, height)
        picture = marking_picture(piece, figure / scale)
    scale = _scale(picture, width, height)

    def paint(pen: Pen, left: float, top: float) -> None:
        x0, _, x1, y1 = picture.bounds()
        dx = left + 0.5 * (width - scale * (x1 - x0)) - scale * x0
        _paint(pen, picture.before, scale, dx, top - scale * y1)

    return Block(height, paint)


def _scale(picture: MarkingPicture, width: float, height: float) -> float:
    left, bottom, right, top = picture.bounds()
    return min(width / (right - left), height / (top - bottom))


def _paint(pen: Pen, drawing: Drawing, scale: float, dx: float, dy: float) -> None:
    for role, style in _STYLES.items():
        for stroke in drawing.strokes:
            if stroke.role == role:
                pen.style(style)
                pen.code(path_code(stroke.points * scale + (dx, dy), stroke.closed))
    for label in drawing.labels:
        pen.text(
            dx + scale * label.x,
            dy + scale * label.y,
            label.text,
            scale * label.size,
            bold=True,
            align="middle",
        )
