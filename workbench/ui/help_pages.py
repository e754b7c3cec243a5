"""The help by what is asked for: each opens its page in the help window."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from workbench.ui.actions import PlaceName

_OF_PLACE: dict[PlaceName, str] = {
    "draft": "start",
    "pieces": "pieces",
    "beads": "beads",
    "cloth": "cloth",
    "quote": "quote",
    "marking": "marking",
    "sewing": "sewing",
    "fittings": "fittings",
}


def show_help_of(parent: QWidget, place: PlaceName) -> None:
    """Open the help at the page about a place of the window."""
    _show(parent, _OF_PLACE[place])


def show_words(parent: QWidget) -> None:
    """Open the words of the trade."""
    _show(parent, "words")


def show_keys(parent: QWidget) -> None:
    """Open the list of keys and gestures."""
    _show(parent, "keys")


def show_cautions(parent: QWidget) -> None:
    """Open the cautions."""
    _show(parent, "cautions")


def show_about(parent: QWidget) -> None:
    """Open what the program is, and what it does with data."""
    _show(parent, "about")


def _show(parent: QWidget, page: str) -> None:
    from workbench.ui.help import show_help  # nobody opens the program to read these

    show_help(parent, page)
