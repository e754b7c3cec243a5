"""How a comparison of the walk check is said: the difference, and whether it holds."""

from __future__ import annotations

from workbench.pieces import Cutting, LayerName
from workbench.sheets.pen import ATTEND, SOFT
from workbench.sheets.table import Cell

HOLDS, FAILS = "holds", "does not hold"


def differing(mm: float) -> str:
    """A difference to a hundredth of a millimetre, with its sign."""
    text = f"{mm:+.2f}".replace("-", "−")
    return "0.00" if text[1:] == "0.00" else text


def judged(holds: bool) -> Cell:
    """A mark and the word for it."""
    if holds:
        return Cell(HOLDS, colour=SOFT, mark="within")
    return Cell(FAILS, bold=True, colour=ATTEND, mark="over", wide=True)


def began(text: str) -> str:
    """The text with a capital at its beginning."""
    return f"{text[0].upper()}{text[1:]}" if text else text


def layer_label(name: LayerName, cutting: Cutting) -> str:
    """A layer's name in the middle of a sentence."""
    return next((layer.label.lower() for layer in cutting.layers if layer.name == name), name)
