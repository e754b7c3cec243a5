"""Seams whose two sides are cut with unequal allowances: wanted when they are graded, else a slip."""

from __future__ import annotations

from collections.abc import Iterator

from workbench.draft import Draft, Finding, Place, seam_name
from workbench.pieces.kinds import PANEL_LAYERS, Edging, panels_in
from workbench.pieces.layers import label_of
from workbench.pieces.making import LayerChoice

_SAME_MM = 0.01
"""Own choice: what differs by less is even."""


def uneven_findings(edging: Edging, draft: Draft) -> Iterator[Finding]:
    """A note for each seam of each layer whose two cut edges do not lie on each other when it is sewn.

    Only an allowance of its own can make one: both sides of a seam are of one kind.
    """
    if not edging.making.own_allowances:
        return
    for choice in edging.making.layers:
        if choice.made and choice.layer in PANEL_LAYERS:
            yield from _of_layer(choice, edging, draft)


def _of_layer(choice: LayerChoice, edging: Edging, draft: Draft) -> Iterator[Finding]:
    panels = {panel.index for panel in panels_in(choice, draft)}
    for seam in draft.seams:
        before, after = seam.index - 1, seam.index
        if not {before, after} <= panels:
            continue
        one, other = edging.widths(choice.layer, before)[1], edging.widths(choice.layer, after)[3]
        if abs(one - other) > _SAME_MM:
            yield _uneven(choice, edging, seam.index, (one, other), (seam.left_panel, seam.right_panel))


def _uneven(
    choice: LayerChoice, edging: Edging, seam: int, widths: tuple[float, float], panels: tuple[str, str]
) -> Finding:
    one, other = widths
    return Finding(
        "note",
        "allowances_uneven",
        "At the {seam} the {layer} has an allowance of {one} on {left} and {other} on {right}: the cut edges "
        "will not lie on each other.",
        {"one": one, "other": other},
        {
            "seam": seam_name(seam, edging.design),
            "layer": label_of(choice.layer, edging.making).lower(),
            "left": panels[0],
            "right": panels[1],
        },
        Place(panel=seam - 1, seam=seam),
        "Give both sides the same, or sew by the notches and the stitch lines.",
        value_mm=one,
        limit_mm=other,
    )
