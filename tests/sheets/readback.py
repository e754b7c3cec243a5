"""Two independent readers of a printed page: the lines on it, in millimetres from its lower left corner."""

from __future__ import annotations

import ctypes
from dataclasses import dataclass
from io import BytesIO
from typing import Any

import numpy as np
import pikepdf
import pypdfium2  # type: ignore[import-untyped]
import pypdfium2.raw as raw  # type: ignore[import-untyped]
import shapely
from numpy.typing import NDArray

Array = NDArray[np.float64]
MM = 25.4 / 72.0
"""mm in a PDF unit: 1/72 in (ISO 32000)."""


@dataclass(frozen=True)
class Line:
    """A stroked polyline with the rectangle (left, bottom, right, top) it is clipped to, if any."""

    points: Array
    clip: tuple[float, float, float, float] | None
    dashed: bool


class StreamReader:
    """Follows the drawing orders of a page as pikepdf parses them: q, Q, cm, W, m, l, re and the strokes."""

    def __init__(self) -> None:
        self.matrix = np.eye(3)
        self.clip: tuple[float, float, float, float] | None = None
        self.dashed = False
        self.saved: list[tuple[Array, tuple[float, float, float, float] | None, bool]] = []
        self.paths: list[list[list[float]]] = []
        self.clipping = False
        self.lines: list[Line] = []

    def read(self, page: pikepdf.Page) -> list[Line]:
        for instruction in pikepdf.parse_content_stream(page):
            self._do(str(instruction.operator), list(instruction.operands))
        return self.lines

    def _do(self, order: str, values: list[Any]) -> None:
        if order == "q":
            self.saved.append((self.matrix, self.clip, self.dashed))
        elif order == "Q":
            self.matrix, self.clip, self.dashed = self.saved.pop()
        elif order == "cm":
            a, b, c, d, e, f = (float(value) for value in values)
            self.matrix = np.array([[a, b, 0], [c, d, 0], [e, f, 1]]) @ self.matrix
        elif order == "d":
            self.dashed = len(list(values[0])) > 0
        elif order in ("m", "l"):
            point = [float(value) for value in values]
            if order == "m":
                self.paths.append([])
            self.paths[-1].append(point)
        elif order == "re":
            x, y, w, h = (float(value) for value in values)
            self.paths.append([[x, y], [x + w, y], [x + w, y + h], [x, y + h]])
        elif order == "W":
            self.clipping = True
        elif order in ("n", "S", "s", "f", "F", "f*", "B", "b", "B*", "b*"):
            self._finish(order in ("S", "s", "B", "b"))

    def _finish(self, stroked: bool) -> None:
        for path in self.paths:
            plain = np.column_stack((np.array(path), np.ones(len(path))))
            points = (plain @ self.matrix)[:, :2] * MM
            if self.clipping:
                (left, bottom), (right, top) = points.min(axis=0), points.max(axis=0)
                self.clip = (left, bottom, right, top)
            elif stroked:
                self.lines.append(Line(points, self.clip, self.dashed))
        self.paths, self.clipping = [], False


def lines_by_pikepdf(pdf: bytes) -> list[list[Line]]:
    """The stroked lines of every page."""
    with pikepdf.open(BytesIO(pdf)) as document:
        return [StreamReader().read(page) for page in document.pages]


def lines_by_pdfium(pdf: bytes) -> list[list[Array]]:
    """The straight-sided paths (n, 2) of every page."""
    document = pypdfium2.PdfDocument(pdf)
    pages = []
    for page in document:
        paths = [_path(obj) for obj in page.get_objects(filter=[raw.FPDF_PAGEOBJ_PATH])]
        pages.append([path for path in paths if path is not None])
    document.close()
    return pages


def _path(obj: pypdfium2.PdfObject) -> Array | None:
    """Points of a path object in page millimetres; None where it is curved."""
    x, y = ctypes.c_float(), ctypes.c_float()
    points = []
    for number in range(raw.FPDFPath_CountSegments(obj)):
        segment = raw.FPDFPath_GetPathSegment(obj, number)
        if raw.FPDFPathSegment_GetType(segment) == raw.FPDF_SEGMENT_BEZIERTO:
            return None
        raw.FPDFPathSegment_GetPoint(segment, x, y)
        points.append((x.value, y.value))
    a, b, c, d, e, f = obj.get_matrix().get()
    flat = np.array(points)
    turned: Array = flat @ np.array([[a, b], [c, d]]) + np.array([e, f])
    return np.asarray(turned * MM)


def text_of(pdf: bytes) -> list[str]:
    """The words of every page, one string a page."""
    document = pypdfium2.PdfDocument(pdf)
    texts = [page.get_textpage().get_text_bounded().replace("\r\n", " ") for page in document]
    document.close()
    return texts


def page_sizes(pdf: bytes) -> list[tuple[float, float]]:
    """Width and height of every page, mm."""
    with pikepdf.open(BytesIO(pdf)) as document:
        boxes = [[float(value) for value in page.mediabox] for page in document.pages]
    return [((right - left) * MM, (top - bottom) * MM) for left, bottom, right, top in boxes]


def inked_letters(page: pypdfium2.PdfPage) -> list[tuple[float, float, float, float]]:
    """Tight boxes of all letters, points; not of the fraction slash, which leans under its figures."""
    text = page.get_textpage()
    numbers = [n for n in range(text.count_chars()) if text.get_text_range(n, 1) != "⁄"]
    boxes = [text.get_charbox(number) for number in numbers]
    return [box for box in boxes if box[2] - box[0] > 0.5 and box[3] - box[1] > 0.5]


def collisions(boxes: list[tuple[float, float, float, float]]) -> list[tuple[int, int]]:
    """Pairs of letters whose inside, a third of a point in, is shared."""
    cells = shapely.box(*(np.array(boxes) + np.array([0.35, 0.35, -0.35, -0.35])).T)
    first, second = shapely.STRtree(cells).query(cells, predicate="intersects")
    return [(int(a), int(b)) for a, b in zip(first, second, strict=True) if a < b]
