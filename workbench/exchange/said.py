"""What every file says of itself: how large it is drawn, in what, and whether its figures are made up."""

from __future__ import annotations

from workbench.exchange.choice import ExportChoice
from workbench.sheets import Heading

INVENTED = "Figures invented for demonstration."


def scale_words(scale: float) -> str:
    """How large a file is drawn, in words."""
    usual = {1.0: "True to size", 0.5: "Half scale", 0.25: "Quarter scale"}
    return usual.get(scale, f"{100 * scale:g} % of true size")


def note_of(choice: ExportChoice, words: Heading) -> str:
    """The line that stands below the pieces of a file without a page."""
    parts = [f"{scale_words(choice.scale)}, lengths in millimetres."]
    if choice.scale != 1.0:
        parts.append("Not for cutting cloth.")
    if words.invented:
        parts.append(INVENTED)
    return " ".join(parts)
