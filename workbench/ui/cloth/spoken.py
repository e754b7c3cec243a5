"""What is picked on the cloth in words, for those who hear the screen and do not see it."""

from __future__ import annotations

from workbench.body import say_with_unit
from workbench.ui.cloth.paint_cloth import copy_notes
from workbench.ui.cloth.spread import ClothSpread, LaidCopy


def spoken_piece(spread: ClothSpread, piece: LaidCopy) -> str:
    """The piece, where it begins, and what is to be known of it."""
    project = spread.project
    left, _, _, top = piece.box
    along = say_with_unit(left, project.unit, project.fraction)
    across = say_with_unit(-top, project.unit, project.fraction)
    edge = "fold" if spread.cloth.laid == "folded" else "selvedge"
    told = [f"{piece.copy.name}, {along} from the cut end, {across} from the {edge}"]
    told += [words for words in (copy_notes(piece), "pinned" if piece.placed.pinned else "") if words]
    fault = spread.faulty.get(piece.key)
    return ", ".join([*told, fault] if fault else told)
