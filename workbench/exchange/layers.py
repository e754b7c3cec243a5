"""Lines by what they are: the layer each role lies on, and how it is drawn."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from workbench.sheets import Drawing, Role


@dataclass(frozen=True)
class LayerStyle:
    """One layer of a file; mm."""

    colour: str
    """As SVG has it."""
    index: int
    """The colour's number in a DXF; 7 is black on white."""
    width: float
    dash: tuple[float, ...] = ()


STYLES: Mapping[str, LayerStyle] = {
    "cut": LayerStyle("#1c1a17", 7, 0.3),
    "stitch": LayerStyle("#1c1a17", 5, 0.35, (3.0, 1.5)),
    "notch": LayerStyle("#1c1a17", 1, 0.4),
    "grain": LayerStyle("#1c1a17", 3, 0.22),
    "fold": LayerStyle("#1c1a17", 6, 0.5, (7.0, 1.6, 1.6, 1.6)),
    "waist": LayerStyle("#1c1a17", 4, 0.3, (9.0, 1.5, 1.5, 1.5)),
    "level": LayerStyle("#66615a", 8, 0.15),
    "bone": LayerStyle("#66615a", 30, 0.18, (5.0, 1.0, 0.6, 1.0)),
    "tape": LayerStyle("#66615a", 40, 0.18, (1.2, 1.2)),
    "mark": LayerStyle("#66615a", 9, 0.25),
}
"""In the order they are drawn; ``text`` comes last."""
TEXT_INDEX = 7

ROLE_LAYER: Mapping[Role, str] = {
    "cut": "cut",
    "stitch": "stitch",
    "notch": "notch",
    "grain": "grain",
    "fold": "fold",
    "waist": "waist",
    "level": "level",
    "bone": "bone",
    "tape": "tape",
    "mark": "mark",
    "frame": "mark",
    "block": "mark",
    "intake": "mark",
    "caption": "text",
    "title": "text",
    "figure": "text",
}


def styles_of(drawing: Drawing) -> dict[str, LayerStyle]:
    """The styles for one drawing: a stitch line without a cut line round it is drawn unbroken."""
    styles = dict(STYLES)
    if not any(stroke.role == "cut" for stroke in drawing.strokes):
        styles["stitch"] = replace(styles["stitch"], dash=())
    return styles
