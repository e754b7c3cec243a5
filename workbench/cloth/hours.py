"""How long a garment takes, step by step, from its own counts and lengths: a place to start from.

Minutes are common practice, no source; she changes each step to what she needs herself.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from math import ceil

from workbench.cloth.records import HoursRow
from workbench.pieces import Cutting, Notion

MEASURING_MINUTES = 60
FITTING_MINUTES, FITTINGS = 60, 2
MOCK_UP_PER_PIECE = 15
"""Cutting and sewing the fashion pieces once in cheap cloth, and carrying the changes back."""
CUTTING_MINUTES, CUTTING_PER_PIECE = 30, 3
INTERFACING_PER_PIECE, LAYERS_PER_PIECE = 5, 4
"""Joining a piece of interfacing to its cloth; basting the layers of a panel together."""
SEAM_PER_METRE = 20
"""Pinned, sewn, trimmed and pressed."""
CHANNEL_PER_METRE = 8
BONE_MINUTES = 5
"""Cutting, capping and putting in."""
LOOP_MINUTES, EYELET_MINUTES = 2, 3
CORD_MINUTES, BUSK_MINUTES, ZIP_MINUTES, TAPE_MINUTES, MODESTY_MINUTES = 10, 60, 45, 20, 30
EDGE_PER_METRE = 60
"""Neckline and hem finished, half of it by hand."""
PRESSING_MINUTES = 30
QUARTERS = 4
"""Steps are said in quarters of an hour, rounded up."""

_METRE = 1000.0
Minutes = tuple[str, float]


def hours_usual(cutting: Cutting) -> tuple[HoursRow, ...]:
    """The steps of the work in their order, each in whole quarters of an hour; none without pieces."""
    if not cutting.pieces:
        return ()
    listed = {notion.key: notion for notion in cutting.notions}
    steps = (
        ("Measuring and drafting", MEASURING_MINUTES),
        *_cutting_out(cutting),
        ("Fittings", FITTINGS * FITTING_MINUTES),
        *_layering(cutting),
        *_sewing(listed.get("thread")),
        *_boning(listed),
        *_closing(listed),
        *_extras(listed),
        ("Last pressing and looking over", PRESSING_MINUTES),
    )
    return tuple(HoursRow(step, _hours(minutes)) for step, minutes in steps if minutes > 0)


def _cutting_out(cutting: Cutting) -> Iterator[Minutes]:
    """The first make-up takes the fashion pieces, or where there are none those of the first layer."""
    shell = next((layer for layer in cutting.layers if layer.name == "fashion"), cutting.layers[0])
    yield "First make-up in cheap cloth", MOCK_UP_PER_PIECE * sum(piece.count for piece in shell.pieces)
    pieces = sum(piece.count for piece in cutting.pieces)
    yield "Cutting out and marking", CUTTING_MINUTES + CUTTING_PER_PIECE * pieces


def _layering(cutting: Cutting) -> Iterator[Minutes]:
    counts = {layer.name: sum(piece.count for piece in layer.pieces) for layer in cutting.layers}
    yield "Putting on interfacing", INTERFACING_PER_PIECE * counts.get("interfacing", 0)
    basted = counts.get("fashion", 0) if "strength" in counts else 0
    yield "Basting layers together", LAYERS_PER_PIECE * basted


def _sewing(thread: Notion | None) -> Iterator[Minutes]:
    """Lengths as they were worked out for the thread: seams of every layer, edges once, rows along bones."""
    sewn = thread.lengths if thread else {}
    yield "Sewing and pressing seams", SEAM_PER_METRE * sewn.get("seams", 0.0) / _METRE
    yield "Stitching bone channels", CHANNEL_PER_METRE * sewn.get("rows", 0.0) / _METRE
    yield "Finishing neckline and hem", EDGE_PER_METRE * sewn.get("edges", 0.0) / _METRE


def _boning(listed: dict[str, Notion]) -> Iterator[Minutes]:
    yield "Putting in bones", BONE_MINUTES * _count(listed, "bones")


def _closing(listed: dict[str, Notion]) -> Iterator[Minutes]:
    lacing = LOOP_MINUTES * _count(listed, "loops") + EYELET_MINUTES * _count(listed, "eyelets")
    yield "Making the lacing", lacing + CORD_MINUTES * ("cord" in listed)
    yield "Setting the zip", ZIP_MINUTES * ("zip" in listed)
    yield "Setting the busk", BUSK_MINUTES * ("busk" in listed)


def _extras(listed: dict[str, Notion]) -> Iterator[Minutes]:
    yield "Setting the waist tape", TAPE_MINUTES * ("waist_tape" in listed)
    yield "Making the modesty panel", MODESTY_MINUTES * ("modesty" in listed)


def _count(listed: dict[str, Notion], key: str) -> int:
    return listed[key].count or 0 if key in listed else 0


def _hours(minutes: float) -> Decimal:
    """Whole quarters of an hour, rounded up; a hair over a quarter is that quarter."""
    quarters = ceil(Fraction(minutes) * QUARTERS / 60 - Fraction(1, 1_000_000))
    return Decimal(quarters) / QUARTERS
