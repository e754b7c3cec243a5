"""The limits that the dressmaker sets for one client, and where their defaults come from.

They are hers to set. A figure is compared with them and nothing more is claimed.
"""

from __future__ import annotations

from math import isfinite
from typing import Any, ClassVar, Literal

from workbench.body.units import Unit, say_exact
from workbench.frozen import dataclass

UnitKind = Literal["percent", "share", "length"]
_PRACTICE = "common practice, no source"


@dataclass(frozen=True)
class Limits:
    """What was set for this client; lengths in millimetres. Not checked here: see :func:`limit_problem`.

    Each default has its source in :data:`LIMIT_TABLE`.
    """

    waist_percent: float = 10.0
    breathing_share: float = 0.5
    breathing_assumed_mm: float = 40.0
    top_hip_reduction_mm: float = 0.0
    lap_clearance_mm: float = 38.1
    thigh_clearance_mm: float = 25.4
    underarm_clearance_mm: float = 25.4
    near_share: float = 0.8

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class LimitRow:
    """One limit for a form: its name, what it means, what may be set, where the default comes from."""

    key: str
    label: str
    how: str
    unit_kind: UnitKind
    """``percent`` is in hundredths, ``share`` from 0 to 1, ``length`` in millimetres."""
    default: float
    low: float
    high: float
    source: str


_USUAL = Limits()

LIMIT_TABLE: tuple[LimitRow, ...] = (
    LimitRow(
        "waist_percent",
        "Waist reduction",
        "How far the waist may be drawn in, as a part of the waist girth.",
        "percent",
        _USUAL.waist_percent,
        0.0,
        50.0,
        "10 %: Gau 1998, dissertation, Iowa State University, abstract, advises no more of the natural "
        "waist; the only published figure tied to breathing",
    ),
    LimitRow(
        "breathing_share",
        "Breath left free",
        "The part of her breath, from full exhale to full inhale, that the ribs keep.",
        "share",
        _USUAL.breathing_share,
        0.0,
        1.0,
        f"half of her breath: {_PRACTICE}",
    ),
    LimitRow(
        "breathing_assumed_mm",
        "Breath where not measured",
        "From full exhale to full inhale round the lower ribs, where her own two girths were not taken.",
        "length",
        _USUAL.breathing_assumed_mm,
        0.0,
        150.0,
        "4 cm: derived from four studies, abstracts (women 3.7 ± 0.6 cm, n = 490, and 1.7 ± 1.1 cm, n = 228; "
        "mixed 3.99 ± 2.15 cm, n = 251, and 6.4 cm, n = 53; among them Derasse 2021 and Debouche 2016)",
    ),
    LimitRow(
        "top_hip_reduction_mm",
        "Top hip reduction",
        "How much smaller than the body the garment may be at the top hip; less than nothing asks for ease.",
        "length",
        _USUAL.top_hip_reduction_mm,
        -200.0,
        200.0,
        f"no reduction at the hip bones: {_PRACTICE}",
    ),
    LimitRow(
        "lap_clearance_mm",
        "Clear of the lap",
        "How far the front of the hem stays above the lap when she sits.",
        "length",
        _USUAL.lap_clearance_mm,
        0.0,
        200.0,
        f"1½ to 2 in: {_PRACTICE}",
    ),
    LimitRow(
        "thigh_clearance_mm",
        "Clear of the thigh",
        "How far the hem at the side stays above the thigh when she sits.",
        "length",
        _USUAL.thigh_clearance_mm,
        0.0,
        200.0,
        f"1 in: {_PRACTICE}",
    ),
    LimitRow(
        "underarm_clearance_mm",
        "Clear of the underarm",
        "How far the top of the side stays below the armpit.",
        "length",
        _USUAL.underarm_clearance_mm,
        0.0,
        200.0,
        f"about 1 in: {_PRACTICE}",
    ),
    LimitRow(
        "near_share",
        "Near a limit from",
        "The part of a limit from which it counts as near.",
        "share",
        _USUAL.near_share,
        0.0,
        1.0,
        f"four fifths: {_PRACTICE}",
    ),
)


def limit_problem(limits: Limits, unit: Unit = "in") -> str | None:
    """One sentence naming the first limit that is no number or out of range; None when all can be used."""
    for row in LIMIT_TABLE:
        value = getattr(limits, row.key)
        if not isfinite(value):
            return f"{row.label} is not a number."
        if not row.low <= value <= row.high:
            figure, low, high = (_said(row, amount, unit) for amount in (value, row.low, row.high))
            return f"{row.label} must be between {low} and {high}: {figure} is not."
    return None


def _said(row: LimitRow, amount: float, unit: Unit) -> str:
    if row.unit_kind == "length":
        return f"{say_exact(amount, unit)} {unit}"
    return f"{amount if row.unit_kind == 'percent' else 100 * amount:g} %".replace("-", "−")
