"""The foot of the window: the most important thing now, in one sentence, and the others behind it."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QPoint, QSize, Qt
from PySide6.QtGui import QIcon, QPainter, QPaintEvent, QShowEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPushButton, QScrollArea, QVBoxLayout, QWidget

from workbench.document import Picture
from workbench.draft import Finding, by_weight
from workbench.ui import access
from workbench.ui.desk import Desk
from workbench.ui.explained import ExplainedList
from workbench.ui.findings import FindingRow
from workbench.ui.look import GRID, look
from workbench.ui.marks import WORDS, mark_icon, mark_of

_POPUP_WIDTH = 140 * GRID


class FindingsPopup(QFrame):
    """All findings in a sheet above the foot; it closes on a click beside it or on Escape."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent, Qt.WindowType.Popup)
        self.setObjectName("sheet")
        self.list = ExplainedList()
        self.list.setAccessibleName("All findings")
        self._above: QWidget | None = None
        self._area = QScrollArea()
        self._area.setWidgetResizable(True)
        self._area.setFrameShape(QFrame.Shape.NoFrame)
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._area.setWidget(self.list)
        column = QVBoxLayout(self)
        column.setContentsMargins(1, GRID, 1, GRID)
        column.addWidget(self._area)
        self.list.grown.connect(self.show_fitted)
        self.list.more.connect(self.on_more)

    def open_above(self, foot: QWidget) -> None:
        """Stand on the foot's upper edge, at its right end, no taller than the room above it."""
        self._above = foot
        self.show_fitted()
        self.show()
        row = self.list.first_row()
        if row is not None:
            row.setFocus(Qt.FocusReason.PopupFocusReason)

    def show_fitted(self) -> None:
        """Be as tall as what is listed needs, on the foot's upper edge."""
        foot = self._above
        if foot is None:
            return
        width = min(_POPUP_WIDTH, foot.width())
        room = max(foot.mapTo(foot.window(), QPoint(0, 0)).y() - 4 * GRID, 40 * GRID)
        self.list.ensurePolished()
        wanted = self.list.heightForWidth(width - 2) + 2 * GRID + 2
        size = QSize(width, min(wanted, room))
        self.setFixedSize(size)
        self.move(foot.mapToGlobal(QPoint(foot.width() - width, -size.height())))

    def on_more(self, link: str) -> None:
        """Turn to where the help says more."""
        from workbench.ui.help import show_help  # not before somebody asks

        self.close()
        show_help(self, link)


FindingsOf = Callable[[Picture], Sequence[Finding]]


def findings_of_draft(picture: Picture) -> Sequence[Finding]:
    """What the draft has to say, the most important first."""
    if not picture.project.style_name:
        return picture.findings
    from workbench.styles import not_yet_hers  # only a project begun from a shape has a use for it

    return by_weight((*picture.findings, *not_yet_hers(picture)))


class Foot(QWidget):
    """One sentence, and a button for the rest.

    ``findings_of`` says for a picture what is to be said in the place that the foot belongs to.
    """

    def __init__(
        self, desk: Desk, parent: QWidget | None = None, findings_of: FindingsOf = findings_of_draft
    ) -> None:
        super().__init__(parent)
        self._desk, self._findings_of = desk, findings_of
        self._behind = True
        self._told = ("", "")
        self._more_shown: object = None
        self.row = FindingRow(self, most_lines=2)
        self.more = QPushButton(self)
        self.more.setFlat(True)
        self.more.setObjectName("quiet")
        self.popup = FindingsPopup(self)
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 1, 2 * GRID, 0)
        line.setSpacing(2 * GRID)
        line.addWidget(self.row, 1)
        line.addWidget(self.more)
        self.row.clicked.connect(self.on_row_clicked)
        self.more.clicked.connect(self.on_more_clicked)
        self.popup.list.chosen.connect(self.on_chosen)
        desk.drafted.connect(self.show_drafted)
        desk.refused.connect(self.show_refusal)

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with what was drafted while another place was in sight."""
        super().showEvent(event)
        if self._behind:
            self.show_picture(self._desk.picture)

    def show_drafted(self, picture: Picture) -> None:
        """Follow the draft while anybody can see it."""
        if self.isVisible():
            self.show_picture(picture)
        else:
            self._behind = True

    def show_picture(self, picture: Picture) -> None:
        """Say the most important finding, and how many there are besides."""
        self._behind = False
        findings = self._findings_of(picture)
        first = next(iter(findings), None)
        if first is not None and _is_wanting(first):
            self.row.finding = first
            self.row.show_sentence("note", "Still needed", _said(first, picture))
        elif first is not None:
            self.row.show_finding(first, _said(first, picture))
        else:
            self.row.finding = None
            self.row.show_sentence("within", "Within", "No limit that you set is passed.")
        self._show_more(first, [finding for finding in findings if finding is not first])
        if self.popup.isVisible():
            self._fill(picture)
        self._tell(first)

    def _tell(self, first: Finding | None) -> None:
        """Have the sentence spoken when it is about something else now; not with each figure of a drag."""
        code = first.code if first is not None else ""
        if not self._desk.gesturing and (code, self.row.word) != self._told:
            self._told = (code, self.row.word)
            access.announce(self, self.row.accessibleName())

    def show_refusal(self, _field: str, sentence: str) -> None:
        """Say why what was typed could not be read, until the next draft."""
        self._behind = not self.isVisible()
        self.row.finding = None
        self.row.show_sentence("stop", "Not read", sentence)
        access.announce(self, self.row.accessibleName(), at_once=True)

    def _show_more(self, first: Finding | None, others: list[Finding]) -> None:
        """The button says how many, and by its mark how much the heaviest of them matters.

        With one finding alone it asks why that is said.
        """
        self.more.setVisible(first is not None)
        if first is None:
            return
        mark = mark_of(others[0]) if others else None
        text = f" and {len(others)} more" if others else "Why?"
        if (mark, text, look()) != self._more_shown:
            self._more_shown = (mark, text, look())
            self.more.setText(text)
            self.more.setIcon(mark_icon(mark) if mark is not None else QIcon())
            said = f"Show all findings, {len(others)} more. {WORDS[mark]}" if mark else "Why is it said?"
            self.more.setAccessibleName(said)

    def _fill(self, picture: Picture) -> None:
        findings = self._findings_of(picture)
        self.popup.list.show_findings(findings, [_said(finding, picture) for finding in findings])

    def on_row_clicked(self) -> None:
        """Light up what the sentence speaks of."""
        if self.row.finding is not None:
            self._desk.select(self.row.finding.place)

    def on_more_clicked(self) -> None:
        """Open the list of all findings; one alone says at once why."""
        self._fill(self._desk.picture)
        rows = self.popup.list.rows()
        if len(rows) == 1:
            rows[0].why.setChecked(True)
        self.popup.open_above(self)

    def on_chosen(self, finding: Finding) -> None:
        """Light up what a listed finding speaks of, and get out of its way."""
        self.popup.close()
        self._desk.select(finding.place)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A hairline along the top."""
        painter = QPainter(self)
        painter.fillRect(0, 0, self.width(), 1, look().hairline)
        painter.end()


def _is_wanting(finding: Finding) -> bool:
    """A measurement that is not there yet is no fault; one that contradicts another comes with figures."""
    return finding.code == "body" and not finding.lengths


def _said(finding: Finding, picture: Picture) -> str:
    return finding.text(picture.project.unit, picture.project.fraction)
