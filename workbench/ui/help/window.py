"""The help: pages at the right, contents or what the search found at the left."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent, QKeySequence, QPainter, QPaintEvent, QShortcut
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QListWidgetItem,
    QPushButton,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from workbench.ui.help.pages import pages
from workbench.ui.help.results import LINK, HelpList
from workbench.ui.help.search import search
from workbench.ui.help.view import HelpView
from workbench.ui.look import GRID, fonts, look

FIRST = "start"
_SIZE = (270 * GRID, 190 * GRID)
_LIST = 78 * GRID


class Sheet(QFrame):
    """Paper, behind what is read."""

    def paintEvent(self, _event: QPaintEvent) -> None:
        """As everything that is drawn."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), look().paper)
        painter.end()


class HelpWindow(QWidget):
    """A window of its own, so that it can stay open beside the work."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self.setObjectName("help")
        self.setWindowTitle("Help")
        self.search, self.list, self.view = QLineEdit(), HelpList(), HelpView()
        self.said = QLabel()
        self.back, self.onward = QPushButton("Back"), QPushButton("Forward")
        self._been: list[str] = []
        self._at = -1
        self._arrange()
        self._connect()
        self.resize(*_SIZE)
        self.list.show_contents()
        self.go(FIRST)

    def _arrange(self) -> None:
        self.search.setPlaceholderText("Search the help")
        self.search.setAccessibleName("Search the help")
        self.search.setClearButtonEnabled(True)
        self.said.setFont(fonts().small)
        self.said.setWordWrap(True)
        self.said.hide()
        left = QWidget()
        column = QVBoxLayout(left)
        column.setContentsMargins(3 * GRID, 3 * GRID, 0, 0)
        column.setSpacing(2 * GRID)
        for widget in (self.search, self.said):
            column.addWidget(widget)
        column.addWidget(self.list, 1)
        buttons = QHBoxLayout()
        for button in (self.back, self.onward):
            buttons.addWidget(button)
        buttons.addStretch(1)
        right = Sheet()
        page = QVBoxLayout(right)
        page.setContentsMargins(8 * GRID, 3 * GRID, GRID, 0)
        page.setSpacing(3 * GRID)
        page.addLayout(buttons)
        page.addWidget(self.view, 1)
        both = QSplitter(Qt.Orientation.Horizontal)
        both.setHandleWidth(1)
        both.setChildrenCollapsible(False)
        for side in (left, right):
            both.addWidget(side)
        both.setStretchFactor(1, 1)
        both.setSizes([_LIST, _SIZE[0] - _LIST])
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(both)

    def _connect(self) -> None:
        self.search.textChanged.connect(self.on_search)
        self.search.returnPressed.connect(self.on_search_entered)
        self.list.currentItemChanged.connect(self.on_item)
        self.list.itemActivated.connect(self.on_item_entered)
        self.view.wanted.connect(self.go)
        self.back.clicked.connect(self.on_back)
        self.onward.clicked.connect(self.on_onward)
        for keys, told in (
            (QKeySequence.StandardKey.Find, self.on_find),
            (QKeySequence.StandardKey.Back, self.on_back),
            (QKeySequence.StandardKey.Forward, self.on_onward),
        ):
            QShortcut(QKeySequence(keys), self).activated.connect(told)

    # --- what is shown ---------------------------------------------------------------------

    def go(self, link: str) -> None:
        """Turn to a page, or to a heading on it; to the first page where there is no such page."""
        name, _, anchor = link.partition("#")
        if not name and self.view.page is not None:
            name = self.view.page.name
        if name not in pages():
            name, anchor = FIRST, ""
        kept = f"{name}#{anchor}" if anchor else name
        if self._at < 0 or self._been[self._at] != kept:
            self._been = [*self._been[: self._at + 1], kept]
            self._at = len(self._been) - 1
        self._show(kept)

    def _show(self, link: str) -> None:
        name, _, anchor = link.partition("#")
        self.view.show_page(name, anchor)
        self.setWindowTitle(f"{pages()[name].title} · Help")
        self.back.setEnabled(self._at > 0)
        self.onward.setEnabled(self._at < len(self._been) - 1)
        if not self.search.text().strip():
            self.list.show_current(name)

    # --- what she does ---------------------------------------------------------------------

    def on_search(self, wanted: str) -> None:
        """List what holds the words, with each letter."""
        found = search(wanted)
        asked = bool(wanted.strip())
        if asked:
            self.list.show_found(found)
        else:
            self.list.show_contents()
            if self.view.page is not None:
                self.list.show_current(self.view.page.name)
        self.said.setVisible(asked and not (found and found[0].whole))
        self.said.setText(
            "No page has all of these words; these come nearest." if found else "No page has these words."
        )

    def on_search_entered(self) -> None:
        """Turn to the first page found."""
        if self.list.count() and self.search.text().strip():
            self.list.setCurrentRow(0)
            self.on_item_entered(self.list.item(0))

    def on_item(self, item: QListWidgetItem | None, _before: QListWidgetItem | None) -> None:
        """Turn to what is picked in the list."""
        if item is not None and item.data(LINK):
            self.go(str(item.data(LINK)))

    def on_item_entered(self, item: QListWidgetItem) -> None:
        """Turn to it, and go on reading."""
        if item.data(LINK):
            self.go(str(item.data(LINK)))
            self.view.setFocus()

    def on_back(self) -> None:
        """The page before."""
        if self._at > 0:
            self._at -= 1
            self._show(self._been[self._at])

    def on_onward(self) -> None:
        """The page that was gone back from."""
        if self._at < len(self._been) - 1:
            self._at += 1
            self._show(self._been[self._at])

    def on_find(self) -> None:
        """Type what is looked for."""
        self.search.setFocus()
        self.search.selectAll()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape empties the search, and with an empty one closes the help; Down goes to the list."""
        if event.key() == Qt.Key.Key_Escape:
            if self.search.text():
                self.search.clear()
            else:
                self.close()
        elif event.key() == Qt.Key.Key_Down and self.search.hasFocus():
            self.list.setFocus()
            self.list.setCurrentRow(max(self.list.currentRow(), 0))
        else:
            super().keyPressEvent(event)
