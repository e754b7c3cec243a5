"""Set pages made into one PDF file."""

from __future__ import annotations

from collections.abc import Sequence
from io import BytesIO

from workbench.sheets.fonts import POINT
from workbench.sheets.pen import Pen
from workbench.sheets.setter import Page


def pdf_of(pages: Sequence[Page], title: str) -> bytes:
    """The pages in order, each of its own size.

    Without a date or any other trace of when and where it was made: the same pages give
    the same bytes.
    """
    from reportlab import rl_config
    from reportlab.pdfgen.canvas import Canvas

    # pages as plain bytes: spelt in letters, the file is a quarter larger and takes a fifth longer
    rl_config.useA85 = 0
    buffer = BytesIO()
    canvas = Canvas(buffer, invariant=1, pageCompression=1)
    canvas.setTitle(title)
    for blank in (canvas.setAuthor, canvas.setCreator, canvas.setProducer):
        blank("")
    for page in pages:
        canvas.setPageSize((page.width / POINT, page.height / POINT))
        page.paint(Pen(canvas))
        canvas.showPage()
    canvas.save()
    return buffer.getvalue()
