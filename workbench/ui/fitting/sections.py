"""The sections of the form: the fitting itself, its opening, and what was pinned."""

from __future__ import annotations

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QGridLayout, QPushButton, QWidget

from workbench.body import say_closely
from workbench.document import Picture, add_pinned, remove_fitting, set_fitting, take_proposal
from workbench.fitting import CHANGE_KINDS, ChangeKind, date_said, proposal_words
from workbench.ui.desk import Desk
from workbench.ui.fitting.bench import Compared, FittingBench
from workbench.ui.fitting.change_row import ChangeRow
from workbench.ui.fitting.figures import Gap, fitting_text
from workbench.ui.fitting.opening import OpeningDrawing
from workbench.ui.fitting.photo import PhotoRow
from workbench.ui.fitting.words import taken_words
from workbench.ui.form.field import FigureRow
from workbench.ui.form.prose import ProseRow
from workbench.ui.form.row import EDGE, Row
from workbench.ui.form.section import Remark, Section
from workbench.ui.look import GRID, fonts
from workbench.ui.tick import Tick

_TEXT = 44 * GRID
_ADDED: dict[ChangeKind, str] = {
    "seam": "A seam",
    "length": "A length",
    "neckline": "The neckline",
    "hem": "The hem",
}


class AppliedRow(Row):
    """Whether the fitting is carried into the draft."""

    def __init__(self, desk: Desk, bench: FittingBench) -> None:
        super().__init__("fitting.applied", "")
        self._desk, self._bench = desk, bench
        self.box = Tick("Carried into the draft", self)
        self.box.setFont(fonts().body)
        self.words = "carried into the draft applied"
        self.line.insertWidget(0, self.box)
        self.box.clicked.connect(self.on_clicked)

    def show_picture(self, picture: Picture) -> None:
        """Show whether it is."""
        fitting = self._bench.fitting
        with QSignalBlocker(self.box):
            self.box.setChecked(fitting is not None and fitting.applied)
        self.say("" if fitting is None or fitting.applied else "The draft is as it was without this fitting.")

    def on_clicked(self, on: bool) -> None:
        """Carry it in, or not."""
        name = "Carry a fitting in" if on else "Leave a fitting out"
        self._desk.apply(name, set_fitting(self._desk.project, self._bench.number, applied=on))

    def target(self) -> QWidget | None:
        """The box."""
        return self.box


class RemoveRow(Row):
    """Takes the fitting out of the project."""

    def __init__(self, desk: Desk, bench: FittingBench) -> None:
        super().__init__("", "")
        self.label.hide()
        self._desk, self._bench = desk, bench
        self.words = "remove this fitting"
        self.button = QPushButton("Remove this fitting", self)
        self.line.addWidget(self.button)
        self.line.addStretch(1)
        self.column.setContentsMargins(EDGE, 2 * GRID, EDGE, GRID)
        self.button.clicked.connect(self.on_clicked)

    def on_clicked(self) -> None:
        """Take it out."""
        self._desk.apply("Remove a fitting", remove_fitting(self._desk.project, self._bench.number))

    def target(self) -> QWidget | None:
        """The button."""
        return self.button


class TheFitting(Section):
    """When it was, what it was made up in, and whether it counts."""

    title = "The fitting"

    def __init__(self, desk: Desk, bench: FittingBench) -> None:
        self._bench = bench
        super().__init__(desk)

    def fill(self) -> None:
        """Date, cloth, whether it is carried in, picture, notes."""
        date = self.add(FigureRow(self.desk, fitting_text("date", "Date", self._number), width=_TEXT))
        date.field.setPlaceholderText("year-month-day")
        cloth = self.add(FigureRow(self.desk, fitting_text("cloth", "Made up in", self._number), width=_TEXT))
        cloth.field.setPlaceholderText("calico, sheeting …")
        self.add(AppliedRow(self.desk, self._bench))
        self.add(ProseRow(self.desk, fitting_text("notes", "Notes", self._number)))
        self.add(PhotoRow(self.desk, self._bench))
        self.add(RemoveRow(self.desk, self._bench))

    def _number(self) -> int:
        return self._bench.number

    def summary(self, picture: Picture) -> str:
        """The date."""
        fitting = self._bench.fitting
        return date_said(fitting.date) if fitting is not None else ""

    def has(self, field: str) -> bool:
        """Particulars of a fitting."""
        return field == "fittings" or (
            field.startswith("fitting.") and not field.startswith(("fitting.gaps", "fitting.changes"))
        )


class DrawingRow(Row):
    """The opening as it was measured, drawn from behind."""

    def __init__(self) -> None:
        super().__init__("", "")
        self.label.hide()
        self.drawing = OpeningDrawing(self)
        self.line.addWidget(self.drawing)

    def is_called(self, wanted: str) -> bool:
        """It is no field."""
        return False


class ReadingRow(Row):
    """What the opening says, and a button that takes what is proposed."""

    def __init__(self, desk: Desk, bench: FittingBench) -> None:
        super().__init__("fitting.reading", "What the opening says")
        self._desk, self._bench = desk, bench
        self._compared: Compared | None = None
        self.label.setFont(fonts().strong)
        self.words = "what the opening says reading proposal"
        self.take = QPushButton("Take the proposal", self)
        self.column.setContentsMargins(EDGE, 3 * GRID, EDGE, GRID)
        self.column.setSpacing(GRID)
        self.take.clicked.connect(self.on_take)

    def show_compared(self, compared: Compared) -> None:
        """Say what was read, and whether it has been taken."""
        self._compared = compared
        fitting = compared.fitting
        taken, offered = taken_words(fitting, compared.proposed) if fitting is not None else ("", "")
        self.say(" ".join(words for words in (self._words(compared), taken) if words))
        # under the words, which are made when there first are any
        self.column.addWidget(self.take)
        self.take.setText(offered)
        self.take.setVisible(bool(offered))

    def _words(self, compared: Compared) -> str:
        project, reading = compared.picture.project, compared.reading
        planned = say_closely(project.design.opening_mm, project.unit, project.fraction)
        if reading is None:
            return f"Measure all three gaps, edge to edge as she wears it. Planned is {planned}."
        said = [reading.text(project.unit, project.fraction)]
        worn = compared.worn
        if worn is not None and worn.draft is not None:
            said.append(proposal_words(reading, worn, project.unit, project.fraction))
        return " ".join(said)

    def on_take(self) -> None:
        """Put what is proposed among the lines."""
        if self._compared is None or self._compared.picture is not self._desk.picture:
            return
        project = self._desk.project
        try:
            changed = take_proposal(project, self._bench.number, self._compared.proposed)
        except ValueError as error:
            self.say(str(error), "attend")
            return
        self._desk.apply("Take the proposal", changed)

    def target(self) -> QWidget | None:
        """The button."""
        return self.take


class TheOpening(Section):
    """The three gaps and what they say."""

    title = "The opening"

    def __init__(self, desk: Desk, bench: FittingBench) -> None:
        self._bench = bench
        self._compared: Compared | None = None
        super().__init__(desk)

    def fill(self) -> None:
        """The drawing, the gaps beside it, the reading."""
        self.drawing = self.add(DrawingRow())
        for where, label in (("top", "At the top"), ("waist", "At the waist"), ("hem", "At the hem")):
            figure = Gap(where, label, lambda: self._bench.number)  # type: ignore[arg-type]  # one of three
            self.add(FigureRow(self.desk, figure))
        self.reading = self.add(ReadingRow(self.desk, self._bench))
        if self._compared is not None:
            self.show_compared(self._compared)

    def show_rows(self, picture: Picture) -> None:
        """Every row, and the drawing at once."""
        super().show_rows(picture)
        self.drawing.drawing.show_fitting(self._bench.fitting, picture.project)

    def show_compared(self, compared: Compared) -> None:
        """Say what was read, once there are rows."""
        self._compared = compared
        if self.rows:
            self.reading.show_compared(compared)

    def summary(self, picture: Picture) -> str:
        """The shape in a few words."""
        reading = self._compared.reading if self._compared is not None else None
        return f"{reading.name[:1].lower()}{reading.name[1:]}" if reading is not None else ""

    def has(self, field: str) -> bool:
        """Gaps."""
        return field.startswith(("fitting.gaps", "fitting.reading"))


class AddRow(Row):
    """A button for every kind of line."""

    def __init__(self, desk: Desk, bench: FittingBench) -> None:
        super().__init__("", "Add what was pinned")
        self._desk, self._bench = desk, bench
        self.words = "add what was pinned"
        grid = QGridLayout()
        grid.setSpacing(GRID)
        self.buttons = {kind: QPushButton(_ADDED[kind], self) for kind in CHANGE_KINDS}
        for place, (kind, button) in enumerate(self.buttons.items()):
            button.setAccessibleName(f"Add a line: {_ADDED[kind].lower()}")
            button.clicked.connect(self.on_clicked)
            grid.addWidget(button, place // 2, place % 2)
        self.column.addLayout(grid)
        self.column.setContentsMargins(EDGE, GRID, EDGE, 2 * GRID)

    def on_clicked(self) -> None:
        """Add a line of the kind."""
        kind = next(kind for kind, button in self.buttons.items() if button is self.sender())
        try:
            changed = add_pinned(self._desk.project, self._bench.number, kind)
        except ValueError as error:
            self.say(str(error), "attend")
            return
        self.say("")
        self._desk.apply("Add a line", changed)

    def target(self) -> QWidget | None:
        """The first button."""
        return self.buttons["seam"]


class WhatWasPinned(Section):
    """Every line, and buttons for more."""

    title = "What was pinned"

    def __init__(self, desk: Desk, bench: FittingBench) -> None:
        self._bench = bench
        self._lines: list[ChangeRow] = []
        super().__init__(desk)

    def fill(self) -> None:
        """The buttons; a row is made for a line when there first is one."""
        self.add(AddRow(self.desk, self._bench))
        self.add(Remark("Flat, between two panels of one half; the other half is its mirror image."))
        self.add(
            Remark("A line on the neckline or hem goes where you click in the drawing while you are at it.")
        )

    def show_rows(self, picture: Picture) -> None:
        """A row for each line of the fitting on show."""
        fitting = self._bench.fitting
        wanted = len(fitting.changes) if fitting is not None else 0
        if len(self._lines) < wanted:
            while len(self._lines) < wanted:
                self._lines.append(self.add(ChangeRow(self.desk, self._bench, len(self._lines))))
            self.chain()
        super().show_rows(picture)

    def summary(self, picture: Picture) -> str:
        """How many lines, and how many are off."""
        fitting = self._bench.fitting
        if fitting is None or not fitting.changes:
            return ""
        off = sum(1 for change in fitting.changes if not change.on)
        count = f"{len(fitting.changes)} line{'s' if len(fitting.changes) > 1 else ''}"
        return f"{count}, {off} off" if off else count

    def row_of(self, field: str, seam: int | None) -> Row | None:
        """The row of a line as findings name it; its fitting is on show by then."""
        parts = field.split(".")
        if field.startswith("fittings.") and len(parts) == 4 and int(parts[3]) < len(self._lines):
            return self._lines[int(parts[3])]
        return super().row_of(field, seam)

    def has(self, field: str) -> bool:
        """Lines."""
        return field.startswith(("fitting.changes", "fittings."))
