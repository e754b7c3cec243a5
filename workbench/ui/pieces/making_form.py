"""The form of the pieces place: how the bodice is made, in the order in which it is decided."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from workbench.document import Picture
from workbench.draft import Place
from workbench.ui.desk import Desk
from workbench.ui.form.choice import Segment
from workbench.ui.form.form import LEAST_WIDTH, USUAL_WIDTH, SearchBox
from workbench.ui.form.row import EDGE, Row
from workbench.ui.look import GRID
from workbench.ui.pieces.allowances import Allowances
from workbench.ui.pieces.bench import Bench, Laid, Worked
from workbench.ui.pieces.layers import Layers
from workbench.ui.pieces.section import MakingSection
from workbench.ui.pieces.sections import BackOpening, Bones, Facings, Front, Notches


class MakingForm(QWidget):
    """Sections, one open at a time or all of them, under a search box."""

    def __init__(self, desk: Desk, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk, self._session = desk, desk.session
        self._lit: Row | None = None
        self.search = SearchBox(self)
        self.all = Segment("All open", "All sections open")
        self.sections: tuple[MakingSection, ...] = tuple(
            kind(desk, bench) for kind in (Layers, Allowances, Notches, Front, BackOpening, Bones, Facings)
        )
        self.nothing = QLabel(self)
        self._assemble()
        self._connect(bench)
        self.sections[0].show_opened(True)

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
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._head())
        column.addWidget(self._area, 1)
        self.setMinimumWidth(LEAST_WIDTH)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Expanding)

    def _head(self) -> QWidget:
        head = QWidget(self)
        line = QHBoxLayout(head)
        line.setContentsMargins(EDGE, 2 * GRID, EDGE, 2 * GRID)
        line.setSpacing(2 * GRID)
        line.addWidget(self.search, 1)
        line.addWidget(self.all)
        self.all.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        return head

    def _connect(self, bench: Bench) -> None:
        for section in self.sections:
            section.turned.connect(self.on_turned)
        self.all.clicked.connect(self.on_all)
        self.search.textChanged.connect(self.on_search)
        bench.laid.connect(self.show_laid)
        bench.worked_out.connect(self.show_worked)
        self._desk.selected.connect(self.show_selected)

    def sizeHint(self) -> QSize:
        """As wide as its rows are laid out for."""
        return QSize(USUAL_WIDTH, 150 * GRID)

    # --- what is shown -------------------------------------------------------------------

    def show_laid(self, laid: Laid) -> None:
        """Show what is stored."""
        self._show(laid.picture)

    def show_worked(self, worked: Worked) -> None:
        """Show what follows from it too: a busk that fits, how many eyelets."""
        self._show(worked.picture)

    def _show(self, picture: Picture) -> None:
        if self._session is not self._desk.session:
            self._session = self._desk.session
            for section in self.sections:
                for row in section.rows:
                    row.forget()
        for section in self.sections:
            section.show_picture(picture)

    def show_selected(self, place: Place | None) -> None:
        """Light up the field that a finding names, and bring it into sight."""
        row = self._row_of(place)
        if self._lit is not None:
            self._lit.show_lit(False)
        self._lit = row
        if row is not None:
            row.show_lit(True)
            target = row.target()
            if target is None or not target.hasFocus():
                self._rows.activate()
                self._area.ensureWidgetVisible(row, 0, 8 * GRID)

    def _row_of(self, place: Place | None) -> Row | None:
        if place is None or place.field is None:
            return None
        for section in self.sections:
            if section.has(place.field):
                if not section.seen:
                    self._open(section)
                return section.row_of(place.field, place.seam)
        return None

    def _open(self, section: MakingSection) -> None:
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
        if not isinstance(section, MakingSection):
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
            section.show_opened(checked or section is self.sections[0])

    def on_search(self, wanted: str) -> None:
        """Show the fields that are called so, in whichever section they are."""
        wanted = wanted.strip()
        found = [section.search(wanted) for section in self.sections]
        self.nothing.setText(f"No field is called “{wanted}”.")
        self.nothing.setVisible(not any(found))
