"""The differences at the right, under a choice of what is compared."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from workbench.ui.desk import Desk
from workbench.ui.fitting.bench import Compared, FittingBench, Scope
from workbench.ui.fitting.words import lines_of
from workbench.ui.form.choice import Choice
from workbench.ui.look import GRID
from workbench.ui.pieces.line_list import LineList, LineModel, copy_text
from workbench.ui.pieces.lines import Line, text_of

WIDTH = 70 * GRID
_SCOPES: tuple[tuple[Scope, str], ...] = (("this", "This fitting"), ("all", "All carried in"))


class DifferenceList(QWidget):
    """What differs, in the user's unit; a line that is picked lights up everywhere."""

    def __init__(self, desk: Desk, bench: FittingBench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk, self._bench = desk, bench
        self.scope = Choice("Compare", _SCOPES, self)
        self.model = LineModel(self)
        self.view = LineList(self.model, self)
        self.view.setAccessibleName("Differences")
        self.copy = QPushButton("Copy as text", self)
        head = QHBoxLayout()
        head.setContentsMargins(3 * GRID, 2 * GRID, 3 * GRID, 2 * GRID)
        head.addWidget(self.scope)
        foot = QHBoxLayout()
        foot.setContentsMargins(3 * GRID, GRID, 3 * GRID, 2 * GRID)
        foot.addWidget(self.copy, 0, Qt.AlignmentFlag.AlignLeft)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        column.addWidget(self.view, 1)
        column.addLayout(foot)
        self.scope.show_value(bench.scope)
        self.scope.chosen.connect(self.on_scope)
        self.view.picked.connect(self.on_picked)
        self.view.copying.connect(self.on_copy)
        self.copy.clicked.connect(self.on_copy)
        bench.worked_out.connect(self.show_compared)

    def show_compared(self, compared: Compared) -> None:
        """Show what was worked out."""
        self.copy.setEnabled(bool(compared.differences))
        if self.model.show_lines(lines_of(compared)):
            self.view.scheduleDelayedItemsLayout()

    def on_scope(self, scope: object) -> None:
        """Compare something else."""
        self._bench.show_scope("all" if scope == "all" else "this")

    def on_picked(self, line: Line | None) -> None:
        """Light up, everywhere, what a line speaks of."""
        if line is not None and line.place is not None:
            self._desk.select(line.place)

    def on_copy(self) -> None:
        """Put the list on the clipboard."""
        copy_text(text_of("Differences", self.model.lines))
