"""What cannot be true of a cloth: one sentence for each field at fault.

Bounds keep out slips of the key. Figures are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite
from typing import NamedTuple

import numpy as np

from workbench.cloth.records import Cloth
from workbench.draft import Finding, Place


class Bounds(NamedTuple):
    """The least and the most a field can be, in mm or in what the field counts."""

    field: str
    label: str
    least: float
    most: float


_LENGTHS = (
    Bounds("width_mm", "width", 1.0, 10_000.0),
    Bounds("selvedge_mm", "selvedge", 0.0, 1_000.0),
    Bounds("gap_mm", "gap between pieces", 0.0, 100.0),
    Bounds("repeat_mm", "repeat of the print", 0.0, 5_000.0),
    Bounds("at_hand_mm", "length at hand", 0.0, 1_000_000.0),
)
_FIGURES = (
    Bounds("tilt_degrees", "tilt off the grain", 0.0, 45.0),
    Bounds("shrinkage_percent", "shrinkage", 0.0, 50.0),
)


def faults_of(cloth: Cloth) -> tuple[Finding, ...]:
    """One finding for each field of a cloth that cannot be as it is; its place names the field."""
    return tuple(_faults(cloth))


def _faults(cloth: Cloth) -> Iterator[Finding]:
    for row in _LENGTHS:
        value = getattr(cloth, row.field)
        if not (isfinite(value) and row.least <= value <= row.most):
            yield _length_fault(cloth, row, value)
    for row in _FIGURES:
        value = getattr(cloth, row.field)
        if not (isfinite(value) and row.least <= value <= row.most):
            yield _figure_fault(cloth, row)
    if not cloth.price.is_finite() or cloth.price < 0:
        yield _fault(cloth, "price", "The price of {cloth} must be nothing or more.")
    if cloth.width_mm > 0 and _usable(cloth) <= 0:
        yield _fault(cloth, "selvedge_mm", "The selvedges of {cloth} leave none of its width to use.")
    if cloth.remnant is not None:
        yield from _remnant_faults(cloth)


def _usable(cloth: Cloth) -> float:
    """Width between the selvedges, or between fold and selvedge, mm."""
    if cloth.laid == "folded":
        return 0.5 * cloth.width_mm - cloth.selvedge_mm
    return cloth.width_mm - 2 * cloth.selvedge_mm


def _remnant_faults(cloth: Cloth) -> Iterator[Finding]:
    import shapely  # hardly any cloth is a remnant, and a window that opens shall not wait for it

    corners = np.array(cloth.remnant, dtype=float).reshape(-1, 2)
    if cloth.laid == "folded":
        yield _fault(cloth, "remnant", "The remnant of {cloth} can only be laid single, not folded.")
    if len(corners) < 3 or not np.isfinite(corners).all():
        yield _fault(cloth, "remnant", "The remnant of {cloth} needs three corners or more.")
        return
    if not shapely.is_simple(shapely.linearrings(corners)):
        yield _fault(cloth, "remnant", "The outline of the remnant of {cloth} crosses itself.")
    elif not shapely.polygons(corners).area > 0:
        yield _fault(cloth, "remnant", "The remnant of {cloth} has no area.")


def _length_fault(cloth: Cloth, row: Bounds, value: float) -> Finding:
    if not isfinite(value):
        return _fault(cloth, row.field, f"The {row.label} of {{cloth}} is not a number.")
    text = f"The {row.label} of {{cloth}} is {{is_}}; it must be from {{least}} to {{most}}."
    if row.least > 0 and value <= 0:
        text = f"The {row.label} of {{cloth}} must be more than nothing."
    lengths = {"is_": value, "least": row.least, "most": row.most}
    return _fault(cloth, row.field, text, lengths)


def _figure_fault(cloth: Cloth, row: Bounds) -> Finding:
    unit = "degrees" if row.field == "tilt_degrees" else "%"
    return _fault(cloth, row.field, f"The {row.label} of {{cloth}} must be from 0 to {row.most:g} {unit}.")


def _fault(cloth: Cloth, field: str, text: str, lengths: dict[str, float] | None = None) -> Finding:
    words = {"cloth": cloth.name or "the cloth"}
    return Finding("stop", f"cloth_{field}", text, lengths or {}, words, Place(field=field))
