"""A mark of what a plan is made from, and whether a kept plan still holds."""

from __future__ import annotations

from collections.abc import Sequence
from hashlib import sha256

import numpy as np

from workbench.cloth.plan import Copy
from workbench.cloth.records import Cloth, KeptPlan

_PER_MM = 1000.0
"""Shapes are compared to the micrometre: a plan is not stale for a rounding of the last digit (own
choice)."""
_OF_CLOTH = ("width_mm", "selvedge_mm", "run", "laid", "tilt_degrees", "gap_mm", "repeat_mm", "remnant")
"""What a lay plan depends on; name, price, shrinkage and the length at hand it does not."""


def digest(copies: Sequence[Copy], cloth: Cloth) -> str:
    """32 hexadecimal digits, the same for the same shapes on the same kind of cloth, on any machine."""
    mark = sha256(repr([getattr(cloth, field) for field in _OF_CLOTH]).encode())
    marks: dict[int, bytes] = {}
    for copy in copies:
        own = (copy.piece, copy.number, copy.mirrored, copy.on_fold, copy.either_side)
        if id(copy.outline) not in marks:
            marks[id(copy.outline)] = np.rint(copy.outline * _PER_MM).astype("<i8").tobytes()
        grain = tuple(round(part * _PER_MM) for part in copy.grain)
        mark.update(repr((own, grain)).encode() + marks[id(copy.outline)])
    return mark.hexdigest()[:32]


def lie_alike(one: Cloth, other: Cloth) -> bool:
    """Whether the same layers lie on both in the same way: name, price and length at hand do not matter."""
    return all(getattr(one, field) == getattr(other, field) for field in ("layers", *_OF_CLOTH))


def is_stale(kept: KeptPlan, copies: Sequence[Copy], cloth: Cloth) -> bool:
    """Whether the pieces or the cloth have changed since the plan was made."""
    return kept.made_from != digest(copies, cloth)
