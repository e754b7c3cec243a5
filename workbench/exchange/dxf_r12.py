"""DXF R12, written straight to the file: building it in memory first would take ten times as long."""

from __future__ import annotations

from io import StringIO
from typing import TYPE_CHECKING

import numpy as np

from workbench.exchange.dxf_words import CAP, ENCODING, ERRORS, MILLIMETRES, NOTE_BELOW, note_label, plain
from workbench.exchange.layers import ROLE_LAYER, STYLES, TEXT_INDEX
from workbench.exchange.page import LargePage
from workbench.exchange.things import Thing
from workbench.sheets import Label, Stroke

if TYPE_CHECKING:
    from ezdxf.addons.r12writer import R12FastStreamWriter

_ALIGN = {"left": "LEFT", "middle": "CENTER", "right": "RIGHT"}
_DIGITS = 6
"""Of a coordinate in mm, after the point."""


def r12_bytes(page: LargePage, note: str) -> bytes:
    """A DXF R12 file of a page, its lower left corner at the origin, a ``note`` below it."""
    from ezdxf.addons.r12writer import R12FastStreamWriter

    stream = StringIO()
    stream.write(_head(page.width, page.height))
    writer = R12FastStreamWriter(stream)
    for thing in page.things:
        for stroke in thing.drawing.strokes:
            _polyline(writer, stroke, thing)
        for label in thing.drawing.labels:
            _text(writer, label, (thing.dx, thing.dy))
    _text(writer, note_label(note), (0.0, 0.0))
    writer.close()
    return stream.getvalue().encode(ENCODING, errors=ERRORS)


def _head(width: float, height: float) -> str:
    """Header and tables: the units, how far it reaches, and the layers with their colours."""
    lines = ["0", "SECTION", "2", "HEADER", "9", "$ACADVER", "1", "AC1009"]
    lines += ["9", "$DWGCODEPAGE", "3", "ANSI_1252"]
    # this old version knows no units of its own; programs that read the entry take it all the same
    lines += ["9", "$INSUNITS", "70", str(MILLIMETRES)]
    lines += ["9", "$EXTMIN", "10", "0.0", "20", f"{-NOTE_BELOW}", "30", "0.0"]
    lines += ["9", "$EXTMAX", "10", f"{width:.6f}", "20", f"{height:.6f}", "30", "0.0"]
    lines += ["0", "ENDSEC", "0", "SECTION", "2", "TABLES"]
    lines += ["0", "TABLE", "2", "LTYPE", "70", "1", "0", "LTYPE", "2", "CONTINUOUS", "70", "0"]
    lines += ["3", "Solid line", "72", "65", "73", "0", "40", "0.0", "0", "ENDTAB"]
    layers = {"0": TEXT_INDEX, **{name.upper(): style.index for name, style in STYLES.items()}}
    layers["TEXT"] = TEXT_INDEX
    lines += ["0", "TABLE", "2", "LAYER", "70", str(len(layers))]
    for name, index in layers.items():
        lines += ["0", "LAYER", "2", name, "70", "0", "62", str(index), "6", "CONTINUOUS"]
    lines += ["0", "ENDTAB", "0", "TABLE", "2", "STYLE", "70", "1", "0", "STYLE", "2", "STANDARD", "70", "0"]
    lines += ["40", "0.0", "41", "1.0", "50", "0.0", "71", "0", "42", "2.5", "3", "txt", "4", ""]
    lines += ["0", "ENDTAB", "0", "ENDSEC", ""]
    return "\n".join(lines)


def _polyline(writer: R12FastStreamWriter, stroke: Stroke, thing: Thing) -> None:
    points = np.round(stroke.points + np.array([thing.dx, thing.dy]), _DIGITS)
    writer.add_polyline_2d(points.tolist(), closed=stroke.closed, layer=ROLE_LAYER[stroke.role].upper())


def _text(writer: R12FastStreamWriter, label: Label, at: tuple[float, float]) -> None:
    writer.add_text(
        plain(label.text),
        (label.x + at[0], label.y + at[1]),
        height=CAP * label.size,
        align=_ALIGN[label.align],
        rotation=label.angle,
        layer="TEXT",
    )
