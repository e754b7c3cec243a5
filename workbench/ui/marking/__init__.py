"""Marking by hand, step by step."""

from workbench.ui.marking.pane import MarkingPane
from workbench.ui.marking.place import MarkingPlace

__all__ = ["MarkingPane", "MarkingPlace"]
