"""Questions about shapes, each a box; kept together so that whoever asks can be asked about in a test."""

from __future__ import annotations

from PySide6.QtWidgets import QMessageBox, QWidget

from workbench.ui.marks import mark_icon
from workbench.ui.plain import plain_box


class ShapeQuestions:
    """Asks in boxes over a window."""

    def replace(self, name: str, parent: QWidget) -> bool:
        """Whether a shape of that name is to be replaced."""
        said = f"There is a shape called “{name}” already."
        return _sure("Keep the shape", said, "Replace it", parent)

    def remove(self, name: str, parent: QWidget) -> bool:
        """Whether a shape of hers is to be removed for good."""
        said = f"“{name}” is taken out of your folder for good. Projects made from it stay as they are."
        return _sure("Remove the shape", said, "Remove it", parent)

    def tell(self, title: str, sentence: str, parent: QWidget) -> None:
        """Say one thing and wait until it is read."""
        box = plain_box(QMessageBox(QMessageBox.Icon.NoIcon, title, "", parent=parent))
        box.setText(sentence)
        box.setIconPixmap(mark_icon("stop", 28).pixmap(28, 28))
        box.exec()
        box.deleteLater()


def _sure(title: str, said: str, yes: str, parent: QWidget) -> bool:
    box = plain_box(QMessageBox(parent))
    box.setWindowTitle(title)
    box.setText(said)
    agreed = box.addButton(yes, QMessageBox.ButtonRole.AcceptRole)
    stay = box.addButton("Leave it", QMessageBox.ButtonRole.RejectRole)
    box.setDefaultButton(stay)
    box.setEscapeButton(stay)
    box.exec()
    answer = box.clickedButton() is agreed
    box.deleteLater()
    return answer
