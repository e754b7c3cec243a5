"""The page before there is a project: begin one, open one, or look at a demo."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from workbench.ui.look import GRID, fonts, icon, look

_SHOWN = 6
"""Rows in each list; the File menu has them all."""
_STYLES = (
    ("under_bust", "New under-bust bodice", "From just under the bust to the top of the hip."),
    ("over_bust", "New over-bust bodice", "Over the bust, with the neckline yours to draw."),
)


class Choice(QAbstractButton):
    """A large button: a drawing, what it is, and a sentence."""

    def __init__(self, drawing: str, title: str, sentence: str) -> None:
        super().__init__()
        self.drawing, self.sentence = drawing, sentence
        self.setText(title)
        self.setAccessibleName(title)
        self.setAccessibleDescription(sentence)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        """Two of them stand side by side on a small laptop."""
        return QSize(58 * GRID, 66 * GRID)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter does what a click does."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A sheet of paper with the drawing on it."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        lit = self.underMouse() or self.hasFocus()
        painter.setPen(look().selected if lit else look().hairline)
        painter.setBrush(look().selected_fill if self.isDown() else look().panel)
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), 6, 6)
        side = 36 * GRID
        icon(self.drawing, side).paint(painter, (self.width() - side) // 2, 4 * GRID, side, side)
        painter.setPen(look().ink)
        painter.setFont(fonts().heading)
        painter.drawText(
            QRectF(0, 42 * GRID, self.width(), 6 * GRID), Qt.AlignmentFlag.AlignCenter, self.text()
        )
        painter.setPen(look().soft_ink)
        painter.setFont(fonts().body)
        box = QRectF(4 * GRID, 49 * GRID, self.width() - 8 * GRID, 14 * GRID)
        wrapped = Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap
        painter.drawText(box, wrapped, self.sentence)
        painter.end()


class FileList(QWidget):
    """A heading and a short list of files to open."""

    picked = Signal(object)
    """The path of the file."""

    def __init__(self, heading: str, note: str) -> None:
        super().__init__()
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        title, below = QLabel(heading), QLabel(note)
        title.setFont(fonts().heading)
        below.setFont(fonts().small)
        below.setWordWrap(True)
        below.setContentsMargins(0, 0, 0, GRID)
        below.setVisible(bool(note))
        self._column.addWidget(title)
        self._column.addWidget(below)
        self._rows: dict[QPushButton, Path] = {}

    def show_files(self, files: Sequence[tuple[Path, str]]) -> None:
        """Show these files under these names; the heading goes when there are none."""
        for row in self._rows:
            self._column.removeWidget(row)
            row.deleteLater()
        self._rows = {self._row(name): path for path, name in files[:_SHOWN]}
        self.setVisible(bool(files))

    def _row(self, name: str) -> QPushButton:
        row = QPushButton(_short(name))
        row.setObjectName("row")
        row.setAccessibleName(f"Open {name}")
        row.setCursor(Qt.CursorShape.PointingHandCursor)
        row.clicked.connect(self.on_row_clicked)
        self._column.addWidget(row)
        return row

    def on_row_clicked(self) -> None:
        """Say which file it was."""
        row = self.sender()
        if isinstance(row, QPushButton):
            self.picked.emit(self._rows[row])


class Welcome(QFrame):
    """Big clear choices, and the files she is likely to want."""

    new_chosen = Signal(str)
    """A style."""
    open_chosen = Signal()
    shapes_chosen = Signal()
    book_chosen = Signal()

    def __init__(self, demos: Sequence[Path]) -> None:
        super().__init__()
        self.choices = {style: Choice(style, title, sentence) for style, title, sentence in _STYLES}
        self.open_button = QPushButton("Open a project…")
        self.recent = FileList("Recent projects", "")
        self.demos = FileList("Demos", "People and figures are invented. Each opens as a copy.")
        self.demos.show_files([(path, demo_title(path)) for path in demos])
        self.open_button.clicked.connect(self.open_chosen)
        self.shapes_button = QPushButton("Choose from the shapes…")
        self.shapes_button.setIcon(icon("shapes"))
        self.shapes_button.clicked.connect(self.shapes_chosen)
        self.book_button = QPushButton("Client book")
        self.book_button.setIcon(icon("book"))
        self.book_button.clicked.connect(self.book_chosen)
        self.how = QPushButton("How it goes, in five steps")
        self.how.setObjectName("quiet")
        self.how.clicked.connect(self.on_how)
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.setAccessibleName("Begin, or open a project")
        for choice in self.choices.values():
            choice.clicked.connect(self.on_choice_clicked)
        self._arrange()

    def _arrange(self) -> None:
        title = QLabel("What will you draft?")
        title.setFont(fonts().title)
        cards = QHBoxLayout()
        cards.setSpacing(4 * GRID)
        for choice in self.choices.values():
            cards.addWidget(choice)
        lists = QVBoxLayout()
        lists.setSpacing(5 * GRID)
        lists.addWidget(self.recent)
        lists.addWidget(self.demos)
        buttons = QHBoxLayout()
        buttons.setSpacing(2 * GRID)
        for button in (self.open_button, self.book_button):
            buttons.addWidget(button)
        buttons.addStretch(1)
        lists.addLayout(buttons)
        lists.addStretch(1)
        grid = QGridLayout(self)
        grid.setHorizontalSpacing(12 * GRID)
        grid.setVerticalSpacing(6 * GRID)
        grid.addWidget(title, 1, 1)
        grid.addLayout(cards, 2, 1, Qt.AlignmentFlag.AlignTop)
        below = QHBoxLayout()
        below.setSpacing(2 * GRID)
        below.addWidget(self.shapes_button)
        below.addWidget(self.how)
        below.addStretch(1)
        grid.addLayout(below, 3, 1)
        grid.addLayout(lists, 2, 2, 2, 1)
        grid.setColumnMinimumWidth(2, 84 * GRID)
        for edge, stretch in ((0, 1), (4, 1)):
            grid.setColumnStretch(edge, stretch)
            grid.setRowStretch(edge, stretch)

    def on_choice_clicked(self) -> None:
        """Say which style it was."""
        for style, choice in self.choices.items():
            if choice is self.sender():
                self.new_chosen.emit(style)

    def on_how(self) -> None:
        """Open the help at its first page."""
        from workbench.ui.help import show_help  # nobody opens the program to read this

        show_help(self, "start")

    def paintEvent(self, _event: QPaintEvent) -> None:
        """On paper, as everything that is drawn."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), look().paper)
        painter.end()


def demo_title(path: Path) -> str:
    """``concert_soloist.bodice`` is the “Concert soloist”."""
    return path.stem.replace("_", " ").capitalize()


def _short(name: str, most: int = 44) -> str:
    """The name with its middle left out where it is long; an ampersand stays an ampersand."""
    shown = name if len(name) <= most else f"{name[: most // 2]}…{name[-most // 2 :]}"
    return shown.replace("&", "&&")
