"""Printing: choose the paper, see the sheets, write the PDF."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QComboBox,
    QGridLayout,
    QLabel,
    QVBoxLayout,
    QWidget,
)

from workbench.document import (
    Picture,
    Project,
    choice_of,
    picture_of,
    printed,
    set_paper,
)
from workbench.sheets import PAPERS, ROLL, PrintError, SheetMap, sheet_map
from workbench.ui.asking import Asking
from workbench.ui.desk import Desk
from workbench.ui.files import Files, plain_name
from workbench.ui.look import GRID, fonts
from workbench.ui.print_layers import LayerBoxes
from workbench.ui.print_lengths import LengthRow
from workbench.ui.room import open_at
from workbench.ui.sheet_preview import SheetPreview
from workbench.ui.tick import Tick
from workbench.ui.writing_dialog import WritingDialog

STEP_NAME = "Paper"
_TRUE_SIZE = "Print at 100 %, never fitted to the page, and measure the square on the first sheet."


class PrintDialog(WritingDialog):
    """Edits a copy of the project's paper; it becomes the project's when the PDF is written."""

    _then = _TRUE_SIZE

    def __init__(self, desk: Desk, files: Files, asking: Asking, parent: QWidget | None = None) -> None:
        super().__init__("Print to true size", "Write the PDF…", parent)
        self._desk, self._files, self._asking = desk, files, asking
        self._project: Project = desk.project
        self._picture: Picture = desk.picture
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
        self.preview = SheetPreview()
        self._arrange()
        self._connect()
        open_at(self, 240 * GRID, 150 * GRID)
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
        left.addLayout(rows)
        self.arrange_beside(left, self.preview, note=_note(_TRUE_SIZE))

    def _connect(self) -> None:
        self.paper.activated.connect(self.on_paper_picked)
        self.with_allowance.clicked.connect(self.on_pieces_clicked)
        self.layers.changed.connect(self.on_pieces_clicked)
        self.cutting_pages.clicked.connect(self.on_pieces_clicked)
        for row in self.lengths.values():
            row.changed.connect(self.on_length_changed)

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
        self.show_over(self._picture, "; the first page says so")

    def _sheets(self) -> SheetMap:
        assert self._picture.outcome is not None
        paper = self._project.paper
        cutting = self._picture.cutting if paper.with_allowance else None
        return sheet_map(self._picture.outcome, choice_of(paper, self._project.making), cutting)

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
        self.write_beside(path, lambda: printed(picture, paper))


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
