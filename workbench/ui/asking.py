"""Questions to the user, each a dialog. Kept together so that whoever asks can be asked about in a test."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget

from workbench.ui.marks import mark_icon
from workbench.ui.plain import plain_box

Answer = Literal["save", "discard", "stay"]

_PROJECTS = "Bodice projects (*.bodice)"


class Asking:
    """Asks in dialogs over a window."""

    def __init__(self, parent: QWidget | None = None) -> None:
        self._parent = parent

    def which_file(self, folder: Path) -> Path | None:
        """The project file she picks; None when she thinks better of it."""
        name, _ = QFileDialog.getOpenFileName(
            self._parent, "Open a project", str(folder), f"{_PROJECTS};;All files (*)"
        )
        return Path(name) if name else None

    def where_to_save(self, suggested: Path) -> Path | None:
        """Where the project goes; the dialog asks before an existing file is replaced."""
        return self._where("Save the project", suggested, _PROJECTS)

    def where_to_print(self, suggested: Path) -> Path | None:
        """Where the PDF goes; the dialog asks before an existing file is replaced."""
        return self._where("Write the PDF", suggested, "PDF (*.pdf)")

    def where_to_export(self, suggested: Path) -> Path | None:
        """Where a file for other programs goes; the dialog asks before an existing file is replaced."""
        kind = suggested.suffix.lstrip(".")
        return self._where("Write the file", suggested, f"{kind.upper()} (*.{kind})")

    def _where(self, title: str, suggested: Path, kinds: str) -> Path | None:
        # The suffix is the dialog's business, so that it asks about the file that is really replaced.
        dialog = QFileDialog(self._parent, title, str(suggested.parent), kinds)
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDefaultSuffix(suggested.suffix.lstrip("."))
        dialog.selectFile(suggested.name)
        chosen = dialog.selectedFiles()[0] if dialog.exec() else ""
        dialog.deleteLater()
        return Path(chosen) if chosen else None

    def keep_changes(self, name: str) -> Answer:
        """Whether what is not saved is to be saved, let go, or gone back to."""
        buttons = QMessageBox.StandardButton
        box = plain_box(QMessageBox(self._parent))
        box.setWindowTitle("Unsaved changes")
        box.setText(f"“{name}” has changes that are not saved.")
        box.setInformativeText("Save them first?")
        box.setStandardButtons(buttons.Save | buttons.Discard | buttons.Cancel)
        box.setDefaultButton(buttons.Save)
        answer = box.exec()
        box.deleteLater()
        answers: dict[int, Answer] = {buttons.Save.value: "save", buttons.Discard.value: "discard"}
        return answers.get(answer, "stay")

    def tell(self, title: str, sentence: str) -> None:
        """Say one thing and wait until it is read."""
        box = plain_box(QMessageBox(QMessageBox.Icon.NoIcon, title, "", parent=self._parent))
        box.setText(sentence)
        box.setIconPixmap(mark_icon("stop", 28).pixmap(28, 28))
        box.exec()
        box.deleteLater()
