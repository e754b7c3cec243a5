"""The client book as a page of the window."""

from workbench.ui.book.asking import BookAsking
from workbench.ui.book.pane import BookPane

__all__ = ["BookAsking", "BookPane"]
