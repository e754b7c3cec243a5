"""A form of sections: a search box over them, and what a finding names brought into sight."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from workbench.document import Picture
from workbench.draft import Place
from workbench.ui.desk import Desk
from workbench.ui.form.choice import Segment
from workbench.ui.form.row import EDGE, Row
from workbench.ui.form.section import Section
from workbench.ui.look import GRID, fonts

USUAL_WIDTH, LEAST_WIDTH = 78 * GRID, 74 * GRID


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


class SectionsForm(QWidget):
    """Sections under a search box, one open at a time.

    ``beside`` stands in one line with the search box, ``below`` under it. Whoever derives it
    calls :meth:`show_picture`, and may add sections later.
    """

    sections: tuple[Section, ...]

    def __init__(
        self,
        desk: Desk,
        sections: Sequence[Section],
        parent: QWidget | None = None,
        *,
        beside: QWidget | None = None,
        below: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._desk, self._session = desk, desk.session
        self._lit: Row | None = None
        self.sections = ()
        self.search = SearchBox(self)
        if below is not None:
            below.setParent(self)  # now, so that the tab key comes to it before the sections
        self.nothing = QLabel(self)
        self._assemble(sections, beside, below)
        self.search.textChanged.connect(self.on_search)
        desk.selected.connect(self.show_selected)

    def _assemble(self, sections: Sequence[Section], beside: QWidget | None, below: QWidget | None) -> None:
        self._area = QScrollArea(self)
        self._area.setFrameShape(QFrame.Shape.NoFrame)
        self._area.setWidgetResizable(True)
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._area.setWidget(self._inside())
        for section in sections:
            self.add_section(section)
        self._column = column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._head(beside, below))
        column.addWidget(self._area, 1)
        self.setMinimumWidth(LEAST_WIDTH)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Expanding)

    def _inside(self) -> QWidget:
        inside = QWidget()
        self._rows = rows = QVBoxLayout(inside)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(0)
        self.nothing.setWordWrap(True)
        self.nothing.setContentsMargins(EDGE, 4 * GRID, EDGE, 0)
        self.nothing.hide()
        rows.addWidget(self.nothing)
        rows.addStretch(1)
        return inside

    def _head(self, beside: QWidget | None, below: QWidget | None) -> QWidget:
        head = QWidget(self)
        column = QVBoxLayout(head)
        column.setContentsMargins(EDGE, 2 * GRID, EDGE, 2 * GRID)
        column.setSpacing(2 * GRID)
        line = QHBoxLayout()
        line.setSpacing(2 * GRID)
        line.addWidget(self.search, 1)
        if beside is not None:
            line.addWidget(beside)
        column.addLayout(line)
        if below is not None:
            column.addWidget(below)
        return head

    def add_section(self, section: Section) -> None:
        """Add a section after the others."""
        self._rows.insertWidget(len(self.sections), section)
        self.sections = (*self.sections, section)
        section.turned.connect(self.on_turned)

    def sizeHint(self) -> QSize:
        """As wide as its rows are laid out for."""
        return QSize(USUAL_WIDTH, 150 * GRID)

    # --- what is shown -------------------------------------------------------------------

    def show_picture(self, picture: Picture) -> None:
        """Show what is stored, in the sections that are seen; another project clears what was being typed."""
        if self._session is not self._desk.session:
            self._session = self._desk.session
            self.begin_anew()
        for section in self.sections:
            section.show_picture(picture)

    def begin_anew(self) -> None:
        """Hold on to nothing that was typed for another project."""
        for section in self.sections:
            for row in section.rows:
                row.forget()

    def show_selected(self, place: Place | None) -> None:
        """Light up the field that a finding names, and bring it into sight."""
        row = self.row_at(place)
        if self._lit is not None:
            self._lit.show_lit(False)
        self._lit = row
        if row is not None:
            row.show_lit(True)
            self.bring(row)

    def row_at(self, place: Place | None) -> Row | None:
        """The row of a place, its section open; None where the place is no field of this form."""
        if place is None or place.field is None:
            return None
        for section in self.sections:
            if section.has(place.field):
                if not section.seen:
                    self.open(section)
                row = section.row_of(place.field, place.seam)
                if row is not None:
                    return row
        return None

    def bring(self, row: Row) -> None:
        """Scroll a row into sight, unless she is typing in it."""
        target = row.target()
        if target is None or not target.hasFocus():
            self._rows.activate()
            self._area.ensureWidgetVisible(row, 0, 8 * GRID)

    def open(self, section: Section) -> None:
        """Open a section, and close the others."""
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
            self.open(section)
            self._rows.activate()
            self._area.ensureWidgetVisible(section.header, 0, 0)
        else:
            section.show_opened(False)

    def on_search(self, wanted: str) -> None:
        """Show the fields that are called so, in whichever section they are."""
        wanted = wanted.strip()
        found = [section.search(wanted) for section in self.sections]
        self.nothing.setText(f"No field is called “{wanted}”.")
        self.nothing.setVisible(not any(found))


class OneOrAllForm(SectionsForm):
    """Sections, one open at a time or all of them; ``first`` is the one to begin with."""

    def __init__(
        self,
        desk: Desk,
        sections: Sequence[Section],
        first: Section,
        parent: QWidget | None = None,
        *,
        below: QWidget | None = None,
    ) -> None:
        button = Segment("All open", "All sections open")
        button.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        super().__init__(desk, sections, parent, beside=button, below=below)
        self.all = button
        self.first = first
        self.all.clicked.connect(self.on_all)
        first.show_opened(True)

    def open(self, section: Section) -> None:
        """Open a section, and close the others unless all may be open."""
        if self.all.isChecked():
            section.show_opened(True)
        else:
            super().open(section)

    def on_all(self, checked: bool) -> None:
        """Open all sections, or go back to one."""
        for section in self.sections:
            section.show_opened(checked or section is self.first)
