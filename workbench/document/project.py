"""The project record: everything that is edited, undone and saved, as one frozen value.

Figures are own choice, how much a project may hold, unless said.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field, replace
from typing import Any, ClassVar, Literal

from workbench.beads import BeadPlan
from workbench.body import Fraction, Length, Limits, Unit
from workbench.cloth import Cloth, KeptPlan, Quoting
from workbench.document.taken import Taken
from workbench.document.usual_cloths import usual_cloths
from workbench.document.wish import Behind, WishPicture
from workbench.draft import Design, Style, usual_design
from workbench.fitting import Fitting
from workbench.frozen import dataclass
from workbench.pieces import LayerName, Making
from workbench.worn import Torso

LARGEST_NUMBER = 10_000.0
"""No figure of a project is larger, whichever way it points: twice the largest sheet in mm."""
LARGER_NUMBERS: Mapping[str, float] = {"cloths": 300_000.0, "plans": 300_000.0, "quoting": 100_000_000.0}
"""The same for the entries that measure cloth off the roll, in mm, or thread off the spool."""
MOST_POINTS = 40
"""Shape points of one line; a dozen draw anything a bodice can be cut to."""
TEXT_LENGTHS: Mapping[str, int] = {
    "name": 80,
    "wish": 2000,
    "date": 10,
    "measured_by": 80,
    "worn": 200,
    "next_fitting": 10,
    "notes": 10_000,
}
"""Characters that each text about the client may have."""

PaperName = Literal["A4", "Letter", "A3", "A0", "roll"]


@dataclass(frozen=True)
class Client:
    """Who it is for and what she wants to do in it. Dates are ISO, empty where not known."""

    name: str = ""
    wish: str = ""
    date: str = ""
    measured_by: str = ""
    worn: str = ""
    """What she wore under the tape."""
    next_fitting: str = ""
    notes: str = ""
    invented: bool = False
    """Whether name and figures are made up, as in a demo; every sheet says so."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class Paper:
    """What the panels are printed on, in millimetres."""

    name: PaperName = "A4"
    margin_mm: float = 10.0
    """Office printers need 3 to 6.4 mm (printer description files, read)."""
    overlap_mm: float = 10.0
    """Own choice: enough to stick sheets together on."""
    roll_width_mm: float = 914.4
    """36 in; common practice, no source."""
    with_allowance: bool = True
    """With the cut lines of the pieces; otherwise the panels with their stitch lines alone."""
    layers: tuple[LayerName, ...] = ("fashion",)
    """Whose pieces are printed at true size."""
    cutting_pages: bool = True
    """With a sheet for each layer, bones, notions and the walk check in front."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class Project:
    """One client's bodice."""

    client: Client = field(default_factory=Client)
    unit: Unit = "in"
    fraction: Fraction = 8
    """Eighths of an inch: what a hand draft is good to; common practice, no source."""
    measurements: Mapping[str, Length] = field(default_factory=dict)
    """As she typed them, by key; a measurement not taken has no entry. Never changed in place."""
    design: Design = field(default_factory=usual_design)
    making: Making = field(default_factory=Making)
    limits: Limits = field(default_factory=Limits)
    paper: Paper = field(default_factory=Paper)
    cloths: tuple[Cloth, ...] = field(default_factory=usual_cloths)
    plans: tuple[KeptPlan, ...] = ()
    """At most one for each cloth, as it was found or laid by hand."""
    quoting: Quoting = field(default_factory=Quoting)
    style_name: str = ""
    """Of the style she began from, empty where there was none."""
    earlier: tuple[Taken, ...] = ()
    """Measurements of other days, the newest first."""
    fittings: tuple[Fitting, ...] = ()
    """In the order in which they were held."""
    beads: BeadPlan = field(default_factory=BeadPlan)
    pictures: tuple[WishPicture, ...] = ()
    behind: Behind | None = None
    """The picture that lies behind the panels, if one does."""
    done: tuple[str, ...] = ()
    """Steps ticked off, by key, each once."""
    torso: Torso = field(default_factory=Torso)
    """What no tape says of her, for the view of the bodice as worn; no panel hangs on it."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}

    def with_measurement(self, key: str, length: Length | None) -> Project:
        """The project with one measurement taken, or with None not taken."""
        others = {name: value for name, value in self.measurements.items() if name != key}
        return replace(self, measurements=others if length is None else {**others, key: length})

    def cloth(self, name: str) -> Cloth:
        """The cloth of that name; ValueError where there is none."""
        for cloth in self.cloths:
            if cloth.name == name:
                return cloth
        raise ValueError(f"There is no cloth called “{name}”.")

    def kept_plan(self, cloth: str) -> KeptPlan | None:
        """The lay plan kept for a cloth, current or stale."""
        return next((plan for plan in self.plans if plan.cloth == cloth), None)

    def taken(self) -> dict[str, float]:
        """The measurements in millimetres, by key."""
        return {key: length.mm for key, length in self.measurements.items()}


def new_project(style: Style = "under_bust", unit: Unit = "in") -> Project:
    """An empty project: a design to start from, and no measurements yet."""
    return Project(unit=unit, design=usual_design(style), cloths=usual_cloths(unit))
