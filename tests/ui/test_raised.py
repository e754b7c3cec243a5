"""An error in a method that Qt calls is an error like any other; the program is not gone with it."""

from __future__ import annotations

import subprocess
import sys

import pytest

_PROGRAM = """
import sys
from workbench.ui.raised import raise_whole
raise_whole()
from PySide6.QtCore import QAbstractListModel, QModelIndex, Qt
from PySide6.QtWidgets import QApplication, QDialog, QPushButton, QWidget

told = []

class Shown(QWidget):
    def showEvent(self, event):
        {fault}

class Rows(QAbstractListModel):
    def rowCount(self, parent=QModelIndex()):
        return 1

    def data(self, index, role=Qt.ItemDataRole.DisplayRole):
        return "row"

class Asked(QDialog):
    def reject(self):
        told.append("rejected")

application = QApplication(["test", "-platform", "offscreen"])
try:
    Shown().show()
except Exception as error:
    told.append(type(error).__name__)
rows = Rows()
assert rows.index(0).data() == "row"
asked, button = Asked(), QPushButton()
button.clicked.connect(asked.reject)
button.click()
print(told)
"""


@pytest.mark.parametrize(
    ("fault", "kind"),
    [
        ("1 / 0", "ZeroDivisionError"),
        ("[][3]", "IndexError"),
        ("int('x')", "ValueError"),
        ("{}['x']", "KeyError"),
        ("raise RuntimeError('x')", "RuntimeError"),
    ],
)
def test_the_program_goes_on(fault: str, kind: str) -> None:
    program = _PROGRAM.replace("{fault}", fault)
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert done.stdout.splitlines()[-1] == f"['{kind}', 'rejected']"
