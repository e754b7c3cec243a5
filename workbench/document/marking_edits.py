"""Ticks of the marking guide: the one edit there is."""

from __future__ import annotations

from workbench.document.done_edits import set_done
from workbench.document.project import Project


def set_marked(project: Project, key: str, on: bool) -> Project:
    """The project with a step of the marking guide ticked off, or no longer.

    Ticks of the same step as it was in earlier drafts go: what was marked then is no longer said.
    """
    stem = f"{key.rpartition('.')[0]}."
    for old in project.done:
        if old.startswith(stem) and old != key and "." not in old.removeprefix(stem):
            project = set_done(project, old, False)
    return set_done(project, key, on)
