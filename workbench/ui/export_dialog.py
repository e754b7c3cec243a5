"""Out of the program: choose a kind of file, see what it will hold, write it."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.document import (
    Picture,
    export_page,
    exported,
    marking_guides,
    printed_marking,
)
from workbench.exchange import LargePage
from workbench.ui.asking import Asking
from workbench.ui.desk import Desk
from workbench.ui.export_choices import ExportChoices, Kind
from workbench.ui.export_preview import ExportPreview
from workbench.ui.files import Files, plain_name
from workbench.ui.look import GRID
from workbench.ui.marking.board import MarkingBoard
from workbench.ui.room import open_at
from workbench.ui.writing_dialog import WritingDialog

_TRUE_SIZE = "Print it at 100 %, never fitted to the page, and measure the square."
_SQUARE_IT = "Move and square the projector until every square of the grid measures true both ways."


class ExportDialog(WritingDialog):
    """Writes the project as it stands; nothing in the project is changed by it."""

    def __init__(
        self,
        desk: Desk,
        files: Files,
        asking: Asking,
        parent: QWidget | None = None,
        kind: Kind = "sheet",
    ) -> None:
        super().__init__("Export", "Write the file…", parent)
        self._files, self._asking = files, asking
        self._picture: Picture = desk.picture
        self.choices = ExportChoices(desk.project, kind)
        self.preview, self.piece = ExportPreview(), MarkingBoard()
        self._arrange()
        self.choices.changed.connect(self.on_changed)
        open_at(self, 250 * GRID, 150 * GRID)
        self.on_changed()

    def _arrange(self) -> None:
        left = QVBoxLayout()
        left.addWidget(self.choices)
        self.arrange_beside(left, self.preview, self.piece)
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
        self.show_over(self._picture)

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

    # --- what she does ---------------------------------------------------------------------

    def on_write(self) -> None:
        """Ask where to, and write beside the open dialog."""
        kind, picture = self.choices.format, self._picture
        path = self._asking.where_to_export(self._suggested())
        if path is None:
            return
        if self.choices.picked == "guide":
            rounding, layers = self.choices.chosen_rounding, self.choices.chosen_layers
            self.write_beside(
                path, lambda: printed_marking(picture, marking_guides(picture, rounding, layers))
            )
        else:
            choice = self.choices.choice()
            self.write_beside(path, lambda: exported(picture, kind, choice))

    def _suggested(self) -> Path:
        """Beside the project, named after the client and what it is."""
        also = {"projector": ", projector", "guide": ", marking guide"}.get(self.choices.picked, "")
        name = f"{plain_name(self._files.name)}{also}.{self.choices.format}"
        return self._files.folder_of_prints() / name


def _count(pieces: int) -> str:
    return "One piece" if pieces == 1 else f"{pieces} pieces"
