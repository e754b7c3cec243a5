"""What a dialog that writes a file beside its work has in common: three buttons, and what came of it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QUrl
from PySide6.QtGui import QCloseEvent, QDesktopServices
from PySide6.QtWidgets import QDialog, QHBoxLayout, QProgressBar, QPushButton, QVBoxLayout, QWidget

from workbench.document import FileTrouble, Picture
from workbench.ui.findings import FindingRow
from workbench.ui.job import FileJob
from workbench.ui.look import GRID
from workbench.ui.marks import WORDS


class WritingDialog(QDialog):
    """Controls at the left with what is to be said under them, what will be written at the right."""

    _then = ""
    """What to do with a file once it is written, one sentence."""

    def __init__(self, title: str, write: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._job: FileJob | None = None
        self._path: Path | None = None
        self.setWindowTitle(title)
        self.state, self.warning = FindingRow(clickable=False), FindingRow(clickable=False)
        self.write = QPushButton(write)
        self.open_it, self.shut = QPushButton("Open it"), QPushButton("Close")
        self.busy, self.leave = QProgressBar(), QPushButton("Leave off")
        self.busy.setRange(0, 0)  # how much there is to do is not known beforehand
        self.busy.setTextVisible(False)
        self.busy.setFixedHeight(2 * GRID)
        self.busy.setAccessibleName("Writing")
        self.busy.hide()
        self.leave.hide()

    def arrange_beside(self, controls: QVBoxLayout, *shown: QWidget, note: QWidget | None = None) -> None:
        """Put it together, and let the buttons do what they say."""
        controls.setContentsMargins(0, 0, 4 * GRID, 0)
        controls.addSpacing(2 * GRID)
        for row in (self.state, self.warning):
            controls.addWidget(row)
        controls.addWidget(self.busy)
        controls.addStretch(1)
        if note is not None:
            controls.addWidget(note)
        buttons = QHBoxLayout()
        for button in (self.write, self.leave, self.open_it, self.shut):
            buttons.addWidget(button)
        controls.addLayout(buttons)
        self.write.setDefault(True)
        both = QHBoxLayout(self)
        both.setContentsMargins(4 * GRID, 4 * GRID, 4 * GRID, 4 * GRID)
        both.addLayout(controls, 0)
        for widget in shown:
            both.addWidget(widget, 1)
        self.write.clicked.connect(self.on_write)
        self.leave.clicked.connect(self.on_leave_off)
        self.open_it.clicked.connect(self.on_open)
        self.shut.clicked.connect(self.reject)
        self.open_it.setEnabled(False)

    # --- what is shown ---------------------------------------------------------------------

    def show_over(self, picture: Picture, also: str = "") -> None:
        """Say that limits are passed: paper is never silent about that."""
        over = sum(finding.severity == "over" for finding in picture.findings)
        self.warning.setVisible(over > 0)
        what = "One figure is" if over == 1 else f"{over} figures are"
        self.warning.show_sentence("over", WORDS["over"], f"{what} above the limit you set{also}.")

    def show_written(self) -> None:
        """The job is done: the file is whole, or why it is not there."""
        job, path = self._job, self._path
        if job is None or path is None:
            return
        self._job = None
        self._show_busy(False)
        self.write.setEnabled(True)
        if job.error is None:
            self.open_it.setEnabled(True)
            self.state.show_sentence("within", "Written", f"{path}. {self._then}".rstrip())
        elif isinstance(job.error, FileTrouble | ValueError):
            self.state.show_sentence("stop", "Not written", str(job.error))
        else:
            raise job.error

    def _show_busy(self, busy: bool) -> None:
        """While it is written there is a way out, in the place of the way in."""
        self.busy.setVisible(busy)
        self.leave.setVisible(busy)
        self.write.setVisible(not busy)

    # --- what she does ---------------------------------------------------------------------

    def on_write(self) -> None:
        """Ask where to, and write."""
        raise NotImplementedError

    def write_beside(self, path: Path, make: Callable[[], bytes]) -> None:
        """Make the file and write it beside the open dialog."""
        self._path = path
        self._job = FileJob(path, make, self)
        self._job.finished.connect(self.show_written)
        self.write.setEnabled(False)
        self._show_busy(True)
        self.state.show_sentence("note", "Writing", f"{path.name} …")
        self._job.start()

    def on_leave_off(self) -> None:
        """Write nothing, unless the file is as good as written."""
        job = self._job
        if job is None or not job.leave_off():
            return
        job.finished.disconnect(self.show_written)
        self._job = None
        self._show_busy(False)
        self.write.setEnabled(True)
        self.state.show_sentence("note", "Left off", "Nothing was written.")

    def on_open(self) -> None:
        """Show the file in whatever the system opens it with."""
        if self._path is not None:
            QDesktopServices.openUrl(QUrl.fromLocalFile(str(self._path)))

    def reject(self) -> None:
        """Close; a file that is being made is left off, one that is being written is written first."""
        self.on_leave_off()
        if self._job is not None:
            self._job.wait()
        super().reject()

    def closeEvent(self, event: QCloseEvent) -> None:
        """As with the button."""
        self.reject()
        event.accept()
