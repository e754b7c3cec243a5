"""Make our face from a Noto Sans: ``make_faces.py IN.ttf OUT.ttf``.

Needs fonttools, which the program does not.
"""

from __future__ import annotations

import sys

from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.pens.transformPen import TransformPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont

FAMILY = "Seam Sans"
RAISED = {"0": 0x2070, "1": 0xB9, "2": 0xB2, "3": 0xB3, **{str(d): 0x2070 + d for d in range(4, 10)}}
FRACTIONS = {
    "½": "12",
    "¼": "14",
    "¾": "34",
    "⅛": "18",
    "⅜": "38",
    "⅝": "58",
    "⅞": "78",
    "⅓": "13",
    "⅔": "23",
}
SLASH, MINUS, EN_DASH, PLUS = 0x2044, 0x2212, 0x2013, 0x2B


def compose_fractions(font: TTFont) -> None:
    """Each fraction as raised digit, slash and lowered digit at their full widths."""
    names, glyphs, widths = font.getBestCmap(), font.getGlyphSet(), font["hmtx"]
    for sign, (above, below) in FRACTIONS.items():
        pen, x = TTGlyphPen(glyphs), 0
        for code in (RAISED[above], SLASH, 0x2080 + int(below)):
            pen.addComponent(names[code], (1, 0, 0, 1, x, 0))
            x += widths[names[code]][0]
        name = names[ord(sign)]
        font["glyf"][name] = pen.glyph()
        font["glyf"][name].recalcBounds(font["glyf"])
        widths[name] = (x, font["glyf"][name].xMin)


def add_minus(font: TTFont) -> None:
    """A minus as wide as the plus, drawn from the en dash at the plus's height."""
    names, glyphs, widths = font.getBestCmap(), font.getGlyphSet(), font["hmtx"]
    if MINUS in names:
        return
    plus, dash = font["glyf"][names[PLUS]], font["glyf"][names[EN_DASH]]
    recorded, pen = DecomposingRecordingPen(glyphs), TTGlyphPen(None)
    glyphs[names[EN_DASH]].draw(recorded)
    scale = (plus.xMax - plus.xMin) / (dash.xMax - dash.xMin)
    rise = (plus.yMin + plus.yMax - dash.yMin - dash.yMax) / 2
    recorded.replay(TransformPen(pen, (scale, 0, 0, 1, plus.xMin - scale * dash.xMin, rise)))
    font.setGlyphOrder([*font.getGlyphOrder(), "minus.own"])
    font["glyf"]["minus.own"] = pen.glyph()
    widths["minus.own"] = (widths[names[PLUS]][0], plus.xMin)
    for table in font["cmap"].tables:
        if table.isUnicode():
            table.cmap[MINUS] = "minus.own"


def rename(font: TTFont) -> None:
    """Another family name, and no signature that no longer holds."""
    if "DSIG" in font:
        del font["DSIG"]
    for record in font["name"].names:
        if record.nameID in (1, 3, 4, 16):
            text = record.toUnicode()
            record.string = text.replace("Noto Sans", FAMILY).replace("NotoSans", FAMILY.replace(" ", ""))


def main() -> None:
    """Write the changed face."""
    source, target = sys.argv[1:3]
    font = TTFont(source)
    add_minus(font)
    compose_fractions(font)
    rename(font)
    font.save(target)


if __name__ == "__main__":
    main()
