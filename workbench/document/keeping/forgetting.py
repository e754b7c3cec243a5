"""Removing all that is kept of one project besides its file, as when a client wants to be forgotten."""

from __future__ import annotations

import os
from pathlib import Path

from workbench.document.keeping.autosave import drop, left_over
from workbench.document.keeping.versions import forget_versions


def forget(folder: Path, project: Path) -> None:
    """Remove every version and all left-over work of a project file; FileTrouble where something stays.

    Work that another running program still keeps is let be: it goes when that one saves.
    """
    forget_versions(folder, project)
    place = os.path.realpath(project)
    for work in left_over(folder):
        if work.path is not None and os.path.realpath(work.path) == place:
            drop(work.file)
