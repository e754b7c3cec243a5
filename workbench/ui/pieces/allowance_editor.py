"""A small field laid over an allowance on the table, to type it where it stands."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QRectF, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QWidget

from workbench.document import Project
from workbench.ui.form.entry import Entry
from workbench.ui.form.in_place import Complaint, tab_step
from workbench.ui.form.kinds import LengthKind
from workbench.ui.look import GRID
from workbench.ui.pieces.allowance_figures import AllowanceFigure
from workbench.ui.pieces.edges import edge_words

_WIDTH, _HEIGHT = 18 * GRID, 7 * GRID
_PROBLEM_WIDTH = 64 * GRID


class AllowanceEditor(Entry):
    """Enter keeps what was typed for this edge alone; empty, it takes its kind's again; Escape leaves."""

    typed = Signal(object, str)
    """The figure, and what was typed for it."""
    stepped_on = Signal(object, int)
    """The figure that was left, and +1 for the next edge of its piece or -1 for the one before."""
    closed = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__("Allowance", parent)
        self._table = parent
        self._figure: AllowanceFigure | None = None
        self._problem = Complaint(self, parent, _PROBLEM_WIDTH)
        self._problem.setObjectName("sheet")
        self._problem.setMargin(2 * GRID)
        self.setFixedSize(_WIDTH, _HEIGHT)
        self.entered.connect(self.on_entered)
        self.hide()

    @property
    def figure(self) -> AllowanceFigure | None:
        """The figure being typed."""
        return self._figure

    @property
    def problem(self) -> str:
        """Why what was typed could not be read; empty while there is nothing to say."""
        return self._problem.said

    def open_on(self, figure: AllowanceFigure, box: QRectF, project: Project) -> None:
        """Lay the field over a figure, all of it marked."""
        if figure.edge is None:
            return
        self._figure = figure
        self.setAccessibleName(f"Allowance: {edge_words(figure.edge, project.design)}")
        self.forget()
        self.show_suffix(project.unit)
        self.show_value(figure.amount, LengthKind().say(figure.amount, project))
        self.show_trouble(False)
        self._problem.hide()
        self.show_at(box)
        self.show()
        self.raise_()
        self.setFocus(Qt.FocusReason.OtherFocusReason)
        self.selectAll()

    def show_at(self, box: QRectF) -> None:
        """Keep over the figure, and inside the table."""
        x = min(max(box.center().x() - 0.5 * _WIDTH, 0), self._table.width() - _WIDTH)
        y = min(max(box.center().y() - 0.5 * _HEIGHT, 0), self._table.height() - _HEIGHT)
        self.move(round(x), round(y))

    def show_problem(self, sentence: str) -> None:
        """Say under the field why it cannot be kept; what was typed stays."""
        self.show_trouble(True)
        self._problem.say(sentence)

    def close_quietly(self) -> None:
        """Take the field away and change nothing."""
        if self._figure is not None:
            self._figure = None
            self._problem.hide()
            self.hide()
            self.closed.emit()

    def on_entered(self, text: str) -> None:
        """Hand in what was typed."""
        if self._figure is not None:
            self.typed.emit(self._figure, text)

    def event(self, event: QEvent) -> bool:
        """Tab keeps, and goes on to the next edge instead of leaving the table."""
        step = tab_step(event)
        if step is None:
            return super().event(event)
        self._go_on(step)
        return True

    def _go_on(self, step: int) -> None:
        figure = self._figure
        self.commit()
        if figure is not None and not self.problem:
            self.close_quietly()
            self.stepped_on.emit(figure, step)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter keeps and leaves, Escape leaves; neither goes on to the table."""
        if event.key() == Qt.Key.Key_Escape:
            self.close_quietly()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.commit()
            if not self.problem:
                self.close_quietly()
        else:
            super().keyPressEvent(event)
        event.accept()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """What was typed is kept when she turns to something else; what cannot be read is left."""
        super().focusOutEvent(event)
        if event.reason() != Qt.FocusReason.PopupFocusReason:
            self.close_quietly()
