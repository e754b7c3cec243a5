"""Figures that are possible but unlikely: she is asked to check them, and goes on.

Real women have a waist above the hip, or a bust below the waist (1 in 100 of the Spanish
apparel survey sample), so nothing here refuses.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from workbench.body.table import BY_KEY
from workbench.body.units import Fraction, Unit, say_with_unit


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
        value = say_with_unit(self.value_mm, unit, fraction)
        bound = "" if self.other_mm is None else say_with_unit(self.other_mm, unit, fraction)
        other = BY_KEY[self.other].label.lower() if self.other else ""
        sentence = _SENTENCES[self.code].format(
            label=_lower(BY_KEY[self.key].label), value=value, other=other, bound=bound
        )
        return f"Please check: {sentence}"


def _lower(label: str) -> str:
    return label.lower()


_SENTENCES = {
    "low": "{label} of {value} is less than is usual, {bound} or more.",
    "high": "{label} of {value} is more than is usual, {bound} or less.",
    "longer": "{label} of {value} is more than {other}, {bound}.",
    "shorter": "{label} of {value} is less than {other}, {bound}.",
    "no_breath": "{label} of {value} is not more than {other}, {bound}.",
    "wide_breath": "{label} of {value} is a great deal more than {other}, {bound}.",
    "upper_chest_large": "{label} of {value} is a great deal more than {other}, {bound}.",
    "wide_span": "{label} of {value} is more than a third of {other}, {bound}.",
}


class _Rule(NamedTuple):
    """Doubtful when ``key`` is more (or, for ``shorter``, less) than ``factor`` x ``other`` + ``plus`` mm."""

    key: str
    other: str
    code: str = "longer"
    factor: float = 1.0
    plus: float = 0.0


_WIDEST_BREATH_MM = 120.0
"""Widest mean of the four studies 6.4 cm, with room for a singer (derived, and practice)."""

_RULES: tuple[_Rule, ...] = (
    _Rule("waist_girth", "top_hip_girth"),
    _Rule("waist_girth", "hip_girth"),
    _Rule("waist_girth", "bust_girth"),
    _Rule("top_hip_girth", "hip_girth"),
    _Rule("underbust_girth", "bust_girth"),
    _Rule("upper_chest_girth", "bust_girth", "upper_chest_large", factor=1.05),
    _Rule("seated_waist_girth", "waist_girth", "shorter"),
    _Rule("underbust_girth", "underbust_exhale", "shorter"),
    _Rule("underbust_girth", "underbust_inhale"),
    _Rule("underbust_inhale", "underbust_exhale", "no_breath"),
    _Rule("underbust_inhale", "underbust_exhale", "wide_breath", plus=_WIDEST_BREATH_MM),
    _Rule("bust_span", "bust_girth", "wide_span", factor=1 / 3),
    _Rule("shoulder_to_bust", "shoulder_to_underbust"),
    _Rule("shoulder_to_underbust", "shoulder_to_waist"),
    _Rule("underarm_to_waist", "nape_to_waist"),
    _Rule("underarm_to_waist", "shoulder_to_waist"),
)


def checks_of(taken: Mapping[str, float]) -> tuple[Check, ...]:
    """What to check among the measurements taken (mm), in the order of the table; estimates are not asked about.

    Works on measurements that cannot be drafted too, so that the form can ask before it is refused.
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
