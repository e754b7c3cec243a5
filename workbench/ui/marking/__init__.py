"""Marking by hand, step by step."""

from workbench.ui.marking.pane import MarkingPane

__all__ = ["MarkingPane"]
