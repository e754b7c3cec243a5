"""A small field laid over an intake figure, to type it where it stands."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QRectF, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from workbench.body import LEVEL_LABEL, LengthError, Unit, read_length, say_exact
from workbench.draft import Design, seam_name
from workbench.ui.board.figures import Figure
from workbench.ui.form.in_place import Complaint, tab_step
from workbench.ui.look import fonts, look

_WIDTH, _HEIGHT = 64, 24
_PROBLEM_WIDTH, _EDGE = 240, 4
_MOST = 500.0
"""mm: a larger intake at one seam is a slip of the key."""


class FigureEditor(QLineEdit):
    """Enter pins what was typed; empty, or by Delete while all of it is marked, it unpins; Escape leaves."""

    pinned = Signal(object, float)
    """The figure, and the mm typed."""
    unpinned = Signal(object)
    """The figure."""
    stepped = Signal(object, int)
    """The figure that was left, and +1 for the next one or -1 for the one before."""
    refused = Signal(object, str)
    """A figure that was left with something in it that cannot be read, and why."""
    closed = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._parent = parent
        self._figure: Figure | None = None
        self._unit: Unit = "in"
        self._shown = ""
        self._problem = Complaint(self, parent, _PROBLEM_WIDTH, _EDGE)
        self.setAccessibleName("Intake")
        self.setFont(fonts().body)
        self.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.hide()

    @property
    def figure(self) -> Figure | None:
        """The figure being typed."""
        return self._figure

    @property
    def problem(self) -> str:
        """Why what was typed could not be read; empty while there is nothing to say."""
        return self._problem.said

    def open_on(self, figure: Figure, box: QRectF, unit: Unit, design: Design) -> None:
        """Lay the field over a figure, all of it marked."""
        self._figure, self._unit = figure, unit
        self._shown = say_exact(figure.amount, unit)
        self.setText(self._shown)
        seam, level = seam_name(figure.key.seam, design), LEVEL_LABEL[figure.key.level].lower()
        self.setAccessibleName(f"Intake of the {seam} at the {level}, {figure.key.side} side")
        self.show_at(box)
        self._problem.hide()
        self.show()
        self.raise_()
        self.selectAll()
        self.setFocus(Qt.FocusReason.OtherFocusReason)

    def close_quietly(self) -> None:
        """Take the field away and change nothing."""
        if self._figure is not None:
            self._figure = None
            self._problem.hide()
            self.hide()
            self.closed.emit()

    def event(self, event: QEvent) -> bool:
        """Tab pins and goes on to the next figure instead of leaving the canvas."""
        step = tab_step(event)
        if step is None:
            return super().event(event)
        self._on_tab(step)
        return True

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter pins, Escape leaves, Delete on a whole marked figure unpins; none goes on to the canvas."""
        if event.key() == Qt.Key.Key_Escape:
            self.close_quietly()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._on_return()
        elif event.key() == Qt.Key.Key_Delete and self.selectedText() == self.text():
            self._unpin()
        else:
            super().keyPressEvent(event)
        event.accept()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """What was typed is kept when she turns away; what cannot be read is refused in words."""
        super().focusOutEvent(event)
        if event.reason() != Qt.FocusReason.PopupFocusReason and self._figure is not None:
            figure, kept = self._figure, self._take()
            why = self._problem.text()
            self.close_quietly()
            if not kept:
                self.refused.emit(figure, why)

    def _on_return(self) -> None:
        if not self.text().strip():
            self._unpin()
        elif self._take(even_unchanged=True):
            self.close_quietly()

    def _on_tab(self, step: int) -> None:
        figure = self._figure
        if figure is not None and self._take():
            self.close_quietly()
            self.stepped.emit(figure, step)

    def _unpin(self) -> None:
        figure = self._figure
        self.close_quietly()
        if figure is not None:
            self.unpinned.emit(figure)

    def _take(self, *, even_unchanged: bool = False) -> bool:
        """Pin what was typed; False, and the reason below the field, where it cannot be read."""
        if self._figure is None or (self.text() == self._shown and not even_unchanged):
            return True
        if not self.text().strip():
            self._unpin()
            return True
        if self.text() == self._shown:
            self.pinned.emit(self._figure, self._figure.amount)
            return True
        try:
            mm = read_length(self.text(), self._unit, low=0.0, high=_MOST).mm
        except LengthError as error:
            self._complain(str(error))
            return False
        self.pinned.emit(self._figure, mm)
        return True

    def show_at(self, box: QRectF) -> None:
        """Lie over these pixels of the canvas."""
        middle = box.center()
        most = max(self._parent.width() - _WIDTH - _EDGE, _EDGE)
        left = min(max(int(middle.x() - _WIDTH / 2), _EDGE), most)
        self.setGeometry(left, int(middle.y() - _HEIGHT / 2), _WIDTH, _HEIGHT)

    def _complain(self, sentence: str) -> None:
        shown = look()
        self._problem.setStyleSheet(
            f"background: {shown.attend_fill.name()}; color: {shown.ink.name()};"
            f"border: 1px solid {shown.attend.name()}; border-radius: 3px; padding: 4px;"
        )
        self._problem.say(sentence)
