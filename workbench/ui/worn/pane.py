"""The worn pane beside the panels: the bodice on her body, her girths by height, what is assumed of her."""

from __future__ import annotations

from typing import Literal

from PySide6.QtCore import Signal
from PySide6.QtGui import QAction, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from workbench.document import Picture
from workbench.draft import Place
from workbench.ui.desk import Desk
from workbench.ui.form.choice import Choice
from workbench.ui.head import Head
from workbench.ui.look import GRID
from workbench.ui.worn.profile import GirthProfile
from workbench.ui.worn.torso_form import TorsoForm
from workbench.ui.worn.view import WornView
from workbench.worn import BACK, FRONT, SIDE, THREE_QUARTER, Eye

WIDTH = 84 * GRID
Page = Literal["worn", "girths", "torso"]
_PAGES: tuple[tuple[Page, str], ...] = (("worn", "As worn"), ("girths", "Girths"), ("torso", "Torso"))
_SIDES = ((FRONT, "Front"), (THREE_QUARTER, "Three-quarter"), (SIDE, "Side"), (BACK, "Back"))


class WornPane(QWidget):
    """Shows a picture on her body. ``shown`` is the action that shows and hides the pane."""

    save_wanted = Signal()
    """She wants the silhouette as a file."""

    def __init__(self, desk: Desk, shown: QAction | None = None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.head = Head("Worn")
        if shown is not None:
            self.head.shut.clicked.connect(shown.trigger)
        self.pages = Choice("Show", _PAGES)
        self.sides = Choice("Seen from", _SIDES)
        self.view, self.profile, self.torso = WornView(desk), GirthProfile(desk), TorsoForm(desk)
        self.save = QPushButton("Save the silhouette…")
        self.setMinimumWidth(WIDTH)
        self._assemble()
        self.pages.chosen.connect(self.on_page)
        self.sides.chosen.connect(self.on_side)
        self.view.turned.connect(self.show_side)
        self.save.clicked.connect(self.save_wanted)
        desk.drafted.connect(self.show_picture)
        desk.selected.connect(self.show_selection)
        self.pages.show_value("worn")
        self.show_side(self.view.eye)

    def _assemble(self) -> None:
        worn = QWidget()
        column = QVBoxLayout(worn)
        column.setContentsMargins(0, 0, 0, 2 * GRID)
        column.setSpacing(2 * GRID)
        column.addLayout(_in_line(self.sides))
        column.addWidget(self.view, 1)
        column.addLayout(_in_line(self.save))
        self._stack = QStackedWidget()
        for page in (worn, self.profile, self.torso):
            self._stack.addWidget(page)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(GRID)
        whole.addWidget(self.head)
        whole.addLayout(_in_line(self.pages))
        whole.addWidget(self._stack, 1)

    @property
    def page(self) -> Page:
        """Which of its pages is in sight."""
        return _PAGES[self._stack.currentIndex()][0]

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with what was drafted while the pane was hidden."""
        super().showEvent(event)
        self.show_picture(self._desk.picture)

    def show_picture(self, picture: Picture) -> None:
        """Show a picture on the page in sight; nothing is worked out while the pane is hidden."""
        if not self.isVisible():
            return
        self.save.setEnabled(picture.current)
        shown: dict[Page, WornView | GirthProfile | TorsoForm]
        shown = {"worn": self.view, "girths": self.profile, "torso": self.torso}
        shown[self.page].show_picture(picture)

    def show_selection(self, place: Place | None) -> None:
        """Light up what the desk has lit up; a figure of the torso is brought into sight."""
        if place is not None and self.has(place.field or "") and self.isVisible():
            self.show_page("torso")
        self.view.show_selection(place)
        self.profile.update()

    def show_side(self, eye: Eye) -> None:
        """Show which of the four sides she is seen from, or none of them."""
        for degrees, _ in _SIDES:
            if abs((eye.degrees - degrees + 180.0) % 360.0 - 180.0) < 0.5:
                self.sides.show_value(degrees)
                return
        self.sides.show_nothing()

    def show_page(self, page: Page) -> None:
        """Bring a page into sight."""
        self.pages.show_value(page)
        self._stack.setCurrentIndex([name for name, _ in _PAGES].index(page))
        self.show_picture(self._desk.picture)

    def has(self, field: str) -> bool:
        """Whether a field, as findings name it, is one of the torso's."""
        return field.startswith("torso.")

    def on_page(self, page: object) -> None:
        """Another page is wanted."""
        self.show_page(next(name for name, _ in _PAGES if name == page))

    def on_side(self, degrees: object) -> None:
        """Turn her to one of the four sides."""
        if isinstance(degrees, float):
            self.view.turn_to(Eye(degrees, self.view.eye.down))
            self.view.setFocus()


def _in_line(widget: QWidget) -> QHBoxLayout:
    line = QHBoxLayout()
    line.setContentsMargins(3 * GRID, 0, 3 * GRID, 0)
    line.addWidget(widget)
    line.addStretch(1)
    return line
