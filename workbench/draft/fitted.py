"""What was pinned at fittings, as the draft takes it: amounts with the places they belong to.

Each names itself in a sentence by ``said``; ``field`` is where it is kept. The design stays as
she drew it, so that every one of them can be taken away again.
"""

from __future__ import annotations

from typing import Literal

from workbench.body import LevelName
from workbench.frozen import dataclass


@dataclass(frozen=True)
class TakenIn:
    """So much, flat, between the two panels of a seam at one level, on each half; negative lets out."""

    seam: int
    level: LevelName
    amount: float
    said: str = ""
    field: str = ""


@dataclass(frozen=True)
class Lengthened:
    """So much longer between ``level`` and the next one above; negative is shorter."""

    level: LevelName
    amount: float
    said: str = ""
    field: str = ""


@dataclass(frozen=True)
class Raised:
    """A line so much higher at ``u``; negative is lower. The points to either side stay."""

    line: Literal["neckline", "hem"]
    u: float
    amount: float
    said: str = ""
    field: str = ""


@dataclass(frozen=True)
class Corrections:
    """All of them; none is a draft as it was designed, bit for bit."""

    taken_in: tuple[TakenIn, ...] = ()
    lengthened: tuple[Lengthened, ...] = ()
    raised: tuple[tuple[Raised, ...], ...] = ()
    """One group for each fitting, one after the other: points of one fitting do not move each other."""

    def __bool__(self) -> bool:
        """Whether there are any."""
        return bool(self.taken_in or self.lengthened or self.raised)


NO_CORRECTIONS = Corrections()
