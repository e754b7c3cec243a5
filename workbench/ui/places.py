"""The places of the window side by side, in the same corner whichever is in sight."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QWidget

from workbench.ui.actions import PLACES, Actions, PlaceName
from workbench.ui.form.choice import Choice
from workbench.ui.look import GRID

_WORDS: dict[PlaceName, str] = {
    "draft": "Draft",
    "pieces": "Pieces",
    "beads": "Beads",
    "cloth": "Cloth",
    "quote": "Quote",
    "marking": "Marking",
    "sewing": "Sewing",
    "fittings": "Fittings",
}


class Places(QWidget):
    """Always in the same corner, whichever place is in sight."""

    def __init__(self, deeds: Actions, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._deeds = deeds
        self.choice = Choice("Place", [(name, _WORDS[name]) for name in PLACES], self)
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 1, 2 * GRID, 1)
        line.addWidget(self.choice)
        self.choice.chosen.connect(self.on_chosen)

    def show_place(self, name: PlaceName) -> None:
        """Show which place is in sight."""
        self.choice.show_value(name)
        self._deeds[name].setChecked(True)

    def on_chosen(self, name: object) -> None:
        """Turn to another place."""
        self._deeds[str(name)].trigger()
