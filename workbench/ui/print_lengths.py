"""A length to type in a dialog, with what is wrong with it said underneath."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from workbench.body import Fraction, LengthError, Unit, read_length, say_exact, snap, step_mm
from workbench.ui.form.entry import Entry
from workbench.ui.look import GRID, fonts, look

_WIDTH = 26 * GRID


class LengthRow(QWidget):
    """A label, a field, and words below where the field cannot be read; ``mm`` is the last good length.

    With ``in_mm`` the unit is the millimetre whatever unit she works in, as on a printer.
    """

    changed = Signal()

    def __init__(self, label: str, low: float = 0.0, high: float = 5080.0, in_mm: bool = False) -> None:
        super().__init__()
        self.mm = 0.0
        self._in_mm = in_mm
        self._low, self._high = low, high
        self._unit: Unit = "in"
        self._fraction: Fraction = 8
        self.field = Entry(label)
        self.field.setFixedWidth(_WIDTH)
        self.trouble = QLabel()
        self.trouble.setFont(fonts().small)
        self.trouble.setWordWrap(True)
        self.trouble.hide()
        line = QHBoxLayout()
        line.addWidget(QLabel(label), 1)
        line.addWidget(self.field)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        column.addLayout(line)
        column.addWidget(self.trouble)
        self.field.entered.connect(self.on_entered)
        self.field.stepped.connect(self.on_stepped)
        self.field.restored.connect(self.on_restored)

    def show_length(self, mm: float, unit: Unit, fraction: Fraction) -> None:
        """Show a length in the user's unit."""
        self.mm, self._unit, self._fraction = mm, unit, fraction
        self.field.show_suffix("mm" if self._in_mm else unit)
        self.field.show_value((mm, unit), f"{mm:g}" if self._in_mm else say_exact(mm, unit))

    def on_entered(self, text: str) -> None:
        """Read what was typed, or say why that cannot be."""
        bare = self._in_mm and text.strip()[-1:].isdigit()
        try:
            mm = read_length(f"{text} mm" if bare else text, self._unit, low=self._low, high=self._high).mm
        except LengthError as error:
            self._say(str(error))
            return
        self._take(mm)

    def on_stepped(self, steps: int) -> None:
        """One step of the ruler more or less."""
        if self._in_mm:
            mm = round(self.mm) + float(steps)
        else:
            here = snap(self.mm, self._unit, self._fraction)
            mm = here + steps * step_mm(self._unit, self._fraction)
        self._take(min(max(mm, self._low), self._high))

    def on_restored(self) -> None:
        """Nothing is wrong any more."""
        self._say("")

    def _take(self, mm: float) -> None:
        self._say("")
        self.field.forget()
        self.mm = mm
        self.changed.emit()

    def _say(self, sentence: str) -> None:
        self.field.show_trouble(bool(sentence))
        palette = self.trouble.palette()
        palette.setColor(self.trouble.foregroundRole(), look().attend)
        self.trouble.setPalette(palette)
        self.trouble.setText(sentence)
        self.trouble.setVisible(bool(sentence))
