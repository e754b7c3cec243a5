"""The least that each kind of work could take: the library that does its last step, with everything ready."""

from __future__ import annotations

import io
import json
import os
from collections.abc import Sequence
from pathlib import Path
from xml.etree import ElementTree

import ezdxf
import numpy as np
import pikepdf
import shapely
from numpy.typing import NDArray
from reportlab.pdfgen.canvas import Canvas
from scipy.integrate import cumulative_trapezoid
from scipy.interpolate import PchipInterpolator

from tests.bench.clock import Act, timed
from workbench.cloth import Copy, Plan, laid
from workbench.draft import Draft, Level

TIMES = 60


def floor_of(act: Act, times: int = TIMES) -> float:
    """Median of the process time of an act done many times, ms."""
    act()
    return timed([act] * times)[0]


def curves_once(draft: Draft, levels: Sequence[Level]) -> Act:
    """As many curves through as many levels as the draft has edges, by the numerics library in one call.

    x by a monotone cubic, y by a running sum, at as many points as a side of a panel has.
    """
    walks = np.array([level.walk for level in levels])
    places = np.linspace(0.0, 60.0, len(walks))[:, None] + np.arange(2.0 * len(draft.panels))
    fine = np.linspace(walks[0], walks[-1], max(len(panel.left) for panel in draft.panels))

    def act() -> None:
        lean = PchipInterpolator(walks, places).derivative()(fine)
        cumulative_trapezoid(np.sqrt(np.maximum(1.0 - lean * lean, 0.0)), fine, axis=0)

    return act


def buffered(draft: Draft) -> Act:
    """Every outline set out by one distance, by the geometry library."""
    shapes = np.array([shapely.Polygon(panel.outline) for panel in draft.panels])
    return lambda: shapely.buffer(shapes, 12.7, join_style="mitre")


def looked_over(plan: Plan, copies: Sequence[Copy]) -> Act:
    """Every shape of a plan held against every other once, by the geometry library."""
    by_key = {copy.key: copy for copy in copies}
    lying = [laid(by_key[placed.piece, placed.copy], placed) for placed in plan.placed]
    shapes = np.array([shapely.Polygon(ring) for ring in lying])

    def act() -> None:
        one, other = shapely.STRtree(shapes).query(shapes, predicate="intersects")
        shapely.area(shapely.intersection(shapes[one], shapes[other]))

    return act


def grid_measured(draft: Draft) -> Act:
    """A grid of four millimetres over every panel measured from its edge, by the geometry library."""
    rings = [shapely.linearrings(panel.outline) for panel in draft.panels]
    grids = [shapely.points(*_grid(panel.outline)) for panel in draft.panels]
    return lambda: [shapely.distance(ring, grid) for ring, grid in zip(rings, grids, strict=True)]


def _grid(outline: NDArray[np.float64]) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    low, high = outline.min(axis=0), outline.max(axis=0)
    x, y = np.meshgrid(np.arange(low[0], high[0], 4.0), np.arange(low[1], high[1], 4.0))
    return x.ravel(), y.ravel()


def pages_again(pdf: bytes) -> Act:
    """The same pages, their contents ready, compressed and written by the PDF library."""
    with pikepdf.open(io.BytesIO(pdf)) as file:
        pages = [
            (tuple(map(float, page.mediabox)), page.Contents.read_bytes().decode("latin-1"))
            for page in file.pages
        ]

    def act() -> bytes:
        canvas = Canvas(io.BytesIO(), pageCompression=1, invariant=1)
        for box, content in pages:
            canvas.setPageSize((box[2], box[3]))
            canvas._code.append(content)
            canvas.showPage()
        return bytes(canvas.getpdfdata())

    return act


def dxf_again(data: bytes) -> Act:
    """The finished document written once more by the DXF library."""
    document = ezdxf.document.Drawing.read(io.StringIO(data.decode("utf-8")))
    return lambda: document.write(io.StringIO())


def svg_again(data: bytes) -> Act:
    """The finished tree written once more by the XML library."""
    tree = ElementTree.fromstring(data)
    return lambda: ElementTree.tostring(tree)


def json_again(data: bytes, folder: Path) -> Act:
    """The same project as a tree, written to a new file with the standard library."""
    tree = json.loads(data)
    path = folder / "raw.json"
    return lambda: path.write_bytes(json.dumps(tree, indent=2).encode("utf-8"))


def stats_and_lines(folder: Path, index: Path) -> Act:
    """Every file of a folder asked for its time, and every line of an index read, by the standard library."""

    def act() -> Sequence[object]:
        for place, _, names in os.walk(folder):
            for name in names:
                os.stat(os.path.join(place, name))
        return [json.loads(line) for line in index.read_text(encoding="utf-8").splitlines()[1:]]

    return act
