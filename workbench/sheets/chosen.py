"""Which pieces of a cutting are printed at true size."""

from __future__ import annotations

from workbench.pieces import Cutting, Layer, Piece
from workbench.sheets.paper import PrintChoice, PrintError


def chosen_pieces(cutting: Cutting, choice: PrintChoice) -> tuple[tuple[Layer, Piece], ...]:
    """Every piece of the chosen layers with its layer, in the order of the layers.

    PrintError where no layer that was chosen has a piece.
    """
    found = tuple(
        (layer, piece) for layer in cutting.layers if layer.name in choice.layers for piece in layer.pieces
    )
    if not found:
        raise PrintError("None of the layers chosen for the print is made, so there are no pieces to print.")
    return found


def piece_title(layer: Layer, piece: Piece, choice: PrintChoice) -> str:
    """The piece's name, with its layer's where several layers are printed."""
    return f"{piece.name}, {layer.label.lower()}" if len(set(choice.layers)) > 1 else piece.name
