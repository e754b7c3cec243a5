"""Signs beside a judgement, told apart by shape as well as by word and colour."""

from __future__ import annotations

from typing import Literal

from workbench.draft import Severity, Status
from workbench.sheets.pen import ATTEND, INK, SOFT, WHITE, Colour, LineStyle, Pen

Mark = Literal["within", "near", "over", "attend", "note"]

STATUS_WORD: dict[Status, str] = {"within": "within", "near": "near", "over": "over"}
SEVERITY_MARK: dict[Severity, Mark] = {
    "stop": "over",
    "over": "over",
    "near": "near",
    "attend": "attend",
    "note": "note",
}
MARK_WORD: dict[Mark, str] = {
    "over": "Over",
    "near": "Near",
    "attend": "Look",
    "note": "Note",
    "within": "Within",
}
_LINE = 0.25
_RADIUS = 1.05


def mark_colour(mark: Mark) -> Colour:
    """Ink, or the accent for what is over a limit."""
    return ATTEND if mark == "over" else INK


def draw_mark(pen: Pen, x: float, y: float, mark: Mark) -> None:
    """The sign round (x, y): a full square is over, a half-full diamond near, an open ring within."""
    r = _RADIUS
    if mark == "over":
        pen.rectangle(x - r, y - r, 2 * r, 2 * r, fill=ATTEND)
    elif mark == "near":
        s = 1.25 * r
        pen.polygon([(x - s, y), (x, y - s), (x + s, y), (x, y + s)], LineStyle(_LINE, INK), WHITE)
        pen.polygon([(x - s, y), (x, y - s), (x + s, y)], fill=INK)
    elif mark == "within":
        pen.circle(x, y, 0.9 * r, LineStyle(_LINE, SOFT))
    elif mark == "attend":
        pen.polygon([(x - r, y - 0.9 * r), (x + r, y - 0.9 * r), (x, y + r)], LineStyle(_LINE, INK))
    else:
        pen.circle(x, y, 0.4 * r, fill=SOFT)
