"""Sections of the form: a heading that opens and closes, and rows made when they are first seen."""

from __future__ import annotations

from typing import TypeVar

from PySide6.QtCore import QPointF, QRect, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QAbstractButton, QLabel, QSizePolicy, QVBoxLayout, QWidget

from workbench.document import Picture
from workbench.ui.desk import Desk
from workbench.ui.form.row import EDGE, Row
from workbench.ui.look import GRID, fonts, look
from workbench.ui.marks import Mark

_HEADER_HEIGHT = 9 * GRID
AnyRow = TypeVar("AnyRow", bound=Row)


class Header(QAbstractButton):
    """Name of a section, and in a few words what it holds."""

    def __init__(self, title: str) -> None:
        super().__init__()
        self.setText(title)
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self._summary = ""
        self._name()
        self.toggled.connect(self._name)

    @property
    def summary(self) -> str:
        """What it holds, in a few words."""
        return self._summary

    def show_summary(self, summary: str) -> None:
        """Say what it holds."""
        if summary != self._summary:
            self._summary = summary
            self._name()
            self.update()

    def _name(self) -> None:
        state = "open" if self.isChecked() else "closed"
        self.setAccessibleName(f"{self.text()}, {state}")
        self.setAccessibleDescription(self._summary)

    def sizeHint(self) -> QSize:
        """A line with room above and below."""
        return QSize(50 * GRID, _HEADER_HEIGHT)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter does what a click does; the arrow keys open and close."""
        key = event.key()
        opens = key == Qt.Key.Key_Right and not self.isChecked()
        closes = key == Qt.Key.Key_Left and self.isChecked()
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) or opens or closes:
            self.click()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """An arrow, the name, and the few words at the right."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self.underMouse() or self.hasFocus():
            painter.fillRect(self.rect(), look().selected_fill)
        painter.fillRect(0, self.height() - 1, self.width(), 1, look().hairline)
        self._paint_arrow(painter)
        left = EDGE + 4 * GRID
        painter.setFont(fonts().heading)
        painter.setPen(look().ink)
        middle = Qt.AlignmentFlag.AlignVCenter
        named = painter.boundingRect(QRect(left, 0, self.width(), self.height()), middle, self.text())
        painter.drawText(named, middle, self.text())
        self._paint_summary(painter, named.right() + 3 * GRID)
        painter.end()

    def _paint_arrow(self, painter: QPainter) -> None:
        x, y = EDGE + 4.0, self.height() / 2
        flat = ((-4, -2), (0, 2), (4, -2)) if self.isChecked() else ((-2, -4), (2, 0), (-2, 4))
        pen = QPen(look().soft_ink, 1.6)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        painter.drawPolyline(QPolygonF([QPointF(x + dx, y + dy) for dx, dy in flat]))

    def _paint_summary(self, painter: QPainter, left: int) -> None:
        painter.setFont(fonts().small)
        painter.setPen(look().soft_ink)
        room = QRect(left, 0, self.width() - left - EDGE, self.height())
        text = painter.fontMetrics().elidedText(self._summary, Qt.TextElideMode.ElideRight, room.width())
        painter.drawText(room, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, text)


class Heading(Row):
    """Words over the rows that follow; the search leaves it out."""

    def __init__(self, text: str, *columns: str, width: int = 0) -> None:
        super().__init__("", text)
        self.label.setFont(fonts().strong)
        self.columns = [QLabel(column, self) for column in columns]
        for column in self.columns:
            column.setFont(fonts().small)
            column.setFixedWidth(width)
            column.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignBottom)
            self.line.addWidget(column)
        self.column.setContentsMargins(EDGE, 2 * GRID, EDGE, 0)

    def is_called(self, wanted: str) -> bool:
        """It is no field."""
        return False


class Remark(Row):
    """A sentence that stands by itself; the search leaves it out."""

    def __init__(self, words: str, mark: Mark | None = None) -> None:
        super().__init__("", "")
        self.label.hide()
        self.say(words, mark)

    def is_called(self, wanted: str) -> bool:
        """It is no field."""
        return False


class Section(QWidget):
    """A header and its rows."""

    title = ""
    turned = Signal()
    """She opened or closed it."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.rows: list[Row] = []
        self.header = Header(self.title)
        self._body: QWidget | None = None
        self._searched = False
        self._outer = QVBoxLayout(self)
        self._outer.setContentsMargins(0, 0, 0, 0)
        self._outer.setSpacing(0)
        self._outer.addWidget(self.header)
        self.header.clicked.connect(self.turned)

    @property
    def opened(self) -> bool:
        """Whether it was opened; a search shows rows of closed sections too."""
        return self.header.isChecked()

    @property
    def seen(self) -> bool:
        """Whether any rows are on show."""
        return self.opened or self._searched

    def show_opened(self, opened: bool) -> None:
        """Open it or close it."""
        self.header.setChecked(opened)
        self._settle()

    def _settle(self) -> None:
        if self.seen:
            self.build()
            self.show_rows(self.desk.picture)
        if self._body is not None:
            self._body.setVisible(self.seen)

    def build(self) -> None:
        """Make the rows, unless they are there."""
        if self._body is not None:
            return
        self._body = QWidget(self)
        self._column = QVBoxLayout(self._body)
        self._column.setContentsMargins(0, GRID, 0, 3 * GRID)
        self._column.setSpacing(0)
        self.fill()
        self._outer.addWidget(self._body)
        self.chain()

    def chain(self) -> None:
        """Let the tab key go through the rows after the header, whenever they were made."""
        last: QWidget = self.header
        for widget in self._body.findChildren(QWidget) if self._body else []:
            # the list that drops down from a field is a window of its own
            if widget.focusPolicy() & Qt.FocusPolicy.TabFocus and widget.window() is self.window():
                QWidget.setTabOrder(last, widget)
                last = widget

    def fill(self) -> None:
        """Add the rows."""
        raise NotImplementedError

    def add(self, row: AnyRow) -> AnyRow:
        """Add one row at the end."""
        self.rows.append(row)
        self._column.addWidget(row)
        return row

    def show_picture(self, picture: Picture) -> None:
        """Show what is stored; rows that nobody sees wait until they are seen."""
        self.header.show_summary(self.summary(picture))
        if self.seen:
            self.show_rows(picture)

    def show_rows(self, picture: Picture) -> None:
        """Every row in turn."""
        for row in self.rows:
            row.show_picture(picture)

    def summary(self, picture: Picture) -> str:
        """A few words for the header."""
        return ""

    def search(self, wanted: str) -> bool:
        """Show the rows that the search finds, or with nothing wanted all of them; whether there are any."""
        if not wanted:
            self._searched = False
            for row in self.rows:
                row.show_found(None)
            self.setVisible(True)
            self._settle()
            return True
        self.build()
        whole = wanted.lower() in self.title.lower()
        found = [row.wanted and (whole or row.is_called(wanted)) for row in self.rows]
        self._show_found(found)
        self._searched = any(found)
        self.setVisible(self._searched)
        self._settle()
        return self._searched

    def _show_found(self, found: list[bool]) -> None:
        """Show the rows found, and over them their heading, which names the columns."""
        below = False
        for row, here in zip(reversed(self.rows), reversed(found), strict=True):
            row.show_found(below if isinstance(row, Heading) else here)
            below = not isinstance(row, Heading) and (below or here)

    def row_of(self, field: str, seam: int | None) -> Row | None:
        """The row of a field as findings name it; None where it is not in this section."""
        return next((row for row in self.rows if row.name and row.name == field), None)

    def has(self, field: str) -> bool:
        """Whether the field is one of this section's, so that it is worth building."""
        return False
