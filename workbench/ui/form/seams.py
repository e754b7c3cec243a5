"""The seams: how the intake is shared over them, and what is pinned."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton, QWidget

from workbench.body import LEVEL_LABEL, LevelName, say_exact, say_length
from workbench.document import Picture, Project, quarter_of, set_left_part, set_pin, set_weight
from workbench.draft import Design, LedgerLine, Place, Quarter, QuarterName, Seam, Share, seam_name
from workbench.frozen import dataclass
from workbench.ui.desk import Desk
from workbench.ui.form.field import FigureRow
from workbench.ui.form.figures import Stored
from workbench.ui.form.kinds import PartKind, WeightKind, in_words
from workbench.ui.form.row import EDGE, Row
from workbench.ui.form.seam_place import seam_label, seam_number
from workbench.ui.form.section import Heading, Remark, Section
from workbench.ui.form.shape import MOST_SEAMS, NARROW
from workbench.ui.look import GRID
from workbench.ui.marks import Mark

_EXPLAINED = (
    "Weight: a seam’s part of what is to be taken in. "
    "Left part: how much of that the panel on its left gives, towards the centre front."
)


@dataclass(frozen=True)
class SeamShare:
    """One taker of intake in a quarter; place None is the quarter's side of the side seam."""

    quarter: QuarterName
    place: int | None

    @property
    def label(self) -> str:
        """What the row is called."""
        if self.place is None:
            return f"Side seam, {self.quarter}"
        return seam_label(self.quarter, self.place)

    def number(self, design: Design) -> int:
        """Its seam, counted from the centre front."""
        if self.place is None:
            return design.front.panel_count
        return seam_number(design, self.quarter, self.place)

    def seam(self, project: Project) -> Seam | None:
        """The inner seam; None for the side and where the quarter has fewer."""
        seams = quarter_of(project.design, self.quarter).seams
        return seams[self.place] if self.place is not None and self.place < len(seams) else None

    def exists(self, project: Project) -> bool:
        """Whether the quarter has it."""
        return self.place is None or self.seam(project) is not None

    def weight(self, project: Project) -> float:
        """Its weight among the takers of the quarter."""
        seam = self.seam(project)
        if seam is not None:
            return seam.weight
        return quarter_of(project.design, self.quarter).side_weight

    def put_weight(self, project: Project, weight: float) -> Project:
        """The project with another weight."""
        return set_weight(project, self.quarter, self.number(project.design), weight)

    def left_part(self, project: Project) -> float:
        """The part of its intake that is taken from the panel to its left."""
        seam = self.seam(project)
        return seam.left_part if seam else 0.5

    def put_left_part(self, project: Project, part: float) -> Project:
        """The project with another left part, at every level."""
        return set_left_part(project, self.quarter, self.number(project.design), None, part)


class ShareRow(FigureRow):
    """Weight and left part of one seam, with what it takes in."""

    def __init__(self, desk: Desk, share: SeamShare) -> None:
        label = share.label
        name = f"shares.{share.quarter}"
        kind = WeightKind(), PartKind()
        weight = Stored(name, f"{label}, weight", f"{label} weight", kind[0], share.weight, share.put_weight)
        part = Stored(
            name, f"{label}, left part", f"{label} left part", kind[1], share.left_part, share.put_left_part
        )
        figures = (weight,) if share.place is None else (weight, part)
        super().__init__(desk, *figures, label=label, width=NARROW)
        self.share = share
        if share.place is None:
            self.line.addSpacing(NARROW + 2 * GRID)
        self.words = f"{self.words} weight left part share intake"

    def show_picture(self, picture: Picture) -> None:
        """Show it where there is such a seam."""
        self.show_wanted(self.share.exists(picture.project))
        if self.wanted:
            self.place = Place(field=self.name, seam=self.share.number(picture.project.design))
            super().show_picture(picture)

    def remark(self, picture: Picture) -> tuple[str, Mark | None]:
        """What it takes in, a quarter, at the levels where that comes to anything."""
        if picture.outcome is None:
            return "", None
        number = self.share.number(picture.project.design)
        mine = [line for line in picture.outcome.ledger if line.quarter == self.share.quarter]
        amounts = [(line.level, _taken(line, number)) for line in reversed(mine)]
        project = picture.project
        said = [
            f"{LEVEL_LABEL[level].lower()} {in_words(mm, project)}"
            for level, mm in amounts
            if say_length(mm, project.unit, project.fraction) != "0"
        ]
        return (f"Takes in: {', '.join(said)}" if said else ""), None


def _taken(line: LedgerLine, seam: int) -> float:
    return sum(taking.total for taking in line.takings if taking.seam == seam)


@dataclass(frozen=True)
class Pin:
    """One pinned intake."""

    quarter: QuarterName
    seam: int
    level: LevelName
    mm: float


def pins_of(design: Design) -> list[Pin]:
    """Every pinned intake, from the centre front to the centre back, and from the top down."""
    found: list[Pin] = []
    side = design.front.panel_count
    for place, seam in enumerate(design.front.seams):
        found += _pins("front", 1 + place, seam.shares)
    for quarter, described in _sides(design):
        found += _pins(quarter, side, described.side_shares)
    for place, seam in enumerate(design.back.seams):
        found += _pins("back", side + 1 + place, seam.shares)
    return found


def _sides(design: Design) -> tuple[tuple[QuarterName, Quarter], tuple[QuarterName, Quarter]]:
    return ("front", design.front), ("back", design.back)


def _pins(quarter: QuarterName, seam: int, shares: tuple[Share, ...]) -> list[Pin]:
    pinned = [(share.level, share.pin_mm) for share in reversed(shares)]
    return [Pin(quarter, seam, level, mm) for level, mm in pinned if mm is not None]


class PinRow(Row):
    """One pinned intake, and a button that lets it go."""

    def __init__(self, desk: Desk) -> None:
        super().__init__("pin", "")
        self._desk = desk
        self.pin: Pin | None = None
        self.button = QPushButton("Unpin", self)
        self.button.setObjectName("quiet")
        self.line.addWidget(self.button)
        self.column.setContentsMargins(EDGE, 0, EDGE, 0)
        self.button.clicked.connect(self.on_clicked)

    def show_pin(self, pin: Pin | None, project: Project) -> None:
        """Show this one, or nothing."""
        self.pin = pin
        self.show_wanted(pin is not None)
        if pin is not None:
            where = seam_name(pin.seam, project.design)
            side = f", {pin.quarter}" if pin.seam == project.design.front.panel_count else ""
            amount = f"{say_exact(pin.mm, project.unit)} {project.unit}"
            self.show_label(f"{LEVEL_LABEL[pin.level]}, {where}{side}: {amount}")
            self.words = f"pinned pin {self.label.text().lower()}"
            self.button.setAccessibleName(f"Unpin {self.label.text()}")

    def on_clicked(self) -> None:
        """Let it go."""
        if self.pin is not None:
            pin = self.pin
            changed = set_pin(self._desk.project, pin.quarter, pin.seam, pin.level, None)
            self._desk.apply("Unpin", changed)

    def target(self) -> QWidget | None:
        """The button."""
        return self.button


class UnpinAllRow(Row):
    """Says what pins are, or lets all of them go."""

    def __init__(self, desk: Desk) -> None:
        super().__init__("pins", "")
        self._desk = desk
        self.words = "pinned pins unpin all"
        self.button = QPushButton("Unpin all", self)
        self.button.setObjectName("quiet")
        self.line.addWidget(self.button, 0, Qt.AlignmentFlag.AlignTop)
        self.button.clicked.connect(self.on_clicked)

    def show_picture(self, picture: Picture) -> None:
        """How many there are."""
        count = len(pins_of(picture.project.design))
        self.button.setVisible(count > 1)
        self.label.setText(
            f"{count} pinned; the weights share the rest."
            if count
            else "Nothing is pinned. Type an intake in the drawing or the ledger to pin it there."
        )

    def on_clicked(self) -> None:
        """Let all of them go, in one step."""
        changed = self._desk.project
        for pin in pins_of(changed.design):
            changed = set_pin(changed, pin.quarter, pin.seam, pin.level, None)
        self._desk.apply("Unpin all", changed)

    def target(self) -> QWidget | None:
        """The button."""
        return self.button


class Seams(Section):
    """The fifth section."""

    title = "Seams"

    def fill(self) -> None:
        """The takers of either quarter, then the pins."""
        self.add(Remark(_EXPLAINED))
        for quarter in ("front", "back"):
            self._add_quarter("front" if quarter == "front" else "back")
        self.add(Heading("Pinned intake"))
        self.add(UnpinAllRow(self.desk))
        self._pins: list[PinRow] = []

    def _add_quarter(self, quarter: QuarterName) -> None:
        self.add(Heading(f"{quarter.capitalize()}, a quarter", "Weight", "Left part", width=NARROW))
        inner = [SeamShare(quarter, place) for place in range(MOST_SEAMS)]
        side = SeamShare(quarter, None)
        for share in (*inner, side) if quarter == "front" else (side, *inner):
            self.add(ShareRow(self.desk, share))

    def show_rows(self, picture: Picture) -> None:
        """The seams, then as many rows of pins as there are; rows once made are kept."""
        super().show_rows(picture)
        pins = pins_of(picture.project.design)
        if len(self._pins) < len(pins):
            while len(self._pins) < len(pins):
                self._pins.append(self.add(PinRow(self.desk)))
            self.chain()
        for number, row in enumerate(self._pins):
            row.show_pin(pins[number] if number < len(pins) else None, picture.project)

    def summary(self, picture: Picture) -> str:
        """How many are pinned."""
        count = len(pins_of(picture.project.design))
        return f"{count} pinned" if count else "shared by weight"

    def has(self, field: str) -> bool:
        """Shares and pins."""
        return field.startswith("shares.")

    def row_of(self, field: str, seam: int | None) -> Row | None:
        """The share of one seam in one quarter."""
        for row in self.rows:
            wanted = isinstance(row, ShareRow) and row.name == field and row.wanted
            if wanted and isinstance(row, ShareRow) and row.share.number(self.desk.project.design) == seam:
                return row
        return None
