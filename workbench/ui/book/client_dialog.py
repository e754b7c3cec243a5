"""All that is kept of one client, named one by one before it is packed or removed."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Literal

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QDialog,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from workbench.book import Belongings, Kept
from workbench.ui.look import GRID, fonts
from workbench.ui.room import open_at
from workbench.ui.tick import TickDelegate

Purpose = Literal["pack", "remove"]
_NEVER_SAVED = "never saved"
_NOTES: dict[Purpose, str] = {
    "pack": (
        "What is ticked is packed into one file, project files with their earlier versions and what is not "
        "saved yet. Nothing is changed and nothing leaves this machine."
    ),
    "remove": (
        "What is ticked is removed for good: the files, their earlier versions, unsaved work, and their "
        "places in this list and among the recent files. It cannot be had again. Copies that you made "
        "yourself, on paper or elsewhere, are not found here."
    ),
}
_DEEDS: dict[Purpose, str] = {"pack": "Pack into one file…", "remove": "Remove for good"}
_SAME_NAME = "Files that bear the same name are listed together: leave out those of another client."


class ClientDialog(QDialog):
    """A list to tick, what it comes to, and two buttons of which the harmless one is the usual."""

    def __init__(self, belongings: Belongings, purpose: Purpose, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._belongings = belongings
        self.setWindowTitle("Pack one client" if purpose == "pack" else "Remove one client")
        self.title = QLabel(_title(belongings.name, purpose))
        # what she has typed is shown as she typed it, never as mark-up
        self.title.setTextFormat(Qt.TextFormat.PlainText)
        self.title.setFont(fonts().heading)
        self.title.setWordWrap(True)
        self.list = QListWidget()
        self.list.setItemDelegate(TickDelegate(self.list))
        self.list.setAccessibleName("What is kept of her")
        self.said = QLabel()
        self.said.setFont(fonts().strong)
        self.deed = QPushButton(_DEEDS[purpose])
        self.shut = QPushButton("Leave everything as it is")
        self._fill()
        self._arrange(_NOTES[purpose])
        self.list.itemChanged.connect(self.show_count)
        self.deed.clicked.connect(self.accept)
        self.shut.clicked.connect(self.reject)
        # of two buttons, Enter presses the one that loses nothing
        (self.deed if purpose == "pack" else self.shut).setDefault(True)
        self.deed.setAutoDefault(purpose == "pack")
        open_at(self, 150 * GRID, 110 * GRID)
        self.show_count()

    def _arrange(self, note: str) -> None:
        below = QLabel(note)
        below.setWordWrap(True)
        buttons = QHBoxLayout()
        buttons.setSpacing(2 * GRID)
        buttons.addStretch(1)
        buttons.addWidget(self.deed)
        buttons.addWidget(self.shut)
        column = QVBoxLayout(self)
        column.setContentsMargins(4 * GRID, 4 * GRID, 4 * GRID, 4 * GRID)
        column.setSpacing(3 * GRID)
        column.addWidget(self.title)
        if len(self._belongings.projects) > 1:
            same = QLabel(_SAME_NAME)
            same.setWordWrap(True)
            column.addWidget(same)
        column.addWidget(self.list, 1)
        column.addWidget(self.said)
        column.addWidget(below)
        column.addLayout(buttons)

    def _fill(self) -> None:
        for kept in self._belongings.projects:
            self._add(_project_words(kept), str(kept.file))
        for path in self._belongings.prints:
            self._add(f"{path.name}, beside it", str(path))
        count = len(self._belongings.never_saved)
        if count:
            self._add(f"Unsaved work without a file, {_times(count, 'time')}", _NEVER_SAVED)

    def _add(self, words: str, key: str) -> None:
        item = QListWidgetItem(words, self.list)
        item.setData(Qt.ItemDataRole.UserRole, key)
        item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
        item.setCheckState(Qt.CheckState.Checked)

    def _ticked(self) -> set[str]:
        items = (self.list.item(row) for row in range(self.list.count()))
        return {
            str(item.data(Qt.ItemDataRole.UserRole))
            for item in items
            if item.checkState() == Qt.CheckState.Checked
        }

    def chosen(self) -> Belongings:
        """What is ticked."""
        ticked = self._ticked()
        left = self._belongings.only([Path(key) for key in ticked])
        return left if _NEVER_SAVED in ticked else replace(left, never_saved=())

    def show_count(self) -> None:
        """What is ticked, counted."""
        chosen = self.chosen()
        parts = [
            _times(len(chosen.projects), "project"),
            _times(chosen.versions, "earlier version"),
            f"unsaved work {_times(chosen.unsaved, 'time')}" if chosen.unsaved else "",
            _times(len(chosen.prints), "other file"),
        ]
        said = ", ".join(part for part in parts if part)
        self.said.setText(f"{said}." if said else "Nothing is ticked.")
        self.deed.setEnabled(bool(said))


def _title(name: str, purpose: Purpose) -> str:
    return f"Pack all of “{name}”" if purpose == "pack" else f"Remove “{name}”?"


def _project_words(kept: Kept) -> str:
    parts = [kept.place]
    if kept.versions:
        parts.append(_times(len(kept.versions), "earlier version"))
    if kept.unsaved:
        parts.append("unsaved work")
    return ", ".join(parts)


def _times(count: int, what: str) -> str:
    """``2 projects``; nothing for none."""
    return f"{count} {what}{'' if count == 1 else 's'}" if count else ""
