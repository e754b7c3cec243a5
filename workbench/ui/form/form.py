"""The form at the left: what she tells the program, in the order of the job."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QKeyEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QApplication,
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from workbench.body import MEASUREMENTS, Fraction, Unit
from workbench.document import Picture, Session, set_unit
from workbench.draft import Place
from workbench.ui.desk import Desk
from workbench.ui.form.choice import Choice, Segment
from workbench.ui.form.limits import LimitsSection
from workbench.ui.form.measurements import Measurements
from workbench.ui.form.reduction import Reduction
from workbench.ui.form.row import EDGE, Row
from workbench.ui.form.seams import Seams
from workbench.ui.form.section import Section
from workbench.ui.form.shape import Shape
from workbench.ui.form.take_drawing import TakePanel
from workbench.ui.form.who import Who
from workbench.ui.look import GRID, fonts

USUAL_WIDTH, LEAST_WIDTH = 78 * GRID, 74 * GRID
_UNITS: tuple[tuple[tuple[Unit, Fraction], str], ...] = (
    (("in", 8), "inches, ⅛"),
    (("in", 16), "inches, 1⁄16"),
    (("cm", 8), "centimetres"),
)


class SearchBox(QLineEdit):
    """Finds fields by what they are called; Escape empties it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Find a field")
        self.setPlaceholderText("Find a field")
        self.setClearButtonEnabled(True)
        self.setFont(fonts().body)
        self.setFixedHeight(7 * GRID)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape empties it."""
        if event.key() == Qt.Key.Key_Escape and self.text():
            self.clear()
        else:
            super().keyPressEvent(event)


class Form(QWidget):
    """Sections, one open at a time or all of them, under a search box and the choice of unit."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._session: Session | None = None
        self._lit: Row | None = None
        self.search = SearchBox(self)
        self.all = Segment("All open", "All sections open")
        self.units = Choice("Unit", _UNITS, self)
        self.who, self.measurements = Who(desk), Measurements(desk)
        self.shape, self.reduction = Shape(desk), Reduction(desk)
        self.seams, self.limits = Seams(desk), LimitsSection(desk)
        self.sections: tuple[Section, ...] = (
            *(self.who, self.measurements, self.shape),
            *(self.reduction, self.seams, self.limits),
        )
        self.nothing = QLabel(self)
        self.take = TakePanel(self)
        self._assemble()
        self._connect()
        self.measurements.show_opened(True)
        self.show_picture(desk.picture)

    def _assemble(self) -> None:
        self._area = QScrollArea(self)
        self._area.setFrameShape(QFrame.Shape.NoFrame)
        self._area.setWidgetResizable(True)
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        inside = QWidget()
        self._rows = rows = QVBoxLayout(inside)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(0)
        for section in self.sections:
            rows.addWidget(section)
        self.nothing.setWordWrap(True)
        self.nothing.setContentsMargins(EDGE, 4 * GRID, EDGE, 0)
        self.nothing.hide()
        rows.addWidget(self.nothing)
        rows.addStretch(1)
        self._area.setWidget(inside)
        self.take.hide()
        self._column = column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._head())
        column.addWidget(self._area, 1)
        column.addWidget(self.take)
        self.setMinimumWidth(LEAST_WIDTH)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Expanding)

    def _head(self) -> QWidget:
        head = QWidget(self)
        column = QVBoxLayout(head)
        column.setContentsMargins(EDGE, 2 * GRID, EDGE, 2 * GRID)
        column.setSpacing(2 * GRID)
        line = QHBoxLayout()
        line.setSpacing(2 * GRID)
        line.addWidget(self.search, 1)
        line.addWidget(self.all)
        self.all.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        column.addLayout(line)
        column.addWidget(self.units)
        return head

    def _connect(self) -> None:
        for section in self.sections:
            section.turned.connect(self.on_turned)
        self.all.clicked.connect(self.on_all)
        self.search.textChanged.connect(self.on_search)
        self.units.chosen.connect(self.on_unit)
        self.measurements.pointed.connect(self.show_taking)
        self._desk.drafted.connect(self.show_picture)
        self._desk.selected.connect(self.show_selected)
        application = QApplication.instance()
        if isinstance(application, QApplication):
            application.focusChanged.connect(self.on_focus_changed)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The drawing shrinks before the rows do."""
        super().resizeEvent(event)
        self.take.show_room(self.height())

    def sizeHint(self) -> QSize:
        """As wide as its rows are laid out for."""
        return QSize(USUAL_WIDTH, 150 * GRID)

    # --- what is shown -------------------------------------------------------------------

    def show_picture(self, picture: Picture) -> None:
        """Show what is stored, in the sections that are seen; another project clears what was being typed."""
        if self._session is not self._desk.session:
            self._session = self._desk.session
            for section in self.sections:
                for row in section.rows:
                    row.forget()
            self._welcome()
        project = picture.project
        self.units.show_value((project.unit, 8 if project.unit == "cm" else project.fraction))
        for section in self.sections:
            section.show_picture(picture)

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

    def show_selected(self, place: Place | None) -> None:
        """Light up the field that a finding names, and bring it into sight."""
        row = self._row_of(place)
        if self._lit is not None:
            self._lit.show_lit(False)
        self._lit = row
        if row is not None:
            row.show_lit(True)
            if row.isHidden():
                self.search.clear()
            self._bring(row)

    def _row_of(self, place: Place | None) -> Row | None:
        if place is None or place.field is None:
            return None
        for section in self.sections:
            if section.has(place.field):
                if not section.seen:
                    self._open(section)
                row = section.row_of(place.field, place.seam)
                if row is not None:
                    return row
        return None

    def _bring(self, row: Row) -> None:
        target = row.target()
        if target is None or not target.hasFocus():
            self._rows.activate()
            self._area.ensureWidgetVisible(row, 0, 8 * GRID)

    def _open(self, section: Section) -> None:
        """Open a section, and close the others unless all may be open."""
        if not self.all.isChecked():
            for other in self.sections:
                if other is not section and other.opened:
                    other.show_opened(False)
        section.show_opened(True)

    # --- what she does -------------------------------------------------------------------

    def on_turned(self) -> None:
        """Open or close the section whose header was pressed."""
        section = self.sender()
        if not isinstance(section, Section):
            return
        if section.opened:
            self._open(section)
            self._rows.activate()
            self._area.ensureWidgetVisible(section.header, 0, 0)
        else:
            section.show_opened(False)

    def on_all(self, checked: bool) -> None:
        """Open all sections, or go back to one."""
        for section in self.sections:
            section.show_opened(checked or section is self.measurements)

    def on_search(self, wanted: str) -> None:
        """Show the fields that are called so, in whichever section they are."""
        wanted = wanted.strip()
        found = [section.search(wanted) for section in self.sections]
        self.nothing.setText(f"No field is called “{wanted}”.")
        self.nothing.setVisible(not any(found))

    def on_unit(self, value: object) -> None:
        """Show everything in another unit; no stored length changes."""
        for (unit, fraction), _ in _UNITS:
            if (unit, fraction) == value:
                self._desk.apply("Unit", set_unit(self._desk.project, unit, fraction))

    def on_focus_changed(self, _old: QWidget | None, new: QWidget | None) -> None:
        """Put the drawing away when another field of the form is in hand."""
        if new is not None and self.isAncestorOf(new) and not self.measurements.isAncestorOf(new):
            self.take.hide()
