"""Questions of the book, each a dialog; kept together so that a test can answer them."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget

from workbench.book import Belongings
from workbench.ui.book.client_dialog import ClientDialog, Purpose
from workbench.ui.marks import mark_icon
from workbench.ui.plain import plain_box


class BookAsking:
    """Asks in dialogs over a widget."""

    def __init__(self, parent: QWidget | None = None) -> None:
        self._parent = parent

    def which_folder(self, at: Path) -> Path | None:
        """The folder that holds her projects; None when she thinks better of it."""
        name = QFileDialog.getExistingDirectory(self._parent, "The folder of your projects", str(at))
        return Path(name) if name else None

    def where_to_pack(self, suggested: Path) -> Path | None:
        """Where the packed file goes; the dialog asks before an existing file is replaced."""
        dialog = QFileDialog(
            self._parent, "Pack into one file", str(suggested.parent), "Packed files (*.zip)"
        )
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDefaultSuffix("zip")
        dialog.selectFile(suggested.name)
        chosen = dialog.selectedFiles()[0] if dialog.exec() else ""
        dialog.deleteLater()
        return Path(chosen) if chosen else None

    def which_of_hers(self, belongings: Belongings, purpose: Purpose) -> Belongings | None:
        """What of a client is to be packed or removed; None when nothing is."""
        dialog = ClientDialog(belongings, purpose, self._parent)
        chosen = dialog.chosen() if dialog.exec() else None
        dialog.deleteLater()
        return chosen

    def tell(self, title: str, sentence: str) -> None:
        """Say one thing and wait until it is read."""
        box = plain_box(QMessageBox(QMessageBox.Icon.NoIcon, title, "", parent=self._parent))
        box.setText(sentence)
        box.setIconPixmap(mark_icon("stop", 28).pixmap(28, 28))
        box.exec()
        box.deleteLater()
