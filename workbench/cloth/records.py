"""What is decided about cloth and money. Frozen values in millimetres; money is decimal, never binary."""

from __future__ import annotations

from dataclasses import field
from decimal import Decimal
from typing import Any, ClassVar, Literal

from workbench.frozen import dataclass
from workbench.pieces import LayerName

Run = Literal["either_way", "one_way"]
"""Whether pieces may be turned end for end: not on a nap or a print with one direction."""
Laid = Literal["single", "folded"]
BuyStep = Literal["eighth_yard", "quarter_yard", "half_yard", "ten_cm"]
Point = tuple[float, float]


@dataclass(frozen=True)
class Cloth:
    """One cloth of the project, and the layers cut from it."""

    name: str
    layers: tuple[LayerName, ...]
    width_mm: float = 1143.0
    """45 in: a width cloth is sold in; common practice, no source."""
    selvedge_mm: float = 12.7
    """Not usable, at either side (common practice, no source)."""
    run: Run = "either_way"
    laid: Laid = "single"
    tilt_degrees: float = 0.0
    """How far off the grain a piece may be turned to fit; 0 keeps it true."""
    gap_mm: float = 3.175
    """Between pieces, for the shears (common practice, no source)."""
    shrinkage_percent: float = 0.0
    """Along the cloth, when it is washed or pressed before cutting; more is bought."""
    repeat_mm: float = 0.0
    """Height of the repeat of a print; pieces are laid at whole repeats."""
    step: BuyStep = "eighth_yard"
    price: Decimal = Decimal(0)
    """For a yard or a metre, as the step says."""
    at_hand_mm: float = 0.0
    """Length she has already."""
    remnant: tuple[Point, ...] | None = None
    """A piece at hand that is no rectangle: its corners, x across from a selvedge, y along."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class Placed:
    """One piece on the cloth: its key, which of its copies, and where.

    The piece's own outline is turned over where ``mirrored``, turned by ``degrees`` about
    its own origin, and moved so that the origin lies at ``x`` across and ``y`` along.
    """

    piece: str
    copy: int
    x: float
    y: float
    degrees: float = 0.0
    mirrored: bool = False
    pinned: bool = False

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class KeptPlan:
    """A lay plan as kept in the project, with the mark of what it was made from."""

    cloth: str
    made_from: str
    """Digest of pieces and cloth; another one means the plan is stale."""
    length_mm: float
    placed: tuple[Placed, ...]
    how: str
    """Which way it was found, in words for the picture."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class Currency:
    """How money is written."""

    symbol: str = "$"
    decimals: int = 2
    """Own choice: most currencies have hundredths."""
    before: bool = True

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class PriceRow:
    """One thing of her price list; ``per`` says what the price is for."""

    key: str
    name: str
    price: Decimal
    per: Literal["each", "yard", "metre", "pair", "pack"] = "each"
    pack_count: int = 1
    """How many are in a pack, of what is counted."""
    pack_mm: float = 0.0
    """Length in a pack, on a spool or a card, of what is measured; 0 where that is not known."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class HoursRow:
    """One step of the work."""

    step: str
    hours: Decimal

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class Quoting:
    """Everything behind a price that is not cloth."""

    currency: Currency = field(default_factory=Currency)
    prices: tuple[PriceRow, ...] = ()
    not_bought: tuple[str, ...] = ()
    """Keys of notions she has already or does without; they cost nothing, and the sheet says so."""
    hours: tuple[HoursRow, ...] = ()
    rate: Decimal = Decimal(0)
    """For an hour."""
    overhead_percent: Decimal = Decimal(0)
    margin_percent: Decimal = Decimal(0)
    tax_percent: Decimal = Decimal(0)
    deposit_percent: Decimal = Decimal(50)
    """Paid beforehand: half; common practice, no source."""
    round_to: Decimal = Decimal("0.01")
    """The price asked is rounded up to whole ones of this."""
    included: str = ""
    fitting_dates: str = ""
    ready_by: str = ""
    valid_until: str = ""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}
