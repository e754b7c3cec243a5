"""What lies on the bead map: runs and scatters, the points of the picked line, panels."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from PySide6.QtCore import QRectF

from workbench.body import say_with_unit
from workbench.document import move_line_point
from workbench.ui.access.item import Amount, Item, amount_of, around
from workbench.ui.beads.bead_map import BeadMap
from workbench.ui.beads.spread import Owner, Spread
from workbench.ui.board.handles import REACH

_FURTHEST = 600.0
"""mm from the waist that a point may be put by a screen reader."""


def items_of(beads: BeadMap) -> tuple[Item, ...]:
    """Points first, as the keys act on them."""
    spread = beads.spread
    if spread is None:
        return ()
    return (*_points(beads), *_owners(beads, spread), *_panels(beads, spread))


def _points(beads: BeadMap) -> Iterator[Item]:
    owner, project = beads.owner, beads.desk.project
    if owner is None:
        return
    line = owner.line(beads.picture)
    for number, ((x, y), point) in enumerate(zip(beads.handles, line, strict=True)):
        at = beads.sight.view.at(x, y)
        walk = say_with_unit(abs(point.t), project.unit, project.fraction)
        yield Item(
            key=("point", owner.what, owner.number, number),
            kind="handle",
            name=f"Point {number + 1} of {len(line)}, {'smooth' if point.smooth else 'corner'}",
            said=f"{walk} {'above' if point.t >= 0 else 'below'} the waist",
            box=around(at.x(), at.y(), REACH),
            picked=beads.point == number,
            amount=_height(beads, owner, number, point.u, point.t),
            pick=partial(beads.pick, owner, number),
            deeds=(
                ("Smooth or corner", partial(beads.toggle_corner, number)),
                ("Remove", partial(beads.remove_point, number)),
            ),
        )


def _height(beads: BeadMap, owner: Owner, number: int, u: float, t: float) -> Amount:
    desk = beads.desk

    def put(mm: float) -> None:
        moved = move_line_point(desk.project, owner.what, owner.number, number, u, mm)
        desk.apply("Point of a drawn line", moved)
        desk.now()

    return amount_of(t, (-_FURTHEST, _FURTHEST), desk.project.unit, desk.project.fraction, put)


def _owners(beads: BeadMap, spread: Spread) -> Iterator[Item]:
    plan, chosen = beads.picture.project.beads, beads.owner
    owners = [(Owner("runs", number), run.name) for number, run in enumerate(plan.runs)]
    owners += [(Owner("scatters", number), scatter.name) for number, scatter in enumerate(plan.scatters)]
    for owner, name in owners:
        yield Item(
            key=(owner.what, owner.number),
            kind="piece",
            name=f"{'Run' if owner.what == 'runs' else 'Scatter'} {name}",
            said=beads.told(owner).removeprefix(f"{name}: "),
            box=_whole(beads, spread),
            picked=owner == chosen and beads.point is None,
            pick=partial(beads.pick, owner),
        )


def _panels(beads: BeadMap, spread: Spread) -> Iterator[Item]:
    place, view = beads.desk.selection, beads.sight.view
    for number, laid in enumerate(spread.panels):
        box = laid.outline.boundingRect()
        yield Item(
            key=("panel", number),
            kind="piece",
            name=laid.panel.name,
            said="",
            box=QRectF(view.at(box.left(), box.bottom()), view.at(box.right(), box.top())),
            picked=beads.owner is None and place is not None and place.panel == number,
            pick=partial(beads.pick, None, None, number),
        )


def _whole(beads: BeadMap, spread: Spread) -> QRectF:
    left, bottom, right, top = spread.bounds
    view = beads.sight.view
    return QRectF(view.at(left, top), view.at(right, bottom))
