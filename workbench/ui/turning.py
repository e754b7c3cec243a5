"""Turning from one place of the window to another, and what is spared meanwhile."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QSplitter, QWidget

from workbench.ui.actions import IN_PLACE, PLACES, PlaceName
from workbench.ui.files import settle
from workbench.ui.look import GRID

if TYPE_CHECKING:
    from workbench.ui.place import PlacePage
    from workbench.ui.window import Window

_FORM_WIDTH = 78 * GRID
_OF_DRAFT: PlaceName = "draft"


def _pieces(window: Window) -> PlacePage:
    from workbench.ui.pieces import PiecesPlace

    return PiecesPlace(window.desk)


def _beads(window: Window) -> PlacePage:
    from workbench.ui.beads import BeadsPlace

    return BeadsPlace(window.desk)


def _cloth(window: Window) -> PlacePage:
    from workbench.ui.cloth import ClothPlace

    return ClothPlace(window.desk)


def _quote(window: Window) -> PlacePage:
    from workbench.ui.quote import QuotePlace

    place = QuotePlace(window.desk)
    place.page.print.clicked.connect(window.deeds["print"].trigger)
    place.inside.print.clicked.connect(window.deeds["print_inside"].trigger)
    return place


def _marking(window: Window) -> PlacePage:
    from workbench.ui.marking import MarkingPlace

    place = MarkingPlace(window.desk)
    place.pane.export_wanted.connect(window.deeds["export"].trigger)
    return place


def _sewing(window: Window) -> PlacePage:
    from workbench.ui.sewing import SewingPlace

    return SewingPlace(window.desk)


def _fittings(window: Window) -> PlacePage:
    from workbench.ui.fitting import FittingPlace

    return FittingPlace(window.desk)


_MAKERS: Mapping[PlaceName, Callable[[Window], PlacePage]] = {
    "pieces": _pieces,
    "beads": _beads,
    "cloth": _cloth,
    "quote": _quote,
    "marking": _marking,
    "sewing": _sewing,
    "fittings": _fittings,
}
"""Each imports its place when it is first turned to: the start of the program need not wait for it."""
_FIELDS_OF: Mapping[str, PlaceName] = {
    "beads": "beads",
    "cloths": "cloth",
    "quoting": "quote",
    "fittings": "fittings",
}
"""The place that has the fields of one entry of the project, by its name."""


class Turning(QObject):
    """Turns the pages of one window; makes a place when it is first turned to."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self._window = window
        self._made: dict[PlaceName, PlacePage] = {}
        self._ledger_waits = False
        deeds = window.deeds
        for name in PLACES:
            deeds[name].triggered.connect(self.on_place)
        for deed in {deed for owner in _MAKERS for deed in IN_PLACE[owner]}:
            told = deeds[deed].toggled if deeds[deed].isCheckable() else deeds[deed].triggered
            told.connect(self.on_deed)
        deeds["fit"].triggered.connect(self.on_fit)

    def made(self, name: PlaceName) -> bool:
        """Whether a place has been turned to yet."""
        return name in self._made

    @property
    def ledger_waits(self) -> bool:
        """Whether the ledger is put away until the draft is in sight again."""
        return self._ledger_waits

    def page(self, name: PlaceName) -> PlacePage:
        """A place other than the draft, made if need be and showing what it is to show."""
        if name not in self._made:
            place = self._made[name] = _MAKERS[name](self._window)
            for deed, show in place.switches().items():
                show(self._window.deeds[deed].isChecked())
            self._window.pages.addWidget(place)
        return self._made[name]

    @property
    def place(self) -> PlaceName:
        """The place in sight, or the one that an open project begins in."""
        shown = self._window.pages.currentWidget()
        return next((name for name, page in self._made.items() if page is shown), _OF_DRAFT)

    def is_place(self, page: QWidget | None) -> bool:
        """Whether a page is a place of the open project, as opposed to the welcome page."""
        return page is not None and any(page is place for place in (self._window.work, *self._made.values()))

    def page_of(self, name: PlaceName) -> QSplitter:
        """The page of any place, made if need be."""
        return self._window.work if name == _OF_DRAFT else self.page(name)

    def owner_of(self, field: str) -> PlaceName:
        """The place whose form has a field, as findings name it; the one in sight before any other."""
        here = self._made.get(self.place)
        if here is not None and here.has(field):
            return self.place
        known = _FIELDS_OF.get(field.partition(".")[0])
        if known is not None:
            return known
        return next((name for name, page in self._made.items() if page.has(field)), _OF_DRAFT)

    def show_place(self, name: PlaceName) -> None:
        """Turn the open project to a place; what is still being typed is handed in first."""
        window, before = self._window, self.place
        if not window.at_work or name == before:
            return
        settle()
        page = self.page_of(name)
        if before == _OF_DRAFT:
            self._leave_draft()
        if name == _OF_DRAFT:
            self._return_to_draft()
        else:
            # the form is as wide in every place, so that nothing jumps
            form = self._form_width(before)
            page.setSizes([form, window.width() - form])
        window.turn_to(page)
        (window.board if name == _OF_DRAFT else page).setFocus()
        window.ledger.setVisible(name == _OF_DRAFT and self._ledger_waits)
        self._ledger_waits = self._ledger_waits and name != _OF_DRAFT

    def _form_width(self, place: PlaceName) -> int:
        if place != _OF_DRAFT:
            return self.page(place).form_width()
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
        for page in self._made.values():
            page.rest()

    # --- what she does -------------------------------------------------------------------

    def on_place(self) -> None:
        """Turn to the place whose action is checked."""
        self.show_place(next(name for name in PLACES if self._window.deeds[name].isChecked()))

    def on_fit(self) -> None:
        """Show all of the drawing in the place in sight."""
        if self.place == _OF_DRAFT:
            self._window.board.fit()
        else:
            self.page(self.place).fit()

    def on_deed(self, on: bool) -> None:
        """Show, hide or do in a place what the action says; a place not made yet asks when it is."""
        deed = self._window.deeds.name_of(self.sender())
        for page in self._made.values():
            if deed in page.switches():
                page.switches()[deed](on)
            elif deed in page.deeds():
                page.deeds()[deed]()
