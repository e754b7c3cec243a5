"""Short pages of help: keys and gestures, the cautions, what the program is."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QFrame,
    QLabel,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

import workbench
from workbench.body import CAUTIONS
from workbench.ui.look import GRID, fonts

_KEYS = (
    ("Ctrl and a figure", "turn to a place; they are counted in the order of the job"),
    ("In a field", ""),
    ("Enter, or leave the field", "hand in what is typed"),
    ("Escape", "put back what was there"),
    ("Up, Down", "one step more or less"),
    ("On the drawing", ""),
    ("Wheel", "larger or smaller at the pointer"),
    ("Space or middle button, and drag", "move the drawing"),
    ("+, −, 0", "larger, smaller, fit to the window"),
    ("Click an intake figure", "type another; Enter pins it, Delete unpins it"),
    ("I, Shift+I", "pick the next intake figure, the one before"),
    ("Drag the end of a bar at the right", "draw that level in, or let it out"),
    ("Up and Down, Left and Right on the bars", "choose a level, draw it in or let it out by one step"),
    ("Among the pieces", ""),
    ("Page Up, Page Down", "the layer before, the next one"),
    ("Left and Right, Up and Down", "from piece to piece, from edge to edge"),
    ("Click an allowance, or Enter", "type one for this edge alone; Delete takes its kind’s again"),
    ("Neckline and hem", ""),
    ("H, Shift+H", "pick the next point, the one before"),
    ("Drag a point", "it snaps to the step of the ruler; hold Alt to move it freely"),
    ("Arrow keys", "move the picked point by one step"),
    ("Double click on the line", "add a point"),
    ("T, Delete", "smooth or corner; remove the point"),
    ("Escape while dragging", "leave it as it was"),
)


def show_keys(parent: QWidget) -> None:
    """Open the list of keys and gestures."""
    page = QWidget()
    rows = QFormLayout(page)
    rows.setHorizontalSpacing(6 * GRID)
    rows.setVerticalSpacing(2 * GRID)
    for keys, meaning in _KEYS:
        name = QLabel(keys)
        if meaning:
            rows.addRow(name, _wrapped(meaning))
        else:
            name.setFont(fonts().heading)
            rows.addRow(name)
    _show(parent, "Keys and gestures", page)


def show_cautions(parent: QWidget) -> None:
    """Open the cautions."""
    page = QWidget()
    column = QVBoxLayout(page)
    column.setSpacing(3 * GRID)
    for sentence in CAUTIONS:
        column.addWidget(_wrapped(sentence))
    column.addStretch(1)
    _show(parent, "Cautions", page)


def show_about(parent: QWidget) -> None:
    """Open what the program is, and what it does with data."""
    page = QWidget()
    column = QVBoxLayout(page)
    column.setSpacing(3 * GRID)
    title = QLabel("Corset workbench")
    title.setFont(fonts().title)
    column.addWidget(title)
    for sentence in (
        f"Version {workbench.__version__}",
        "From measurements to panels that can be sewn, printed at true size.",
        "Projects stay on this computer, in the files that you save. Nothing is sent anywhere.",
        "It compares figures with limits that you set. It does not know the person: you and she do.",
    ):
        column.addWidget(_wrapped(sentence))
    column.addStretch(1)
    _show(parent, "About", page)


def _wrapped(text: str) -> QLabel:
    label = QLabel(text)
    label.setWordWrap(True)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return label


def _show(parent: QWidget, title: str, page: QWidget) -> None:
    dialog = QDialog(parent)
    dialog.setWindowTitle(title)
    dialog.setMinimumSize(130 * GRID, 90 * GRID)
    area = QScrollArea()
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setWidget(page)
    buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
    buttons.rejected.connect(dialog.reject)
    column = QVBoxLayout(dialog)
    column.addWidget(area)
    column.addWidget(buttons)
    dialog.exec()
    dialog.deleteLater()
