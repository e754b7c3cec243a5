"""Marking by hand, step by step: pieces at the left, the drawing, and the step in large type at the right."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout, QWidget

from workbench.document import Picture, set_marked
from workbench.marking import Guide, PieceGuide, Rounding, guide_of, rounding_of
from workbench.pieces import Layer, LayerName
from workbench.ui.board.paint_words import why_none
from workbench.ui.desk import Desk
from workbench.ui.findings import FindingRow
from workbench.ui.marking import piece_pane, step_pane
from workbench.ui.marking.board import MarkingBoard
from workbench.ui.marking.piece_pane import PiecePane, rounding_named
from workbench.ui.marking.step_pane import StepPane

_EXACT = 0.05
"""mm round the body that nobody can measure."""
STEP_NAME, UNDONE_NAME = "Marked", "Not marked"


class MarkingPane(QWidget):
    """Answers at a glance: what do I mark next, how far from where?

    Nothing is worked out while it is out of sight.
    """

    export_wanted = Signal()
    """She wants the guide on paper."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._picture: Picture | None = None
        self._worked: tuple[object, object, object] = (None, None, None)
        self._layer: LayerName = "fashion"
        self._rounding: Rounding | None = None
        self._guide: Guide | None = None
        self._place, self._step = 0, 0
        self.pieces = PiecePane()
        self.board = MarkingBoard()
        self.steps = StepPane()
        self.stated = FindingRow(clickable=False)
        self._arrange()
        self.pieces.layer_picked.connect(self.on_layer)
        self.pieces.rounding_picked.connect(self.on_rounding)
        self.pieces.piece_picked.connect(self.on_piece)
        self.pieces.export_wanted.connect(self.export_wanted)
        self.steps.ticked.connect(self.on_ticked)
        self.steps.chosen.connect(self.on_step)

    def _arrange(self) -> None:
        self.pieces.setFixedWidth(piece_pane.WIDTH)
        self.steps.setFixedWidth(step_pane.WIDTH)
        across = QHBoxLayout()
        across.setSpacing(0)
        across.addWidget(self.pieces)
        across.addWidget(_hairline())
        middle = QVBoxLayout()
        middle.setSpacing(0)
        middle.addWidget(self.board, 1)
        middle.addWidget(self.stated)
        across.addLayout(middle, 1)
        across.addWidget(_hairline())
        across.addWidget(self.steps)
        across.setContentsMargins(0, 0, 0, 0)
        self.setLayout(across)

    # --- what is shown ---------------------------------------------------------------------

    @property
    def rounding(self) -> Rounding:
        """How finely the guide is rounded: as picked, else as is usual for the project's unit."""
        project = self._desk.project
        return self._rounding or rounding_of(project.unit, project.fraction)

    @property
    def layer(self) -> LayerName:
        """The layer on show."""
        return self._layer

    def show_picture(self, picture: Picture) -> None:
        """Show how the pieces of a draft are marked, once they are looked at."""
        self._picture = picture
        if self.isVisible():
            self._show()

    def showEvent(self, event: QShowEvent) -> None:
        """Work out what is looked at."""
        super().showEvent(event)
        if self._picture is None:
            self._picture = self._desk.picture
        self._show()

    def _show(self) -> None:
        picture = self._picture
        assert picture is not None, "shown only with a picture"
        layer = self._layer_of(picture)
        worked = (picture.outcome, layer, self.rounding)
        # drafts are told apart by which they are: there is no yes or no about two lists of points
        if layer is None or not all(one is other for one, other in zip(worked, self._worked, strict=True)):
            self._worked = worked
            self._guide = self._made(picture, layer)
        self.pieces.show_layers(picture.cutting if picture.current else None, self._layer)
        self._show_step()

    def _layer_of(self, picture: Picture) -> Layer | None:
        """The layer on show, or the first there is; none while the draft is stopped."""
        cutting = picture.cutting if picture.current else None
        if cutting is None or not cutting.layers:
            return None
        for layer in cutting.layers:
            if layer.name == self._layer:
                return layer
        self._layer = cutting.layers[0].name
        return cutting.layers[0]

    def _made(self, picture: Picture, layer: Layer | None) -> Guide | None:
        if layer is None or picture.outcome is None:
            return None
        return guide_of(picture.outcome, picture.project.making, layer, self.rounding)

    @property
    def _piece(self) -> PieceGuide | None:
        pieces = self._guide.pieces if self._guide is not None else ()
        return pieces[min(self._place, len(pieces) - 1)] if pieces else None

    def _show_step(self) -> None:
        done, piece = set(self._desk.project.done), self._piece
        if piece is not None:
            self._step = min(max(self._step, 0), len(piece.steps) - 1)
        self.pieces.show_guide(self._guide, self.rounding, done, self._place)
        self.board.show_step(piece, self._step, self._missing())
        self.steps.show_step(piece, self.rounding, done, self._step)
        self._show_stated(piece)

    def _missing(self) -> str:
        """Why there is nothing to mark."""
        picture = self._picture
        if picture is None or self._guide is not None:
            return ""
        return why_none(picture) or "There are no pieces to mark."

    def _show_stated(self, piece: PieceGuide | None) -> None:
        """How far off the marks are."""
        guide = self._guide
        self.stated.setVisible(piece is not None)
        if piece is None or guide is None:
            return
        said = guide.rounding.say_error
        told = (
            f"Marked {guide.rounding.label}, this outline lies at most {said(piece.error)} off the exact one."
        )
        if guide.girths and guide.girth_error < _EXACT:
            told += " Every finished girth comes out as it is drafted."
        elif guide.girths:
            told += f" No finished girth is more than {said(guide.girth_error)} out round the body."
        self.stated.show_sentence("note", piece.name, told)

    # --- what she does ---------------------------------------------------------------------

    def on_layer(self, name: str) -> None:
        """Another layer, from its first piece."""
        self._layer = name  # type: ignore[assignment]  # one of those that were offered
        self._place = 0
        self._to_first_undone()

    def on_rounding(self, name: str) -> None:
        """Finer or coarser."""
        self._rounding = rounding_named(name)
        self._show()

    def on_piece(self, place: int) -> None:
        """Another piece, at its first step that is not done."""
        self._place = place
        self._to_first_undone()

    def _to_first_undone(self) -> None:
        self._step = 0
        self._show()
        piece, done = self._piece, set(self._desk.project.done)
        if piece is not None:
            undone = [number for number, step in enumerate(piece.steps) if step.key not in done]
            self._step = undone[0] if undone else 0
            self._show_step()

    def on_step(self, step: int) -> None:
        """Another step; past the last one, the next piece."""
        piece, guide = self._piece, self._guide
        if piece is None or guide is None:
            return
        if step >= len(piece.steps):
            self.on_piece((self._place + 1) % len(guide.pieces))
            return
        self._step = step
        self._show_step()

    def on_ticked(self, step: int, on: bool) -> None:
        """Keep the tick in the project."""
        piece = self._piece
        if piece is not None:
            key = piece.steps[step].key
            self._desk.apply(STEP_NAME if on else UNDONE_NAME, set_marked(self._desk.project, key, on))
            self._show_step()


def _hairline() -> QFrame:
    line = QFrame()
    line.setObjectName("hairline")
    line.setFixedWidth(1)
    line.setStyleSheet("QFrame#hairline { border: none; background: palette(midlight); }")
    return line
