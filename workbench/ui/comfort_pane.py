"""Comfort beside the drawing: a picture by level, the most that keeps every limit, findings, cautions."""

from __future__ import annotations

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QAction, QShowEvent
from PySide6.QtWidgets import QFrame, QLabel, QPushButton, QScrollArea, QVBoxLayout, QWidget

from workbench.body import CAUTIONS, round_down, say_at_most, say_closely
from workbench.document import Picture
from workbench.draft import Finding
from workbench.ui.comfort_picture import ComfortPicture
from workbench.ui.desk import Desk
from workbench.ui.findings import FindingList
from workbench.ui.head import Head
from workbench.ui.look import GRID, fonts

WIDTH = 80 * GRID
_RESTING_MS = 60
_WAITING = "Comfort is judged as soon as the bodice can be worked out from the measurements."


class ComfortPane(QWidget):
    """Shows what the limits say of the draft.

    ``take_most`` takes the most they allow, ``shown`` is the action that shows and hides the pane.
    """

    def __init__(self, desk: Desk, take_most: QAction, shown: QAction, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.picture = ComfortPicture()
        self.most = _wrapped("")
        self.take = QPushButton("Take it")
        self.take.setAccessibleName("Take the most that keeps every limit")
        self._found, self.findings = _heading("Findings"), FindingList()
        self.head = Head("Comfort")
        self.setMinimumWidth(WIDTH)
        area = QScrollArea()
        area.setAccessibleName("Comfort, level by level")
        area.setWidgetResizable(True)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setWidget(self._arranged())
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.head)
        column.addWidget(area, 1)
        self.head.shut.clicked.connect(shown.trigger)
        self.take.clicked.connect(take_most.trigger)
        self.findings.chosen.connect(self.on_chosen)
        self._resting = QTimer(self)
        self._resting.setSingleShot(True)
        self._resting.setInterval(_RESTING_MS)
        self._resting.timeout.connect(self.show_findings)
        desk.drafted.connect(self.show_picture)

    def _arranged(self) -> QWidget:
        inside = QWidget()
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, 0, 4 * GRID)
        column.setSpacing(2 * GRID)
        column.addWidget(self.picture)
        for part in (_heading("The most that keeps every limit"), self.most):
            column.addWidget(part)
        taking = QVBoxLayout()
        taking.setContentsMargins(3 * GRID, 0, 3 * GRID, 0)
        taking.addWidget(self.take, 0, Qt.AlignmentFlag.AlignLeft)
        column.addLayout(taking)
        column.addWidget(self._found)
        column.addWidget(self.findings)
        column.addWidget(_heading("Cautions"))
        for sentence in CAUTIONS:
            column.addWidget(_wrapped(sentence))
        column.addStretch(1)
        return inside

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with what was drafted while the pane was hidden."""
        super().showEvent(event)
        self.show_picture(self._desk.picture)
        self.show_findings()

    def show_picture(self, picture: Picture) -> None:
        """Show the comfort of a picture; nothing is worked out while the pane is hidden."""
        if not self.isVisible():
            return
        self.picture.show_picture(picture)
        comfort = picture.comfort
        self.take.setEnabled(comfort is not None)
        most = _WAITING if comfort is None else _most(picture, comfort.largest_reduction)
        if most != self.most.text():
            self.most.setText(most)
        self._resting.start()

    def show_findings(self) -> None:
        """Show the findings of the picture on the desk.

        The heaviest stands in the foot at once. The whole list waits until the hand rests:
        breaking every sentence into lines again at each step of a drag would be felt.
        """
        self._resting.stop()
        picture = self._desk.picture
        project, comfort = picture.project, picture.comfort
        findings = comfort.findings if comfort else ()
        texts = [finding.text(project.unit, project.fraction) for finding in findings]
        self._found.setVisible(bool(findings))
        self.findings.show_findings(findings, texts)

    def on_chosen(self, finding: Finding) -> None:
        """Light up what a finding speaks of."""
        self._desk.select(finding.place)


def _most(picture: Picture, largest: float) -> str:
    """The figure both ways, because mixing them up is the usual mistake."""
    unit, fraction = picture.project.unit, picture.project.fraction
    largest = round_down(largest, unit, fraction)
    if not largest:
        return "Nothing: at these girths the limits leave nothing to draw in at the waist."
    if largest < 0:
        ease = say_closely(-largest, unit, fraction)
        return f"The limits leave nothing to draw in at the waist: they ask for {ease} of ease round her."
    whole = say_closely(largest, unit, fraction)
    quarter = say_at_most(largest / 4, unit, fraction)
    return f"{whole} round the body, {quarter} a quarter, at the waist. Taken in whole steps of your ruler."


def _heading(text: str) -> QLabel:
    label = QLabel(text)
    label.setFont(fonts().heading)
    label.setContentsMargins(3 * GRID, 2 * GRID, 3 * GRID, 0)
    return label


def _wrapped(text: str) -> QLabel:
    label = QLabel(text)
    label.setWordWrap(True)
    label.setContentsMargins(3 * GRID, 0, 3 * GRID, 0)
    return label
