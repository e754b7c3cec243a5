"""DXF files of both versions, read back by two readers: ezdxf, and one of our own that knows only pairs."""

from __future__ import annotations

from io import StringIO

import ezdxf
import numpy as np
import pytest
from ezdxf.audit import Auditor
from ezdxf.entities.lwpolyline import LWPolyline
from ezdxf.entities.polyline import Polyline

from tests.exchange.alike import Array, off
from tests.exchange.conftest import exported
from tests.exchange.dxf_reader import read
from tests.sheets.conftest import CutJob
from workbench.exchange import DXF_VERSIONS, DxfVersion
from workbench.exchange.dxf_words import plain
from workbench.pieces import LAYERS

HUNDREDTH = 0.01
MILLIMETRES = 4
"""$INSUNITS (DXF reference)."""
OWN_LAYERS = {"CUT", "STITCH", "NOTCH", "GRAIN", "TEXT"}

versions = pytest.mark.parametrize("version", DXF_VERSIONS)


def audited(data: bytes) -> tuple[ezdxf.document.Drawing, Auditor]:
    document = ezdxf.read(StringIO(data.decode("cp1252")))  # type: ignore[attr-defined]
    return document, document.audit()


def by_ezdxf(data: bytes, layer: str) -> list[Array]:
    """The polylines of a layer."""
    document, _ = audited(data)
    found = []
    for line in document.modelspace().query(f'LWPOLYLINE POLYLINE[layer=="{layer}"]'):
        if isinstance(line, LWPolyline):
            found.append(np.array(line.get_points("xy")))
        elif isinstance(line, Polyline):
            found.append(np.array([(x, y) for x, y, _ in line.points()]))
    return found


@versions
def test_its_audit_is_clean_and_it_is_in_millimetres(cut: CutJob, version: DxfVersion) -> None:
    document, audit = audited(exported(cut, "dxf", layers=LAYERS, dxf=version))
    assert audit.errors == []
    assert audit.fixes == []
    assert document.acad_release == version
    assert document.header["$INSUNITS"] == MILLIMETRES


@versions
@pytest.mark.parametrize("scale", [1.0, 0.5])
def test_both_readers_find_every_line_within_a_hundredth(
    cut: CutJob, version: DxfVersion, scale: float
) -> None:
    data = exported(cut, "dxf", layers=LAYERS, dxf=version, scale=scale)
    plainly = read(data)
    for layer, name in (("CUT", "cut"), ("STITCH", "stitch")):
        theirs, ours = by_ezdxf(data, layer), [line for closed, line in plainly.lines[layer] if closed]
        assert len(theirs) == len(ours) == len(cut.cutting.pieces)
        for piece in cut.cutting.pieces:
            drafted = getattr(piece, name) * scale
            assert off(drafted, theirs) <= HUNDREDTH
            assert off(drafted, ours) <= HUNDREDTH


@versions
def test_every_kind_of_line_has_a_layer_of_its_own(cut: CutJob, version: DxfVersion) -> None:
    found = read(exported(cut, "dxf", layers=LAYERS, dxf=version))
    assert found.layers.keys() >= OWN_LAYERS
    assert found.lines.keys() <= found.layers.keys()
    assert {layer for layer, _ in found.texts} == {"TEXT"}
    assert len(found.lines["NOTCH"]) == sum(n.count for p in cut.cutting.pieces for n in p.notches)
    assert int(found.header["$INSUNITS"]) == MILLIMETRES
    assert found.header["$ACADVER"] == {"R12": "AC1009", "R2000": "AC1015"}[version]


@versions
def test_every_piece_is_named_in_plain_signs(cut: CutJob, version: DxfVersion) -> None:
    found = read(exported(cut, "dxf", layers=LAYERS, dxf=version))
    words = " ".join(text for _, text in found.texts)
    assert words.isascii()
    for piece in cut.cutting.pieces:
        assert piece.name in words


@versions
def test_the_same_pieces_give_the_same_bytes(cut: CutJob, version: DxfVersion) -> None:
    assert exported(cut, "dxf", dxf=version) == exported(cut, "dxf", dxf=version)


def test_in_the_newer_version_every_piece_is_a_group_that_is_picked_as_one(cut: CutJob) -> None:
    document, _ = audited(exported(cut, "dxf"))
    named = {name: len(list(group)) for name, group in document.groups}
    assert len(named) == len(cut.cutting.layers[0].pieces)
    # all but the note below the pieces
    assert sum(named.values()) == len(document.modelspace()) - 1


@pytest.mark.parametrize(
    ("said", "typed"),
    [("bone 3, 9½ in", "bone 3, 9 1/2 in"), ("1 ³⁄₁₆ in", "1 3/16 in"), ("¾", "3/4"), ("−2⅜", "-2 3/8")],
)
def test_fractions_are_typed_out(said: str, typed: str) -> None:
    assert plain(said) == typed


@versions
def test_a_note_says_how_large_it_is_and_that_figures_are_invented(cut: CutJob, version: DxfVersion) -> None:
    whole, half = (read(exported(cut, "dxf", dxf=version, scale=scale)).texts[-1] for scale in (1.0, 0.5))
    assert whole == ("TEXT", "True to size, lengths in millimetres. Figures invented for demonstration.")
    assert half[1].startswith("Half scale, lengths in millimetres. Not for cutting cloth.")
