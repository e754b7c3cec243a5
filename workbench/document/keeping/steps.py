"""The steps made since a project was last saved, as somebody sees them who looks on."""

from __future__ import annotations

from workbench.document.project import Project

_MOST = 500
"""Own choice: steps that are kept."""


class Steps:
    """Counts finished edits; an undo takes one back, whatever else comes is one more."""

    def __init__(self, saved: Project) -> None:
        self._seen: list[tuple[Project, str]] = [(saved, "")]

    def see(self, project: Project, name: str) -> None:
        """Take note of the project as it stands and of the edit that led to it."""
        for place in range(len(self._seen) - 1, -1, -1):
            if self._seen[place][0] is project:
                del self._seen[place + 1 :]
                return
        self._seen.append((project, name))
        del self._seen[1 : max(1, len(self._seen) - _MOST)]

    @property
    def names(self) -> tuple[str, ...]:
        """What the steps are called, in order."""
        return tuple(name for _, name in self._seen[1:])
