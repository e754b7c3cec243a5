"""The cutting table: the pieces of one layer on their common waist line."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget

from workbench.document import set_own_allowance
from workbench.draft import Place
from workbench.pieces import LAYERS
from workbench.ui.board.paper import Paper
from workbench.ui.board.view import Bounds
from workbench.ui.desk import Desk
from workbench.ui.form.kinds import LengthKind
from workbench.ui.pieces.allowance_editor import AllowanceEditor
from workbench.ui.pieces.allowance_figures import AllowanceFigure, figures_of
from workbench.ui.pieces.bench import Bench, Laid
from workbench.ui.pieces.edges import ROUND, Edge, edge_of, place_of_edge
from workbench.ui.pieces.paint_empty import paint_empty
from workbench.ui.pieces.paint_table import GUTTER, Shown, paint_table
from workbench.ui.pieces.spoken import spoken_pick
from workbench.ui.pieces.spread import Spread, spread_of
from workbench.ui.pieces.table_hand import TableHand
from workbench.ui.pieces.table_keys import TableKeys

_NAME = "Cutting table"
_DESCRIPTION = (
    "Left and Right go from piece to piece, Up and Down from edge to edge of the picked piece. "
    "Enter types the allowance of the picked edge, Delete takes its kind’s again. "
    "Page Up and Page Down turn to another layer."
)
_STEP_NAME = "Allowance of one edge"
_LEAST = (320, 240)
_AIR, _WORDS = 24.0, 56.0
"""Pixels of paper left round the pieces, and below them for their names."""


class Table(Paper):
    """Shows a layer, and lets her pick pieces and edges and type allowances."""

    _hand: TableHand
    _keys: TableKeys

    def __init__(self, desk: Desk, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(_NAME, _DESCRIPTION, _LEAST, parent)
        self._desk, self._bench = desk, bench
        self._laid: Laid | None = None
        self._spread: Spread | None = None
        self._figures: tuple[AllowanceFigure, ...] = ()
        self._place: Place | None = desk.selection
        self._key: str | None = None
        self._halves = False
        self._hand = TableHand(self, self.sight)
        self._keys = TableKeys(self)
        self.editor = AllowanceEditor(self)
        self.editor.typed.connect(self.on_typed)
        self.editor.stepped_on.connect(self.on_stepped)
        self.editor.closed.connect(self.on_closed)
        bench.laid.connect(self.show_laid)
        bench.lit.connect(self.show_lit)
        desk.selected.connect(self.show_selection)

    # --- what is on it -------------------------------------------------------------------

    @property
    def desk(self) -> Desk:
        """Where its edits go."""
        return self._desk

    @property
    def spread(self) -> Spread | None:
        """What is on the table; None before there is anything."""
        return self._spread

    @property
    def figures(self) -> tuple[AllowanceFigure, ...]:
        """The allowances on it."""
        return self._figures

    @property
    def picked_edge(self) -> Edge | None:
        """The edge that is picked."""
        return edge_of(self._place, self._desk.project.design)

    @property
    def picked_piece(self) -> int | None:
        """The number of the picked piece on the table."""
        if self._spread is None:
            return None
        panel = self._place.panel if self._place is not None else None
        for number, laid in enumerate(self._spread.pieces):
            if laid.piece.key == self._key or (panel is not None and laid.piece.panel == panel):
                return number
        return None

    def figure_of(self, edge: Edge) -> AllowanceFigure | None:
        """The allowance of an edge."""
        return next((figure for figure in self._figures if figure.edge == edge), None)

    def room(self) -> QRectF:
        """The pixels in which pieces are fitted."""
        levelled = self._spread is not None and bool(self._spread.levels)
        left = GUTTER if levelled else 0.0
        return QRectF(self.rect()).adjusted(left + _AIR, 1.5 * _AIR, -_AIR, -_WORDS)

    def bounds(self) -> Bounds | None:
        """The pieces, in mm; None while there are none."""
        return self._spread.bounds if self._spread is not None and self._spread.pieces else None

    def set_halves(self, on: bool) -> None:
        """Show or hide the other half, turned over."""
        self._halves = on
        self._lay()

    # --- what is shown -------------------------------------------------------------------

    def show_laid(self, laid: Laid) -> None:
        """Lay another layer, or the same of another draft."""
        self._laid = laid
        self._lay()

    def show_selection(self, place: Place | None) -> None:
        """Light up a place."""
        self._place = place
        if place is not None:
            self._key = None
        self.tell()
        self.refresh()

    def show_lit(self, _bones: object) -> None:
        """Light up bones."""
        self.refresh()

    def show_view(self) -> None:
        """Paint from where the view is now."""
        if self.editor.figure is not None:
            self._follow(self.editor.figure)
        super().show_view()

    def _lay(self) -> None:
        before = self._spread
        self._spread = spread_of(self._laid, self._halves) if self._laid is not None else None
        self._figures = figures_of(self._spread) if self._spread is not None else ()
        if self._spread is not None:
            self._keep_fitted(self._spread, before)
        if self.editor.figure is not None:
            self._follow(self.editor.figure)
        self.tell()
        self.refresh()

    def _keep_fitted(self, spread: Spread, before: Spread | None) -> None:
        """Fit again what is of another kind, or has grown out of the room; never while she steps a figure."""
        if (
            before is None
            or before.kind != spread.kind
            or (not self.sight.by_hand and not self._desk.gesturing and spread.bounds != before.bounds)
        ):
            self.fit()

    def _follow(self, figure: AllowanceFigure) -> None:
        """Keep the field over its figure when the pieces or the view have moved."""
        now = self.figure_of(figure.edge) if figure.edge is not None else None
        if now is None or now.key != figure.key:
            self.editor.close_quietly()
        else:
            self.editor.show_at(now.box(self.sight.view))

    def said(self) -> str:
        """The piece or the edge that is picked, in words."""
        at, edge = self.picked_piece, self.picked_edge
        if self._spread is None or at is None:
            return ""
        figure = self.figure_of(edge) if edge is not None else None
        return spoken_pick(self._spread, self._spread.pieces[at].piece, edge, figure)

    def pointer(self) -> Qt.CursorShape:
        """An allowance can be typed where it stands."""
        return Qt.CursorShape.IBeamCursor if self._hand.over else Qt.CursorShape.ArrowCursor

    # --- what she does -------------------------------------------------------------------

    def pick(self, place: Place | None, key: str | None = None) -> None:
        """Pick a place in every pane, or here alone a piece that belongs to no panel."""
        self._key = key
        self._desk.select(place)
        self.tell()
        self.refresh()

    def open_figure(self, figure: AllowanceFigure) -> None:
        """Lay the field over an allowance, and light up its edge."""
        if figure.edge is None or self._spread is None:
            return
        place = place_of_edge(figure.edge)
        self.pick(place)
        self.editor.open_on(figure, figure.box(self.sight.view), self._desk.project)

    def take_kinds(self, edge: Edge) -> None:
        """Take the allowance of its kind for an edge again."""
        project, layer = self._desk.project, self._bench.layer
        self._desk.apply(_STEP_NAME, set_own_allowance(project, layer, edge.panel, edge.name, None))

    def turn_layers(self, step: int) -> None:
        """Put the layer before or after on show."""
        at = LAYERS.index(self._bench.layer) + step
        self._bench.show_layer(LAYERS[at % len(LAYERS)])

    def on_typed(self, figure: AllowanceFigure, text: str) -> None:
        """Keep an allowance for one edge, or say why it cannot be."""
        edge, project = figure.edge, self._desk.project
        if edge is None:
            return
        try:
            mm = LengthKind().read(text, project) if text.strip() else None
            changed = set_own_allowance(project, self._bench.layer, edge.panel, edge.name, mm)
        except ValueError as error:
            self.editor.show_problem(str(error))
            self._desk.refuse("own_allowance", f"Allowance: {error}")
            return
        self._desk.apply(_STEP_NAME, changed)

    def on_stepped(self, figure: AllowanceFigure, step: int) -> None:
        """Go on to the next edge of the piece that has an allowance."""
        self._desk.now()
        mine = sorted(
            (other for other in self._figures if other.key == figure.key),
            key=lambda other: ROUND.index(other.name),
        )
        names = [other.name for other in mine]
        if figure.name in names:
            self.open_figure(mine[(names.index(figure.name) + step) % len(mine)])

    # --- painting --------------------------------------------------------------------------

    def paint(self, painter: QPainter) -> None:
        """The pieces, or why there are none."""
        spread = self._spread
        if self._laid is not None and (spread is None or not spread.pieces):
            paint_empty(painter, self._laid, QRectF(self.rect()))
        elif spread is not None:
            paint_table(painter, self._shown(spread))

    def _shown(self, spread: Spread) -> Shown:
        """Everything that the painter has to know."""
        return Shown(
            spread=spread,
            figures=self._figures,
            view=self.sight.view,
            size=self.size(),
            place=self._place,
            key=self._key,
            over=self._hand.over,
            bones=self._bench.bones,
        )
