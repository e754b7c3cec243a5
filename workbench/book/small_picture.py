"""The small picture of a project: the panels of its real draft, in a few letters.

A coordinate is two hexadecimal digits, a point four, a panel a word: some hundred letters
a project, so that thousands of pictures are read in no time. The longer side of the
whole runs from 0 to 255, which is finer than any list shows it.
"""

from __future__ import annotations

from collections.abc import Sequence

from workbench.document import Picture

_WHOLE = 255
_COARSE = 0.004
"""Of the longer side: what lies within this of a straight line is drawn as one."""

Ring = tuple[tuple[float, float], ...]


def small_picture(picture: Picture) -> str:
    """The panels of the draft laid apart; empty where this project cannot be drafted."""
    # drawing and simplifying are wanted only where a file has changed since the book was last opened
    from workbench.sheets import placements

    good = picture.good
    if good is None or good.draft is None:
        return ""
    panels = good.draft.panels
    rings = [place.put(panels[place.panel].outline).tolist() for place in placements(good, "apart")]
    return packed(rings)


def packed(rings: Sequence[Sequence[Sequence[float]]]) -> str:
    """Rings of points in mm as letters, y up; empty for none."""
    from shapely import LinearRing

    xs = [x for ring in rings for x, _ in ring]
    ys = [y for ring in rings for _, y in ring]
    if not xs:
        return ""
    left, low = min(xs), min(ys)
    side = max(max(xs) - left, max(ys) - low, 1e-9)
    words = []
    for ring in rings:
        few = LinearRing(ring).simplify(_COARSE * side).coords[:-1]
        words.append("".join(f"{_part(x - left, side)}{_part(y - low, side)}" for x, y in few))
    return " ".join(words)


def _part(length: float, side: float) -> str:
    return f"{round(_WHOLE * length / side):02x}"


def rings_of(letters: str) -> tuple[Ring, ...]:
    """The rings in a picture, y up, coordinates from 0 to 255; ValueError for letters that are none."""
    return tuple(_ring(bytes.fromhex(word)) for word in letters.split())


def _ring(data: bytes) -> Ring:
    return tuple(zip(map(float, data[::2]), map(float, data[1::2]), strict=True))
