"""The figures of a cloth that can be set, and how far each may go.

The bounds keep out slips of the key; that the pieces do not fit is said beside the lay plan.
All are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from workbench.body import Unit, say_exact
from workbench.frozen import dataclass


@dataclass(frozen=True)
class ClothRow:
    """One figure of a cloth: its label, its bounds, and whether it is a length in mm, per cent or degrees."""

    key: str
    label: str
    low: float
    high: float
    kind: Literal["length", "percent", "degrees"] = "length"


_YARD = 914.4

CLOTH_TABLE: tuple[ClothRow, ...] = (
    ClothRow("width_mm", "Width of the cloth", 25.4, 10 * _YARD),
    ClothRow("selvedge_mm", "Selvedge at either side", 0.0, 254.0),
    ClothRow("tilt_degrees", "Turn off the grain", 0.0, 45.0, "degrees"),
    ClothRow("gap_mm", "Gap between pieces", 0.0, 50.8),
    ClothRow("shrinkage_percent", "Shrinkage", 0.0, 50.0, "percent"),
    ClothRow("repeat_mm", "Repeat of the print", 0.0, 4 * _YARD),
    ClothRow("at_hand_mm", "Length at hand", 0.0, 100 * _YARD),
)

CLOTH_ROWS: Mapping[str, ClothRow] = {row.key: row for row in CLOTH_TABLE}
"""The table by key."""


def cloth_span_words(row: ClothRow, unit: Unit | None = None) -> str:
    """``between 1 and 360 in``: the bounds of a figure, lengths in mm where no unit is given."""
    if row.kind != "length":
        return f"between {row.low:g} and {row.high:g} {'%' if row.kind == 'percent' else 'degrees'}"
    if unit is None:
        return f"between {row.low:g} and {row.high:g} mm"
    return f"between {say_exact(row.low, unit)} and {say_exact(row.high, unit)} {unit}"
