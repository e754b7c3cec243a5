"""How much cloth to ask for at the counter, what it costs, and whether she has it already."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import ceil, isfinite

from workbench.body import Unit, say_closely, say_exact
from workbench.cloth.cloth_faults import faults_of
from workbench.cloth.plan import LayError
from workbench.cloth.records import BuyStep, Cloth
from workbench.draft import Finding

_YARD_MM, _METRE_MM, _INCH_MM = Fraction(9144, 10), Fraction(1000), 25.4
"""International yard and pound agreement of 1959, from memory."""
_STEPS: dict[BuyStep, tuple[Fraction, int]] = {
    "eighth_yard": (_YARD_MM, 8),
    "quarter_yard": (_YARD_MM, 4),
    "half_yard": (_YARD_MM, 2),
    "ten_cm": (_METRE_MM, 10),
}
"""What the price is for, and how many steps make it (common practice, no source)."""
_SLACK = 0.05
"""mm that a plan may run past a step: less than shears can do (own choice)."""


@dataclass(frozen=True)
class Buy:
    """What to buy for one plan. Lengths in mm."""

    length_mm: float
    """In whole steps; 0 where what she has is enough."""
    cost: Decimal | None
    """Exact, not rounded to the coin; None where some is to be bought and the cloth has no price yet."""
    needed_mm: float
    """What the plan takes before the cloth has shrunk."""
    fits: bool | None
    """Whether it fits in what she has; None where she has none."""
    short_mm: float
    """How much longer what she has would have to be; 0 where it fits."""
    words: str
    """``1⅞ yd``, or ``none``."""
    note: str
    """``Fits in what you have, 4 in to spare.`` One sentence, empty where she has none."""


def to_buy(length_mm: float, cloth: Cloth, left_over: int = 0) -> Buy:
    """What to buy for a plan of that length with so many pieces it has no room for.

    More is bought where the cloth shrinks, rounded up to the step it is sold by. A piece
    cannot run over a join, so what she has counts only where it takes the whole plan.
    Raises LayError where the length or the cloth cannot be.
    """
    faults = faults_of(cloth)
    if faults:
        raise LayError(faults[0])
    if not (isfinite(length_mm) and length_mm >= 0):
        text = "The length of the plan of {cloth} is not a length."
        raise LayError(Finding("stop", "plan_length", text, words={"cloth": cloth.name}))
    needed = length_mm / (1 - cloth.shrinkage_percent / 100)
    if cloth.remnant is not None:
        return _from_remnant(needed, left_over)
    steps = steps_of(needed, cloth.step)
    fits = needed <= cloth.at_hand_mm + _SLACK if cloth.at_hand_mm > 0 else None
    short = max(needed - cloth.at_hand_mm, 0.0) if fits is False else 0.0
    bought = 0 if fits else steps
    unit, parts = _STEPS[cloth.step]
    return Buy(
        float(bought * unit / parts),
        bought * cloth.price / parts if cloth.price or not bought else None,
        needed,
        fits,
        short,
        say_steps(bought, cloth.step),
        _note(needed, cloth, fits),
    )


def steps_of(needed_mm: float, step: BuyStep) -> int:
    """The least number of whole steps that is enough."""
    unit, parts = _STEPS[step]
    return max(ceil(Fraction(needed_mm - _SLACK) * parts / unit), 0)


def say_steps(steps: int, step: BuyStep) -> str:
    """``1⅞ yd``, ``1.7 m``, ``none``."""
    parts = _STEPS[step][1]
    if not steps:
        return "none"
    if step == "ten_cm":
        return f"{steps / parts:g} m"
    return f"{say_exact(steps / parts * _INCH_MM, 'in')} yd"


def _from_remnant(needed: float, left_over: int) -> Buy:
    fits = left_over == 0
    pieces = "1 piece finds" if left_over == 1 else f"{left_over} pieces find"
    note = "Fits on the remnant." if fits else f"{pieces} no room on the remnant."
    return Buy(0.0, Decimal(0), needed, fits, 0.0, "none", note)


def _note(needed: float, cloth: Cloth, fits: bool | None) -> str:
    if fits is None:
        return ""
    unit: Unit = "cm" if cloth.step == "ten_cm" else "in"
    over = abs(cloth.at_hand_mm - needed)
    if fits:
        return f"Fits in what you have, {say_closely(over, unit)} to spare."
    return f"What you have is {say_closely(over, unit)} too short."
