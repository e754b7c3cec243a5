"""What the page of sources consists of."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.sources.words import Status


@dataclass(frozen=True)
class Entry:
    """One constant or rule."""

    name: str
    """In words, with its unit where the name has one."""
    value: str
    """Figures as they are reckoned with; empty for a rule."""
    words: str
    """What it is and where it comes from."""
    statuses: tuple[Status, ...]
    """The best founded first; none is a fault that a test finds."""
    place: str
    """Folder and file it stands in, such as ``draft/comfort``."""

    @property
    def sourced(self) -> bool:
        """Whether any of it comes from outside the program."""
        return any(status != "own choice" for status in self.statuses)


@dataclass(frozen=True)
class Section:
    """The entries of one part of the program."""

    title: str
    entries: tuple[Entry, ...]
