"""From a draft to strokes and texts in millimetres, and to paper.

All but where panels lie is read when it is first asked for: a window that opens, or a drag on the
canvas, need not wait for what draws whole sheets. Figures are own choice, layout of the page,
unless said.
"""

from typing import TYPE_CHECKING

from workbench.doors import when_asked
from workbench.sheets.layout import GAP, Layout, Placement, placements

if TYPE_CHECKING:
    from workbench.sheets.bead_sheet import print_beads
    from workbench.sheets.chosen import marked_pieces
    from workbench.sheets.client_card import Card, print_client_card
    from workbench.sheets.drawing import Drawing, Label, Role, Stroke
    from workbench.sheets.fonts import clean, fitted, wrapped
    from workbench.sheets.garment import View, garment_views
    from workbench.sheets.heading import Heading
    from workbench.sheets.inside_sheet import print_inside_sheet
    from workbench.sheets.lay_sheet import LAY_PAPERS, print_lay
    from workbench.sheets.marking_drawing import MarkingPicture, marking_picture
    from workbench.sheets.marking_rows import MarkRow, mark_rows, plain_lines
    from workbench.sheets.marking_sheet import MARKING_PAPERS, print_marking
    from workbench.sheets.page_file import blank_canvas, set_size
    from workbench.sheets.panel import panel_drawing
    from workbench.sheets.paper import LONGEST_SIDE, PAPERS, ROLL, PaperSize, PrintChoice, PrintError
    from workbench.sheets.pdf import print_pdf
    from workbench.sheets.pen import LineStyle, Pen, path_code
    from workbench.sheets.piece import piece_drawing, sewn_to
    from workbench.sheets.piece_words import PieceWords
    from workbench.sheets.quote_sheet import QUOTE_PAPERS, print_quote
    from workbench.sheets.sewing_sheet import print_sewing_order
    from workbench.sheets.sheetmap import Join, PlacedPanel, SheetMap, Tile, sheet_map
    from workbench.sheets.spot import Box
    from workbench.sheets.worn_sheet import print_silhouette
    from workbench.sheets.worn_view import quote_views, worn_for
else:
    __getattr__ = when_asked(
        __name__,
        {
            "bead_sheet": "print_beads",
            "chosen": "marked_pieces",
            "client_card": "Card print_client_card",
            "drawing": "Drawing Label Role Stroke",
            "fonts": "clean fitted wrapped",
            "garment": "View garment_views",
            "heading": "Heading",
            "inside_sheet": "print_inside_sheet",
            "lay_sheet": "LAY_PAPERS print_lay",
            "marking_drawing": "MarkingPicture marking_picture",
            "marking_rows": "MarkRow mark_rows plain_lines",
            "marking_sheet": "MARKING_PAPERS print_marking",
            "page_file": "blank_canvas set_size",
            "panel": "panel_drawing",
            "paper": "LONGEST_SIDE PAPERS ROLL PaperSize PrintChoice PrintError",
            "pdf": "print_pdf",
            "pen": "LineStyle Pen path_code",
            "piece": "piece_drawing sewn_to",
            "piece_words": "PieceWords",
            "quote_sheet": "QUOTE_PAPERS print_quote",
            "sewing_sheet": "print_sewing_order",
            "sheetmap": "Join PlacedPanel SheetMap Tile sheet_map",
            "spot": "Box",
            "worn_sheet": "print_silhouette",
            "worn_view": "quote_views worn_for",
        },
    )

__all__ = [
    "GAP",
    "LAY_PAPERS",
    "LONGEST_SIDE",
    "MARKING_PAPERS",
    "PAPERS",
    "QUOTE_PAPERS",
    "ROLL",
    "Box",
    "Card",
    "Drawing",
    "Heading",
    "Join",
    "Label",
    "Layout",
    "LineStyle",
    "MarkRow",
    "MarkingPicture",
    "PaperSize",
    "Pen",
    "PieceWords",
    "PlacedPanel",
    "Placement",
    "PrintChoice",
    "PrintError",
    "Role",
    "SheetMap",
    "Stroke",
    "Tile",
    "View",
    "blank_canvas",
    "clean",
    "fitted",
    "garment_views",
    "mark_rows",
    "marked_pieces",
    "marking_picture",
    "panel_drawing",
    "path_code",
    "piece_drawing",
    "placements",
    "plain_lines",
    "print_beads",
    "print_client_card",
    "print_inside_sheet",
    "print_lay",
    "print_marking",
    "print_pdf",
    "print_quote",
    "print_sewing_order",
    "print_silhouette",
    "quote_views",
    "set_size",
    "sewn_to",
    "sheet_map",
    "worn_for",
    "wrapped",
]
