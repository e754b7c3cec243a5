"""PDF files: a canvas without a trace of its making, and set pages made into one file."""

from __future__ import annotations

from collections.abc import Sequence
from io import BytesIO
from typing import Any

from workbench.sheets.fonts import POINT
from workbench.sheets.pen import Pen
from workbench.sheets.setter import Page


def blank_canvas(buffer: BytesIO, title: str) -> Any:
    """A reportlab canvas without a date or any other trace of when and where it was made.

    The same pages give the same bytes.
    """
    from reportlab import rl_config
    from reportlab.pdfgen.canvas import Canvas

    # pages as plain bytes: spelt in letters, the file is a quarter larger and takes a fifth longer
    rl_config.useA85 = 0
    canvas = Canvas(buffer, invariant=1, pageCompression=1)
    canvas.setTitle(title)
    for blank in (canvas.setAuthor, canvas.setCreator, canvas.setProducer):
        blank("")
    return canvas


def set_size(canvas: Any, width: float, height: float) -> None:
    """The size of the next page, mm."""
    canvas.setPageSize((width / POINT, height / POINT))


def pdf_of(pages: Sequence[Page], title: str) -> bytes:
    """The pages in order, each of its own size."""
    buffer = BytesIO()
    canvas = blank_canvas(buffer, title)
    for page in pages:
        paint_page(canvas, page)
    canvas.save()
    return buffer.getvalue()


def paint_page(canvas: Any, page: Page) -> None:
    """One set page, finished."""
    set_size(canvas, page.width, page.height)
    page.paint(Pen(canvas))
    canvas.showPage()
