"""What lies on the worn view: the shape points that face the eye, and the girths at the levels."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from PySide6.QtCore import QRectF

from workbench.body import say_with_unit
from workbench.document import move_point
from workbench.draft import Place
from workbench.ui.access.item import Amount, Item, amount_of, around
from workbench.ui.board.handles import REACH
from workbench.ui.worn.grips import Grip
from workbench.ui.worn.labels import ROOM, Label
from workbench.ui.worn.view import WornView

_FURTHEST = 600.0
"""mm from the waist that a point may be put by a screen reader."""
_HALF_HIGH = 12.0


def items_of(view: WornView) -> tuple[Item, ...]:
    """Points first, as the keys act on them; one that is seen on both halves is there once."""
    found = {item.key: item for item in (*_grips(view), *_levels(view))}
    return tuple(found.values())


def _grips(view: WornView) -> Iterator[Item]:
    project, chosen = view.desk.project, view.chosen
    for grip in view.grips:
        at = view.stage.pixel(grip.x, grip.y)
        walk = say_with_unit(abs(grip.point.t), project.unit, project.fraction)
        line, number = grip.key
        yield Item(
            key=("handle", line, number),
            kind="handle",
            name=f"{line.capitalize()} point {number + 1}, {'smooth' if grip.point.smooth else 'corner'}",
            said=f"{walk} {'above' if grip.point.t >= 0 else 'below'} the waist",
            box=around(at.x(), at.y(), REACH),
            picked=chosen is not None and chosen.key == grip.key,
            amount=_height(view, grip),
            pick=partial(view.desk.select, Place(line=line, point=number)),
        )


def _height(view: WornView, grip: Grip) -> Amount:
    desk, (line, number) = view.desk, grip.key

    def put(mm: float) -> None:
        draft = view.worn.outcome.draft if view.worn is not None else None
        if draft is not None:
            points = draft.line(line).points
            desk.apply(f"Move {line} point", move_point(desk.project, line, number, grip.point.u, mm, points))
            desk.now()

    project = desk.project
    return amount_of(grip.point.t, (-_FURTHEST, _FURTHEST), project.unit, project.fraction, put)


def _levels(view: WornView) -> Iterator[Item]:
    place = view.desk.selection
    return (_level(view, label, place) for label in reversed(view.labels))


def _level(view: WornView, label: Label, place: Place | None) -> Item:
    y = view.level_at(label.level)
    return Item(
        key=("level", label.level),
        kind="line",
        name=label.name,
        said=label.girths.replace("→", "to"),
        box=QRectF(view.width() - ROOM, y - _HALF_HIGH, ROOM, 2 * _HALF_HIGH),
        picked=place is not None and place.level == label.level,
        pick=partial(view.desk.select, Place(level=label.level)),
    )
