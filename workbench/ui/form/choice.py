"""One of a few: buttons side by side, of which one is in."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QHBoxLayout, QSizePolicy, QWidget

from workbench.ui.look import GRID, fonts, look

_HEIGHT = 7 * GRID
_ROUND = 3.0


class Segment(QAbstractButton):
    """One of the buttons; the one that is in is filled and underlined, not only coloured."""

    def __init__(self, text: str, name: str) -> None:
        super().__init__()
        self.setText(text)
        self.setAccessibleName(name)
        self.setCheckable(True)
        self.setFont(fonts().body)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setSizePolicy(QSizePolicy.Policy.MinimumExpanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        """Room for the text and a little around it."""
        return QSize(self.fontMetrics().horizontalAdvance(self.text()) + 4 * GRID, _HEIGHT)

    def minimumSizeHint(self) -> QSize:
        """The text is never cut off."""
        return QSize(self.fontMetrics().horizontalAdvance(self.text()) + 2 * GRID, _HEIGHT)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter does what a click does; arrows go to the next button."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A slip of paper, tinted while it is in."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.rect()).adjusted(1, 1, -1, -1)
        shape = QPainterPath()
        shape.addRoundedRect(box, _ROUND, _ROUND)
        tinted = self.isChecked() or self.isDown()
        painter.fillPath(shape, look().selected_fill if tinted else look().field)
        marked = self.isChecked() or self.hasFocus() or self.underMouse()
        painter.setPen(QPen(look().selected if marked else look().rule, 2 if self.hasFocus() else 1))
        painter.drawPath(shape)
        if self.isChecked():
            painter.fillRect(QRectF(box.left() + 6, box.bottom() - 3, box.width() - 12, 2), look().selected)
        painter.setPen(look().ink if self.isEnabled() else look().rule)
        painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, self.text())
        painter.end()


class Choice(QWidget):
    """Buttons that exclude each other."""

    chosen = Signal(object)
    """The value of the button she pressed; never said when a value is only shown."""

    def __init__(
        self, name: str, options: Sequence[tuple[object, str]], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self._values = [value for value, _ in options]
        self._group = QButtonGroup(self)
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(2)
        for number, (_, text) in enumerate(options):
            button = Segment(text, f"{name}: {text}")
            self._group.addButton(button, number)
            line.addWidget(button)
        self._group.idClicked.connect(self.on_clicked)

    @property
    def value(self) -> object:
        """What is in; None when nothing is."""
        number = self._group.checkedId()
        return self._values[number] if number >= 0 else None

    def button(self, value: object) -> QAbstractButton:
        """The button of a value."""
        return self._group.button(self._values.index(value))

    def show_value(self, value: object) -> None:
        """Show which is in. Setting a button by hand emits no click, so nobody is told."""
        self.button(value).setChecked(True)

    def show_nothing(self) -> None:
        """Show that none of them is in."""
        self._group.setExclusive(False)
        for button in self._group.buttons():
            button.setChecked(False)
        self._group.setExclusive(True)

    def show_offered(self, count: int) -> None:
        """Show only the first so many buttons."""
        for number, button in enumerate(self._group.buttons()):
            button.setVisible(number < count)

    def on_clicked(self, number: int) -> None:
        """Say which it is."""
        self.chosen.emit(self._values[number])
