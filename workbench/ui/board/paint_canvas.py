"""Paints the canvas, from the grid up to the ledger: in which order, and what is lit."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter

from workbench.document import Picture
from workbench.draft import Place
from workbench.frozen import dataclass
from workbench.ui.board.figures import Figure, FigureKey
from workbench.ui.board.handles import Handle
from workbench.ui.board.measures import measures_of
from workbench.ui.board.paint_levels import GUTTER, RULER, paint_guides, paint_ledger
from workbench.ui.board.paint_marks import paint_figures, paint_handles, paint_measures
from workbench.ui.board.paint_panels import paint_ghost, paint_names, paint_panels, paint_stopped
from workbench.ui.board.paint_words import paint_stop
from workbench.ui.board.ruler import paint_grid
from workbench.ui.board.scene import Scene
from workbench.ui.board.view import View


@dataclass(frozen=True)
class Shown:
    """What is on the canvas at one moment."""

    picture: Picture
    scene: Scene
    ghost: Scene | None
    view: View
    size: QSize
    place: Place | None
    """What is lit up."""
    over: Handle | Figure | None
    """What lies under the hand."""
    handle: Handle | None
    """The handle that is held or selected: its distances are shown."""
    figure: FigureKey | None
    """The intake figure that is selected."""
    grid: bool
    flare: bool
    """Whether it is shown how sharply the seams flare."""
    through: bool
    """Whether what lies behind the panels is to be seen through them."""

    @property
    def free(self) -> QRectF:
        """The pixels right of the ledger and below the ruler."""
        return QRectF(GUTTER, RULER, self.size.width() - GUTTER, self.size.height() - RULER)


def paint_canvas(painter: QPainter, shown: Shown) -> QRectF:
    """Paint it all on paper; returns the pixels of the sentence that stops the draft, if there is one."""
    scene, view = shown.scene, shown.view
    if shown.grid:
        paint_grid(painter, view, scene.unit, shown.free)
    paint_guides(painter, scene, view, shown.size.width(), shown.place)
    if shown.ghost is not None:
        paint_ghost(painter, shown.ghost, view)
    paint_panels(painter, scene, view, shown.place, through=shown.through)
    if shown.flare:
        _paint_flare(painter, shown)
    paint_names(painter, scene, view)
    if not shown.picture.current:
        paint_stopped(painter, scene, view)
    _paint_marks(painter, shown)
    paint_ledger(painter, scene, view, shown.size.height(), shown.place)
    return paint_stop(painter, shown.picture, shown.free) if shown.picture.stopped else QRectF()


def _paint_flare(painter: QPainter, shown: Shown) -> None:
    # read when it is first wanted: the first picture need not wait for it
    from workbench.ui.board.paint_flare import paint_flare, paint_flare_legend

    paint_flare(painter, shown.scene, shown.view)
    paint_flare_legend(painter, shown.free)


def _paint_marks(painter: QPainter, shown: Shown) -> None:
    """What the hand takes hold of."""
    scene, view, over = shown.scene, shown.view, shown.over
    over_figure = over.key if isinstance(over, Figure) else None
    over_handle = over.key if isinstance(over, Handle) else None
    paint_figures(painter, scene, view, over_figure, shown.figure)
    paint_handles(painter, scene, view, over_handle, shown.handle.key if shown.handle else None)
    measures = measures_of(scene, shown.handle) if shown.handle is not None else None
    if measures is not None:
        paint_measures(painter, measures, view, shown.free)
