"""Findings in words: one row, and a list of rows. A click says which place to light up."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFont,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPalette,
    QResizeEvent,
    QTextCharFormat,
    QTextLayout,
    QTextOption,
)
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QVBoxLayout, QWidget

from workbench.draft import Finding
from workbench.ui.look import GRID, fonts, look
from workbench.ui.marks import Mark, draw_mark, mark_colour, mark_of, word_of

_MARK = 16
_LEFT = 3 * GRID + _MARK + 2 * GRID
_RIGHT = 3 * GRID


class FindingRow(QAbstractButton):
    """One sentence with its mark and word, as tall as it needs, or at most ``most_lines`` lines."""

    def __init__(self, parent: QWidget | None = None, most_lines: int = 0, clickable: bool = True) -> None:
        super().__init__(parent)
        self.finding: Finding | None = None
        self._mark: Mark = "note"
        self._word, self._sentence = "", ""
        self._most_lines = most_lines
        self._layout = QTextLayout()
        self._heights: dict[int, float] = {}
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus if clickable else Qt.FocusPolicy.NoFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setCursor(Qt.CursorShape.PointingHandCursor if clickable else Qt.CursorShape.ArrowCursor)

    def show_finding(self, finding: Finding, text: str) -> None:
        """Show a finding whose sentence reads ``text``."""
        self.finding = finding
        self.show_sentence(mark_of(finding), word_of(finding), text)

    @property
    def word(self) -> str:
        """What stands in bold before the sentence."""
        return self._word

    def show_sentence(self, mark: Mark, word: str, sentence: str) -> None:
        """Show a mark, a word in bold and a sentence."""
        if (mark, word, sentence) == (self._mark, self._word, self._sentence):
            return
        self._mark, self._word, self._sentence = mark, word, sentence
        self.setAccessibleName(f"{word}. {sentence}")
        lines = self._layout.lineCount()
        self._heights.clear()
        self._fit()
        # a figure that changes in a sentence seldom changes how many lines it takes
        if self._layout.lineCount() != lines:
            self.updateGeometry()
        self.update()

    def changeEvent(self, event: QEvent) -> None:
        """Colours are part of the broken lines: a change of look sets them again."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange:
            self._fit()

    def _set_text(self, sentence: str) -> None:
        self._layout.setText(f"{self._word}  {sentence}")
        self._layout.setFont(fonts().body)
        option = QTextOption()
        option.setWrapMode(QTextOption.WrapMode.WordWrap)
        self._layout.setTextOption(option)
        bold = QTextCharFormat()
        bold.setFontWeight(QFont.Weight.Bold)
        bold.setForeground(mark_colour(self._mark))
        word = QTextLayout.FormatRange()
        word.start, word.length, word.format = 0, len(self._word), bold
        self._layout.setFormats([word])
        self._heights[self.width()] = self._break_lines(self.width())

    def _break_lines(self, width: int) -> float:
        """Height of the text in a row of this width."""
        room = max(width - _LEFT - _RIGHT, 60)
        self._layout.beginLayout()
        height = 0.0
        while (line := self._layout.createLine()).isValid():
            line.setLineWidth(room)
            line.setPosition(QPointF(0, height))
            height += line.height()
        self._layout.endLayout()
        return height

    def heightForWidth(self, width: int) -> int:
        """Height of the whole sentence, or of as many lines as the row may have."""
        if self._most_lines:
            return self.sizeHint().height()
        if width not in self._heights:
            self._heights[width] = self._break_lines(width)
            self._break_lines(self.width())
        return round(self._heights[width]) + 3 * GRID

    def sizeHint(self) -> QSize:
        """A row of one line; a row with a fixed number of lines always has the height of them all."""
        line = self.fontMetrics().lineSpacing() + 1
        return QSize(60 * GRID, line * max(self._most_lines, 1) + 3 * GRID)

    def minimumSizeHint(self) -> QSize:
        """Narrow: the sentence wraps."""
        return QSize(40 * GRID, self.sizeHint().height())

    def resizeEvent(self, _event: QResizeEvent) -> None:
        """Break the sentence anew."""
        self._fit()

    def _fit(self) -> None:
        """Break into lines; shorten what has no room in the lines there are, at a word."""
        self._set_text(self._sentence)
        words = self._sentence.split(" ")
        while self._most_lines and self._layout.lineCount() > self._most_lines and len(words) > 1:
            words.pop()
            self._set_text(" ".join(words) + " …")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter does what a click does; the other keys are the button's."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The mark, then the word and the sentence."""
        painter = QPainter(self)
        ground = self.palette().color(QPalette.ColorRole.Window)
        if self.focusPolicy() != Qt.FocusPolicy.NoFocus and (self.underMouse() or self.hasFocus()):
            ground = look().selected_fill
            painter.fillRect(self.rect(), ground)
        text_height = self._layout.boundingRect().height()
        top = (self.height() - text_height) / 2
        draw_mark(painter, QRectF(3 * GRID, top + 1, _MARK, _MARK), self._mark, ground)
        painter.setPen(look().ink)
        self._layout.draw(painter, QPointF(_LEFT, top))
        painter.end()


class FindingList(QWidget):
    """Rows of findings, kept and refilled rather than made anew."""

    chosen = Signal(object)
    """The finding that was clicked."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows: list[FindingRow] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)

    def show_findings(self, findings: Sequence[Finding], texts: Sequence[str]) -> None:
        """Show these, in this order, with these sentences."""
        while len(self._rows) < len(findings):
            self._add_row()
        for row, finding, text in zip(self._rows, findings, texts, strict=False):
            row.show_finding(finding, text)
        for number, row in enumerate(self._rows):
            row.setVisible(number < len(findings))

    def first_row(self) -> FindingRow | None:
        """The row to put the focus on; None when nothing is listed."""
        return self._rows[0] if self._rows and not self._rows[0].isHidden() else None

    def _add_row(self) -> None:
        row = FindingRow(self)
        row.clicked.connect(self.on_row_clicked)
        self._rows.append(row)
        self._column.addWidget(row)

    def on_row_clicked(self) -> None:
        """Pass on which finding it is."""
        row = self.sender()
        if isinstance(row, FindingRow) and row.finding is not None:
            self.chosen.emit(row.finding)
