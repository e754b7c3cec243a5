"""The places of a window, each as what it is."""

from __future__ import annotations

from workbench.ui.cloth import ClothPlace
from workbench.ui.comfort_pane import ComfortPane
from workbench.ui.pieces import PiecesPlace
from workbench.ui.quote import QuotePlace
from workbench.ui.window import Window


def comfort_of(window: Window) -> ComfortPane:
    """The comfort pane, made if need be."""
    pane = window.sides.pane("comfort")
    assert isinstance(pane, ComfortPane)
    return pane


def pieces_of(window: Window) -> PiecesPlace:
    """The pieces place, made if need be."""
    place = window.turning.page("pieces")
    assert isinstance(place, PiecesPlace)
    return place


def cloth_of(window: Window) -> ClothPlace:
    """The cloth place, made if need be."""
    place = window.turning.page("cloth")
    assert isinstance(place, ClothPlace)
    return place


def quote_of(window: Window) -> QuotePlace:
    """The quote place, made if need be."""
    place = window.turning.page("quote")
    assert isinstance(place, QuotePlace)
    return place
