"""Which pieces of a cutting are printed at true size, and what is drawn on them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from workbench.pieces import Bone, Cutting, Layer, MarkLine, Piece
from workbench.sheets.heading import Heading
from workbench.sheets.paper import PrintChoice, PrintError

_LENT = ("bone", "tape")


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


def marked_pieces(cutting: Cutting, choice: PrintChoice, words: Heading) -> tuple[tuple[Layer, Piece], ...]:
    """The chosen pieces with every line that is drawn on them, bones named as in the list of bones.

    Bones and tape belong to one layer. Where that is not printed, the first layer that is
    shows them, so that one set of sheets will do for all layers.
    """
    chosen = chosen_pieces(cutting, choice)
    lent = {} if _carries_any(chosen) else _lines_by_panel(cutting)
    borrower = chosen[0][0].name
    marked = []
    for layer, piece in chosen:
        more = lent.get(piece.panel, ()) if layer.name == borrower and piece.panel is not None else ()
        marks = tuple(_named((*piece.marks, *more), piece.panel, cutting.bones, words))
        marked.append((layer, replace(piece, marks=marks)))
    return tuple(marked)


def _carries_any(chosen: tuple[tuple[Layer, Piece], ...]) -> bool:
    return any(mark.kind in _LENT for _, piece in chosen for mark in piece.marks)


def _lines_by_panel(cutting: Cutting) -> dict[int | None, tuple[MarkLine, ...]]:
    """Bones and tape of the layer that carries them, by panel."""
    return {
        piece.panel: lines
        for piece in cutting.pieces
        if piece.panel is not None and (lines := tuple(mark for mark in piece.marks if mark.kind in _LENT))
    }


def _named(
    marks: tuple[MarkLine, ...], panel: int | None, bones: tuple[Bone, ...], words: Heading
) -> Iterator[MarkLine]:
    """The marks, a bone's with its number and cut length; of the two edges of a tape one is named."""
    taped = False
    for mark in marks:
        if mark.kind == "bone":
            yield replace(mark, label=_bone_words(mark, panel, bones, words))
        elif mark.kind == "tape":
            yield replace(mark, label="" if taped else mark.label)
            taped = True
        else:
            yield mark


def _bone_words(mark: MarkLine, panel: int | None, bones: tuple[Bone, ...], words: Heading) -> str:
    for number, bone in enumerate(bones, 1):
        if bone.panel == panel and bone.where == mark.label:
            return f"bone {number}, {bone.say_cut(bone.cut_length, words.unit, words.fraction)}"
    return mark.label


def piece_title(layer: Layer, piece: Piece, choice: PrintChoice) -> str:
    """The piece's name, with its layer's where several layers are printed."""
    group = group_of(layer, piece, choice)
    return f"{piece.name}, {group.lower()}" if group else piece.name


def group_of(layer: Layer, piece: Piece, choice: PrintChoice) -> str:
    """The layer a piece is listed under: none where one layer is printed, or where its own name says it."""
    alone = len(set(choice.layers)) == 1 or piece.name.startswith(layer.label)
    return "" if alone else layer.label
