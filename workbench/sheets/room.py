"""Whether words stand inside a panel: the room a label takes, held against the stitch line."""

from __future__ import annotations

from collections.abc import Iterable

import shapely
from shapely.affinity import rotate, translate

from workbench.sheets.drawing import Array, Label
from workbench.sheets.fonts import text_width

_CAPITALS = 0.72
"""Height of a capital as a part of the size of the type."""
_BELOW = 0.2
"""How far letters such as p and q reach below the baseline, as a part of the size."""
SHIFT = {"left": 0.0, "middle": -0.5, "right": -1.0}


def label_room(label: Label) -> shapely.Polygon:
    """The turned rectangle that a label's letters fill, mm."""
    width = text_width(label.text, label.size, bold=label.role == "title")
    start = SHIFT[label.align] * width
    plain = shapely.box(start, -_BELOW * label.size, start + width, _CAPITALS * label.size)
    turned = rotate(plain, label.angle, origin=(0.0, 0.0)) if label.angle else plain
    return translate(turned, label.x, label.y)


class Inside:
    """The inside of a panel, from which words already placed are taken away."""

    def __init__(self, outline: Array) -> None:
        self._shape = shapely.Polygon(outline)
        shapely.prepare(self._shape)
        self._taken: list[shapely.Polygon] = []

    def holds(self, labels: Iterable[Label]) -> bool:
        """Whether all labels stand inside, clear of those placed before."""
        rooms = [label_room(label) for label in labels]
        clear = all(not room.intersects(taken) for room in rooms for taken in self._taken)
        return clear and all(self._shape.contains(room) for room in rooms)

    def place(self, labels: Iterable[Label]) -> None:
        """Note where labels stand."""
        self._taken += [label_room(label) for label in labels]
