"""The guide that leads through a new client in five steps.

Nothing here is read for a project that is opened from a file.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from workbench.ui.guide.guide import Guide

if TYPE_CHECKING:
    from workbench.ui.window import Window

__all__ = ["Guide", "guide_of"]


def guide_of(window: Window) -> Guide:
    """The guide of a window, made when it is first wanted."""
    return window.findChild(Guide) or Guide(window)
