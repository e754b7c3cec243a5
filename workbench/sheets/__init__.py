"""From a draft to strokes and texts in millimetres, and to paper."""

from workbench.sheets.drawing import Drawing, Label, Role, Stroke
from workbench.sheets.layout import GAP, Layout, Placement, placements

__all__ = ["GAP", "Drawing", "Label", "Layout", "Placement", "Role", "Stroke", "placements"]
