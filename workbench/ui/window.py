"""The window: it assembles the panes, says what is open, and keeps its state between runs."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QCloseEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QDockWidget, QMainWindow, QSplitter, QStackedWidget, QVBoxLayout, QWidget

from workbench.document import Picture, Session, new_project
from workbench.draft import Place
from workbench.sheets import Layout
from workbench.ui.actions import Actions, Menus, PlaceName, Tools, UndoKeys
from workbench.ui.asking import Asking
from workbench.ui.board import Board
from workbench.ui.desk import Desk
from workbench.ui.errands import Errands
from workbench.ui.files import Files, settle
from workbench.ui.form import Form
from workbench.ui.head import Head
from workbench.ui.keeping import Keeping
from workbench.ui.keeping_questions import KeepingQuestions
from workbench.ui.look import GRID
from workbench.ui.places import Places
from workbench.ui.sentence import Foot
from workbench.ui.settings import Settings, cache_folder
from workbench.ui.sides import Sides
from workbench.ui.turning import Turning
from workbench.ui.welcome import Welcome, demo_title

if TYPE_CHECKING:
    from workbench.ui.book import BookPane

PROGRAM = "Corset workbench"
LAYOUTS: tuple[Layout, ...] = ("apart", "block", "both")
_KEPT_FLAGS = (("halves", False), ("lists", True), ("compare", True), ("client_page", True))
"""What the other places show, and whether they do at first."""
_SMALLEST = (960, 600)
_USUAL = (1360, 820)
_FORM_WIDTH = 78 * GRID


class Window(QMainWindow):
    """One project at a time in one of its places, or the welcome page."""

    def __init__(
        self,
        settings: Settings,
        asking: Asking | None = None,
        demos: Sequence[Path] = (),
        data: Path | None = None,
    ) -> None:
        """``data`` is where unsaved work and earlier versions are kept; None keeps none."""
        super().__init__()
        self.setObjectName("window")
        self.settings, self.data = settings, data
        self.asking = asking or Asking(self)
        self.desk = Desk(Session(new_project(unit=settings.unit)), self)
        questions = KeepingQuestions(self)
        self.keeping = Keeping(self.desk, data, self.asking, questions, self) if data else None
        self.files = Files(self.desk, settings, self.asking, self, self.keeping)
        self.deeds = Actions(self)
        self.menus = Menus(self, self.deeds)
        self.tools = Tools(self, self.deeds, self.menus)
        self.places = Places(self.deeds)
        self._demos = tuple(demos)
        self._welcome: Welcome | None = None
        self._book: BookPane | None = None
        self._begun = False
        self.form, self.board, self.foot = Form(self.desk), Board(self.desk), Foot(self.desk)
        self.sides = Sides(self)
        self.ledger = self._ledger_dock()
        self._undo_keys = UndoKeys(self)
        self._errands = Errands(self)
        self._assemble()
        self.turning = Turning(self)
        self._connect()
        self._restore()

    @property
    def at_work(self) -> bool:
        """Whether a project is open, as opposed to the welcome page."""
        return self._begun and self.turning.is_place(self.pages.currentWidget())

    @property
    def place(self) -> PlaceName:
        """The place in sight, or the one that an open project begins in."""
        return self.turning.place

    @property
    def welcome(self) -> Welcome:
        """The welcome page, made when it is first wanted: a file that is opened at once has no need of it."""
        if self._welcome is None:
            self._welcome = Welcome(self._demos)
            self._welcome.new_chosen.connect(self.files.new)
            self._welcome.open_chosen.connect(self.files.open)
            self._welcome.book_chosen.connect(self.show_book)
            self._welcome.shapes_chosen.connect(self.deeds["shapes"].trigger)
            self._welcome.recent.picked.connect(self.files.open_path)
            self._welcome.demos.picked.connect(self.files.open_demo)
            self.pages.addWidget(self._welcome)
        return self._welcome

    @property
    def book(self) -> BookPane:
        """The client book, made when it is first opened."""
        if self._book is None:
            from workbench.ui.book import BookPane

            self._book = BookPane(self.desk, self.settings, self.data, cache_folder())
            self._book.chosen.connect(self.files.open_path)
            self._book.recent_changed.connect(self.show_recent)
            self._book.back.clicked.connect(self.show_work)
            self.pages.addWidget(self._book)
        return self._book

    def _assemble(self) -> None:
        right = QWidget()
        column = QVBoxLayout(right)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.board, 1)
        column.addWidget(self.foot)
        self.work = QSplitter(Qt.Orientation.Horizontal)
        self.work.setHandleWidth(1)
        self.work.setChildrenCollapsible(False)
        for pane in (self.form, self.sides.stack, right):
            self.work.addWidget(pane)
        self.work.setStretchFactor(2, 1)
        self.work.setSizes([_FORM_WIDTH, _FORM_WIDTH, _USUAL[0] - _FORM_WIDTH])
        self.pages = QStackedWidget()
        self.pages.addWidget(self.work)
        self.setCentralWidget(self.pages)
        self.setMinimumSize(*_SMALLEST)
        # a menu bar that the system shows elsewhere would leave no corner for the places
        self.menuBar().setNativeMenuBar(False)
        self.menuBar().setCornerWidget(self.places, Qt.Corner.TopRightCorner)

    def _ledger_dock(self) -> QDockWidget:
        dock = QDockWidget("Ledger", self)
        dock.setObjectName("ledger")
        head = Head("Ledger")
        head.shut.clicked.connect(dock.close)
        dock.setTitleBarWidget(head)
        dock.hide()
        self.addDockWidget(Qt.DockWidgetArea.BottomDockWidgetArea, dock)
        return dock

    def _connect(self) -> None:
        deeds = self.deeds
        deeds["grid"].toggled.connect(self.board.set_grid)
        deeds["allowance"].toggled.connect(self.board.set_allowance_shown)
        deeds["flare"].toggled.connect(self.board.set_flare_shown)
        deeds["quit"].triggered.connect(self.close)
        deeds["versions"].triggered.connect(self.show_versions)
        deeds["help"].triggered.connect(self.show_help)
        deeds["words"].triggered.connect(self.show_words)
        deeds["guide"].triggered.connect(self.show_guide)
        deeds["ledger"].toggled.connect(self.ledger.setVisible)
        self.ledger.visibilityChanged.connect(self.show_ledger)
        self.files.recent_changed.connect(self.show_recent)
        self.files.opened.connect(self.show_work)
        self.desk.session_changed.connect(self.show_session)
        self.desk.drafted.connect(self.show_picture)
        self.desk.selected.connect(self.show_selected)

    # --- what is shown -------------------------------------------------------------------

    def show_work(self) -> None:
        """Turn to the open project; its form is wanted first where there is no room for comfort too."""
        if not self.sides.has_room:
            self.sides.put_away()
        self.turning.show_place("draft")
        self.turn_to(self.work)
        self.board.fit()

    def show_welcome(self) -> None:
        """Turn to the page before there is a project."""
        self.turning.show_place("draft")
        self.ledger.hide()
        self.welcome.recent.show_files([(path, path.stem) for path in self.settings.recent()])
        self.turn_to(self.welcome)

    def show_book(self) -> None:
        """Turn to the client book; the open project stays on the desk."""
        settle()
        from_work = self.at_work
        self.turning.show_place("draft")
        self.ledger.hide()
        self.book.back.setVisible(from_work)
        self.turn_to(self.book)

    def turn_to(self, page: QWidget) -> None:
        """Put a page in sight, with the tools and actions that belong to it."""
        self._begun = True
        self.pages.setCurrentWidget(page)
        if not self.at_work:
            page.setFocus()
        self.tools.show_place(self.place)
        self.places.show_place(self.place)
        self.places.setVisible(self.at_work)
        self.deeds.show_at_work(self.at_work, self.place)
        self.show_session()
        self.show_picture(self.desk.picture)
        if self.at_work and not self.desk.project.measurements and self.settings.guided:
            self._lead(anew=False)

    def show_guide(self) -> None:
        """Lead through the project on the desk from the first step."""
        self._lead(anew=True)

    def _lead(self, anew: bool) -> None:
        from workbench.ui.guide import guide_of  # a project that is opened has no need of it

        guide_of(self).begin(anew)

    def show_help(self) -> None:
        """Open the help at the page about the place in sight."""
        from workbench.ui.help_pages import show_help_of  # nobody opens the program to read this

        show_help_of(self, self.place)

    def show_words(self) -> None:
        """Open the words of the trade."""
        from workbench.ui.help_pages import show_words

        show_words(self)

    def show_session(self) -> None:
        """Title, undo and redo as the session has them."""
        desk = self.desk
        self.deeds.show_undo(desk.undo_name, desk.redo_name)
        where = desk.path.name if desk.path else "not saved yet"
        title = f"{self.files.name}[*] · {where} · {PROGRAM}" if self.at_work else PROGRAM
        self.setWindowTitle(title)
        self.setWindowModified(self.at_work and desk.unsaved)

    def show_picture(self, picture: Picture) -> None:
        """Whether there is a most to take, and anything to print."""
        self.deeds["take_most"].setEnabled(self.at_work and picture.comfort is not None)
        self.deeds["print"].setEnabled(self.at_work and picture.current)

    def show_recent(self) -> None:
        """The recent files, in the menu."""
        recent = self.settings.recent()
        self.menus.recent.clear()
        for path in recent:
            action = self.menus.recent.addAction(path.stem.replace("&", "&&"))
            action.setData(str(path))
        self.menus.recent.setEnabled(bool(recent))

    def show_selected(self, place: Place | None) -> None:
        """What is only a field of a form lights up there, so that form must be in sight."""
        if place is None or place != Place(field=place.field) or place.field is None or not self.at_work:
            return
        if self.place != "draft":
            self.turning.show_place(self.turning.owner_of(place.field))
        if self.place == "draft" and self.form.isHidden():
            self.sides.put_away()

    def show_ledger(self) -> None:
        """Fill the ledger the first time it is seen, and keep its action in step with it."""
        if self.ledger.isVisible() and self.ledger.widget() is None:
            # read in when it is wanted: the first picture need not wait for it
            from workbench.ui.form import LedgerTable

            self.ledger.setWidget(LedgerTable(self.desk))
        if self.turning.ledger_waits:
            return
        action = self.deeds["ledger"]
        blocked = action.blockSignals(True)
        action.setChecked(not self.ledger.isHidden())
        action.blockSignals(blocked)

    def show_versions(self) -> None:
        """Look at the earlier versions of the open project, and perhaps have one back."""
        from workbench.ui.versions_dialog import VersionsDialog

        settle()
        versions = self.keeping.versions() if self.keeping is not None else ()
        dialog = VersionsDialog(self.desk, versions, self)
        dialog.exec()
        dialog.deleteLater()

    def offer_left_over(self) -> None:
        """Offer unsaved work of a program that ended without saving, where there is any."""
        if self.keeping is not None:
            from workbench.ui.left_over import LeftOver

            LeftOver(self.desk, self.files, self.keeping, self).offer()

    # --- state and events ------------------------------------------------------------------

    def _restore(self) -> None:
        kept, deeds = self.settings, self.deeds
        self.resize(QSize(*_USUAL).boundedTo(self.screen().availableSize()))
        self.restoreGeometry(kept.bytes_of("geometry"))
        self.work.restoreState(kept.bytes_of("work"))
        self.restoreState(kept.bytes_of("panes"))
        layout = kept.word("layout", LAYOUTS)
        deeds[layout].setChecked(True)
        self.board.set_layout(layout)
        deeds[kept.scheme].setChecked(True)
        for name, show in (("grid", self.board.set_grid), ("allowance", self.board.set_allowance_shown)):
            deeds[name].setChecked(kept.flag(name, name == "allowance"))
            show(deeds[name].isChecked())
        for name, usual in _KEPT_FLAGS:
            deeds[name].setChecked(kept.flag(name, usual))
        for path in self._demos:
            self.menus.demos.addAction(demo_title(path)).setData(str(path))
        self.menus.demos.setEnabled(bool(self._demos))
        self.show_recent()
        self.places.show_place("draft")
        deeds.show_at_work(self.at_work)
        self.show_session()

    def _keep(self) -> None:
        if self.turning.ledger_waits:
            self.turning.show_place("draft")  # with the ledger open, as it is to come back
        kept = self.settings
        kept.keep_bytes("geometry", self.saveGeometry())
        kept.keep_bytes("work", self.work.saveState())
        kept.keep_bytes("panes", self.saveState())
        kept.keep_word("layout", next(name for name in LAYOUTS if self.deeds[name].isChecked()))
        for name in ("grid", "allowance"):
            kept.keep_flag(name, self.deeds[name].isChecked())
        for name, _ in _KEPT_FLAGS:
            kept.keep_flag(name, self.deeds[name].isChecked())
        if self.at_work:
            kept.unit = self.desk.project.unit
        kept.sync()

    def showEvent(self, event: QShowEvent) -> None:
        """With no project on the desk by now, begin with the choices."""
        super().showEvent(event)
        if not self._begun:
            self.show_welcome()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Room for another pane, or no longer."""
        super().resizeEvent(event)
        self.sides.show_side()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Ask about unsaved changes, then keep the state of the window."""
        self.turning.rest()
        if self.files.may_leave():
            if self._book is not None:
                self._book.rest()
            self._keep()
            if self.keeping is not None:
                self.keeping.end()
            event.accept()
        else:
            event.ignore()

    def changeEvent(self, event: QEvent) -> None:
        """Follow the look: icons are drawn in its ink."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and hasattr(self, "deeds"):
            self.deeds.show_icons()
            self.tools.show_icons()
