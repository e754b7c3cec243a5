"""What lies on the canvas: shape points, intake figures, panels."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from PySide6.QtCore import QRectF

from workbench.body import LEVEL_LABEL
from workbench.document import move_point
from workbench.draft import Place, walk_designed
from workbench.ui.access.item import Amount, Item, Same, amount_of, around
from workbench.ui.board.canvas import Canvas
from workbench.ui.board.figure_edits import with_amount
from workbench.ui.board.figures import Figure
from workbench.ui.board.handles import REACH, Handle
from workbench.ui.board.keys import remove, toggle
from workbench.ui.board.scene import Scene
from workbench.ui.board.spoken import spoken_figure, spoken_handle

_FURTHEST, _WIDEST = 600.0, 500.0
"""mm: how far from the waist a point may be put, and how much a seam may take in, by a screen reader."""


def shown_by(canvas: Canvas) -> tuple[object, ...]:
    """What must be another for the items to be others: they are worked out once for each."""
    figure = canvas.chosen_figure
    return Same(canvas.scene), canvas.sight.view, canvas.desk.selection, figure.key if figure else None


def items_of(canvas: Canvas) -> tuple[Item, ...]:
    """Points of neckline and hem, then figures, then panels; one for each that is there twice."""
    scene = canvas.scene
    if scene is None:
        return ()
    found = [*_handles(canvas, scene), *_figures(canvas, scene)] if scene.editable else []
    found += _panels(canvas, scene)
    return tuple({item.key: item for item in found}.values())


def _handles(canvas: Canvas, scene: Scene) -> Iterator[Item]:
    chosen = canvas.chosen_handle
    for handle in scene.handles:
        name, _, said = spoken_handle(scene, handle).partition(": ")
        at = handle.pixel(canvas.sight.view)
        yield Item(
            key=("handle", *handle.key),
            kind="handle",
            name=name,
            said=said,
            box=around(at.x(), at.y(), REACH),
            picked=chosen is not None and chosen.key == handle.key,
            amount=_height(canvas, scene, handle),
            pick=partial(canvas.desk.select, Place(line=handle.key.line, point=handle.key.number)),
            deeds=(
                ("Smooth or corner", partial(toggle, canvas.desk, scene, handle.key)),
                ("Remove", partial(remove, canvas.desk, scene, handle.key)),
            ),
        )


def _height(canvas: Canvas, scene: Scene, handle: Handle) -> Amount:
    """How high a point lies over the waist; what it lies from the seam stays."""
    desk, (line, number) = canvas.desk, handle.key

    def put(mm: float) -> None:
        draft = scene.outcome.draft
        if draft is not None:
            walk = walk_designed(scene.outcome, mm, line, number)
            points = draft.line(line).designed
            desk.apply(
                f"Move {line} point", move_point(desk.project, line, number, handle.point.u, walk, points)
            )
            desk.now()

    return amount_of(handle.point.t, (-_FURTHEST, _FURTHEST), scene.unit, scene.fraction, put)


def _figures(canvas: Canvas, scene: Scene) -> Iterator[Item]:
    chosen = canvas.chosen_figure
    for figure in scene.figures:
        name, _, said = spoken_figure(scene, figure).partition(": ")
        yield Item(
            key=("figure", *figure.key),
            kind="figure",
            name=name,
            said=said,
            box=figure.box(canvas.sight.view),
            picked=chosen is not None and chosen.key == figure.key,
            amount=_intake(canvas, scene, figure),
            pick=partial(canvas.choose_figure, figure),
            deeds=(("Type", partial(canvas.open_figure, figure)), ("Unpin", partial(canvas.unpin, figure))),
        )


def _intake(canvas: Canvas, scene: Scene, figure: Figure) -> Amount:
    desk = canvas.desk

    def put(mm: float) -> None:
        try:
            desk.apply("Pin intake", with_amount(desk.project, figure, mm))
        except ValueError as error:
            desk.refuse(f"{figure.quarter}.seams", str(error))
        desk.now()

    return amount_of(figure.amount, (0.0, _WIDEST), scene.unit, scene.fraction, put)


def _panels(canvas: Canvas, scene: Scene) -> Iterator[Item]:
    view, place = canvas.sight.view, canvas.desk.selection
    for shape in scene.shapes:
        left, bottom, right, top = shape.box
        widths = ", ".join(
            f"{scene.say(width)} {scene.unit} at the {LEVEL_LABEL[level].lower()}"
            for level, width in shape.panel.widths.items()
        )
        yield Item(
            key=("panel", shape.panel.index),
            kind="piece",
            name=shape.panel.name,
            said=f"{widths} wide",
            box=QRectF(view.at(left, top), view.at(right, bottom)),
            picked=place is not None and place == Place(panel=shape.panel.index),
            pick=partial(canvas.desk.select, Place(panel=shape.panel.index)),
        )
