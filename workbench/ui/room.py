"""How large a dialog opens: as large as it likes to be, and never larger than the screen."""

from __future__ import annotations

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QDialog

_FRAME = QSize(8, 40)
"""Pixels for what the system draws round a dialog, about."""


def open_at(dialog: QDialog, wide: int, high: int) -> None:
    """Make the dialog so large, or as large as the screen allows."""
    dialog.resize(QSize(wide, high).boundedTo(dialog.screen().availableSize() - _FRAME))
