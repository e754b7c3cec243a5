"""What the window asks of each of its places, whatever is done in it."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from PySide6.QtCore import Qt
from PySide6.QtGui import QFocusEvent, QHideEvent, QShowEvent
from PySide6.QtWidgets import QFrame, QLayout, QSplitter, QVBoxLayout, QWidget

USUAL_FORM, USUAL_REST = 312, 968
"""Pixels across of the form and of what stands beside it, before anybody has moved the edge."""


class PlacePage(QSplitter):
    """One place of the window: its form at the left, and the rest beside it.

    A place is made when it is first turned to, and works nothing out while it is out of sight.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.setHandleWidth(1)
        self.setChildrenCollapsible(False)
        self._first: QWidget | None = None

    def arrange(self, form: QWidget, *parts: QWidget | QLayout) -> None:
        """Put the form at the left, and beside it the parts below each other; the tallest one has the room.

        That is the first layout among them, else the first part; the last one is the sentence at the foot.
        """
        right = QWidget()
        column = QVBoxLayout(right)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        tallest = next((part for part in parts if isinstance(part, QLayout)), parts[0])
        for part in parts:
            stretch = int(part is tallest)
            if isinstance(part, QLayout):
                column.addLayout(part, stretch)
            else:
                column.addWidget(part, stretch)
        self.addWidget(form)
        self.addWidget(right)
        self.setStretchFactor(1, 1)
        self.setSizes([USUAL_FORM, USUAL_REST])

    def begin_at(self, widget: QWidget) -> None:
        """What has the keys when the place is turned to.

        It is no focus proxy: Tab would go past what stands before it, and never come to it.
        """
        self._first = widget

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Hand the keys on."""
        super().focusInEvent(event)
        if self._first is not None:
            self._first.setFocus(event.reason())

    def form_width(self) -> int:
        """Pixels across of the form, so that the next place has it as wide."""
        return self.sizes()[0]

    def has(self, field: str) -> bool:
        """Whether a field, as findings name it, is one of this place's."""
        raise NotImplementedError

    def fit(self) -> None:
        """Show all of the drawing; a place without one has nothing to do."""

    def switches(self) -> Mapping[str, Callable[[bool], None]]:
        """What can be shown and hidden here, by the action that does it."""
        return {}

    def deeds(self) -> Mapping[str, Callable[[], None]]:
        """What can be done here, by the action that does it."""
        return {}

    def rest(self) -> None:
        """End what goes on beside the window, and keep what it has found."""

    def set_in_sight(self, in_sight: bool) -> None:
        """Begin to work things out, or cease."""
        raise NotImplementedError

    def showEvent(self, event: QShowEvent) -> None:
        """Work out what is looked at."""
        super().showEvent(event)
        self.set_in_sight(True)

    def hideEvent(self, event: QHideEvent) -> None:
        """Work out nothing that nobody looks at."""
        self.set_in_sight(False)
        super().hideEvent(event)


def hairline(*, upright: bool = False) -> QFrame:
    """A hairline between two panes."""
    line = QFrame()
    line.setObjectName("hairline")
    if upright:
        line.setFixedWidth(1)
    else:
        line.setFixedHeight(1)
    line.setStyleSheet("QFrame#hairline { border: none; background: palette(midlight); }")
    return line
