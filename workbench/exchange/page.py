"""The paper of one large sheet: the smallest usual one that holds everything, else one cut to measure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from workbench.exchange.choice import ExportError
from workbench.exchange.things import Thing, in_rows
from workbench.sheets import LONGEST_SIDE

MARGIN = 10.0
HEAD = 76.0
"""Room above the pieces for the words and the test square, mm."""
_ISO: tuple[tuple[str, float, float], ...] = (
    ("A4", 210.0, 297.0),
    ("A3", 297.0, 420.0),
    ("A2", 420.0, 594.0),
    ("A1", 594.0, 841.0),
    ("A0", 841.0, 1189.0),
)
"""ISO 216: sizes A4, A3, A0 (read), A1, A2 (derived by halving)."""
ROLL_WIDTHS = (914.4, 1067.0, 1524.0)
"""Of the rolls of paper a copy shop prints on: 36, 42 and 60 in (common practice, no source)."""


@dataclass(frozen=True)
class LargePage:
    """One page with everything on it; things are placed in page coordinates, mm."""

    name: str
    width: float
    height: float
    things: tuple[Thing, ...]


def smallest_page(things: Sequence[Thing], head: float = HEAD) -> LargePage:
    """The smallest page that holds the things below a head; a usual size, else a length of roll.

    ExportError where they do not go on a page at all.
    """
    for name, width, height in _sizes():
        placed, wide, tall = in_rows(things, width - 2 * MARGIN)
        if wide <= width - 2 * MARGIN and tall + head <= height - 2 * MARGIN:
            return LargePage(name, width, height, _moved(placed, height - MARGIN - head - tall))
    for width in ROLL_WIDTHS:
        placed, wide, tall = in_rows(things, width - 2 * MARGIN)
        height = tall + head + 2 * MARGIN
        if wide <= width - 2 * MARGIN and height <= LONGEST_SIDE:
            return LargePage(f"a roll {width:g} mm wide", width, height, _moved(placed, MARGIN))
    raise ExportError("The pieces do not go on one page, which is at most 5.08 m long: hand on fewer layers.")


def fitted_page(things: Sequence[Thing], margin: float) -> LargePage:
    """A page cut to measure, about as wide to its height as what a projector shows.

    ExportError where the things do not go on a page at all.
    """
    placed, wide, tall = min(
        (in_rows(things, width) for width in _WIDTHS),
        key=lambda found: (abs(found[1] / found[2] - _PROJECTED), found[1]),
    )
    if max(wide, tall) + 2 * margin > LONGEST_SIDE:
        raise ExportError("The pieces do not go on one page, at most 5.08 m long: hand on fewer layers.")
    return LargePage("", wide + 2 * margin, tall + 2 * margin, _moved(placed, margin, margin))


_WIDTHS = tuple(range(300, 3000, 100))
"""Widths of row that are tried, mm."""
_PROJECTED = 16 / 9
"""Width to height of what most projectors show (common practice, no source)."""


def _sizes() -> Iterator[tuple[str, float, float]]:
    for name, width, height in _ISO:
        yield name, width, height
        yield f"{name} on its side", height, width


def _moved(things: Sequence[Thing], up: float, right: float = MARGIN) -> tuple[Thing, ...]:
    return tuple(replace(thing, dx=thing.dx + right, dy=thing.dy + up) for thing in things)
