"""The line under the measurements that tells of other days, and begins a new one."""

from __future__ import annotations

from datetime import date

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from workbench.document import Picture
from workbench.ui.desk import Desk
from workbench.ui.form.row import EDGE, Row
from workbench.ui.look import GRID, fonts

ANEW = "Measure anew"
DAYS = "Compare days…"


class DaysRow(Row):
    """When she was measured, and two buttons: set these figures aside, look at those of other days."""

    def __init__(self, desk: Desk) -> None:
        super().__init__("earlier", "")
        self._desk = desk
        self.words = "measure anew compare days dates earlier measurements measured on"
        self.label.setFont(fonts().small)
        self.anew, self.days = QPushButton(ANEW, self), QPushButton(DAYS, self)
        self.anew.setToolTip("Keep these figures under their date, and type over a copy of them")
        self.days.setToolTip("Two days side by side, with what has become of each measurement")
        buttons = QHBoxLayout()
        buttons.setSpacing(2 * GRID)
        for button in (self.anew, self.days):
            buttons.addWidget(button)
        buttons.addStretch(1)
        self.column.addLayout(buttons)
        self.column.setContentsMargins(EDGE, GRID, EDGE, 2 * GRID)
        self.anew.clicked.connect(self.on_anew)
        self.days.clicked.connect(self.on_days)

    def show_picture(self, picture: Picture) -> None:
        """Say how many other days there are."""
        project = picture.project
        self.label.setText(_said(len(project.measurements), len(project.earlier)))
        self.anew.setEnabled(bool(project.measurements))
        self.days.setEnabled(bool(project.earlier))

    def on_anew(self) -> None:
        """Set the figures aside, and begin today with a copy of them."""
        # not needed before she asks for it: the start need not wait for it
        from workbench.document import measure_anew

        try:
            project = measure_anew(self._desk.project, date.today().isoformat())
        except ValueError as error:
            self.say(str(error), "attend")
            return
        self._desk.apply(ANEW, project)
        self.say("The measurements are copies of the last ones now: type over them.", "note")

    def on_days(self) -> None:
        """Look at two days side by side."""
        # needed only when she asks for it: not worth a moment of the start
        from workbench.ui.form.days_dialog import DaysDialog

        dialog = DaysDialog(self._desk, self.window())
        dialog.exec()
        dialog.deleteLater()

    def forget(self) -> None:
        """What was said is of another project."""
        self.say("")

    def target(self) -> QWidget | None:
        """The button that begins a new day."""
        return self.anew


def _said(count: int, others: int) -> str:
    if not others:
        return "No other day is kept." if count else "Not measured yet."
    return "One other day is kept." if others == 1 else f"{others} other days are kept."
