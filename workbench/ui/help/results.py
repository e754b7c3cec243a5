"""The list at the left of the help: the contents, or what the search found."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QPainter, QPalette
from PySide6.QtWidgets import (
    QListWidget,
    QListWidgetItem,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from workbench.ui.help.pages import chapters
from workbench.ui.help.search import Found
from workbench.ui.look import GRID, fonts, look

LINK = Qt.ItemDataRole.UserRole
_BELOW = Qt.ItemDataRole.UserRole + 1
"""Words in small letters below the name."""
_HEAD = Qt.ItemDataRole.UserRole + 2
"""Whether it is the heading of a chapter, which cannot be picked."""
_EDGE = 3 * GRID
_LINE = 7 * GRID
_FOUND = 16 * GRID
_HEADED = 9 * GRID

Index = QModelIndex | QPersistentModelIndex


class HelpRows(QStyledItemDelegate):
    """A name, and for what was found the page and some words around it."""

    def sizeHint(self, _option: QStyleOptionViewItem, index: Index) -> QSize:
        """As tall as its words need."""
        if index.data(_HEAD):
            return QSize(0, _HEADED)
        return QSize(0, _FOUND if index.data(_BELOW) else _LINE)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """The row; what is picked is tinted and has a bar at its left, so that colour is not all there is."""
        painter.save()
        box = QRect(option.rect)
        state = option.state
        if state & QStyle.StateFlag.State_Selected:
            painter.fillRect(box, look().selected_fill)
            painter.fillRect(QRect(box.left(), box.top(), 3, box.height()), look().selected)
        _paint_words(painter, box.adjusted(_EDGE, 0, -_EDGE, 0), index)
        painter.restore()


def _paint_words(painter: QPainter, room: QRect, index: Index) -> None:
    head, below = bool(index.data(_HEAD)), index.data(_BELOW)
    painter.setFont(fonts().strong if head or below else fonts().body)
    painter.setPen(look().soft_ink if head else look().ink)
    words = room.adjusted(0 if head or below else 2 * GRID, 0, 0, 0)
    if below:
        words = QRect(room.left(), room.top() + GRID, room.width(), 5 * GRID)
    name = painter.fontMetrics().elidedText(
        str(index.data(Qt.ItemDataRole.DisplayRole)), Qt.TextElideMode.ElideRight, words.width()
    )
    middle = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
    painter.drawText(words, middle | Qt.AlignmentFlag.AlignBottom if head else middle, name)
    if below:
        painter.setFont(fonts().small)
        painter.setPen(look().soft_ink)
        rest = QRect(room.left(), words.bottom(), room.width(), 9 * GRID)
        painter.drawText(rest, Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap, str(below))


class HelpList(QListWidget):
    """Up and down go through it, whatever it lists."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setItemDelegate(HelpRows(self))
        self.setVerticalScrollMode(QListWidget.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFrameShape(QListWidget.Shape.NoFrame)
        self.viewport().setBackgroundRole(QPalette.ColorRole.Window)

    def show_contents(self) -> None:
        """All pages, under the names of their chapters."""
        self._empty("Contents of the help")
        for chapter in chapters():
            self._add(chapter.title, "", head=True)
            for page in chapter.pages:
                self._add(page.title, page.name)

    def show_found(self, found: tuple[Found, ...]) -> None:
        """What the search found."""
        self._empty(f"Found in the help: {len(found)}")
        for one in found:
            passage = one.passage
            where = f"{passage.title}. " if passage.heading else ""
            self._add(passage.heading or passage.title, passage.link, f"{where}{one.excerpt}")

    def show_current(self, link: str) -> None:
        """Tint the row of a page, without turning to it."""
        blocked = self.blockSignals(True)
        rows = (row for row in range(self.count()) if self.item(row).data(LINK) == link)
        self.setCurrentRow(next(rows, -1))
        self.blockSignals(blocked)

    def _empty(self, name: str) -> None:
        blocked = self.blockSignals(True)
        self.clear()
        self.blockSignals(blocked)
        self.setAccessibleName(name)

    def _add(self, name: str, link: str, below: str = "", head: bool = False) -> None:
        item = QListWidgetItem(name)
        item.setData(LINK, link)
        item.setData(_BELOW, below)
        item.setData(_HEAD, head)
        if head:
            item.setFlags(Qt.ItemFlag.NoItemFlags)
        if below:
            item.setData(Qt.ItemDataRole.AccessibleDescriptionRole, below)
        self.addItem(item)
