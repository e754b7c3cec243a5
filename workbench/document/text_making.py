"""What is cut and bought, as lines to read: pieces, bones, notions, and the last look at the seams."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import groupby
from math import ceil

from workbench.document.text_lines import Said, bullets, section, table
from workbench.document.words import notion_words
from workbench.pieces import AngleRow, Bone, Cutting, Layer, Notion, WalkRow

_INCH, _YARD = 25.4, 914.4
"""International yard and pound agreement of 1959, from memory."""
_BY_THE_YARD = 2 * _YARD
"""From this length on, what is bought by length is said in yards or metres (own choice)."""
_HAIR = 1e-6
"""Own choice: rounding of sums."""
_EACH_BONE = "bone/"
"""How the keys of notions begin that the list of bones has said already."""


def making_lines(cutting: Cutting, say: Said) -> Iterator[str]:
    """The sections on pieces, bones, notions and the walk check."""
    unit = "inches" if say.project.unit == "in" else "centimetres"
    yield from section("Pieces", _pieces(cutting))
    if cutting.bones:
        yield from section(f"Bones, lengths in {unit}", _bones(cutting.bones, say))
    yield from section("Notions", _notions(cutting.notions, say))
    yield from section("Walk check", _walk_check(cutting, say))


def _pieces(cutting: Cutting) -> Iterator[str]:
    for layer in cutting.layers:
        if layer.pieces:
            yield from bullets([f"{layer.label}: {_named_pieces(layer)}."])


def _named_pieces(layer: Layer) -> str:
    """``Front 1 cut 1 on the fold; Front 2, Back 1 cut 2 (left and right)``."""
    if [piece.name for piece in layer.pieces] == [layer.label]:
        return layer.pieces[0].cut_words
    groups = groupby(layer.pieces, key=lambda piece: piece.cut_words)
    return "; ".join(f"{', '.join(piece.name for piece in group)} {words}" for words, group in groups)


def _bones(bones: tuple[Bone, ...], say: Said) -> Iterator[str]:
    ordered = sorted(bones, key=lambda bone: (bone.stock, -bone.cut_length))
    head = ("", "", "finished", "cut", "next shorter", "unboned", "count")
    yield from table([head, *(_bone_row(bone, say) for bone in ordered)], words=(0, 1))
    for stock, group in groupby(ordered, key=lambda bone: bone.stock):
        yield from bullets([_to_buy(stock, tuple(group), say)])


def _bone_row(bone: Bone, say: Said) -> tuple[str, ...]:
    unit, fraction = say.project.unit, say.project.fraction
    cut = [
        bone.say_cut(mm, unit, fraction).removesuffix(f" {unit}") for mm in (bone.cut_length, bone.shorter)
    ]
    return (bone.where, bone.stock, say(bone.stitch_length), *cut, say(bone.lost), str(bone.count))


def _to_buy(stock: str, bones: tuple[Bone, ...], say: Said) -> str:
    """``Spiral steel: 4 of 11 in, 2 of 10½ in; 6 bones, 2⅜ yd end to end.``"""
    counts: Counter[str] = Counter()
    for bone in bones:
        counts[bone.say_cut(bone.cut_length, say.project.unit, say.project.fraction)] += bone.count
    listed = ", ".join(f"{count} of {length}" for length, count in counts.items())
    total = sum(bone.count * bone.cut_length for bone in bones)
    count = _counted(counts.total(), "bone")
    return f"{stock.capitalize()}: {listed}; {count}, {_bought(total, say)} end to end."


def _counted(count: int, word: str) -> str:
    return f"{count} {word}" if count == 1 else f"{count} {word}s"


def _notions(notions: tuple[Notion, ...], say: Said) -> Iterator[str]:
    yield from bullets(
        f"{notion.name}, {_amount(notion, say)}. {notion_words(notion, say.project)}"
        for notion in notions
        if not notion.key.startswith(_EACH_BONE)
    )


def _amount(notion: Notion, say: Said) -> str:
    """``24``, ``5⅛ yd``, or ``2, together 27 in``."""
    if notion.length_mm is None:
        return str(notion.count or 0)
    length = _bought(notion.length_mm, say)
    return length if notion.count in (None, 1) else f"{notion.count}, together {length}"


def _bought(mm: float, say: Said) -> str:
    """A length with its unit; a long one rounded up to the eighth of a yard or tenth of a metre."""
    if mm < _BY_THE_YARD:
        return say.unit(mm)
    if say.project.unit == "cm":
        return f"{ceil(mm / 100 - _HAIR) / 10:.1f} m"
    # an eighth of a yard is written as an eighth of an inch is
    return f"{say(ceil(8 * mm / _YARD - _HAIR) / 8 * _INCH)} yd"


def _walk_check(cutting: Cutting, say: Said) -> Iterator[str]:
    labels = {layer.name: layer.label for layer in cutting.layers}
    for name, group in groupby(cutting.walks, key=lambda row: row.layer):
        yield from bullets(_walks_of(labels.get(name, name), tuple(group), say))
    yield from bullets(_angles(cutting.angles))


def _walks_of(label: str, rows: tuple[WalkRow, ...], say: Said) -> Iterator[str]:
    widest = max(abs(row.difference) for row in rows)
    verdict = "every pair meets" if all(row.holds for row in rows) else "look at those below"
    seams = len({row.seam for row in rows})
    counted = f"{_counted(seams, 'seam')}, {_counted(len(rows), 'length')} compared"
    yield f"{label}: {counted}, at most {_apart(widest, say)} apart: {verdict}."
    for row in rows:
        if not row.holds:
            sides = f"{say.unit(row.left)} against {say.unit(row.right)}"
            yield f"{label}, {row.name}, {row.part}: {sides}, {_apart(abs(row.difference), say)} apart."


def _apart(mm: float, say: Said) -> str:
    return f"{mm / _INCH:.3f} in" if say.project.unit == "in" else f"{mm / 10:.3f} cm"


def _angles(rows: tuple[AngleRow, ...]) -> Iterator[str]:
    smooth = sum(row.wanted and row.holds for row in rows)
    wanted = sum(row.wanted for row in rows)
    yield f"Neckline and hem run on smoothly at {smooth} of {wanted} closed seams that ask for it."
    for row in rows:
        if not row.holds:
            yield f"{row.line.capitalize()}, {row.name}: {row.degrees:.1f}°, where 180° is smooth."
