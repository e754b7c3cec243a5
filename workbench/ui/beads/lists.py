"""The list at the right: what to buy, and what each run and scatter comes to."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from workbench.beads import Beaded, Beading, KindCount, per_strand_of
from workbench.body import say_with_unit
from workbench.cloth import say_money
from workbench.document import Project
from workbench.draft import Place
from workbench.ui.beads.bench import BeadsBench, Worked
from workbench.ui.beads.spread import Owner
from workbench.ui.desk import Desk
from workbench.ui.look import GRID
from workbench.ui.marks import Mark
from workbench.ui.pieces.line_list import LineList, LineModel, copy_text
from workbench.ui.pieces.lines import Line, text_of

WIDTH = 68 * GRID
_TITLE = "Beads"
_NOTHING = "The list is made as soon as there are beads."


def bead_lines(beading: Beading, project: Project) -> tuple[Line, ...]:
    """What to buy by kind, then runs and scatters with their counts."""
    return (*_to_buy(beading, project), *_laid(beading, project))


def _to_buy(beading: Beading, project: Project) -> Iterator[Line]:
    count = beading.count
    yield Line("To buy", f"{count.total:,} sewn on", heading=True)
    for line in count.kinds:
        yield _kind(line, project)
    if count.cost:
        yield Line("All strands", say_money(count.cost, project.quoting.currency))
    if count.hours:
        rate = f"at {beading.plan.per_minute:g} beads a minute"
        yield Line("Sewing them on", f"{count.hours} h", rate, place=Place(field="beads.per_minute"))


def _kind(line: KindCount, project: Project) -> Line:
    strands = f"{line.strands:,} strand{'' if line.strands == 1 else 's'} of {per_strand_of(line.kind):,}"
    cost = "no price yet" if line.cost is None else say_money(line.cost, project.quoting.currency)
    note = f"{line.with_reserve:,} with the reserve: {strands}, {cost}"
    return Line(line.kind.name, f"{line.total:,}", note)


def _laid(beading: Beading, project: Project) -> Iterator[Line]:
    runs = len(beading.plan.runs)
    for number, each in enumerate(beading.beaded):
        owner = Owner("runs", number) if number < runs else Owner("scatters", number - runs)
        place = Place(field=owner.field)
        mark: Mark | None = None if each.total else "attend"
        yield Line(each.name, f"{each.total:,}", _rows(each, project), mark, heading=True, place=place)
        for kind, count in each.counts.items():
            yield Line(kind, f"{count:,}", indent=True, place=place)


def _rows(each: Beaded, project: Project) -> str:
    """Lengths of its rows on the half, and how many places of them have a bead."""
    if not each.rows:
        return "" if each.total else "nothing is laid: see the foot"
    length = say_with_unit(sum(row.length for row in each.rows), project.unit, project.fraction)
    asked, placed = sum(row.asked for row in each.rows), sum(row.placed for row in each.rows)
    rows = f"{len(each.rows)} row{'' if len(each.rows) == 1 else 's'}"
    return f"{rows} on the half, {length}; {placed:,} of {asked:,} places"


class BeadList(QWidget):
    """The list, and a button that copies it."""

    def __init__(self, desk: Desk, bench: BeadsBench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.model = LineModel(self)
        self.view = LineList(self.model, self)
        self.view.setAccessibleName("Beads to buy, runs and scatters")
        self.copy = QPushButton("Copy as text", self)
        self.nothing = QLabel(_NOTHING, self)
        self._assemble()
        self.view.picked.connect(self.on_picked)
        self.view.copying.connect(self.on_copy)
        self.copy.clicked.connect(self.on_copy)
        bench.worked_out.connect(self.show_worked)
        self._show(())

    def _assemble(self) -> None:
        self.nothing.setWordWrap(True)
        self.nothing.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self.nothing.setContentsMargins(3 * GRID, 3 * GRID, 3 * GRID, 0)
        foot = QHBoxLayout()
        foot.setContentsMargins(3 * GRID, GRID, 3 * GRID, 2 * GRID)
        foot.addWidget(self.copy, 0, Qt.AlignmentFlag.AlignLeft)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, GRID, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.nothing, 1)
        column.addWidget(self.view, 1)
        column.addLayout(foot)

    def show_worked(self, worked: Worked) -> None:
        """Show what was worked out."""
        beading = worked.beading
        self._show(bead_lines(beading, worked.picture.project) if beading is not None else ())

    def _show(self, lines: tuple[Line, ...]) -> None:
        self.nothing.setVisible(not lines)
        self.view.setVisible(bool(lines))
        self.copy.setEnabled(bool(lines))
        if self.model.show_lines(lines):
            self.view.scheduleDelayedItemsLayout()

    def on_picked(self, line: Line | None) -> None:
        """Light up, everywhere, what a line speaks of."""
        if line is not None and line.place is not None:
            self._desk.select(line.place)

    def on_copy(self) -> None:
        """Put the list on the clipboard."""
        copy_text(text_of(_TITLE, self.model.lines))
