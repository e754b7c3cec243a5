"""The client book: a page that lists the projects of one folder."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction, QHideEvent, QKeySequence, QPainter, QPaintEvent, QShowEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from workbench.book import Entry, Order, Shelf, found_by, in_order, index_file, keep, throw_away
from workbench.document import FileTrouble
from workbench.ui.book.asking import BookAsking
from workbench.ui.book.client_deeds import ClientDeeds
from workbench.ui.book.model import BookModel
from workbench.ui.book.reading import Reading
from workbench.ui.book.search_field import SearchField
from workbench.ui.book.table import BookTable
from workbench.ui.book.words import counted
from workbench.ui.desk import Desk
from workbench.ui.findings import FindingRow
from workbench.ui.form.choice import Choice
from workbench.ui.look import GRID, fonts, look
from workbench.ui.marks import WORDS, Mark
from workbench.ui.settings import Settings

_ORDERS: tuple[tuple[Order, str], ...] = (
    ("client", "by client"),
    ("date", "by date"),
    ("next_fitting", "by next fitting"),
    ("open", "by what is open"),
)
_NO_FOLDER = "Choose the folder that holds your projects. They are listed here; nothing in it is changed."
_EMPTY = "There is no project in this folder yet. What you save there is listed here."
_LOOKING = "Looking into the folder …"
_SAYS: dict[str, str] = {"stop": "Not done", "within": "Done", "note": "Working"}


class BookPane(QFrame):
    """The list with its search and order; what is done with one client; the sentence at the foot.

    It looks into the folder whenever it comes into sight, and reads what has changed beside the window
    until it is out of sight again: then the machine is wanted for something else.
    """

    chosen = Signal(object)
    """The path of the project she wants to open."""
    recent_changed = Signal()
    """Files that are no more have been taken off the list of recent ones."""

    def __init__(
        self,
        desk: Desk,
        settings: Settings,
        data: Path | None,
        cache: Path,
        asking: BookAsking | None = None,
        parent: QWidget | None = None,
    ) -> None:
        """``data`` is where versions and unsaved work are kept, ``cache`` where the index goes."""
        super().__init__(parent)
        self._settings, self._cache = settings, cache
        self._asking = asking or BookAsking(self)
        self._shelf: Shelf | None = None
        self._reading: Reading | None = None
        self._place = ""
        self.deeds = ClientDeeds(desk, settings, data, self._asking, self)
        self.model = BookModel(self)
        self.table = BookTable(self.model, self)
        self.search = SearchField(self)
        self.order = Choice("Order", _ORDERS, self)
        self.where, self.words = QLabel(self), QLabel(self)
        self.choose, self.begin = (
            QPushButton("Another folder…", self),
            QPushButton("Choose the folder…", self),
        )
        self.back = QPushButton("Back to the project", self)
        self.back.hide()
        self.said, self.remark = FindingRow(self, clickable=False), FindingRow(self, clickable=False)
        self.cancel = QPushButton("Stop reading", self)
        self.open, self.pack = QPushButton("Open", self), QPushButton("Pack one client…", self)
        self.remove = QPushButton("Remove one client…", self)
        self._arrange()
        self._connect()
        self.order.show_value(settings.word("book_order", [order for order, _ in _ORDERS]))
        self.show_shelf()

    # --- putting it together -----------------------------------------------------------------

    def _arrange(self) -> None:
        self.pages = QStackedWidget(self)
        self.pages.addWidget(self.table)
        self.pages.addWidget(self._nothing())
        column = QVBoxLayout(self)
        column.setContentsMargins(8 * GRID, 6 * GRID, 8 * GRID, 4 * GRID)
        column.setSpacing(3 * GRID)
        column.addLayout(self._head())
        column.addWidget(self.pages, 1)
        column.addWidget(self.remark)
        column.addLayout(self._foot())
        self.setFocusProxy(self.search)
        again = QAction("Look into the folder again", self)
        again.setShortcut(QKeySequence.StandardKey.Refresh)
        again.setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        again.triggered.connect(self.look)
        self.addAction(again)

    def _head(self) -> QVBoxLayout:
        title = QLabel("Client book", self)
        title.setFont(fonts().title)
        self.where.setFont(fonts().small)
        # the name of a folder is never mark-up
        self.where.setTextFormat(Qt.TextFormat.PlainText)
        above = QHBoxLayout()
        above.setSpacing(3 * GRID)
        above.addWidget(title)
        above.addWidget(self.where, 1, Qt.AlignmentFlag.AlignBottom)
        above.addWidget(self.choose)
        above.addWidget(self.back)
        below = QHBoxLayout()
        below.setSpacing(3 * GRID)
        below.addWidget(self.search, 1)
        below.addWidget(self.order)
        head = QVBoxLayout()
        head.setSpacing(3 * GRID)
        head.addLayout(above)
        head.addLayout(below)
        return head

    def _nothing(self) -> QWidget:
        """What stands where the list would: why there is none, and a button where that helps."""
        page = QWidget(self)
        self.words.setFont(fonts().heading)
        self.words.setWordWrap(True)
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.words.setAlignment(Qt.AlignmentFlag.AlignCenter)
        column = QVBoxLayout(page)
        column.setSpacing(4 * GRID)
        column.addStretch(1)
        column.addWidget(self.words)
        column.addWidget(self.begin, 0, Qt.AlignmentFlag.AlignHCenter)
        column.addStretch(2)
        return page

    def _foot(self) -> QHBoxLayout:
        foot = QHBoxLayout()
        foot.setSpacing(2 * GRID)
        foot.addWidget(self.said, 1)
        for button in (self.cancel, self.pack, self.remove, self.open):
            foot.addWidget(button, 0, Qt.AlignmentFlag.AlignVCenter)
        return foot

    def _connect(self) -> None:
        self.search.textChanged.connect(self.show_shelf)
        self.search.down.connect(self.table.setFocus)
        self.search.entered.connect(self.on_open)
        self.order.chosen.connect(self.on_order)
        self.table.typed.connect(self.on_typed)
        self.table.sorted_by.connect(self.on_order)
        self.table.opened.connect(self.on_open)
        self.table.pointed.connect(self.show_pointed)
        self.table.removing.connect(self.on_remove)
        self.choose.clicked.connect(self.on_choose)
        self.begin.clicked.connect(self.on_choose)
        self.cancel.clicked.connect(self.on_cancel)
        self.open.clicked.connect(self.on_open)
        self.pack.clicked.connect(self.on_pack)
        self.remove.clicked.connect(self.on_remove)
        self.deeds.said.connect(self.show_said)
        self.deeds.removed.connect(self.on_removed)

    # --- reading -----------------------------------------------------------------------------

    def look(self) -> None:
        """Look into the folder, and read what is new or has changed."""
        folder = self._settings.book
        self._stop()
        if folder is None:
            self.show_shelf()
            return
        reading = Reading(folder, index_file(self._cache, folder), self)
        reading.looked.connect(self.on_looked)
        reading.read.connect(self.on_read)
        reading.failed.connect(self.on_failed)
        reading.finished.connect(self.on_finished)
        self._reading = reading
        self.show_progress()
        reading.start(Reading.Priority.LowPriority)

    def _stop(self) -> None:
        """End the reading; what was read is kept, and what it has still to say is no longer heard."""
        reading, self._reading = self._reading, None
        if reading is not None:
            reading.requestInterruption()
            reading.wait()
            reading.deleteLater()

    def rest(self) -> None:
        """End what goes on beside the window; what was read is kept."""
        self._stop()
        self.deeds.wait()

    @property
    def _is_heard(self) -> bool:
        """Whether it is the reading under way that speaks, and not one that was ended."""
        return self._reading is not None and self.sender() is self._reading

    def on_looked(self, shelf: Shelf) -> None:
        """The folder as the index has it."""
        if self._is_heard:
            self._shelf = shelf
            self.show_shelf()

    def on_read(self, entries: list[Entry]) -> None:
        """Some more files have been read."""
        if self._is_heard and self._shelf is not None:
            self._shelf = self._shelf.with_read(entries)
            # she may be looking at another part of the list than the row that is picked
            bar = self.table.verticalScrollBar()
            there = bar.value()
            self.show_shelf()
            bar.setValue(there)

    def on_failed(self, sentence: str) -> None:
        """The folder cannot be looked into."""
        if self._is_heard:
            self._shelf = None
            self.show_shelf(sentence)

    def on_finished(self) -> None:
        """All is read, or it was cancelled."""
        if not self._is_heard:
            return
        error = self._reading.error if self._reading is not None else None
        self._stop()
        self.show_progress()
        if error is not None:
            raise error

    def on_cancel(self) -> None:
        """Enough is read for now."""
        if self._reading is not None:
            self._reading.requestInterruption()

    # --- what is shown -----------------------------------------------------------------------

    def show_shelf(self, trouble: str = "") -> None:
        """The list as search and order have it, with the same row picked as before."""
        folder, shelf = self._settings.book, self._shelf
        self.where.setText(str(folder) if folder is not None else "")
        wanted = self.search.text().strip()
        shown: list[Entry] = []
        if shelf is not None:
            today = date.today()
            order = self.order.value
            by: Order = next(known for known, _ in _ORDERS if known == order)
            shown = in_order(found_by(shelf.entries, wanted), by, today.isoformat())
            place, row = self._place, max(self.table.currentIndex().row(), 0)
            self.model.show_entries(shown, today)
            self.table.show_current(place, row)
        self._show_page(shown, wanted, trouble if shelf is None else "")
        self.show_progress()

    def _show_page(self, shown: list[Entry], wanted: str, trouble: str) -> None:
        folder, shelf = self._settings.book, self._shelf
        self.pages.setCurrentIndex(0 if shown else 1)
        self.choose.setVisible(folder is not None)
        self.begin.setVisible(folder is None or bool(trouble))
        for widget in (self.search, self.order):
            widget.setEnabled(shelf is not None)
        for button in (self.open, self.pack, self.remove):
            button.setVisible(shelf is not None)
        if folder is None:
            self.words.setText(_NO_FOLDER)
        elif trouble or shelf is None:
            self.words.setText(trouble or _LOOKING)
        else:
            self.words.setText(f"No project is called “{wanted}”." if wanted else _EMPTY)
        remarks = " ".join(shelf.remarks) if shelf is not None else ""
        self.remark.setVisible(bool(remarks))
        self.remark.show_sentence("attend", "Left out", remarks)
        self.show_pointed()

    def show_progress(self) -> None:
        """How many there are, and while files are read how far that has come."""
        shelf, reads = self._shelf, self._reading is not None
        waiting = len(shelf.waiting) if shelf is not None else 0
        self.cancel.setVisible(reads and waiting > 0)
        if shelf is None:
            self.said.setVisible(False)
            return
        self.said.setVisible(True)
        words = counted(shelf, self.model.rowCount(), self.search.text().strip())
        if waiting and reads:
            done = f"{len(shelf.entries):,} of {len(shelf.entries) + waiting:,}"
            self.said.show_sentence(
                "note", "Reading", f"{done} projects, the latest first; only once for each."
            )
        elif waiting:
            self.said.show_sentence("attend", "Not all read", f"{waiting:,} are still to be read. {words}")
        else:
            self.said.show_sentence("note", "Listed", words)

    def show_said(self, mark: Mark, sentence: str) -> None:
        """What came of a deed, until something else is to be said."""
        self.said.setVisible(True)
        self.said.show_sentence(mark, _SAYS.get(mark, WORDS[mark]), sentence)

    def show_pointed(self) -> None:
        """What can be done with the row that is picked."""
        entry = self.table.entry if self.pages.currentIndex() == 0 else None
        if entry is not None:
            self._place = entry.place
        self.open.setEnabled(entry is not None and not entry.reason)
        self.pack.setEnabled(entry is not None)
        self.remove.setEnabled(entry is not None)

    # --- what she does -----------------------------------------------------------------------

    def on_order(self, order: object) -> None:
        """Another order."""
        self.order.show_value(order)
        self._settings.keep_word("book_order", str(order))
        self.show_shelf()

    def on_typed(self, letter: str) -> None:
        """A letter typed over the list begins a search."""
        self.search.setFocus()
        self.search.setText(letter)

    def on_open(self, _entry: object = None) -> None:
        """Open the row that is picked; one that cannot be opened says why."""
        entry, folder = self.table.entry, self._settings.book
        if entry is None or folder is None or self.pages.currentIndex() != 0:
            return
        if entry.reason:
            self.show_said("stop", f"“{entry.place}” cannot be opened: {entry.reason}")
        else:
            self.chosen.emit(folder / entry.place)

    def on_choose(self) -> None:
        """Another folder becomes the book; the index of the one before is thrown away."""
        before = self._settings.book
        folder = self._asking.which_folder(before or self._settings.folder())
        if folder is None:
            return
        self.rest()
        if before is not None and folder.absolute() != before:
            throw_away(self._cache, before)
        self._settings.book = folder
        self._shelf, self._place = None, ""
        self.search.clear()
        self.model.show_entries((), date.today())
        self.show_shelf()
        self.look()

    def on_pack(self) -> None:
        """Pack all of the client whose row is picked."""
        entry, folder = self.table.entry, self._settings.book
        if entry is not None and folder is not None and self._shelf is not None:
            self.deeds.pack(folder, self._shelf.entries, entry)

    def on_remove(self) -> None:
        """Remove all of the client whose row is picked, when she says so."""
        entry, folder = self.table.entry, self._settings.book
        # a reading under way would write down again what is removed
        self._stop()
        if entry is not None and folder is not None and self._shelf is not None:
            self.deeds.remove(folder, self._shelf.entries, entry)

    def on_removed(self, places: tuple[str, ...]) -> None:
        """Files are no more: off the list, and out of the index."""
        folder = self._settings.book
        if self._shelf is not None and folder is not None:
            self._shelf = self._shelf.without(places)
            self._keep(self._shelf, folder)
            self.show_shelf()
        self.recent_changed.emit()

    def _keep(self, shelf: Shelf, folder: Path) -> None:
        """Put the list into the index as it is now; an index that cannot be written is no index."""
        try:
            keep(shelf, index_file(self._cache, folder))
        except FileTrouble:
            throw_away(self._cache, folder)

    def showEvent(self, event: QShowEvent) -> None:
        """See what has changed while nobody looked."""
        super().showEvent(event)
        if not event.spontaneous():
            self.look()

    def hideEvent(self, event: QHideEvent) -> None:
        """Read on another time; a window put away for a moment is no reason to stop."""
        super().hideEvent(event)
        if not event.spontaneous():
            self._stop()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """On paper, as the page before there is a project."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), look().paper)
        painter.end()
