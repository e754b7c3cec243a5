"""Where the guide meets the window: when it is there, and what its buttons do."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QToolBar

from workbench.document import Picture, Session
from workbench.ui.guide.bar import GuideBar
from workbench.ui.guide.steps import STEPS, StepName, place_of

if TYPE_CHECKING:
    from workbench.ui.window import Window


class Guide(QObject):
    """One for each window, made when it is first wanted."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self._window = window
        self._session: Session | None = None
        self._kept: frozenset[StepName] = frozenset()
        self.bar = GuideBar()
        self.rail = self._rail()
        self.bar.wanted.connect(self.on_wanted)
        self.bar.kept.connect(self.on_kept)
        self.bar.demo.clicked.connect(self.on_demo)
        self.bar.away.clicked.connect(self.on_away)
        window.desk.drafted.connect(self.show_drafted)
        window.pages.currentChanged.connect(self.show_page)
        window.deeds["print"].triggered.connect(self.on_printed)

    def _rail(self) -> QToolBar:
        """A line of its own under the tools, whichever place is in sight."""
        rail = QToolBar("Guide", self._window)
        rail.setObjectName("guide")
        rail.setMovable(False)
        rail.setContextMenuPolicy(Qt.ContextMenuPolicy.PreventContextMenu)
        rail.setStyleSheet("QToolBar#guide { padding: 0; spacing: 0; border: none; }")
        rail.addWidget(self.bar)
        rail.toggleViewAction().setVisible(False)
        self._window.addToolBarBreak()
        self._window.addToolBar(rail)
        return rail

    def begin(self, anew: bool = False) -> None:
        """Lead through the project on the desk; ``anew`` from the first step."""
        if anew or not self.leading:
            self._session, self._kept = self._window.desk.session, frozenset()
        self.show_page()

    @property
    def leading(self) -> bool:
        """Whether the project on the desk is the one that it leads through."""
        return self._session is not None and self._session is self._window.desk.session

    def show_drafted(self, picture: Picture) -> None:
        """Follow the project; another one on the desk is left alone."""
        if not self.leading:
            self.rail.hide()
        elif not self.rail.isHidden():
            self.bar.show_picture(picture, self._kept)
            if self.bar.current is None:
                # she has been through it once: the next client needs no leading
                self._window.settings.guided = False

    def show_page(self) -> None:
        """Be there while the project that it leads through is in sight."""
        self.rail.setVisible(self.leading and self._window.at_work)
        self.show_drafted(self._window.desk.picture)

    # --- what she does ---------------------------------------------------------------------

    def on_wanted(self, name: str) -> None:
        """Show where a step is done."""
        window = self._window
        if name in ("shape", "print"):
            window.deeds["shapes" if name == "shape" else "print"].trigger()
            return
        window.turning.show_place("draft")
        for step in STEPS:
            place = place_of(step, window.desk.picture) if step == name else None
            if place is not None:
                window.desk.select(None)
                window.desk.select(place)

    def on_kept(self, name: str) -> None:
        """Go on from a step as it is."""
        self._kept |= {step for step in STEPS if step == name}
        self.show_drafted(self._window.desk.picture)

    def on_printed(self) -> None:
        """The sheets were looked at, or written."""
        if self.leading and self._window.place in ("draft", "pieces"):
            self.on_kept("print")

    def on_demo(self) -> None:
        """Open the first demo."""
        demos = self._window.menus.demos.actions()
        if demos:
            demos[0].trigger()

    def on_away(self) -> None:
        """Go, and come back only when asked for."""
        self._session = None
        self.rail.hide()
        self._window.settings.guided = False
