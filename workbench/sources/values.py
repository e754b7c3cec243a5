"""How a value of the program is said on the page of sources."""

from __future__ import annotations

from collections.abc import Mapping, Sequence, Set
from dataclasses import fields, is_dataclass
from decimal import Decimal
from fractions import Fraction
from numbers import Real

import numpy as np

LONGEST = 96
"""Characters of a value; a longer one is told by its size (own choice)."""


def value_said(value: object) -> str:
    """Figures as they are reckoned with; how many entries there are where that is too long."""
    said = _said(value)
    if len(said) <= LONGEST:
        return said
    count = len(value) if isinstance(value, Sequence | Mapping | Set | np.ndarray) else 0
    return f"{count} entries" if count else f"{said[: LONGEST - 1]}…"


def _said(value: object) -> str:
    if isinstance(value, bool | str):
        return str(value)
    if isinstance(value, Decimal):
        return format(value, "f")
    if isinstance(value, Fraction) and Fraction(repr(float(value))) != value:
        return str(value)
    if isinstance(value, Real):
        return _figure(float(value))
    if isinstance(value, np.ndarray):
        return ", ".join(_figure(float(figure)) for figure in value.ravel())
    if isinstance(value, Mapping):
        return "; ".join(f"{_said(key)}: {_said(entry)}" for key, entry in value.items())
    return _of_many(value)


def _of_many(value: object) -> str:
    if is_dataclass(value) and not isinstance(value, type):
        said = [_said(getattr(value, field.name)) for field in fields(value)]
        return ", ".join(part for part in said if part)
    if isinstance(value, Sequence | Set):
        parts = sorted(value, key=str) if isinstance(value, Set) else value
        nested = any(isinstance(part, Sequence | Mapping) and not isinstance(part, str) for part in parts)
        return ("; " if nested else ", ").join(map(_said, parts))
    return str(value)


def _figure(value: float) -> str:
    """Whole numbers up to a thousand million in full, others to six digits, with a true minus."""
    whole = value.is_integer() and abs(value) < 1e10
    return (f"{value:.0f}" if whole else f"{value:.6g}").replace("-", "−")


def name_said(name: str) -> str:
    """``LEAST_GAP_MM`` as *least gap, mm*; ``Boning.width_mm`` as *Boning: width, mm*."""
    kind, _, field = name.rpartition(".")
    names = [_one_name(part) for part in field.split(",")]
    return (f"{kind}: " if kind else "") + " · ".join(names)


def _one_name(name: str) -> str:
    parts = name.strip().strip("_").lower().split("_")
    unit = {"mm": "mm", "percent": "%", "cm": "cm", "degrees": "degrees", "seconds": "s"}.get(parts[-1])
    if unit and len(parts) > 1:
        return f"{' '.join(parts[:-1])}, {unit}"
    return " ".join(parts)
