"""What lies in an exported file: panels or pieces as drawings, each moved to a place of its own."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from workbench.draft import Outcome
from workbench.exchange.choice import ExportChoice, ExportError
from workbench.pieces import Cutting
from workbench.sheets import (
    Drawing,
    Heading,
    Label,
    PieceWords,
    PrintChoice,
    marked_pieces,
    panel_drawing,
    piece_drawing,
    sewn_to,
)

Array = NDArray[np.float64]

GAP = 12.0
"""Between two things, mm at the scale of the file."""
_SMALLEST_WORDS, _SMALLEST_NAME = 1.1, 2.2
"""Where a drawing is made smaller: words that nobody could read are left out, names are kept; mm."""


@dataclass(frozen=True)
class Thing:
    """One panel or piece, in its own coordinates; mm, at the scale of the file."""

    key: str
    """A name without blanks that no other thing of the file has: ``fashion-front-1``."""
    name: str
    layer: str
    """What layer it belongs to in words; empty for a panel of the draft."""
    drawing: Drawing
    dx: float = 0.0
    dy: float = 0.0
    """Where its own origin lies in the file, y up."""

    @cached_property
    def bounds(self) -> tuple[float, float, float, float]:
        """Left, bottom, right, top in its own coordinates."""
        return self.drawing.bounds()

    @property
    def title(self) -> str:
        """Its name with its layer."""
        return f"{self.name}, {self.layer.lower()}" if self.layer else self.name


def things_of(
    outcome: Outcome, cutting: Cutting | None, choice: ExportChoice, words: Heading
) -> tuple[Thing, ...]:
    """The panels, or the pieces of the chosen layers, not yet placed.

    ExportError where there is no draft, or no piece in the layers.
    """
    if outcome.draft is None:
        raise ExportError("There is nothing to hand on yet: the draft is stopped by one of its findings.")
    if choice.what == "panels" or cutting is None:
        made = list(_panels(outcome))
    else:
        made = list(_pieces(outcome, cutting, choice, words))
    if not made:
        raise ExportError("None of the layers chosen is made, so there are no pieces to hand on.")
    return tuple(replace(thing, drawing=scaled(thing.drawing, choice.scale)) for thing in made)


def _panels(outcome: Outcome) -> Iterator[Thing]:
    assert outcome.draft is not None, "refused before"
    for panel in outcome.draft.panels:
        yield Thing(_slug(panel.name), panel.name, "", panel_drawing(panel, outcome))


def _pieces(outcome: Outcome, cutting: Cutting, choice: ExportChoice, words: Heading) -> Iterator[Thing]:
    wanted = [layer for layer in cutting.layers if layer.name in choice.layers]
    if not wanted:
        return
    printed = PrintChoice(layers=choice.layers, marks=choice.marks)
    for layer, piece in marked_pieces(cutting, printed, words):
        said = PieceWords(layer=layer.label, edges=sewn_to(piece, layer, outcome.design), marks=choice.marks)
        yield Thing(_slug(f"{layer.name} {piece.name}"), piece.name, layer.label, piece_drawing(piece, said))


def _slug(name: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")


def scaled(drawing: Drawing, scale: float) -> Drawing:
    """The drawing made smaller about its origin, without the words that would be too small to read."""
    if scale == 1.0:
        return drawing
    return Drawing(
        tuple(replace(stroke, points=stroke.points * scale) for stroke in drawing.strokes),
        tuple(_smaller(label, scale) for label in drawing.labels if _readable(label, drawing, scale)),
    )


def _readable(label: Label, drawing: Drawing, scale: float) -> bool:
    """Whether words are kept: those that are large enough, and the name, which comes first."""
    return label.size * scale >= _SMALLEST_WORDS or label is drawing.labels[0]


def _smaller(label: Label, scale: float) -> Label:
    size = label.size * scale
    if label.role == "title":
        size = max(size, _SMALLEST_NAME)
    return replace(label, x=label.x * scale, y=label.y * scale, size=size)


def in_rows(things: Sequence[Thing], widest: float) -> tuple[tuple[Thing, ...], float, float]:
    """The things side by side in rows no wider than asked, one waist line a row; and the size of it all, mm.

    The lower left corner is the origin. A thing wider than a row has one to itself.
    """
    bounds = [thing.bounds for thing in things]
    rows: list[list[tuple[int, float]]] = [[]]
    cursor = width = 0.0
    for number, (left, _, right, _) in enumerate(bounds):
        if rows[-1] and cursor + right - left > widest:
            rows.append([])
            cursor = 0.0
        rows[-1].append((number, cursor - left))
        width = max(width, cursor + right - left)
        cursor += right - left + GAP
    moves, top = [], 0.0
    for row in rows:
        high = max(bounds[number][3] for number, _ in row)
        low = min(bounds[number][1] for number, _ in row)
        moves += [(dx, -(top + high)) for _, dx in row]
        top += high - low + GAP
    height = top - GAP
    placed = (replace(thing, dx=dx, dy=dy + height) for thing, (dx, dy) in zip(things, moves, strict=True))
    return tuple(placed), width, height
