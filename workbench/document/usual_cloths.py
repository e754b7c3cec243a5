"""The cloths a project begins with: one for each stuff a boned bodice is made of."""

from __future__ import annotations

from typing import NamedTuple

from workbench.body import Unit
from workbench.cloth import BuyStep, Cloth
from workbench.pieces import LayerName


class _Usual(NamedTuple):
    name: str
    layers: tuple[LayerName, ...]
    inches: float
    centimetres: float


_USUAL = (
    _Usual("Fashion cloth", ("fashion", "top_facing", "hem_facing", "modesty", "strip"), 45, 140),
    _Usual("Strong cloth", ("strength",), 54, 150),
    _Usual("Lining cloth", ("lining",), 45, 140),
    _Usual("Interfacing", ("interfacing",), 36, 90),
)
"""Widths are common practice, no source. The waist tape is bought as tape, so no cloth has it."""


def usual_cloths(unit: Unit = "in") -> tuple[Cloth, ...]:
    """A cloth for each stuff, in the widths and steps it is sold in where that unit is used; no prices."""
    return tuple(
        Cloth(row.name, row.layers, width_mm=_width(row, unit), step=STEP_OF[unit]) for row in _USUAL
    )


def _width(row: _Usual, unit: Unit) -> float:
    """Width from selvedge to selvedge, mm."""
    return 25.4 * row.inches if unit == "in" else 10.0 * row.centimetres


STEP_OF: dict[Unit, BuyStep] = {"in": "eighth_yard", "cm": "ten_cm"}
