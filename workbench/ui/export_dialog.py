"""Out of the program: choose a kind of file, see what it will hold, write it."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QUrl
from PySide6.QtGui import QCloseEvent, QDesktopServices
from PySide6.QtWidgets import QDialog, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from workbench.document import (
    FileTrouble,
    Picture,
    export_page,
    exported,
    marking_guides,
    printed_marking,
    write_whole,
)
from workbench.exchange import LargePage
from workbench.ui.asking import Asking
from workbench.ui.desk import Desk
from workbench.ui.export_choices import ExportChoices, Kind
from workbench.ui.export_preview import ExportPreview
from workbench.ui.files import Files, plain_name
from workbench.ui.findings import FindingRow
from workbench.ui.job import Job
from workbench.ui.look import GRID
from workbench.ui.marking.board import MarkingBoard

_TRUE_SIZE = "Print it at 100 %, never fitted to the page, and measure the square."
_SQUARE_IT = "Move and square the projector until every square of the grid measures true both ways."


class ExportDialog(QDialog):
    """Writes the project as it stands; nothing in the project is changed by it."""

    def __init__(
        self,
        desk: Desk,
        files: Files,
        asking: Asking,
        parent: QWidget | None = None,
        kind: Kind = "sheet",
    ) -> None:
        super().__init__(parent)
        self._files, self._asking = files, asking
        self._picture: Picture = desk.picture
        self._job: Job | None = None
        self._path: Path | None = None
        self.setWindowTitle("Export")
        self.choices = ExportChoices(desk.project, kind)
        self.state, self.warning = FindingRow(clickable=False), FindingRow(clickable=False)
        self.preview, self.piece = ExportPreview(), MarkingBoard()
        self.write = QPushButton("Write the file…")
        self.open_it, self.shut = QPushButton("Open it"), QPushButton("Close")
        self._arrange()
        self.choices.changed.connect(self.on_changed)
        self.write.clicked.connect(self.on_write)
        self.open_it.clicked.connect(self.on_open)
        self.shut.clicked.connect(self.reject)
        self.resize(250 * GRID, 150 * GRID)
        self.on_changed()

    def _arrange(self) -> None:
        left = QVBoxLayout()
        left.setContentsMargins(0, 0, 4 * GRID, 0)
        left.addWidget(self.choices)
        left.addSpacing(2 * GRID)
        for row in (self.state, self.warning):
            left.addWidget(row)
        left.addStretch(1)
        buttons = QHBoxLayout()
        for button in (self.write, self.open_it, self.shut):
            buttons.addWidget(button)
        left.addLayout(buttons)
        self.write.setDefault(True)
        both = QHBoxLayout(self)
        both.setContentsMargins(4 * GRID, 4 * GRID, 4 * GRID, 4 * GRID)
        both.addLayout(left, 0)
        both.addWidget(self.preview, 1)
        both.addWidget(self.piece, 1)
        self.piece.hide()

    # --- what is shown ---------------------------------------------------------------------

    def on_changed(self) -> None:
        """Another choice: what the file will hold now, or why it cannot be."""
        self.open_it.setEnabled(False)
        try:
            if self.choices.picked == "guide":
                self._show_guide()
            else:
                self._show_page()
        except ValueError as error:
            self.preview.show_page(None, None, str(error))
            self.state.show_sentence("stop", "Cannot be written", str(error))
            self.write.setEnabled(False)
        else:
            self.write.setEnabled(self._job is None)
        self.piece.setVisible(self.choices.picked == "guide" and self.write.isEnabled())
        self.preview.setHidden(not self.piece.isHidden())
        self._show_warning()

    def _show_page(self) -> None:
        choice = self.choices.choice()
        page = export_page(self._picture, self.choices.format, choice)
        self.preview.show_page(page, choice.projector)
        self.state.show_sentence("note", *self._told(page))

    def _told(self, page: LargePage) -> tuple[str, str]:
        """How large it comes out, and what to do with it."""
        size = f"{page.width:.0f} × {page.height:.0f} mm"
        if self.choices.picked == "sheet":
            return f"One sheet of {page.name}", f"{size}. {_TRUE_SIZE}"
        if self.choices.picked == "projector":
            return "One picture", f"{size}. {_SQUARE_IT}"
        return _count(len(page.things)), f"on {size}, in millimetres, each kind of line on its own layer."

    def _show_guide(self) -> None:
        guides = marking_guides(self._picture, self.choices.chosen_rounding, self.choices.chosen_layers)
        count = sum(len(guide.pieces) for guide in guides)
        if not count:
            raise ValueError("None of the layers chosen is made, so there is no piece to mark.")
        worst = max(guides, key=lambda guide: guide.error)
        rounding = worst.rounding
        first = next(piece for guide in guides for piece in guide.pieces)
        self.piece.show_step(first, len(first.steps) - 1)
        self.state.show_sentence(
            "note",
            _count(count),
            f"Marked {rounding.label}, no outline lies more than {rounding.say_error(worst.error)} off the "
            "exact one. One piece a page, and the sums in front.",
        )

    def _show_warning(self) -> None:
        """Paper is never silent about a limit that is passed."""
        over = sum(finding.severity == "over" for finding in self._picture.findings)
        self.warning.setVisible(over > 0)
        what = "One figure is" if over == 1 else f"{over} figures are"
        self.warning.show_sentence("over", "Over the limit", f"{what} above the limit you set.")

    def show_written(self) -> None:
        """The job is done: the file is whole, or why it is not there."""
        job, path = self._job, self._path
        if job is None or path is None:
            return
        self._job = None
        self.write.setEnabled(True)
        if job.error is None:
            self.open_it.setEnabled(True)
            self.state.show_sentence("within", "Written", f"{path}.")
        elif isinstance(job.error, FileTrouble | ValueError):
            self.state.show_sentence("stop", "Not written", str(job.error))
        else:
            raise job.error

    # --- what she does ---------------------------------------------------------------------

    def on_write(self) -> None:
        """Ask where to, and write beside the open dialog."""
        kind, picture = self.choices.format, self._picture
        path = self._asking.where_to_export(self._suggested())
        if path is None:
            return
        self._path = path
        if self.choices.picked == "guide":
            rounding, layers = self.choices.chosen_rounding, self.choices.chosen_layers
            self._job = Job(
                lambda: write_whole(
                    path, printed_marking(picture, marking_guides(picture, rounding, layers))
                ),
                self,
            )
        else:
            choice = self.choices.choice()
            self._job = Job(lambda: write_whole(path, exported(picture, kind, choice)), self)
        self._job.finished.connect(self.show_written)
        self.write.setEnabled(False)
        self.state.show_sentence("note", "Writing", f"{path.name} …")
        self._job.start()

    def _suggested(self) -> Path:
        """Beside the project, named after the client and what it is."""
        also = {"projector": ", projector", "guide": ", marking guide"}.get(self.choices.picked, "")
        name = f"{plain_name(self._files.name)}{also}.{self.choices.format}"
        return self._files.folder_of_prints() / name

    def on_open(self) -> None:
        """Show the file in whatever the system opens it with."""
        if self._path is not None:
            QDesktopServices.openUrl(QUrl.fromLocalFile(str(self._path)))

    def reject(self) -> None:
        """Close; a file that is being written is written first."""
        if self._job is not None:
            self._job.wait()
        super().reject()

    def closeEvent(self, event: QCloseEvent) -> None:
        """As with the button."""
        self.reject()
        event.accept()


def _count(pieces: int) -> str:
    return "One piece" if pieces == 1 else f"{pieces} pieces"
