"""The cut lines of the fashion cloth alone, as the draft shows them while she drags.

In a file of its own, for a window that opens shows them before anything else of a cutting is read.
"""

from __future__ import annotations

from workbench.draft import Outcome
from workbench.pieces.cutline import cut_shapes
from workbench.pieces.kinds import Edging, choice_of, panels_in
from workbench.pieces.making import Making
from workbench.pieces.outline import outline_of
from workbench.pieces.polyline import Array


def cut_lines(outcome: Outcome, making: Making) -> dict[int, Array]:
    """Cut line (n, 2) of each panel that is cut in the fashion cloth, by its number.

    In mm, anticlockwise, the first point not repeated. A panel that is left out there has none.
    """
    if outcome.draft is None:
        return {}
    choice, edging = choice_of(making, "fashion"), Edging(outcome.design, making)
    panels = panels_in(choice, outcome.draft)
    outlines = [outline_of(panel, *edging.turns(panel.index, choice.turn_mm)) for panel in panels]
    widths = [edging.widths("fashion", panel.index) for panel in panels]
    shapes = cut_shapes(outlines, widths, making.corner_limit)
    return {panel.index: shape.ring for panel, shape in zip(panels, shapes, strict=True)}
