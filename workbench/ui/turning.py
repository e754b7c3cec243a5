"""Turning from one place of the window to another, and what is spared meanwhile."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QSplitter, QWidget

from workbench.ui.actions import PLACES, PlaceName
from workbench.ui.files import settle
from workbench.ui.look import GRID

if TYPE_CHECKING:
    from workbench.ui.cloth import ClothPlace
    from workbench.ui.pieces import PiecesPlace
    from workbench.ui.quote import QuotePlace
    from workbench.ui.window import Window

_FORM_WIDTH = 78 * GRID


class Turning(QObject):
    """Turns the pages of one window; makes a place when it is first turned to."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self._window = window
        self._pieces: PiecesPlace | None = None
        self._cloth: ClothPlace | None = None
        self._quote: QuotePlace | None = None
        self._ledger_waits = False
        deeds = window.deeds
        for name in PLACES:
            deeds[name].triggered.connect(self.on_place)
        for deed, told in {
            "halves": self.on_halves,
            "lists": self.on_lists,
            "compare": self.on_compare,
            "client_page": self.on_client_page,
        }.items():
            deeds[deed].toggled.connect(told)
        deeds["fit"].triggered.connect(self.on_fit)
        deeds["better"].triggered.connect(self.on_better)

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
    def cloth(self) -> ClothPlace:
        """The cloth place, made when it is first turned to."""
        if self._cloth is None:
            from workbench.ui.cloth import ClothPlace

            self._cloth = ClothPlace(self._window.desk)
            self._cloth.set_compare_shown(self._window.deeds["compare"].isChecked())
            self._window.pages.addWidget(self._cloth)
        return self._cloth

    @property
    def quote(self) -> QuotePlace:
        """The quote place, made when it is first turned to."""
        if self._quote is None:
            from workbench.ui.quote import QuotePlace

            self._quote = QuotePlace(self._window.desk)
            self._quote.set_page_shown(self._window.deeds["client_page"].isChecked())
            self._quote.page.print.clicked.connect(self._window.deeds["print"].trigger)
            self._quote.inside.print.clicked.connect(self._window.deeds["print_inside"].trigger)
            self._window.pages.addWidget(self._quote)
        return self._quote

    @property
    def place(self) -> PlaceName:
        """The place in sight, or the one that an open project begins in."""
        shown = self._window.pages.currentWidget()
        made: dict[PlaceName, QWidget | None] = {
            "pieces": self._pieces,
            "cloth": self._cloth,
            "quote": self._quote,
        }
        return next((name for name, page in made.items() if page is not None and page is shown), "draft")

    def is_place(self, page: QWidget | None) -> bool:
        """Whether a page is a place of the open project, as opposed to the welcome page."""
        places = (self._window.work, self._pieces, self._cloth, self._quote)
        return page is not None and any(page is place for place in places)

    def page_of(self, name: PlaceName) -> QSplitter:
        """The page of a place, made if need be."""
        if name == "pieces":
            return self.pieces
        if name == "cloth":
            return self.cloth
        return self.quote if name == "quote" else self._window.work

    def owner_of(self, field: str) -> PlaceName:
        """The place whose form has a field, as findings name it; the one in sight before any other."""
        page = {"pieces": self._pieces, "cloth": self._cloth, "quote": self._quote}.get(self.place)
        if page is not None and page.has(field):
            return self.place
        if field.startswith("cloths."):
            return "cloth"
        if field.startswith("quoting."):
            return "quote"
        return "pieces" if self._pieces is not None and self._pieces.has(field) else "draft"

    def show_place(self, name: PlaceName) -> None:
        """Turn the open project to a place; what is still being typed is handed in first."""
        window, before = self._window, self.place
        if not window.at_work or name == before:
            return
        settle()
        page = self.page_of(name)
        if before == "draft":
            self._leave_draft()
        if name == "draft":
            self._return_to_draft()
        else:
            # the form is as wide in every place, so that nothing jumps
            form = self._form_width(before)
            page.setSizes([form, window.width() - form])
        window.turn_to(page)
        (window.board if name == "draft" else page).setFocus()
        window.ledger.setVisible(name == "draft" and self._ledger_waits)
        self._ledger_waits = self._ledger_waits and name != "draft"

    def _form_width(self, place: PlaceName) -> int:
        if place != "draft":
            return self.page_of(place).sizes()[0]
        form = self._window.form
        return form.width() if not form.isHidden() else _FORM_WIDTH

    def _leave_draft(self) -> None:
        """Spare the panes of the draft."""
        window = self._window
        for pane in (window.form, window.board):
            window.desk.drafted.disconnect(pane.show_picture)
        self._ledger_waits = window.ledger.isVisible()

    def _return_to_draft(self) -> None:
        """Show the panes of the draft what they have missed, and let them follow again."""
        desk = self._window.desk
        for pane in (self._window.form, self._window.board):
            pane.show_picture(desk.picture)
            desk.drafted.connect(pane.show_picture)

    def rest(self) -> None:
        """End what goes on beside the window, and keep what it has found."""
        if self._cloth is not None:
            self._cloth.search.stop()

    # --- what she does -------------------------------------------------------------------

    def on_place(self) -> None:
        """Turn to the place whose action is checked."""
        self.show_place(next(name for name in PLACES if self._window.deeds[name].isChecked()))

    def on_fit(self) -> None:
        """Show all of the drawing in the place in sight."""
        if self.place == "pieces":
            self.pieces.fit()
        elif self.place == "cloth":
            self.cloth.fit()
        elif self.place == "draft":
            self._window.board.fit()

    def on_better(self) -> None:
        """Seek a better plan for the cloth on show."""
        if self._cloth is not None:
            self._cloth.seek()

    def on_halves(self, on: bool) -> None:
        """Show or hide the other half of the pieces."""
        if self._pieces is not None:
            self._pieces.set_halves(on)

    def on_lists(self, on: bool) -> None:
        """Show or hide the lists of the pieces place."""
        if self._pieces is not None:
            self._pieces.set_lists_shown(on)

    def on_compare(self, on: bool) -> None:
        """Show or hide the table of other ways to cut a cloth."""
        if self._cloth is not None:
            self._cloth.set_compare_shown(on)

    def on_client_page(self, on: bool) -> None:
        """Show or hide the client's page of the quote."""
        if self._quote is not None:
            self._quote.set_page_shown(on)
