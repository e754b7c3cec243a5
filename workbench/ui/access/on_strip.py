"""What lies on the girth strip: one bar a level."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import QRectF

from workbench.body import say_with_unit
from workbench.document import set_reduction
from workbench.draft import Place
from workbench.ui.access.item import Amount, Item, amount_of
from workbench.ui.board.bar_drag import reduction_name
from workbench.ui.board.bars import Bar
from workbench.ui.board.strip import Strip

_HALF_HIGH = 12.0
_LEAST, _MOST = 0.5, 1.25
"""Shares of the body's girth between which a screen reader may set a finished girth."""
_PASSED = {"within": "", "near": ", near your limit", "over": ", above the limit you set"}


def items_of(strip: Strip) -> tuple[Item, ...]:
    """The bars, top to bottom, as they are read."""
    return tuple(_item(strip, bar) for bar in reversed(strip.bars))


def _item(strip: Strip, bar: Bar) -> Item:
    end, place = strip.end_of(bar.level), strip.desk.selection
    left = strip.axis.left
    return Item(
        key=bar.level,
        kind="bar",
        name=f"{bar.name}, finished girth",
        said=_said(strip, bar),
        box=QRectF(left, end.y() - _HALF_HIGH, max(end.x() - left, 1.0), 2 * _HALF_HIGH),
        picked=place is not None and place.level == bar.level and place.seam is None,
        amount=_girth(strip, bar),
        pick=partial(strip.desk.select, Place(level=bar.level)),
    )


def _said(strip: Strip, bar: Bar) -> str:
    project = strip.desk.project

    def say(mm: float) -> str:
        return say_with_unit(mm, project.unit, project.fraction)

    said = f"{say(bar.finished)} of {say(bar.body)} on the body, laced shut {say(bar.shut)}"
    if bar.limit is not None:
        said += f", your limit {say(bar.limit)}"
    if bar.breath is not None:
        said += f", her breath {say(bar.breath[0])} to {say(bar.breath[1])}"
    return said + _PASSED[bar.status]


def _girth(strip: Strip, bar: Bar) -> Amount:
    desk = strip.desk

    def put(mm: float) -> None:
        desk.apply(reduction_name(bar), set_reduction(desk.project, bar.sets, bar.reckoned - mm))
        desk.now()

    ends = (_LEAST * bar.body, _MOST * bar.body)
    return amount_of(bar.finished, ends, desk.project.unit, desk.project.fraction, put)
