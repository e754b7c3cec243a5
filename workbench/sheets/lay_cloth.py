"""The cloth of a lay sheet: how far it is drawn, what lies on it, what is bought."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from workbench.body import Unit
from workbench.cloth import Buy, Cloth, Plan, room_of, to_buy
from workbench.pieces import Cutting
from workbench.sheets.drawing import Array
from workbench.sheets.heading import Heading
from workbench.sheets.lay_lying import Lying, lying_of, start_of
from workbench.sheets.sheet_head import said

_SPARE = 0.12
"""Part of a plan's length to which cloth that runs on beyond it is drawn."""
_LEAST = 100.0
"""Cloth at hand is drawn at least this long, mm."""


@dataclass(frozen=True, eq=False)
class LaidCloth:
    """One cloth with its plan, ready to be drawn. Lengths in mm of cloth; along from the cut end."""

    cloth: Cloth
    plan: Plan
    lying: tuple[Lying, ...]
    buy: Buy
    words: Heading

    @property
    def unit(self) -> Unit:
        """The unit lengths are said in."""
        return self.words.unit

    @property
    def width(self) -> float:
        """Across, as it lies: half of it where it is folded."""
        if self.cloth.remnant is not None:
            return max(x for x, _ in self.cloth.remnant)
        return self.cloth.width_mm / 2 if self.cloth.laid == "folded" else self.cloth.width_mm

    @property
    def there(self) -> float:
        """How long the cloth is: bought, or at hand where that is enough; shrunk as it is when it is laid."""
        if self.cloth.remnant is not None:
            return max(y for _, y in self.cloth.remnant) - start_of(self.cloth)
        length = self.cloth.at_hand_mm if self.buy.fits else self.buy.length_mm
        return length * (1 - self.cloth.shrinkage_percent / 100)

    @property
    def shown(self) -> float:
        """How much of its length is drawn."""
        if self.cloth.remnant is not None or not self.buy.fits:
            return max(self.there, self.plan.length_mm)
        most = max(self.plan.length_mm * (1 + _SPARE), _LEAST)
        return max(min(self.there, most), self.plan.length_mm)

    @property
    def runs_on(self) -> bool:
        """Whether there is more cloth than is drawn."""
        return self.there > self.shown + 1.0

    @property
    def across_from(self) -> str:
        """What is measured from, across."""
        return "fold" if self.cloth.laid == "folded" else "selvedge"

    @property
    def remnant(self) -> Array | None:
        """(n, 2) along and across, where the cloth is no rectangle."""
        if self.cloth.remnant is None:
            return None
        corners: Array = np.array(self.cloth.remnant)[:, ::-1] - np.array([start_of(self.cloth), 0.0])
        return corners

    def said(self, mm: float) -> str:
        """A length in the user's unit."""
        return said(mm, self.words)

    def usable(self) -> float:
        """Between what is not used at either side."""
        return room_of(self.cloth).width


def laid_cloth(cloth: Cloth, plan: Plan, cutting: Cutting, words: Heading) -> LaidCloth:
    """PrintError where the plan is out of date; LayError where the cloth cannot be."""
    lying = lying_of(cloth, plan, cutting)
    return LaidCloth(cloth, plan, lying, to_buy(plan.length_mm, cloth, len(plan.left_over)), words)
