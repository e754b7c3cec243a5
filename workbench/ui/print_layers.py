"""Which layers are printed at true size: one box for each layer that is made."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from workbench.document import Paper
from workbench.pieces import LAYERS, LayerName, Making, label_of
from workbench.ui.look import GRID
from workbench.ui.tick import Tick


class LayerBoxes(QWidget):
    """A box for each layer; those that are not made are not shown."""

    changed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.boxes: dict[LayerName, Tick] = {name: Tick() for name in LAYERS}
        grid = QGridLayout(self)
        grid.setContentsMargins(5 * GRID, 0, 0, 0)
        grid.setVerticalSpacing(GRID)
        for number, box in enumerate(self.boxes.values()):
            grid.addWidget(box, number // 2, number % 2)
            box.clicked.connect(self.changed)

    def show_layers(self, paper: Paper, making: Making) -> None:
        """The layers that are made, ticked where they are printed."""
        for name, box in self.boxes.items():
            box.setText(label_of(name, making))
            box.setChecked(name in paper.layers)
            box.setVisible(making.layer(name).made)

    def ticked(self) -> tuple[LayerName, ...]:
        """The layers to print; the last one left cannot be unticked."""
        chosen = tuple(name for name, box in self.boxes.items() if box.isChecked())
        return chosen or ("fashion",)
