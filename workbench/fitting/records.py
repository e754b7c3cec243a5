"""What is written down at a fitting: the gaps of the opening, and what was pinned."""

from __future__ import annotations

from dataclasses import field
from typing import Any, ClassVar, Literal

from workbench.body import LevelName
from workbench.frozen import dataclass

ChangeKind = Literal["seam", "length", "neckline", "hem"]
CHANGE_KINDS: tuple[ChangeKind, ...] = ("seam", "length", "neckline", "hem")


@dataclass(frozen=True)
class Gaps:
    """The opening as worn, edge to edge, in mm: at its top, at the waist and at the hem.

    None where it was not measured.
    """

    top: float | None = None
    waist: float | None = None
    hem: float | None = None

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class Change:
    """One thing that was pinned. What a kind does not need is None.

    ``seam``: taken in at ``seam`` (1 is next to the centre front) and ``level``, flat, between
    the two panels of one half; the other half is its mirror image. ``length``: longer between
    ``level`` and the next one above it. ``neckline`` and ``hem``: raised at ``u``, which runs
    from 0 at the centre front by one a panel. Less than nothing lets out, shortens or lowers.
    """

    kind: ChangeKind
    amount_mm: float
    level: LevelName | None = None
    seam: int | None = None
    u: float | None = None
    on: bool = True
    note: str = ""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class Fitting:
    """One fitting. The date is ISO, empty where nobody wrote it down."""

    date: str = ""
    cloth: str = ""
    """What it was made up in."""
    panels: tuple[int, int] = (3, 3)
    """Panels of the front and the back half then: what seams and places are counted by (own choice:
    three and three)."""
    gaps: Gaps = field(default_factory=Gaps)
    changes: tuple[Change, ...] = ()
    notes: str = ""
    picture: str = ""
    """The name of one of the project's pictures, empty where there is none."""
    applied: bool = True
    """Whether its changes are carried into the draft."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}
