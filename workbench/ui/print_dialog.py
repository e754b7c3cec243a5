"""Printing: choose the paper, see the sheets, write the PDF."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt, QUrl
from PySide6.QtGui import QCloseEvent, QDesktopServices
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from workbench.document import (
    FileTrouble,
    Picture,
    Project,
    choice_of,
    picture_of,
    printed,
    set_paper,
    write_whole,
)
from workbench.sheets import PAPERS, ROLL, PrintError, SheetMap, sheet_map
from workbench.ui.asking import Asking
from workbench.ui.desk import Desk
from workbench.ui.files import Files, plain_name
from workbench.ui.findings import FindingRow
from workbench.ui.job import Job
from workbench.ui.look import GRID, fonts
from workbench.ui.print_layers import LayerBoxes
from workbench.ui.print_lengths import LengthRow
from workbench.ui.sheet_preview import SheetPreview
from workbench.ui.tick import Tick

STEP_NAME = "Paper"
_TRUE_SIZE = "Print at 100 %, never fitted to the page, and measure the square on the first sheet."


class PrintDialog(QDialog):
    """Edits a copy of the project's paper; it becomes the project's when the PDF is written."""

    def __init__(self, desk: Desk, files: Files, asking: Asking, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk, self._files, self._asking = desk, files, asking
        self._project: Project = desk.project
        self._picture: Picture = desk.picture
        self._job: Job | None = None
        self._path: Path | None = None
        self.setWindowTitle("Print to true size")
        self.paper = QComboBox()
        self.paper.setAccessibleName("Paper")
        for name in PAPERS:
            self.paper.addItem(name, name)
        self.paper.addItem("Roll", ROLL)
        self.lengths = {
            "roll_width_mm": LengthRow("Width of the roll", low=100),
            "margin_mm": LengthRow("Margin the printer leaves", in_mm=True),
            "overlap_mm": LengthRow("Overlap of the sheets", in_mm=True),
        }
        self.with_allowance = Tick("Pieces with cut lines, notches and bones")
        self.layers = LayerBoxes()
        self.cutting_pages = Tick("Lists for the cutting table in front")
        self.state, self.warning = FindingRow(clickable=False), FindingRow(clickable=False)
        self.preview = SheetPreview()
        self.write = QPushButton("Write the PDF…")
        self.open_it, self.shut = QPushButton("Open it"), QPushButton("Close")
        self._arrange()
        self._connect()
        self.resize(240 * GRID, 150 * GRID)
        self.show_paper()

    # --- putting it together ---------------------------------------------------------------

    def _arrange(self) -> None:
        rows = QGridLayout()
        rows.setVerticalSpacing(2 * GRID)
        rows.addWidget(QLabel("Paper"), 0, 0)
        rows.addWidget(self.paper, 0, 1)
        for number, name in enumerate(("roll_width_mm", "margin_mm", "overlap_mm"), start=1):
            rows.addWidget(self.lengths[name], number, 0, 1, 2)
        rows.addWidget(self.with_allowance, 4, 0, 1, 2)
        rows.addWidget(self.layers, 5, 0, 1, 2)
        rows.addWidget(self.cutting_pages, 6, 0, 1, 2)
        left = QVBoxLayout()
        left.setContentsMargins(0, 0, 4 * GRID, 0)
        left.addLayout(rows)
        left.addSpacing(2 * GRID)
        for row in (self.state, self.warning):
            left.addWidget(row)
        left.addStretch(1)
        left.addWidget(_note(_TRUE_SIZE))
        buttons = QHBoxLayout()
        for button in (self.write, self.open_it, self.shut):
            buttons.addWidget(button)
        left.addLayout(buttons)
        self.write.setDefault(True)
        both = QHBoxLayout(self)
        both.setContentsMargins(4 * GRID, 4 * GRID, 4 * GRID, 4 * GRID)
        both.addLayout(left, 0)
        both.addWidget(self.preview, 1)

    def _connect(self) -> None:
        self.paper.activated.connect(self.on_paper_picked)
        self.with_allowance.clicked.connect(self.on_pieces_clicked)
        self.layers.changed.connect(self.on_pieces_clicked)
        self.cutting_pages.clicked.connect(self.on_pieces_clicked)
        for row in self.lengths.values():
            row.changed.connect(self.on_length_changed)
        self.write.clicked.connect(self.on_write)
        self.open_it.clicked.connect(self.on_open)
        self.shut.clicked.connect(self.reject)
        self.open_it.setEnabled(False)

    # --- what is shown ---------------------------------------------------------------------

    def show_paper(self) -> None:
        """The choices as they stand, and the sheets that follow from them."""
        project, paper = self._project, self._project.paper
        self.paper.setCurrentIndex(self.paper.findData(paper.name))
        self.with_allowance.setChecked(paper.with_allowance)
        self.layers.show_layers(paper, project.making)
        self.layers.setVisible(paper.with_allowance)
        self.cutting_pages.setChecked(paper.cutting_pages)
        self.cutting_pages.setVisible(paper.with_allowance)
        for name, row in self.lengths.items():
            row.show_length(getattr(paper, name), project.unit, project.fraction)
        self.lengths["roll_width_mm"].setVisible(paper.name == ROLL)
        self.lengths["overlap_mm"].setEnabled(paper.name != ROLL)
        self.show_sheets()

    def show_sheets(self) -> None:
        """The sheet map, or why there is none."""
        self._picture = picture_of(self._project, self._picture)
        sheets: SheetMap | None = None
        try:
            if self._picture.outcome is not None:
                sheets = self._sheets()
        except PrintError as error:
            self.state.show_sentence("stop", "Cannot be printed", str(error))
        if sheets is not None:
            self.state.show_sentence("note", *_counted(sheets))
        self.preview.show_map(sheets)
        self.write.setEnabled(sheets is not None and self._job is None)
        self._show_warning()

    def _sheets(self) -> SheetMap:
        assert self._picture.outcome is not None
        paper = self._project.paper
        cutting = self._picture.cutting if paper.with_allowance else None
        return sheet_map(self._picture.outcome, choice_of(paper, self._project.making), cutting)

    def _show_warning(self) -> None:
        """A print is never silent about a limit that is passed."""
        over = sum(finding.severity == "over" for finding in self._picture.findings)
        self.warning.setVisible(over > 0)
        what = "One figure is" if over == 1 else f"{over} figures are"
        self.warning.show_sentence(
            "over", "Over the limit", f"{what} above the limit you set; the first page says so."
        )

    def show_written(self) -> None:
        """The job is done: the file is whole, or why it is not there."""
        job, path = self._job, self._path
        if job is None or path is None:
            return
        self._job = None
        self.write.setEnabled(True)
        if job.error is None:
            self.open_it.setEnabled(True)
            self.state.show_sentence("within", "Written", f"{path}. {_TRUE_SIZE}")
        elif isinstance(job.error, FileTrouble | ValueError):
            self.state.show_sentence("stop", "Not written", str(job.error))
        else:
            raise job.error

    # --- what she does ---------------------------------------------------------------------

    def on_paper_picked(self) -> None:
        """Other paper."""
        self._change(set_paper(self._project, name=str(self.paper.currentData())))

    def on_pieces_clicked(self) -> None:
        """Pieces or bare panels, of which layers, with or without the lists."""
        changed = set_paper(
            self._project,
            with_allowance=self.with_allowance.isChecked(),
            layers=self.layers.ticked(),
            cutting_pages=self.cutting_pages.isChecked(),
        )
        self._change(changed)

    def on_length_changed(self) -> None:
        """A margin, an overlap or a width was typed and could be read."""
        for name, row in self.lengths.items():
            if row is self.sender():
                self._change(set_paper(self._project, **{name: row.mm}))

    def _change(self, project: Project) -> None:
        self._project = project
        self.open_it.setEnabled(False)
        self.show_paper()

    def on_write(self) -> None:
        """Ask where to, keep the choice of paper, and write beside the open dialog."""
        wanted = self._files.folder_of_prints() / f"{plain_name(self._files.name)}.pdf"
        path = self._asking.where_to_print(wanted)
        if path is None:
            return
        self._desk.apply(STEP_NAME, self._project)
        picture, paper = self._picture, self._project.paper
        self._path = path
        self._job = Job(lambda: write_whole(path, printed(picture, paper)), self)
        self._job.finished.connect(self.show_written)
        self.write.setEnabled(False)
        self.state.show_sentence("note", "Writing", f"{path.name} …")
        self._job.start()

    def on_open(self) -> None:
        """Show the PDF in whatever the system opens it with."""
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


def _counted(sheets: SheetMap) -> tuple[str, str]:
    """How many sheets, and how they lie."""
    paper = sheets.paper
    if paper.name == ROLL:
        return (
            "One strip",
            f"{paper.width:.0f} mm wide and {paper.height / 1000:.2f} m long, and the pages in front.",
        )
    count, blank = len(sheets.tiles), len(sheets.blanks)
    skipped = {0: "", 1: " One blank sheet is skipped."}.get(blank, f" {blank} blank sheets are skipped.")
    across = f"{sheets.columns} across and {sheets.rows} down" if count > 1 else "all on one"
    return (
        f"{count} {'sheet' if count == 1 else 'sheets'} of {paper.name}",
        f"{across}, and the pages in front.{skipped}",
    )


def _note(text: str) -> QLabel:
    label = QLabel(text)
    label.setFont(fonts().small)
    label.setWordWrap(True)
    label.setAlignment(Qt.AlignmentFlag.AlignTop)
    return label
