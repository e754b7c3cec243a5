"""What the book knows of one project file without opening it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Literal, NamedTuple

Mark = Literal["stop", "over", "attend", "note"]
"""As a finding has it: no draft, above the limit she set, to be looked at, good to know."""


class Matter(NamedTuple):
    """One thing that is open about a project, in a few words."""

    mark: Mark
    words: str


class Found(NamedTuple):
    """A file as the folder shows it: enough to tell whether it has been read as it is now."""

    place: str
    """Path from the folder of the book, with a slash between names."""
    size: int
    mtime_ns: int


@dataclass(frozen=True)
class Entry:
    """One file of the book. Dates are ISO, empty where there is none."""

    found: Found
    name: str = ""
    style: str = ""
    date: str = ""
    next_fitting: str = ""
    invented: bool = False
    matters: tuple[Matter, ...] = ()
    picture: str = ""
    """The outlines of its panels, for :func:`rings_of`; empty where nothing can be drawn."""
    reason: str = ""
    """Why it cannot be opened; empty where it can."""

    @property
    def place(self) -> str:
        """Path from the folder of the book."""
        return self.found.place

    @property
    def stem(self) -> str:
        """Name of the file without folders and ending."""
        return self.place.rpartition("/")[2].rpartition(".")[0]

    @property
    def folder(self) -> str:
        """The sub-folder it lies in; empty for the folder of the book itself."""
        return self.place.rpartition("/")[0]

    @property
    def title(self) -> str:
        """What the list calls it: its client, else its file."""
        return self.name or self.stem

    @cached_property
    def words(self) -> str:
        """What a search looks through: client, style, file and folder."""
        from workbench.book.order import folded

        return folded(f"{self.name} {self.style} {self.place}")
