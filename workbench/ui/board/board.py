"""The board: the canvas and the girth strip, on the same level lines."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QWidget

from workbench.document import Picture
from workbench.sheets import Layout
from workbench.ui.board.canvas import Canvas
from workbench.ui.board.strip import Strip
from workbench.ui.board.view import Sight
from workbench.ui.desk import Desk

_STRIP_MOST = 380


class Board(QWidget):
    """Assembles canvas and strip round one view."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.sight = Sight(self)
        self.canvas = Canvas(desk, self.sight, self)
        self.strip = Strip(desk, self.sight, self)
        self.strip.setMaximumWidth(_STRIP_MOST)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(self.canvas, 74)
        row.addWidget(self.strip, 26)
        self.setAccessibleName("Panels and girths")
        self.setFocusProxy(self.canvas)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        desk.drafted.connect(self.show_picture)
        desk.selected.connect(self.canvas.show_selection)
        desk.selected.connect(self.strip.show_selection)
        self.show_picture(desk.picture)

    def show_picture(self, picture: Picture) -> None:
        """Show another picture on both."""
        self.canvas.show_picture(picture)
        self.strip.show_picture(picture)

    def set_layout(self, name: Layout) -> None:
        """Lay the panels ``apart``, on the ``block``, or ``both`` halves."""
        self.canvas.set_layout_name(name)

    def fit(self) -> None:
        """Show all of the panels and every level."""
        self.canvas.fit()

    def set_flare_shown(self, on: bool) -> None:
        """Show or hide how sharply the seams flare."""
        self.canvas.set_flare_shown(on)

    def set_grid(self, on: bool) -> None:
        """Show or hide the grid."""
        self.canvas.set_grid(on)

    def set_allowance_shown(self, on: bool) -> None:
        """Show or hide the cut lines."""
        self.canvas.set_allowance_shown(on)
