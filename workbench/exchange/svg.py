"""SVG in true millimetres: a group for each piece, in it one for each kind of line."""

from __future__ import annotations

from collections.abc import Iterator
from html import escape

from workbench.exchange.layers import ROLE_LAYER, LayerStyle, styles_of
from workbench.exchange.page import LargePage
from workbench.exchange.things import Array, Thing
from workbench.sheets import Label, Stroke

MARGIN = 10.0
"""mm round everything."""
_NOTE = 4.0
"""Height of the note at the foot, mm."""
_FONT = "Noto Sans, DejaVu Sans, sans-serif"


def svg_bytes(page: LargePage, title: str, note: str) -> bytes:
    """An SVG file of a page, with a ``note`` at its foot; one unit of it is a millimetre.

    The same input gives the same bytes.
    """
    wide, high = page.width + 2 * MARGIN, page.height + 2 * MARGIN
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{_mm(wide)}mm" height="{_mm(high)}mm" '
        f'viewBox="0 0 {_mm(wide)} {_mm(high)}">',
        f"<title>{escape(_legal(title))}</title>",
        f'<g fill="none" stroke-linejoin="round" stroke-linecap="round" font-family="{_FONT}">',
    ]
    for thing in page.things:
        lines += _thing(thing, high - MARGIN)
    lines += [_text(Label("caption", note, MARGIN, 0.4 * MARGIN, _NOTE, "left"), 0.0, high, "#1c1a17")]
    lines += ["</g>", "</svg>", ""]
    return "\n".join(lines).encode("utf-8")


def _thing(thing: Thing, foot: float) -> Iterator[str]:
    """One group; ``foot`` is where y = 0 of the file lies below the top of the page."""
    yield f'<g id="{thing.key}"><title>{escape(_legal(thing.title))}</title>'
    dx, dy = thing.dx + MARGIN, foot - thing.dy
    for layer, style in styles_of(thing.drawing).items():
        strokes = [stroke for stroke in thing.drawing.strokes if ROLE_LAYER[stroke.role] == layer]
        if strokes:
            yield f'<g id="{thing.key}.{layer}" class="{layer}" {_stroke_style(style)}>'
            yield from (_path(stroke, dx, dy) for stroke in strokes)
            yield "</g>"
    if thing.drawing.labels:
        yield f'<g id="{thing.key}.text" class="text" fill="#1c1a17" stroke="none">'
        yield from (_text(label, dx, dy) for label in thing.drawing.labels)
        yield "</g>"
    yield "</g>"


def _stroke_style(style: LayerStyle) -> str:
    dash = f' stroke-dasharray="{" ".join(map(str, style.dash))}"' if style.dash else ""
    return f'stroke="{style.colour}" stroke-width="{style.width}"{dash}'


def _path(stroke: Stroke, dx: float, dy: float) -> str:
    points: Array = stroke.points * (1.0, -1.0) + (dx, dy)
    pairs = " ".join(f"{x:.4f},{y:.4f}" for x, y in points.tolist())
    return f'<path d="M {pairs}{" Z" if stroke.closed else ""}"/>'


def _text(label: Label, dx: float, dy: float, fill: str = "") -> str:
    x, y = label.x + dx, dy - label.y
    anchor = {"left": "start", "middle": "middle", "right": "end"}[label.align]
    turned = f' transform="rotate({-label.angle:.4f} {x:.4f} {y:.4f})"' if label.angle else ""
    bold = ' font-weight="bold"' if label.role == "title" else ""
    own = f' fill="{fill}"' if fill else ""
    return (
        f'<text x="{x:.4f}" y="{y:.4f}" font-size="{label.size:.3f}" text-anchor="{anchor}"'
        f"{bold}{own}{turned}>"
        f"{escape(_legal(label.text))}</text>"
    )


def _mm(length: float) -> str:
    return f"{length:.4f}"


def _legal(text: str) -> str:
    """The text without signs that XML cannot hold."""
    return "".join(
        sign for sign in text if sign >= " " and not "\ud800" <= sign <= "\udfff" and sign < "\ufffe"
    )
