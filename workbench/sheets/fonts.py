"""The embedded font, and how much room its words take.

reportlab is brought in on first use only: it would add 58 ms to every start of the program.
"""

from __future__ import annotations

import unicodedata
from functools import cache, lru_cache

from workbench.resources import resource

POINT = 25.4 / 72.0
"""mm in a typographic point (ISO 32000, read; second-hand)."""
_FILES = {"Sheet": "fonts/NotoSans-Regular.ttf", "Sheet-Bold": "fonts/NotoSans-Bold.ttf"}
ELLIPSIS = "…"


@cache
def font(bold: bool = False) -> str:
    """Name of the font as the PDF writer knows it."""
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    name = "Sheet-Bold" if bold else "Sheet"
    pdfmetrics.registerFont(TTFont(name, str(resource(_FILES[name]))))
    return name


def text_width(text: str, size: float, bold: bool = False) -> float:
    """mm that a line takes at a size in mm."""
    return size * _width_of_one(text, bold)


@lru_cache(maxsize=8192)
def _width_of_one(text: str, bold: bool) -> float:
    """Width at a size of 1: words are tried again and again at other sizes and in other rooms."""
    from reportlab.pdfbase.pdfmetrics import stringWidth

    return float(stringWidth(text, font(bold), 1.0))


def clean(text: str) -> str:
    """The text on one line: control signs gone, runs of white space made one space."""
    kept = "".join(" " if unicodedata.category(sign) in ("Cc", "Zl", "Zp") else sign for sign in text)
    return " ".join("".join(sign for sign in kept if unicodedata.category(sign) not in ("Cs", "Cf")).split())


def fitted(text: str, size: float, room: float, bold: bool = False) -> str:
    """The text, cut with an ellipsis where it is wider than ``room`` mm."""
    if text_width(text, size, bold) <= room:
        return text
    low, high = 0, len(text)
    while low < high:
        middle = (low + high + 1) // 2
        if text_width(text[:middle].rstrip() + ELLIPSIS, size, bold) <= room:
            low = middle
        else:
            high = middle - 1
    return text[:low].rstrip() + ELLIPSIS


def wrapped(text: str, size: float, room: float, bold: bool = False, most: int | None = None) -> list[str]:
    """Lines no wider than ``room`` mm, broken between words; a word too wide for a line is broken too.

    With ``most`` lines at most, the last ends in an ellipsis where text is left over.
    """
    lines: list[str] = []
    for word in _unbroken(text):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, size, bold) <= room:
            lines[-1] = longer
        else:
            lines += _broken(word, size, room, bold)
    if most is not None and len(lines) > most:
        rest = " ".join(lines[most - 1 :])
        lines = [*lines[: most - 1], fitted(rest, size, room, bold)]
    return lines


_RAISED = frozenset("⁰¹²³⁴⁵⁶⁷⁸⁹")
_UNITS = frozenset(("in", "cm", "mm", "%"))


def _unbroken(text: str) -> list[str]:
    """The words of a text; a figure stays with its fraction and its unit."""
    words: list[str] = []
    for word in text.split():
        after_figure = bool(words) and unicodedata.category(words[-1][-1]) in ("Nd", "No")
        if after_figure and (word[0] in _RAISED or word.rstrip(".,;:)") in _UNITS):
            words[-1] += f" {word}"
        else:
            words.append(word)
    return words


def _broken(word: str, size: float, room: float, bold: bool) -> list[str]:
    pieces = []
    while text_width(word, size, bold) > room and len(word) > 1:
        count = 1
        while count < len(word) - 1 and text_width(word[: count + 1], size, bold) <= room:
            count += 1
        pieces.append(word[:count])
        word = word[count:]
    return [*pieces, word]
