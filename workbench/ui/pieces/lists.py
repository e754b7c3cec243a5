"""The lists at the right: bones, what to buy, the seams walked; one on show at a time."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from workbench.document import Project
from workbench.pieces import Cutting
from workbench.ui.desk import Desk
from workbench.ui.form.choice import Choice
from workbench.ui.look import GRID
from workbench.ui.pieces.bench import Bench, Worked
from workbench.ui.pieces.line_list import LineList, LineModel, copy_text
from workbench.ui.pieces.lines import Line, bone_lines, notion_lines, text_of, walk_lines

ListName = Literal["bones", "buy", "walks"]
WIDTH = 76 * GRID
_NAMES: tuple[tuple[ListName, str], ...] = (("bones", "Bones"), ("buy", "To buy"), ("walks", "Seams walked"))
_LINES: dict[ListName, Callable[[Cutting, Project], tuple[Line, ...]]] = {
    "bones": bone_lines,
    "buy": notion_lines,
    "walks": walk_lines,
}
_NOTHING = "The lists are made as soon as there are pieces."


class Lists(QWidget):
    """One list under three buttons, and a button that copies it."""

    def __init__(self, desk: Desk, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk, self._bench = desk, bench
        self._name: ListName = "bones"
        self._worked: Worked | None = None
        self.head = Choice("List", _NAMES, self)
        self.model = LineModel(self)
        self.view = LineList(self.model, self)
        self.copy = QPushButton("Copy as text", self)
        self.nothing = QLabel(_NOTHING, self)
        self._assemble()
        self._connect()
        self.head.show_value(self._name)
        self._fill()

    def _assemble(self) -> None:
        head = QHBoxLayout()
        head.setContentsMargins(3 * GRID, 2 * GRID, 3 * GRID, 2 * GRID)
        head.addWidget(self.head)
        foot = QHBoxLayout()
        foot.setContentsMargins(3 * GRID, GRID, 3 * GRID, 2 * GRID)
        foot.addWidget(self.copy, 0, Qt.AlignmentFlag.AlignLeft)
        self.nothing.setWordWrap(True)
        self.nothing.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self.nothing.setContentsMargins(3 * GRID, 2 * GRID, 3 * GRID, 0)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        column.addWidget(self.nothing, 1)
        column.addWidget(self.view, 1)
        column.addLayout(foot)
        self.setMinimumWidth(70 * GRID)

    def _connect(self) -> None:
        self.head.chosen.connect(self.on_list)
        self.view.pointed.connect(self.on_pointed)
        self.view.picked.connect(self.on_picked)
        self.view.copying.connect(self.on_copy)
        self.copy.clicked.connect(self.on_copy)
        self._bench.worked_out.connect(self.show_worked)

    @property
    def name(self) -> ListName:
        """The list on show."""
        return self._name

    def show_worked(self, worked: Worked) -> None:
        """Show what was worked out."""
        self._worked = worked
        self._fill()

    def _fill(self) -> None:
        cutting = self._worked.cutting if self._worked is not None else None
        self.nothing.setVisible(cutting is None)
        self.view.setVisible(cutting is not None)
        self.copy.setEnabled(cutting is not None)
        self.view.setAccessibleName(dict(_NAMES)[self._name])
        if cutting is not None and self._worked is not None:
            lines = _LINES[self._name](cutting, self._worked.picture.project)
            if self.model.show_lines(lines):
                self.view.scheduleDelayedItemsLayout()

    def on_list(self, name: object) -> None:
        """Another list is wanted."""
        self._name = next(known for known, _ in _NAMES if known == name)
        self._bench.light(())
        self._fill()
        self.view.scrollToTop()

    def on_pointed(self, line: Line | None) -> None:
        """Light up the bones that a line speaks of."""
        self._bench.light(line.bones if line is not None else ())

    def on_picked(self, line: Line | None) -> None:
        """Light up, everywhere, the place that a line speaks of."""
        if line is not None and line.place is not None:
            self._desk.select(line.place)

    def on_copy(self) -> None:
        """Put the list on show on the clipboard."""
        copy_text(text_of(dict(_NAMES)[self._name], self.model.lines))
