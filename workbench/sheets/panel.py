"""One panel as strokes and labels in its own coordinates: what is printed, whichever pen draws it."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from workbench.body import LEVEL_LABEL
from workbench.draft import Outcome, Panel, seam_name
from workbench.sheets.drawing import Drawing, Label, Stroke
from workbench.sheets.panel_words import Rung, edge_words, level_name, rungs_of, words_in
from workbench.sheets.room import Inside

_ARROW = 3.0
_GRAIN_INSET = 12.0
_SHORTEST_GRAIN = 8.0


def panel_drawing(
    panel: Panel,
    outcome: Outcome,
    captions: tuple[str, ...] = (),
    joins: tuple[float, ...] = (),
) -> Drawing:
    """Stitch line, level lines, waist line and grain of one panel, with their names.

    ``captions`` (client, date) stand under the panel's name; words keep clear of the
    heights at which sheets join (``joins``).
    """
    rungs = rungs_of(panel, joins)
    inside = Inside(panel.outline)
    text = words_in(panel, rungs, captions, inside)
    inside.place(text)
    levels = tuple(_level_names(panel, inside))
    inside.place(levels)
    strokes = [Stroke("stitch", panel.outline, closed=True)]
    strokes += [
        Stroke("waist" if name == "waist" else "level", line) for name, line in panel.level_lines.items()
    ]
    strokes += _grain(panel, rungs, text)
    sides = edge_words(panel, rungs, text, _beyond(panel, outcome), inside)
    return Drawing(tuple(strokes), (*text, *levels, *sides))


def _level_names(panel: Panel, inside: Inside) -> Iterator[Label]:
    """Each level's name on its line."""
    for name, line in panel.level_lines.items():
        words = f"{LEVEL_LABEL[name]} line" if name == "waist" else LEVEL_LABEL[name]
        yield level_name(panel, line, words, inside)


def _beyond(panel: Panel, outcome: Outcome) -> tuple[str, str]:
    """What each side of the panel is sewn to, or which centre line it is."""
    draft = outcome.draft
    last = 0 if draft is None else len(draft.panels) - 1
    sides = []
    for seam, neighbour in ((panel.index, panel.index - 1), (panel.index + 1, panel.index + 1)):
        name = seam_name(seam, outcome.design)
        if draft is None or not 0 <= neighbour <= last:
            sides.append(name)
        else:
            sides.append(f"{name}, to {draft.panels[neighbour].name}")
    return sides[0], sides[1]


def _grain(panel: Panel, rungs: tuple[Rung, ...], text: tuple[Label, ...]) -> Iterator[Stroke]:
    """The straight grain, square to the waist line, in two parts with the words between them."""
    x = rungs[0].middle
    foot, head = rungs[0].low + _GRAIN_INSET, rungs[-1].high - _GRAIN_INSET
    low = min((label.y - 1.5 for label in text), default=0.5 * (foot + head))
    high = max((label.y + label.size + 0.5 for label in text), default=low)
    for end, inner in ((foot, low), (head, high)):
        if abs(inner - end) >= _SHORTEST_GRAIN and (inner - end > 0) == (end == foot):
            yield Stroke("grain", np.array([[x, inner], [x, end]]))
            yield _arrow_head(x, end, 1.0 if end == foot else -1.0)


def _arrow_head(x: float, y: float, away: float) -> Stroke:
    back = y + away * _ARROW
    return Stroke("grain", np.array([[x - 0.4 * _ARROW, back], [x, y], [x + 0.4 * _ARROW, back]]))
