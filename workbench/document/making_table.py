"""The figures of the making that can be set, and how far each may go.

The bounds keep out slips of the key. Whether a figure suits one bodice is said by the
findings of its cutting. All are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from workbench.body import Unit, say_exact
from workbench.frozen import dataclass

MakingGroup = Literal["", "allowances", "marks", "opening", "boning", "layer", "own_allowance"]


@dataclass(frozen=True)
class MakingRow:
    """One figure of the making: which record holds it, its label, and its bounds.

    ``group`` is empty for the making itself. Lengths are millimetres; a figure that is no
    length is a plain factor.
    """

    group: MakingGroup
    key: str
    label: str
    low: float
    high: float
    is_length: bool = True


_WIDEST = 101.6
"""Four inches: more allowance than anything is let out by."""

MAKING_TABLE: tuple[MakingRow, ...] = (
    MakingRow("allowances", "seam", "Allowance of the joining seams", 0.0, _WIDEST),
    MakingRow("allowances", "side", "Allowance of the side seam", 0.0, _WIDEST),
    MakingRow("allowances", "centre_back", "Allowance of the centre back", 0.0, _WIDEST),
    MakingRow("allowances", "centre_front", "Allowance of the centre front", 0.0, _WIDEST),
    MakingRow("allowances", "neckline", "Allowance of the neckline", 0.0, _WIDEST),
    MakingRow("allowances", "hem", "Allowance of the hem", 0.0, _WIDEST),
    MakingRow("own_allowance", "allowance_mm", "Allowance of one edge", 0.0, _WIDEST),
    MakingRow("layer", "turn_mm", "Hair for the turn of cloth", -6.35, 6.35),
    MakingRow("marks", "length_mm", "Length of a notch", 1.5875, 25.4),
    MakingRow("opening", "pitch_mm", "Distance between eyelets or loops", 6.35, 508.0),
    MakingRow("opening", "waist_pitch_mm", "Distance between eyelets or loops at the waist", 6.35, 508.0),
    MakingRow("opening", "end_mm", "Distance of the first and last from the edge", 0.0, 101.6),
    MakingRow("opening", "set_in_mm", "Distance from the centre-back edge", 0.0, 50.8),
    MakingRow("opening", "step_in_gap_mm", "Widest opening to step in by", 0.0, 762.0),
    MakingRow("opening", "tying_mm", "Cord left for tying", 0.0, 5080.0),
    MakingRow("boning", "width_mm", "Width of the bones", 1.5875, 25.4),
    MakingRow("boning", "channel_ease_mm", "Ease of the channels", 0.0, 12.7),
    MakingRow("boning", "clearance_mm", "Clearance at each end of a bone", 0.0, 254.0),
    MakingRow("boning", "steel_step_mm", "Step in which steel is sold", 1.0, 101.6),
    MakingRow("boning", "flat_radius_mm", "Tightest curve for flat steel", 0.0, 5080.0),
    MakingRow("", "busk_mm", "Length of the busk", 101.6, 508.0),
    MakingRow("", "facing_depth_mm", "Depth of the facings", 12.7, 254.0),
    MakingRow("", "tape_width_mm", "Width of the waist tape", 3.175, 76.2),
    MakingRow("", "binding_join_mm", "Binding added for its join", 0.0, 254.0),
    MakingRow("", "corner_limit", "Longest corner", 1.0, 5.0, is_length=False),
)

MAKING_ROWS: Mapping[tuple[str, str], MakingRow] = {(row.group, row.key): row for row in MAKING_TABLE}
"""The table by group and key."""


def span_words(row: MakingRow, unit: Unit | None = None) -> str:
    """``between 0 and 4 in``: the bounds of a figure, in mm where no unit is given."""
    if not row.is_length:
        return f"between {row.low:g} and {row.high:g} times the allowance"
    if unit is None:
        return f"between {row.low:g} and {row.high:g} mm".replace("-", "−")
    return f"between {say_exact(row.low, unit)} and {say_exact(row.high, unit)} {unit}"
