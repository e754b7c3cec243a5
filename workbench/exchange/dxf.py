"""DXF in millimetres, R2000 or R12: each kind of line on a layer of its own.

The library that writes it takes a fifth of a second to be read, so it is brought in when a
file is written.
"""

from __future__ import annotations

from io import StringIO
from typing import TYPE_CHECKING, Any

import numpy as np

from workbench.exchange.choice import DxfVersion
from workbench.exchange.dxf_r12 import r12_bytes
from workbench.exchange.dxf_words import CAP, ERRORS, MILLIMETRES, NOTE_BELOW, note_label, plain
from workbench.exchange.layers import ROLE_LAYER, STYLES, TEXT_INDEX
from workbench.exchange.page import LargePage
from workbench.exchange.things import Array, Thing
from workbench.sheets import Label, Stroke

if TYPE_CHECKING:
    from ezdxf.document import Drawing as Document

_WEIGHTS = (13, 15, 18, 20, 25, 30, 35, 40, 50)
"""Widths of line a DXF knows, in hundredths of a millimetre (DXF reference, group 370; from memory)."""


def dxf_bytes(page: LargePage, version: DxfVersion, note: str) -> bytes:
    """A DXF file of a page, its lower left corner at the origin, a ``note`` below it.

    The same input gives the same bytes.
    """
    if version == "R12":
        return r12_bytes(page, note)
    return _r2000_bytes(page, note)


def _r2000_bytes(page: LargePage, note: str) -> bytes:
    document = _blank(page.width, page.height)
    space = document.modelspace()
    for thing in page.things:
        entities = [_polyline(space, stroke, thing) for stroke in thing.drawing.strokes]
        entities += [_text(space, label, (thing.dx, thing.dy)) for label in thing.drawing.labels]
        # picked and moved as one
        document.groups.new(thing.key.upper()).extend(entities)
    _text(space, note_label(note), (0.0, 0.0))
    stream = StringIO()
    document.write(stream)
    return stream.getvalue().encode(document.output_encoding, errors=ERRORS)


def _blank(width: float, height: float) -> Document:
    """An empty file with its units, its layers, and a view of all of it."""
    import ezdxf
    from ezdxf.filemanagement import new

    # dates and made-up identifiers would make every file another one
    ezdxf.options.write_fixed_meta_data_for_testing = True  # type: ignore[attr-defined]  # not in its __all__
    document = new("R2000")
    document.units = MILLIMETRES
    document.header["$MEASUREMENT"] = 1
    document.header["$EXTMIN"] = (0.0, -NOTE_BELOW, 0.0)
    document.header["$EXTMAX"] = (width, height, 0.0)
    document.set_modelspace_vport(height=1.1 * max(height, 1.0), center=(0.5 * width, 0.5 * height))
    for name, style in STYLES.items():
        document.layers.add(name.upper(), color=style.index, lineweight=_weight(style.width))
    document.layers.add("TEXT", color=TEXT_INDEX)
    return document


def _weight(mm: float) -> int:
    return min(_WEIGHTS, key=lambda width: abs(width - 100 * mm))


def _polyline(space: Any, stroke: Stroke, thing: Thing) -> Any:
    points: Array = stroke.points + np.array([thing.dx, thing.dy])
    layer = {"layer": ROLE_LAYER[stroke.role].upper()}
    return space.add_lwpolyline(points.tolist(), close=stroke.closed, dxfattribs=layer)


def _text(space: Any, label: Label, at: tuple[float, float]) -> Any:
    from ezdxf.enums import TextEntityAlignment as Align

    align = {"left": Align.LEFT, "middle": Align.CENTER, "right": Align.RIGHT}[label.align]
    layer = {"layer": "TEXT"}
    text = space.add_text(plain(label.text), height=CAP * label.size, rotation=label.angle, dxfattribs=layer)
    return text.set_placement((label.x + at[0], label.y + at[1]), align=align)
