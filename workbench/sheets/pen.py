"""The PDF pen: millimetres in, PDF drawing orders out.

Lines are written as absolute points or moved by one plain translation, never scaled, so a
coordinate reads back from the file as it was drawn, to a millionth of a point.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any

from workbench.sheets.drawing import Align, Array, Label
from workbench.sheets.fonts import POINT, font, text_width

Colour = tuple[float, float, float]

INK: Colour = (0.11, 0.10, 0.09)
SOFT: Colour = (0.40, 0.38, 0.35)
HAIR: Colour = (0.76, 0.74, 0.70)
FAINT: Colour = (0.945, 0.935, 0.915)
ATTEND: Colour = (0.66, 0.18, 0.13)
"""The one accent: dark enough to stay clear on a printer without colour."""
WHITE: Colour = (1.0, 1.0, 1.0)

HAIRLINE = 0.12
"""mm"""


@dataclass(frozen=True)
class LineStyle:
    """How a line is drawn; mm."""

    width: float
    colour: Colour = INK
    dash: tuple[float, ...] = ()


class Pen:
    """Draws on one page of a reportlab canvas. x runs right and y up from the lower left corner, mm."""

    def __init__(self, canvas: Any) -> None:
        self._canvas = canvas

    @contextmanager
    def moved(
        self, dx: float, dy: float, clip: tuple[float, float, float, float] | None = None
    ) -> Iterator[None]:
        """Everything inside is moved by (dx, dy); ``clip`` (left, bottom, right, top) is in page mm."""
        self._canvas.saveState()
        if clip is not None:
            left, bottom, right, top = clip
            box = " ".join(number(mm) for mm in (left, bottom, right - left, top - bottom))
            self._canvas.addLiteral(f"{box} re W n")
        if dx or dy:
            self._canvas.addLiteral(f"1 0 0 1 {number(dx)} {number(dy)} cm")
        yield
        self._canvas.restoreState()

    def style(self, style: LineStyle) -> None:
        """Lines that follow are drawn like this."""
        self._canvas.setLineWidth(style.width / POINT)
        self._canvas.setStrokeColorRGB(*style.colour)
        self._canvas.setDash([part / POINT for part in style.dash] if style.dash else [])

    def code(self, code: str) -> None:
        """Drawing orders that were put together before, see :func:`path_code`."""
        self._canvas.addLiteral(code)

    def line(self, x0: float, y0: float, x1: float, y1: float, style: LineStyle) -> None:
        """One straight line."""
        self.style(style)
        self.code(f"{number(x0)} {number(y0)} m {number(x1)} {number(y1)} l S")

    def rectangle(
        self,
        left: float,
        bottom: float,
        width: float,
        height: float,
        style: LineStyle | None = None,
        fill: Colour | None = None,
    ) -> None:
        """A rectangle, outlined, filled or both."""
        if style:
            self.style(style)
        if fill:
            self._canvas.setFillColorRGB(*fill)
        order = "B" if style and fill else "S" if style else "f"
        self.code(" ".join(number(mm) for mm in (left, bottom, width, height)) + f" re {order}")

    def polyline(self, points: Array, style: LineStyle) -> None:
        """An open polyline (n, 2)."""
        self.style(style)
        self.code(path_code(points, closed=False))

    def circle(
        self, x: float, y: float, radius: float, style: LineStyle | None = None, fill: Colour | None = None
    ) -> None:
        """A circle, outlined, filled or both."""
        if style:
            self.style(style)
        if fill:
            self._canvas.setFillColorRGB(*fill)
        self._canvas.circle(x / POINT, y / POINT, radius / POINT, stroke=bool(style), fill=bool(fill))

    def polygon(
        self,
        points: list[tuple[float, float]],
        style: LineStyle | None = None,
        fill: Colour | None = None,
    ) -> None:
        """A closed shape, outlined, filled or both."""
        if style:
            self.style(style)
        if fill:
            self._canvas.setFillColorRGB(*fill)
        order = "b" if style and fill else "s" if style else "f"
        path = " l ".join(f"{number(x)} {number(y)}" for x, y in points).replace(" l ", " m ", 1)
        self.code(f"{path} l {order}")

    def text(
        self,
        x: float,
        y: float,
        text: str,
        size: float,
        *,
        bold: bool = False,
        colour: Colour = INK,
        align: Align = "left",
        angle: float = 0.0,
    ) -> None:
        """One line of text on its baseline; ``size`` in mm."""
        canvas = self._canvas
        canvas.setFillColorRGB(*colour)
        canvas.setFont(font(bold), size / POINT)
        shift = {"left": 0.0, "middle": -0.5, "right": -1.0}[align] * text_width(text, size, bold)
        if not angle:
            canvas.drawString((x + shift) / POINT, y / POINT, text)
            return
        canvas.saveState()
        canvas.translate(x / POINT, y / POINT)
        canvas.rotate(angle)
        canvas.drawString(shift / POINT, 0, text)
        canvas.restoreState()

    def label(self, label: Label, *, bold: bool = False, colour: Colour = INK) -> None:
        """A label of a drawing."""
        self.text(
            label.x,
            label.y,
            label.text,
            label.size,
            bold=bold,
            colour=colour,
            align=label.align,
            angle=label.angle,
        )


def number(mm: float) -> str:
    """A length as a PDF number in points: a millionth of a point is a third of a nanometre."""
    return f"{mm / POINT:.6f}"


def path_code(points: Array, closed: bool) -> str:
    """Orders that stroke a polyline of points in mm."""
    pairs = [f"{x:.6f} {y:.6f}" for x, y in (points / POINT).tolist()]
    return f"{pairs[0]} m " + " ".join(f"{pair} l" for pair in pairs[1:]) + (" s" if closed else " S")
