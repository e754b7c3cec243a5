"""From a draft to strokes and texts in millimetres, and to paper.

What draws whole sheets is read when it is first asked for: a window that opens, or a
drag on the canvas, need not wait for it.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

from workbench.sheets.drawing import Drawing, Label, Role, Stroke
from workbench.sheets.heading import Heading
from workbench.sheets.layout import GAP, Layout, Placement, placements
from workbench.sheets.paper import LONGEST_SIDE, PAPERS, ROLL, PaperSize, PrintChoice, PrintError

if TYPE_CHECKING:
    from workbench.sheets.garment import View, garment_views
    from workbench.sheets.inside_sheet import print_inside_sheet
    from workbench.sheets.lay_sheet import LAY_PAPERS, print_lay
    from workbench.sheets.panel import panel_drawing
    from workbench.sheets.pdf import print_pdf
    from workbench.sheets.quote_sheet import QUOTE_PAPERS, print_quote
    from workbench.sheets.sheetmap import Join, PlacedPanel, SheetMap, Tile, sheet_map
    from workbench.sheets.spot import Box

_WHEN_ASKED = {
    "Box": "spot",
    "Join": "sheetmap",
    "LAY_PAPERS": "lay_sheet",
    "PlacedPanel": "sheetmap",
    "QUOTE_PAPERS": "quote_sheet",
    "SheetMap": "sheetmap",
    "Tile": "sheetmap",
    "View": "garment",
    "garment_views": "garment",
    "panel_drawing": "panel",
    "print_inside_sheet": "inside_sheet",
    "print_lay": "lay_sheet",
    "print_pdf": "pdf",
    "print_quote": "quote_sheet",
    "sheet_map": "sheetmap",
}


def __getattr__(name: str) -> Any:
    """A name of the door that has not been asked for yet."""
    if name not in _WHEN_ASKED:
        raise AttributeError(f"there is no {name} in {__name__}")
    return getattr(import_module(f"{__name__}.{_WHEN_ASKED[name]}"), name)


__all__ = [
    "GAP",
    "LAY_PAPERS",
    "LONGEST_SIDE",
    "PAPERS",
    "QUOTE_PAPERS",
    "ROLL",
    "Box",
    "Drawing",
    "Heading",
    "Join",
    "Label",
    "Layout",
    "PaperSize",
    "PlacedPanel",
    "Placement",
    "PrintChoice",
    "PrintError",
    "Role",
    "SheetMap",
    "Stroke",
    "Tile",
    "View",
    "garment_views",
    "panel_drawing",
    "placements",
    "print_inside_sheet",
    "print_lay",
    "print_pdf",
    "print_quote",
    "sheet_map",
]
