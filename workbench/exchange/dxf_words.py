"""What both versions of a DXF have in common: units, words in signs that any program has, the note."""

from __future__ import annotations

import re
import unicodedata

from workbench.sheets import Label

MILLIMETRES = 4
"""$INSUNITS (DXF reference); read."""
CAP = 0.714
"""Height of a capital letter as a part of the em, by which a DXF measures text (Noto Sans, read)."""
ENCODING, ERRORS = "cp1252", "dxfreplace"
"""What these versions are written in; signs outside it are spelt out."""

NOTE_SIZE, NOTE_BELOW = 5.0, 12.0
"""Height of the note below the pieces, and how far below them it stands, mm."""

_PLAINER = str.maketrans("“”‘’–—·×", "\"\"''--,x")


def plain(text: str) -> str:
    """The text in signs any program has: ``3⅜`` becomes ``3 3/8``."""
    apart = re.sub(r"(?<=\d)(?=[¼-¾⅐-⅞])", " ", text)
    return unicodedata.normalize("NFKC", apart).replace("⁄", "/").replace("−", "-").translate(_PLAINER)


def note_label(note: str) -> Label:
    """The note as a line of text below the pieces."""
    return Label("caption", note, 0.0, -NOTE_BELOW, NOTE_SIZE, "left")
