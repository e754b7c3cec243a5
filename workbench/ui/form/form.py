"""The form at the left: what she tells the program, in the order of the job."""

from __future__ import annotations

from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QApplication, QWidget

from workbench.body import MEASUREMENTS, Fraction, Unit
from workbench.document import Picture, set_unit
from workbench.ui.desk import Desk
from workbench.ui.form.choice import Choice
from workbench.ui.form.limits import LimitsSection
from workbench.ui.form.measurements import Measurements
from workbench.ui.form.reduction import Reduction
from workbench.ui.form.row import Row
from workbench.ui.form.seams import Seams
from workbench.ui.form.sections_form import OneOrAllForm
from workbench.ui.form.shape import Shape
from workbench.ui.form.take_drawing import TakePanel
from workbench.ui.form.who import Who
from workbench.ui.look import GRID

_UNITS: tuple[tuple[tuple[Unit, Fraction], str], ...] = (
    (("in", 8), "inches, ⅛"),
    (("in", 16), "inches, 1⁄16"),
    (("cm", 8), "centimetres"),
)


class Form(OneOrAllForm):
    """The sections of the draft, under a search box and the choice of unit."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        who, measurements, shape = Who(desk), Measurements(desk), Shape(desk)
        reduction, seams, limits = Reduction(desk), Seams(desk), LimitsSection(desk)
        units = Choice("Unit", _UNITS)
        sections = (who, measurements, shape, reduction, seams, limits)
        super().__init__(desk, sections, measurements, parent, below=units)
        self.units = units
        self.who, self.measurements, self.shape = who, measurements, shape
        self.reduction, self.seams, self.limits = reduction, seams, limits
        self.take = TakePanel(self)
        self.take.hide()
        self._column.addWidget(self.take)
        self._connect()
        self.show_picture(desk.picture)

    def _connect(self) -> None:
        self.units.chosen.connect(self.on_unit)
        self.measurements.pointed.connect(self.show_taking)
        self._desk.drafted.connect(self.show_picture)
        application = QApplication.instance()
        if isinstance(application, QApplication):
            application.focusChanged.connect(self.on_focus_changed)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The drawing shrinks before the rows do."""
        super().resizeEvent(event)
        self.take.show_room(self.height())

    # --- what is shown -------------------------------------------------------------------

    def show_picture(self, picture: Picture) -> None:
        """Show what is stored, and in which unit."""
        project = picture.project
        self.units.show_value((project.unit, 8 if project.unit == "cm" else project.fraction))
        super().show_picture(picture)

    def begin_anew(self) -> None:
        """Another project clears what was being typed, and begins with its first measurement."""
        super().begin_anew()
        self._welcome()

    def showEvent(self, event: QShowEvent) -> None:
        """A new project begins with its first measurement."""
        super().showEvent(event)
        self._welcome()

    def _welcome(self) -> None:
        """Put the focus on the first measurement while none is taken."""
        if self.isVisible() and not self._desk.project.measurements:
            row = self.measurements.row_of(f"measurements.{MEASUREMENTS[0].key}", None)
            target = row.target() if row is not None else None
            if target is not None and target.isVisible():
                target.setFocus()

    def show_taking(self, key: str) -> None:
        """Show where the tape goes."""
        self.take.show_measurement(key)
        if self.take.isHidden():
            self.take.show()
            # The rows have less room now; the field in hand must not end up behind the drawing.
            self._column.activate()
            focused = QApplication.focusWidget()
            if focused is not None and self._area.isAncestorOf(focused):
                self._area.ensureWidgetVisible(focused, 0, 4 * GRID)

    def bring(self, row: Row) -> None:
        """Scroll a row into sight, and end a search that hides it."""
        if row.isHidden():
            self.search.clear()
        super().bring(row)

    # --- what she does -------------------------------------------------------------------

    def on_unit(self, value: object) -> None:
        """Show everything in another unit; no stored length changes."""
        for (unit, fraction), _ in _UNITS:
            if (unit, fraction) == value:
                self._desk.apply("Unit", set_unit(self._desk.project, unit, fraction))

    def on_focus_changed(self, _old: QWidget | None, new: QWidget | None) -> None:
        """Put the drawing away when another field of the form is in hand."""
        if new is not None and self.isAncestorOf(new) and not self.measurements.isAncestorOf(new):
            self.take.hide()
