"""Turning from one place of the window to another, and what is spared meanwhile."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from workbench.ui.actions import PLACES, PlaceName
from workbench.ui.files import settle
from workbench.ui.look import GRID

if TYPE_CHECKING:
    from workbench.ui.pieces import PiecesPlace
    from workbench.ui.window import Window

_FORM_WIDTH = 78 * GRID


class Turning(QObject):
    """Turns the pages of one window; makes a place when it is first turned to."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self._window = window
        self._pieces: PiecesPlace | None = None
        self._ledger_waits = False
        deeds = window.deeds
        for name in PLACES:
            deeds[name].triggered.connect(self.on_place)
        deeds["fit"].triggered.connect(self.on_fit)
        deeds["halves"].toggled.connect(self.on_halves)
        deeds["lists"].toggled.connect(self.on_lists)

    @property
    def pieces_made(self) -> bool:
        """Whether the pieces place has been turned to yet."""
        return self._pieces is not None

    @property
    def ledger_waits(self) -> bool:
        """Whether the ledger is put away until the draft is in sight again."""
        return self._ledger_waits

    @property
    def pieces(self) -> PiecesPlace:
        """The pieces place: the start of the program need not wait for it."""
        if self._pieces is None:
            from workbench.ui.pieces import PiecesPlace

            self._pieces = PiecesPlace(self._window.desk)
            self._pieces.set_halves(self._window.deeds["halves"].isChecked())
            self._pieces.set_lists_shown(self._window.deeds["lists"].isChecked())
            self._window.pages.addWidget(self._pieces)
        return self._pieces

    @property
    def place(self) -> PlaceName:
        """The place in sight, or the one that an open project begins in."""
        return "pieces" if self.pieces_made and self._is_shown(self.pieces) else "draft"

    def is_place(self, page: QWidget | None) -> bool:
        """Whether a page is a place of the open project, as opposed to the welcome page."""
        return page is self._window.work or (self.pieces_made and page is self.pieces)

    def show_place(self, name: PlaceName) -> None:
        """Turn the open project to a place; what is still being typed is handed in first."""
        window = self._window
        if not window.at_work or name == self.place:
            return
        settle()
        if name == "pieces":
            self._leave_draft()
            window.turn_to(self.pieces)
            self.pieces.setFocus()
        else:
            self._return_to_draft()
            window.turn_to(window.work)
            window.board.setFocus()
        window.ledger.setVisible(name == "draft" and self._ledger_waits)
        self._ledger_waits = self._ledger_waits and name != "draft"

    def _leave_draft(self) -> None:
        """Spare the panes of the draft; the form is as wide in every place, so that nothing jumps."""
        window = self._window
        for pane in (window.form, window.board):
            window.desk.drafted.disconnect(pane.show_picture)
        form = window.form.width() if not window.form.isHidden() else _FORM_WIDTH
        self.pieces.setSizes([form, window.width() - form])
        self._ledger_waits = window.ledger.isVisible()

    def _return_to_draft(self) -> None:
        """Show the panes of the draft what they have missed, and let them follow again."""
        desk = self._window.desk
        for pane in (self._window.form, self._window.board):
            pane.show_picture(desk.picture)
            desk.drafted.connect(pane.show_picture)

    def _is_shown(self, page: QWidget) -> bool:
        return self._window.pages.currentWidget() is page

    # --- what she does -------------------------------------------------------------------

    def on_place(self) -> None:
        """Turn to the place whose action is checked."""
        self.show_place(next(name for name in PLACES if self._window.deeds[name].isChecked()))

    def on_fit(self) -> None:
        """Show all of the drawing in the place in sight."""
        if self.place == "pieces":
            self.pieces.fit()
        else:
            self._window.board.fit()

    def on_halves(self, on: bool) -> None:
        """Show or hide the other half of the pieces."""
        if self._pieces is not None:
            self._pieces.set_halves(on)

    def on_lists(self, on: bool) -> None:
        """Show or hide the lists of the pieces place."""
        if self._pieces is not None:
            self._pieces.set_lists_shown(on)
