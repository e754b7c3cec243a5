"""Rows that the sections of the quote share."""

from __future__ import annotations

from PySide6.QtWidgets import QPushButton, QWidget

from workbench.document import Picture
from workbench.ui.cloth.figures import Amount
from workbench.ui.desk import Desk
from workbench.ui.form.field import FigureRow
from workbench.ui.form.prose import Written
from workbench.ui.form.row import EDGE, Row
from workbench.ui.look import GRID

_FIELD, _TEXT = 32 * GRID, 44 * GRID


class QuoteRow(FigureRow):
    """One figure of the quote, with what is to be known about it."""

    def __init__(self, desk: Desk, figure: Amount | Written, remark: str = "", estimate: str = "",
                 width: int = _FIELD) -> None:  # fmt: skip
        super().__init__(desk, figure, width=width)
        self._remark, self._estimate = remark, estimate

    def show_picture(self, picture: Picture) -> None:
        """Show what is stored."""
        self.field.show_project(picture, self._estimate)
        if not self.trouble:
            self.say(self._remark)


class ButtonsRow(Row):
    """A few buttons side by side."""

    def __init__(self, *texts: str) -> None:
        super().__init__("", "")
        self.label.hide()
        self.words = " ".join(texts).lower()
        self.buttons = [QPushButton(text, self) for text in texts]
        for button in self.buttons:
            self.line.addWidget(button)
        self.line.addStretch(1)
        self.column.setContentsMargins(EDGE, 2 * GRID, EDGE, GRID)

    def target(self) -> QWidget | None:
        """The first of them."""
        return self.buttons[0]
