"""The canvas: panels, level lines, ledger, handles. Paints one scene, and passes the hand and the keys on."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt
from PySide6.QtGui import QContextMenuEvent, QKeyEvent, QMouseEvent, QPainter, QResizeEvent
from PySide6.QtWidgets import QWidget

from workbench.document import Picture
from workbench.draft import Place
from workbench.sheets import Layout
from workbench.ui.board.behind import BehindPainter
from workbench.ui.board.figure_editor import FigureEditor
from workbench.ui.board.figure_edits import unpinned, with_amount
from workbench.ui.board.figures import Figure, FigureKey
from workbench.ui.board.gestures import Gesture
from workbench.ui.board.hand import Hand
from workbench.ui.board.handles import Handle, HandleKey
from workbench.ui.board.keys import Keys
from workbench.ui.board.menu import BoardMenu
from workbench.ui.board.paint_canvas import Shown, paint_canvas
from workbench.ui.board.paint_levels import GUTTER, RULER
from workbench.ui.board.paint_marks import figure_named, handle_named
from workbench.ui.board.paint_words import paint_empty, stop_of
from workbench.ui.board.paper import Paper
from workbench.ui.board.ruler import SideRuler, TopRuler
from workbench.ui.board.scene import Scene, scene_of
from workbench.ui.board.spoken import spoken_figure, spoken_handle
from workbench.ui.board.tracing import PictureDrag, tracing_of
from workbench.ui.board.view import Bounds, Sight
from workbench.ui.desk import Desk

_NAME = "Canvas with the panels"
_DESCRIPTION = (
    "H goes from one shape point to the next, I from one intake figure to the next; "
    "arrow keys move what is chosen, T turns a point from smooth to corner, "
    "Delete removes a point or unpins a figure."
)
_MOVING = "A drag or the arrow keys move the picture behind the panels; Escape lets it go."
_LEAST = (380, 320)
_AIR = 28.0
"""Pixels of paper left round the panels when they are fitted."""


class Canvas(Paper):
    """Shows a picture's panels, and lets her take hold of them."""

    _hand: Hand
    _keys: Keys

    def __init__(self, desk: Desk, sight: Sight, parent: QWidget | None = None) -> None:
        super().__init__(_NAME, _DESCRIPTION, _LEAST, parent, sight=sight)
        self._desk = desk
        self._picture: Picture | None = None
        self._scene: Scene | None = None
        self._ghost: Scene | None = None
        self._place: Place | None = None
        self._chosen_figure: FigureKey | None = None
        self._layout: Layout = "apart"
        self._grid = False
        self._flare = False
        self._allowance = False
        self._stop_box = QRectF()
        self._hand = Hand(self, desk, sight)
        self._keys = Keys(self, desk, sight)
        self._menu = BoardMenu(self, desk, self)
        self._behind, self._tracing = BehindPainter(self.refresh, self), tracing_of(desk)
        self._tracing.changed.connect(self.show_tracing)
        self._top, self._side = TopRuler(sight, self), SideRuler(sight, self)
        self._editor = FigureEditor(self)
        self._editor.pinned.connect(self._on_pinned)
        self._editor.unpinned.connect(self._on_unpinned)
        self._editor.stepped.connect(self._on_stepped)
        self._editor.refused.connect(self._on_refused)
        self._editor.closed.connect(self.on_closed)

    @property
    def scene(self) -> Scene | None:
        """What is on the canvas; None before there is anything."""
        return self._scene

    @property
    def desk(self) -> Desk:
        """Where its edits go."""
        return self._desk

    @property
    def ghost(self) -> Scene | None:
        """What the canvas showed when the drag under way began."""
        return self._ghost

    @property
    def menu(self) -> BoardMenu:
        """The menu for what lies under the hand."""
        return self._menu

    @property
    def hand(self) -> Hand:
        """The mouse on the canvas."""
        return self._hand

    @property
    def editor(self) -> FigureEditor:
        """The field for an intake figure."""
        return self._editor

    @property
    def chosen_handle(self) -> Handle | None:
        """The handle that is selected and on show."""
        place = self._place
        if place is None or place.line is None or place.point is None or not self._editable:
            return None
        return handle_named(self._scene, HandleKey(place.line, place.point)) if self._scene else None

    @property
    def chosen_figure(self) -> Figure | None:
        """The intake figure that is selected and on show."""
        return figure_named(self._scene, self._chosen_figure) if self._scene and self._editable else None

    @property
    def traces(self) -> bool:
        """Whether a picture may lie behind the panels: on the block there is no place for one."""
        return self._layout != "block"

    @property
    def behind(self) -> BehindPainter:
        """The picture behind the panels, as it is painted."""
        return self._behind

    @property
    def _editable(self) -> bool:
        return self._scene is not None and self._scene.editable

    def room(self) -> QRectF:
        """The pixels in which panels are fitted."""
        free = QRectF(self.rect()).adjusted(GUTTER, RULER, 0, 0)
        return free.adjusted(_AIR, _AIR, -_AIR, -_AIR)

    def bounds(self) -> Bounds | None:
        """All of the panels and every level, in mm; None before there are any."""
        return self._scene.bounds if self._scene is not None else None

    def set_layout_name(self, name: Layout) -> None:
        """Lay the panels apart, on the block, or both halves."""
        self._layout, self._ghost = name, None
        self._make_scene(hold=False)
        self.fit()

    def set_flare_shown(self, on: bool) -> None:
        """Show or hide how sharply the seams flare."""
        self._flare = on
        self.refresh()

    def set_grid(self, on: bool) -> None:
        """Show or hide the grid."""
        self._grid = on
        self.refresh()

    def set_allowance_shown(self, on: bool) -> None:
        """Show or hide the cut lines."""
        self._allowance = on
        self._make_scene(hold=False)

    def show_picture(self, picture: Picture) -> None:
        """Paint another picture; while a drag is under way its start stays on as a ghost."""
        dragging = self._desk.gesturing
        if not dragging:
            self._ghost = None
        elif self._ghost is None:
            self._ghost = self._scene
        self._picture = picture
        self._make_scene(hold=dragging)
        if not dragging:
            self.tell()
        if self._editor.figure is not None:
            self._follow_figure(self._editor.figure)

    def show_selection(self, place: Place | None) -> None:
        """Light up a place."""
        self._place = place
        if place is None or place.seam is None or place.level is None:
            self._chosen_figure = None
        self.tell()
        self.refresh()

    def said(self) -> str:
        """The handle or the figure that is chosen, in words; first what a drag moves instead."""
        if self._tracing.moving:
            return _MOVING
        handle, figure = self.chosen_handle, self.chosen_figure
        if self._scene is not None and handle is not None:
            return spoken_handle(self._scene, handle)
        if self._scene is not None and figure is not None:
            return spoken_figure(self._scene, figure)
        return ""

    def show_view(self) -> None:
        """Paint from where the view is now."""
        self._top.update()
        self._side.update()
        if self._editor.figure is not None:
            self._follow_figure(self._editor.figure)
        super().show_view()

    def refresh(self) -> None:
        """Paint again, without the rulers, which have not moved."""
        self.show_pointer()
        self.update(self.rect().adjusted(int(RULER), int(RULER), 0, 0))

    def choose_figure(self, figure: Figure | None) -> None:
        """Select an intake figure, and light up its seam and level."""
        self._chosen_figure = figure.key if figure else None
        self._desk.select(Place(seam=figure.key.seam, level=figure.key.level) if figure else None)
        self.tell()
        self.refresh()

    def open_figure(self, figure: Figure) -> None:
        """Lay the field over an intake figure."""
        if self._scene is None or not self._editable:
            return
        self.choose_figure(figure)
        box = figure.box(self.sight.view)
        self._editor.open_on(figure, box, self._scene.unit, self._scene.outcome.design)

    def own_gesture(self, pixel: QPointF) -> Gesture | None:
        """What a press begins wherever it is: the drag of a picture that is in the hand."""
        if self._tracing.moving and self.traces:
            return PictureDrag(self._desk, self.sight, pixel)
        return None

    def nudge_behind(self, right: int, up: int) -> bool:
        """Move the picture behind the panels by steps; False where it is not in the hand."""
        moves = self._tracing.moving and self.traces
        if moves:
            self._tracing.nudge(right, up)
        return moves

    def let_go_behind(self) -> bool:
        """Let the picture behind the panels go; False where it is not in the hand."""
        moving = self._tracing.moving
        self._tracing.set_moving(False)
        return moving

    def show_tracing(self) -> None:
        """Show that the picture was taken in the hand, or let go."""
        self.tell()
        self.refresh()

    def unpin(self, figure: Figure) -> None:
        """Let a seam share again at a level."""
        self._desk.apply("Unpin intake", unpinned(self._desk.project, figure))

    def _make_scene(self, *, hold: bool) -> None:
        before = self._scene
        self._scene = self._scene_now(before, hold=hold)
        if self._scene is not None:
            self._top.show_unit(self._scene.unit)
            self._side.show_unit(self._scene.unit)
            self._keep_fitted(self._scene, before)
        for ruler in (self._top, self._side):
            ruler.setVisible(self._scene is not None)
        self._tracing.on_show = self.bounds() if self.traces else None
        self.refresh()

    def _scene_now(self, before: Scene | None, *, hold: bool) -> Scene | None:
        if self._picture is None:
            return None
        start = self._ghost if hold else None
        return scene_of(self._picture, self._layout, cut_lines=self._allowance, hold=start, before=before)

    def _keep_fitted(self, scene: Scene, before: Scene | None) -> None:
        """Fit again what is of another kind, or has grown out of the room; never under a drag."""
        if before is None or before.kind != scene.kind:
            self.fit()
        elif not self.sight.by_hand and not self._desk.gesturing:
            left, bottom, right, top = scene.bounds
            view = self.sight.view
            shown = QRectF(view.at(left, top), view.at(right, bottom))
            if not self.room().adjusted(-_AIR, -_AIR, _AIR, _AIR).contains(shown):
                self.fit()

    def _follow_figure(self, figure: Figure) -> None:
        """Keep the field over its figure when the panels or the view have moved."""
        now = figure_named(self._scene, figure.key) if self._scene else None
        if now is None:
            self._editor.close_quietly()
        else:
            self._editor.show_at(now.box(self.sight.view))

    def pointer(self) -> Qt.CursorShape:
        """A handle can be moved, a figure can be typed where it stands."""
        if self._tracing.moving and self.traces:
            return Qt.CursorShape.OpenHandCursor
        over = self._hand.over
        if isinstance(over, Handle):
            return Qt.CursorShape.SizeAllCursor
        return Qt.CursorShape.IBeamCursor if isinstance(over, Figure) else Qt.CursorShape.ArrowCursor

    def _on_pinned(self, figure: Figure, mm: float) -> None:
        try:
            self._desk.apply("Pin intake", with_amount(self._desk.project, figure, mm))
        except ValueError as error:
            self._desk.refuse(f"{figure.quarter}.seams", str(error))

    def _on_refused(self, figure: Figure, why: str) -> None:
        self._desk.refuse(f"{figure.quarter}.seams", why)

    def _on_unpinned(self, figure: Figure) -> None:
        self.unpin(figure)

    def _on_stepped(self, figure: Figure, step: int) -> None:
        self._desk.now()
        following = self._keys.figure_beside(figure.key, step)
        if following is not None:
            self.open_figure(following)

    def paint(self, painter: QPainter) -> None:
        """The scene, or why there is none."""
        if self._picture is not None and self._scene is None:
            paint_empty(painter, self._picture, self.room())
        elif self._picture is not None and self._scene is not None:
            if self.traces:
                self._behind.paint(painter, self._picture.project, self.sight.view, self.rect())
            self._stop_box = paint_canvas(painter, self._shown(self._picture, self._scene))

    def _shown(self, picture: Picture, scene: Scene) -> Shown:
        """Everything that the painter has to know."""
        held, chosen = self._hand.held, self.chosen_handle
        return Shown(
            picture=picture,
            scene=scene,
            ghost=self._ghost,
            view=self.sight.view,
            size=self.size(),
            place=self._place,
            over=self._hand.over,
            handle=handle_named(scene, held.key, held.placement) if held else chosen,
            figure=self._chosen_figure,
            grid=self._grid,
            flare=self._flare,
            through=self.traces and picture.project.behind is not None,
        )

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The rulers keep to their edges."""
        self._top.setGeometry(0, 0, self.width(), int(RULER))
        self._side.setGeometry(0, int(RULER), int(RULER), self.height() - int(RULER))
        super().resizeEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A press takes hold."""
        if self._picture is not None and self._picture.stopped and self._stop_box.contains(event.position()):
            self._show_stop(self._picture)
            return
        super().mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """A move drags, or looks."""
        super().mouseMoveEvent(event)
        self._show_hand(event.position() if self._hand.gesture is None else None)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """A double click adds a point."""
        self._hand.double_click(event)

    def leaveEvent(self, event: QEvent) -> None:
        """Nothing is under the hand any more."""
        super().leaveEvent(event)
        self._show_hand(None)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """What can be done with what lies under the hand."""
        if self._scene is not None and self._hand.gesture is None:
            self._menu.open_at(QPointF(event.pos()), event.globalPos())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """With Ctrl the space bar takes hold of nothing, as no other key does anything with it here."""
        meant = event.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.MetaModifier)
        if meant and event.key() == Qt.Key.Key_Space:
            event.ignore()
        else:
            super().keyPressEvent(event)

    def _show_hand(self, pixel: QPointF | None) -> None:
        self._top.show_hand(pixel)
        self._side.show_hand(pixel)

    def _show_stop(self, picture: Picture) -> None:
        stop = stop_of(picture)
        if stop is not None:
            self._desk.select(stop.place)
