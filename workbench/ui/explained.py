"""Findings with a “Why?” each: what it is said for, and what to do, opened below its sentence."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QGridLayout, QLabel, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from workbench.draft import Finding
from workbench.ui.findings import FindingRow
from workbench.ui.look import GRID, look

_SET_IN = 9 * GRID
"""Pixels from the left edge to where the words of a row begin."""


class WhyButton(QPushButton):
    """Opens and closes what is below; Enter does what a click does."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Why?", parent)
        self.setObjectName("quiet")
        self.setCheckable(True)
        self.setFlat(True)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """As with the mouse."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)


class ExplainedRow(QWidget):
    """One finding; its explanation is read when it is first opened."""

    grown = Signal()
    """It needs another height now."""
    more = Signal(str)
    """Where the help says more."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.row, self.why, self.below = FindingRow(self), WhyButton(self), QLabel(self)
        self.below.setWordWrap(True)
        self.below.setTextFormat(Qt.TextFormat.RichText)
        self.below.setContentsMargins(_SET_IN, 0, 3 * GRID, 3 * GRID)
        self.below.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextBrowserInteraction | Qt.TextInteractionFlag.LinksAccessibleByKeyboard
        )
        self.below.hide()
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 2 * GRID, 0)
        grid.setSpacing(0)
        grid.addWidget(self.row, 0, 0)
        grid.addWidget(self.why, 0, 1, Qt.AlignmentFlag.AlignVCenter)
        grid.addWidget(self.below, 1, 0, 1, 2)
        grid.setColumnStretch(0, 1)
        self.why.toggled.connect(self.on_toggled)
        self.below.linkActivated.connect(self.more)

    def show_finding(self, finding: Finding, text: str) -> None:
        """Show a finding whose sentence reads ``text``; another one than before is closed."""
        if self.row.finding is None or finding.code != self.row.finding.code:
            self.why.setChecked(False)
        self.row.show_finding(finding, text)
        self.why.setAccessibleName(f"Why is it said? {text}")

    def on_toggled(self, opened: bool) -> None:
        """Say why and what to do, or put it away."""
        if opened and self.row.finding is not None:
            self.below.setText(explanation(self.row.finding.code))
        self.below.setVisible(opened)
        self.grown.emit()

    def changeEvent(self, event: QEvent) -> None:
        """The colour of a link is part of the text."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and self.why.isChecked() and self.row.finding:
            self.below.setText(explanation(self.row.finding.code))


def explanation(code: str) -> str:
    """Why a finding is said and what to do about it, as HTML with a link to the help."""
    from workbench.ui.help import page_of_code, why_of  # not before somebody asks

    told = why_of(code)
    link = f'<a href="{page_of_code(code)}" style="color: {look().selected.name()}">More in the help</a>'
    if told is None:
        return link
    return (
        f"<p><b>Why.</b> {escape(told.why, quote=False)}</p>"
        f"<p><b>What to do.</b> {escape(told.do, quote=False)}</p><p>{link}</p>"
    )


class ExplainedList(QWidget):
    """Rows of findings, kept and refilled rather than made anew."""

    chosen = Signal(object)
    """The finding that was clicked."""
    grown = Signal()
    """It needs another height now."""
    more = Signal(str)
    """Where the help says more."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows: list[ExplainedRow] = []
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

    def rows(self) -> tuple[ExplainedRow, ...]:
        """The rows on show."""
        return tuple(row for row in self._rows if not row.isHidden())

    def first_row(self) -> FindingRow | None:
        """The row to put the focus on; None when nothing is listed."""
        return next((row.row for row in self.rows()), None)

    def _add_row(self) -> None:
        row = ExplainedRow(self)
        row.row.clicked.connect(self.on_row_clicked)
        row.grown.connect(self.grown)
        row.more.connect(self.more)
        self._rows.append(row)
        self._column.addWidget(row)

    def on_row_clicked(self) -> None:
        """Pass on which finding it is."""
        row = self.sender()
        if isinstance(row, FindingRow) and row.finding is not None:
            self.chosen.emit(row.finding)
