"""Her own time, step by step."""

from __future__ import annotations

from decimal import Decimal

from PySide6.QtWidgets import QLineEdit, QWidget

from workbench.cloth import (
    hours_of,
)
from workbench.document import (
    Picture,
    set_all_hours,
    set_hours,
)
from workbench.ui.cloth.figures import written
from workbench.ui.desk import Desk
from workbench.ui.form.row import Row
from workbench.ui.form.section import Section
from workbench.ui.look import GRID, fonts
from workbench.ui.quote.figures import (
    hours_figure,
    rate_figure,
)
from workbench.ui.quote.rows import ButtonsRow, QuoteRow


class Hours(Section):
    """Her own time, step by step."""

    title = "Hours"

    def __init__(self, desk: Desk) -> None:
        self._of_step: dict[str, QuoteRow] = {}
        super().__init__(desk)

    def fill(self) -> None:
        """The rate, the steps, and how to have more of them."""
        self.add(QuoteRow(self.desk, rate_figure(), estimate="no rate yet"))
        self._more = self.add(AddStepRow(self.desk))
        self._usual = self.add(ButtonsRow("Estimate from this bodice"))
        self._usual.say("Common practice, no source: change each step to what you need yourself.")
        self._usual.buttons[0].clicked.connect(self.on_usual)

    def show_rows(self, picture: Picture) -> None:
        """A row for each step; one that was taken away is put away."""
        steps = [row.step for row in picture.project.quoting.hours]
        for step in steps:
            if step not in self._of_step:
                row = QuoteRow(self.desk, hours_figure(step))
                self._of_step[step] = row
                self.rows.insert(len(self._of_step), row)
                self._column.insertWidget(len(self._of_step), row)
                self.chain()
        for step, shown in self._of_step.items():
            shown.show_wanted(step in steps)
        super().show_rows(picture)

    def on_usual(self) -> None:
        """Hours as such a bodice usually takes; undo brings hers back."""
        steps = self.desk.picture.sewing
        if steps:
            self.desk.apply("Usual hours", set_all_hours(self.desk.project, hours_of(steps)))

    def summary(self, picture: Picture) -> str:
        """All of them together."""
        hours = sum(row.hours for row in picture.project.quoting.hours)
        return f"{written(hours)} h" if hours else "none yet"

    def has(self, field: str) -> bool:
        """Hours and their rate."""
        return field.startswith(("quoting.hours", "quoting.rate"))

    def row_of(self, field: str, seam: int | None) -> Row | None:
        """The row of a step; where none has any hours, the way to have them."""
        return super().row_of(field, seam) or (self._usual if field == "quoting.hours" else None)


class AddStepRow(Row):
    """A name, and with Enter a new step of that name."""

    def __init__(self, desk: Desk) -> None:
        super().__init__("", "")
        self._desk = desk
        self.label.hide()
        self.words = "add another step"
        self.name_of = QLineEdit(self)
        self.name_of.setPlaceholderText("Another step, then Enter")
        self.name_of.setAccessibleName("Name of another step of the work")
        self.name_of.setFont(fonts().body)
        self.name_of.setFixedHeight(7 * GRID)
        self.line.addWidget(self.name_of, 1)
        self.name_of.returnPressed.connect(self.on_entered)

    def on_entered(self) -> None:
        """Add the step with one hour."""
        step = self.name_of.text().strip()
        if any(row.step == step for row in self._desk.project.quoting.hours):
            self.say(f"There is a step called “{step}” already.", "attend")
            return
        try:
            project = set_hours(self._desk.project, step, Decimal(1))
        except ValueError as error:
            self.say(str(error), "attend")
            return
        self.say("")
        self.name_of.clear()
        self._desk.apply("Another step", project)

    def target(self) -> QWidget | None:
        """The name."""
        return self.name_of
