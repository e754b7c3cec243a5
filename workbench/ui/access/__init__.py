"""What is painted and no widget of its own, told to screen readers: handles, figures, bars, pieces, bones.

A screen reader sees one widget where a canvas is. Here each canvas says what lies on it as a list of
items, and a reader of that canvas hands them out as its children, with names, values and what can be
done. Nothing is made and nothing is worked out before a screen reader asks.
"""

from __future__ import annotations

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

__all__ = ["announce", "install", "tell"]

_installed = False


def install() -> None:
    """Let screen readers find what lies on the canvases; once is enough for the whole program."""
    global _installed
    if not _installed:
        _installed = True
        # that class takes 2 ms to be read, which the first picture need not wait for
        from PySide6.QtGui import QAccessible

        QAccessible.installFactory(_reader_of)


def tell(canvas: QWidget) -> None:
    """Tell whoever listens that what is picked on a canvas, or its value, is another now."""
    if _installed:
        from workbench.ui.access.telling import tell_change

        tell_change(canvas)


def announce(widget: QWidget, words: str, *, at_once: bool = False) -> None:
    """Have words spoken that nobody has turned to: when there is time, or ``at_once``."""
    if _installed:
        from workbench.ui.access.telling import tell_words

        tell_words(widget, words, at_once=at_once)


def _reader_of(_key: str, watched: QObject) -> object:
    """The reader of a canvas, or nothing for any other widget."""
    from workbench.ui.access.canvases import reader_of

    return reader_of(watched)
