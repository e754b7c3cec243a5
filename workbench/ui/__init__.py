"""The window, and the only place where Qt is imported."""

from __future__ import annotations

import gc
from pathlib import Path

__all__ = ["run"]


def run(path: Path | None) -> int:
    """Open the window, on a project file or on none, until it is closed; the exit status.

    The window's modules are read here and not above, so that asking for the command's help
    costs nothing.
    """
    gc.disable()  # nothing made while starting is garbage, and looking for it is a tenth of the start
    from workbench.ui.raised import raise_whole

    raise_whole()
    from workbench.ui.app import open_window

    return open_window(path)
