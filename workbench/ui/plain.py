"""Words from a file shown as they stand there, never as a page.

Qt takes a text that looks like mark-up for a page wherever it is not told otherwise, and a
page may ask for a picture by a path: on some systems one of another machine. A name in a
project that somebody has sent must not lead there.
"""

from __future__ import annotations

from html import escape

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMessageBox


def plain_tip(text: str) -> str:
    """The text for a tool tip, which has no other way of being told that it is no page."""
    return f"<qt>{escape(text)}</qt>".replace("\n", "<br>") if "<" in text else text


def plain_box(box: QMessageBox) -> QMessageBox:
    """The box, which shows its text as it stands; to be called before the text is set."""
    box.setTextFormat(Qt.TextFormat.PlainText)
    return box
