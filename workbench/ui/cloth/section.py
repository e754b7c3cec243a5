"""One cloth in the form: its section is open while it is on show."""

from __future__ import annotations

from PySide6.QtWidgets import QPushButton, QWidget

from workbench.document import Picture, remove_cloth
from workbench.ui.cloth.bench import ClothBench
from workbench.ui.cloth.figures import ClothName, OfCloth, Remnant, cloth_figure
from workbench.ui.cloth.rows import ClothRow, LayersRow, PickRow, PriceRow, WidthRow, named
from workbench.ui.desk import Desk
from workbench.ui.form.row import EDGE, Row
from workbench.ui.form.section import Heading, Section
from workbench.ui.look import GRID

_RUNS = (("either_way", "Either way"), ("one_way", "One way"))
_LAID = (("single", "Single"), ("folded", "Folded"))
_STEPS = (
    ("eighth_yard", "⅛ yd"),
    ("quarter_yard", "¼ yd"),
    ("half_yard", "½ yd"),
    ("ten_cm", "10 cm"),
)
_NAME_WIDTH, _WIDE, _LONGEST = 44 * GRID, 68 * GRID, 24


def _short(name: str) -> str:
    """A name that leaves room for what to buy beside it."""
    return name if len(name) <= _LONGEST else f"{name[: _LONGEST - 1].rstrip()}…"


class RemoveRow(Row):
    """Takes the cloth out of the project."""

    def __init__(self, desk: Desk, number: int) -> None:
        super().__init__("", "")
        self._desk, self._number = desk, number
        self.label.hide()
        self.words = "remove this cloth"
        self.button = QPushButton("Remove this cloth", self)
        self.button.setObjectName("quiet")
        self.line.addWidget(self.button)
        self.line.addStretch(1)
        self.column.setContentsMargins(EDGE - 2 * GRID, 2 * GRID, EDGE, GRID)
        self.button.clicked.connect(self.on_clicked)

    def on_clicked(self) -> None:
        """Remove it; undo brings it back with its plan."""
        project = self._desk.project
        self._desk.apply("Remove a cloth", remove_cloth(project, named(project, self._number)))

    def target(self) -> QWidget | None:
        """The button."""
        return self.button


class RemnantRow(ClothRow):
    """Corners need room: the field stands under its label."""

    def __init__(self, desk: Desk, number: int) -> None:
        remark = (
            "Corners of a piece that is no rectangle, each across from a selvedge, then along: "
            "0, 0; 20, 0; 14, 30. Empty for cloth off the bolt."
        )
        super().__init__(desk, Remnant(number), "Remnant", remark, _WIDE)
        self.line.removeWidget(self.field)
        self.column.insertWidget(1, self.field)


class ClothSection(Section):
    """Everything that is decided about one cloth."""

    def __init__(self, desk: Desk, bench: ClothBench, number: int) -> None:
        self.number, self._bench = number, bench
        self.title = named(desk.project, number)
        super().__init__(desk)
        self.header.setText(_short(self.title))

    def fill(self) -> None:
        """Name and layers, then how it lies, then what it costs and what she has."""
        desk, number = self.desk, self.number
        self.add(ClothRow(desk, ClothName(number), "Name", width=_NAME_WIDTH))
        self.add(LayersRow(desk, number))
        self.add(WidthRow(desk, number))
        self.add(ClothRow(desk, cloth_figure(number, "selvedge_mm"), "Selvedge, either side"))
        self.add(PickRow(desk, OfCloth(number, "laid"), "Laid single or folded", _LAID))
        turned = "One way for a nap, or a print with a right way up: no piece is turned end for end."
        self.add(PickRow(desk, OfCloth(number, "run"), "Nap or print", _RUNS, turned))
        self.figure("gap_mm", "Gap for the shears")
        self.figure("tilt_degrees", "Turn off the grain", "How far a piece may lean to fit; 0 keeps it true.")
        self.figure("repeat_mm", "Repeat of the print", "Waist lines lie at whole repeats; 0 for none.")
        self.figure("shrinkage_percent", "Shrinkage")
        self.add(Heading("What to buy"))
        self.add(PriceRow(desk, number))
        self.add(PickRow(desk, OfCloth(number, "step"), "Sold by", _STEPS))
        self.figure("at_hand_mm", "Length at hand")
        self.add(RemnantRow(desk, number))
        self.add(RemoveRow(desk, number))

    def figure(self, key: str, label: str, remark: str = "") -> None:
        """Add a row for one figure of the cloth."""
        self.add(ClothRow(self.desk, cloth_figure(self.number, key), label, remark))

    def show_picture(self, picture: Picture) -> None:
        """Show the cloth; a section without one is put away."""
        there = self.number < len(picture.project.cloths)
        self.setVisible(there)
        if not there:
            return
        name = named(picture.project, self.number)
        if name != self.title or not self.header.text():
            self.title = name
            self.header.setText(_short(name))
            self.header.show_summary("")
        super().show_picture(picture)

    def summary(self, picture: Picture) -> str:
        """What to buy of it, where that is known."""
        worked = self._bench.worked
        # by number: while a cloth is being renamed, what lies on it is still known by its old name
        if worked is None or len(worked.lays) != len(picture.project.cloths):
            return ""
        lay = worked.lays[self.number]
        if lay.buy is None:
            return ""
        return f"buy {lay.buy.words}" if lay.buy.length_mm > 0 else "nothing to buy"

    def search(self, wanted: str) -> bool:
        """As any section; one without a cloth is never found."""
        if self.number >= len(self.desk.project.cloths):
            self.setVisible(False)
            return False
        return super().search(wanted)

    def has(self, field: str) -> bool:
        """Its own fields, and those that a finding about the cloth on show names."""
        if field.startswith("cloths."):
            return field.startswith(f"cloths.{self.number}.")
        return self._bench.number == self.number and field in FIELDS

    def row_of(self, field: str, seam: int | None) -> Row | None:
        """The row of a field by its path, or by its key alone."""
        path = field if field.startswith("cloths.") else f"cloths.{self.number}.{field.rpartition('.')[2]}"
        return super().row_of(path, seam)


FIELDS = (
    "width_mm",
    "selvedge_mm",
    "gap_mm",
    "tilt_degrees",
    "repeat_mm",
    "shrinkage_percent",
    "at_hand_mm",
    "price",
    "remnant",
    "cloth.run",
)
"""Fields of the cloth on show as findings name them."""
