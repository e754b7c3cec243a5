"""The marking place: what to draw on the cloth next, piece by piece."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from workbench.ui.desk import Desk
from workbench.ui.marking.pane import MarkingPane
from workbench.ui.place import USUAL_FORM, PlacePage


class MarkingPlace(PlacePage):
    """Answers at a glance: what do I mark next, how far from where?"""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.pane = MarkingPane(desk)
        self.addWidget(self.pane)
        self.begin_at(self.pane.steps.onward)
        desk.drafted.connect(self.pane.show_picture)

    def form_width(self) -> int:
        """There is no form here: the next place has its own as wide as usual."""
        return USUAL_FORM

    def has(self, field: str) -> bool:
        """Steps are ticked, not filled in: no field is this place's."""
        return False

    def set_in_sight(self, in_sight: bool) -> None:
        """The pane works nothing out while it is out of sight; catch up with what it has missed."""
        if in_sight:
            self.pane.show_picture(self._desk.picture)
