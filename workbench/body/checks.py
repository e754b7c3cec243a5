"""Figures that are possible but unlikely: she is asked to check them, and goes on.

Real women have a waist above the hip, or a bust below the waist (1 in 100 of the Spanish
apparel survey sample), so nothing here refuses.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from workbench.body.table import BY_KEY
from workbench.body.units import Fraction, Unit, say_exact, say_with_unit
from workbench.frozen import dataclass


@dataclass(frozen=True)
class Check:
    """One figure to look at again, with the number that makes it doubtful."""

    key: str
    other: str | None
    """The measurement it contradicts; None where it is merely unusual."""
    code: str
    value_mm: float
    other_mm: float | None
    """The other measurement, or the bound that was passed."""

    def text(self, unit: Unit, fraction: Fraction = 8) -> str:
        """``Please check:`` and one sentence with both numbers in the user's unit."""
        value, bound = _told_apart(self.value_mm, self.other_mm, unit, fraction)
        other = BY_KEY[self.other].label.lower() if self.other else ""
        label = BY_KEY[self.key].label.lower()
        sentence = _SENTENCES[self.code].format(label=label, value=value, other=other, bound=bound)
        return f"Please check: {sentence}"


def _told_apart(value: float, other: float | None, unit: Unit, fraction: Fraction) -> tuple[str, str]:
    """Both numbers with their unit, said more finely where the fraction shown would make them look alike."""
    if other is None:
        return say_with_unit(value, unit, fraction), ""
    said = say_with_unit(value, unit, fraction), say_with_unit(other, unit, fraction)
    if said[0] == said[1] and value != other:
        return f"{say_exact(value, unit)} {unit}", f"{say_exact(other, unit)} {unit}"
    return said


_SENTENCES = {
    "low": "{label} ({value}) is less than is usual ({bound} or more).",
    "high": "{label} ({value}) is more than is usual ({bound} or less).",
    "longer": "{label} ({value}) is more than {other} ({bound}).",
    "shorter": "{label} ({value}) is less than {other} ({bound}).",
    "no_breath": "{label} ({value}) is not more than {other} ({bound}).",
    "much_longer": "{label} ({value}) is a great deal more than {other} ({bound}).",
    "wide_span": "{label} ({value}) is more than a third of {other} ({bound}).",
}


class _Rule(NamedTuple):
    """Doubtful when ``key`` is more (or, for ``shorter``, less) than ``factor`` x ``other`` + ``plus`` mm."""

    key: str
    other: str
    code: str = "longer"
    factor: float = 1.0
    plus: float = 0.0


_WIDEST_BREATH_MM = 120.0
"""Widest mean of four studies, 6.4 cm, with room for a singer (derived, and common practice, no source)."""

_RULES: tuple[_Rule, ...] = (
    _Rule("waist_girth", "top_hip_girth"),
    _Rule("waist_girth", "hip_girth"),
    _Rule("waist_girth", "bust_girth"),
    _Rule("top_hip_girth", "hip_girth"),
    _Rule("underbust_girth", "bust_girth"),
    _Rule("upper_chest_girth", "bust_girth", "much_longer", factor=1.05),
    _Rule("seated_waist_girth", "waist_girth", "shorter"),
    _Rule("underbust_girth", "underbust_exhale", "shorter"),
    _Rule("underbust_girth", "underbust_inhale"),
    _Rule("underbust_inhale", "underbust_exhale", "no_breath"),
    _Rule("underbust_inhale", "underbust_exhale", "much_longer", plus=_WIDEST_BREATH_MM),
    _Rule("bust_span", "bust_girth", "wide_span", factor=1 / 3),
    _Rule("shoulder_to_bust", "shoulder_to_underbust"),
    _Rule("shoulder_to_underbust", "shoulder_to_waist"),
    _Rule("underarm_to_waist", "nape_to_waist"),
    _Rule("underarm_to_waist", "shoulder_to_waist"),
)
"""Own choice: what is asked about."""


def checks_of(taken: Mapping[str, float]) -> tuple[Check, ...]:
    """What to check among the measurements taken (mm), in the order of the table.

    Estimates are not asked about. It works on measurements that cannot be drafted too, so a form can
    always ask.
    """
    found = [*_range_checks(taken), *(check for rule in _RULES for check in _applied(rule, taken))]
    places = {key: place for place, key in enumerate(BY_KEY)}
    return tuple(sorted(found, key=lambda check: places[check.key]))


def _range_checks(taken: Mapping[str, float]) -> Iterator[Check]:
    for key, mm in taken.items():
        row = BY_KEY[key]
        if mm < row.low_mm:
            yield Check(key, None, "low", mm, row.low_mm)
        elif mm > row.high_mm:
            yield Check(key, None, "high", mm, row.high_mm)


def _applied(rule: _Rule, taken: Mapping[str, float]) -> Iterator[Check]:
    if rule.key not in taken or rule.other not in taken:
        return
    value, other = taken[rule.key], taken[rule.other]
    if _doubtful(rule, value, other):
        yield Check(rule.key, rule.other, rule.code, value, other)


def _doubtful(rule: _Rule, value: float, other: float) -> bool:
    if rule.code == "shorter":
        return value < other
    if rule.code == "no_breath":
        return value <= other
    return value > rule.factor * other + rule.plus
