"""What the window remembers between two runs: its state, recent files, units. Never what is in a project."""

from __future__ import annotations

import os
from collections.abc import Sequence
from pathlib import Path
from typing import TypeVar

from PySide6.QtCore import QByteArray, QSettings, QStandardPaths

from workbench.body import Unit
from workbench.ui.look import Scheme

PLACE = "CORSET_WORKBENCH_SETTINGS"
"""Environment variable that names another settings file."""
KEPT_FILES = 8
Word = TypeVar("Word", bound=str)


class Settings:
    """A small file of the user's own."""

    def __init__(self, path: Path | None = None) -> None:
        self.path = path or _usual_path()
        self._kept = QSettings(str(self.path), QSettings.Format.IniFormat)

    def recent(self) -> tuple[Path, ...]:
        """Project files, the latest first."""
        kept = self._kept.value("recent", [])
        names = [kept] if isinstance(kept, str) else kept if isinstance(kept, list) else []
        return tuple(Path(name) for name in names if isinstance(name, str) and name)[:KEPT_FILES]

    def remember(self, path: Path) -> None:
        """Put a file at the head of the recent ones."""
        whole = path.absolute()
        self._set_recent((whole, *(other for other in self.recent() if other != whole)))

    def forget(self, path: Path) -> None:
        """Take a file off the list of recent ones."""
        self._set_recent(tuple(other for other in self.recent() if other != path))

    def forget_all(self) -> None:
        """Empty the list of recent files."""
        self._set_recent(())

    def _set_recent(self, paths: tuple[Path, ...]) -> None:
        self._kept.setValue("recent", [str(path) for path in paths[:KEPT_FILES]])

    @property
    def scheme(self) -> Scheme:
        """Light, dark, or as the system has it."""
        kept = self._kept.value("scheme", "system")
        return kept if kept in ("light", "dark") else "system"

    @scheme.setter
    def scheme(self, scheme: Scheme) -> None:
        self._kept.setValue("scheme", scheme)

    @property
    def unit(self) -> Unit:
        """The unit that a new project starts with: the one she used last."""
        return "cm" if self._kept.value("unit", "in") == "cm" else "in"

    @unit.setter
    def unit(self, unit: Unit) -> None:
        self._kept.setValue("unit", unit)

    @property
    def book(self) -> Path | None:
        """The folder of the client book; None until she has chosen one."""
        kept = self._kept.value("book", "")
        return Path(kept) if isinstance(kept, str) and kept else None

    @book.setter
    def book(self, folder: Path) -> None:
        self._kept.setValue("book", str(folder.absolute()))

    @property
    def guided(self) -> bool:
        """Whether a project that is quite new is led through in five steps."""
        return self.flag("guide", True)

    @guided.setter
    def guided(self, on: bool) -> None:
        self.keep_flag("guide", on)

    def folder(self) -> Path:
        """Where file dialogs open: beside the latest file, else the user's documents."""
        recent = self.recent()
        if recent and recent[0].parent.is_dir():
            return recent[0].parent
        return Path(QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation))

    def bytes_of(self, name: str) -> QByteArray:
        """State of a window part as Qt packs it; empty when there is none."""
        kept = self._kept.value(name)
        return kept if isinstance(kept, QByteArray) else QByteArray()

    def keep_bytes(self, name: str, state: QByteArray) -> None:
        """Keep the state of a window part."""
        self._kept.setValue(name, state)

    def flag(self, name: str, usual: bool) -> bool:
        """A kept yes or no."""
        kept = self._kept.value(name)
        return usual if kept is None else kept in (True, "true")

    def keep_flag(self, name: str, on: bool) -> None:
        """Keep a yes or no."""
        self._kept.setValue(name, on)

    def word(self, name: str, words: Sequence[Word]) -> Word:
        """A kept word out of several; the first of them when none was kept."""
        kept = self._kept.value(name)
        return next((word for word in words if word == kept), words[0])

    def keep_word(self, name: str, word: str) -> None:
        """Keep a word."""
        self._kept.setValue(name, word)

    def sync(self) -> None:
        """Write what is not yet on disk."""
        self._kept.sync()


def data_folder() -> Path:
    """The user's folder for this program: log, and rescue files of projects never saved."""
    where = QStandardPaths.StandardLocation.GenericDataLocation
    return Path(QStandardPaths.writableLocation(where)) / "corset-workbench"


def cache_folder() -> Path:
    """The user's folder for what this program can make again at any time."""
    where = QStandardPaths.StandardLocation.GenericCacheLocation
    return Path(QStandardPaths.writableLocation(where)) / "corset-workbench"


def _usual_path() -> Path:
    if named := os.environ.get(PLACE):
        return Path(named)
    where = QStandardPaths.StandardLocation.GenericConfigLocation
    return Path(QStandardPaths.writableLocation(where)) / "corset-workbench" / "window.ini"
