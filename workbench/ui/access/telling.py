"""Tells a screen reader that something else is picked, or that what is picked has another value."""

from __future__ import annotations

from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QAccessibleEvent,
    QAccessibleValueChangeEvent,
)
from PySide6.QtWidgets import QWidget

from workbench.ui.access.canvases import known_reader
from workbench.ui.access.item import Item
from workbench.ui.access.readers import CanvasReader


def tell_change(canvas: QWidget) -> None:
    """Say what has changed of what is picked, if anybody has asked after this canvas and it has the keys."""
    reader = known_reader(canvas)
    if reader is None:
        return
    before, now = reader.told, reader.picked()
    reader.told = now
    if now is None or not canvas.hasFocus():
        return
    if before is None or before.key != now.key:
        _tell_focus(canvas, reader, now)
    elif before.amount is not None and now.amount is not None and before.amount.now != now.amount.now:
        _tell_value(canvas, reader, now, now.amount.now)
    elif before.said != now.said:
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(canvas, now.said))


def tell_words(widget: QWidget, words: str, *, at_once: bool) -> None:
    """Say something, if anybody listens."""
    if QAccessible.isActive():
        event = QAccessibleAnnouncementEvent(widget, words)
        manners = QAccessible.AnnouncementPoliteness
        event.setPoliteness(manners.Assertive if at_once else manners.Polite)
        QAccessible.updateAccessibility(event)


def _tell_focus(canvas: QWidget, reader: CanvasReader, item: Item) -> None:
    event = QAccessibleEvent(canvas, QAccessible.Event.Focus)
    event.setChild(reader.indexOfChild(reader.reader(item.key)))
    QAccessible.updateAccessibility(event)


def _tell_value(canvas: QWidget, reader: CanvasReader, item: Item, value: float) -> None:
    event = QAccessibleValueChangeEvent(canvas, value)
    event.setChild(reader.indexOfChild(reader.reader(item.key)))
    QAccessible.updateAccessibility(event)
