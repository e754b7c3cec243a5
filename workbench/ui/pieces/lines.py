"""The three lists in words: bones by length, what to buy, and the seams walked."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from math import ceil

from workbench.body import say_exact, say_with_unit
from workbench.document import Project
from workbench.draft import Place
from workbench.pieces import AngleRow, Bone, Cutting, Notion, WalkRow, label_of
from workbench.ui.marks import Mark

INCH, YARD = 25.4, 914.4
_SPECK = 0.01
_UNASKED = "Choose under Bones, at the left, where they are to lie."
_BONELESS = "None can be cut as they are asked for: the sentences at the foot say why."
_EIGHTHS = 8
"""Yard goods are cut to the eighth of a yard (common practice, no source), metres to the tenth."""


@dataclass(frozen=True)
class Line:
    """One line of a list."""

    text: str
    amount: str = ""
    """At the right."""
    note: str = ""
    """Below, in small type."""
    mark: Mark | None = None
    heading: bool = False
    indent: bool = False
    """Whether it is a part of the line above."""
    place: Place | None = None
    """What lights up when the line is picked."""
    bones: tuple[Bone, ...] = ()
    """The bones that light up while the line is under the hand."""

    @property
    def spoken(self) -> str:
        """All of it in one breath."""
        return ". ".join(part for part in (self.text, self.amount, self.note) if part)


def text_of(title: str, lines: Sequence[Line]) -> str:
    """The lines as text, to be pasted into a letter: text and amount apart by a tab."""
    return "\n".join([title, *map(_plain, lines)]) + "\n"


def _plain(line: Line) -> str:
    marked = {"attend": "! ", "within": "", None: ""}.get(line.mark, "")
    parts = "\t".join(part for part in (line.text, line.amount, line.note.replace("\n", " ")) if part)
    return f"{'' if line.heading else '    ' if line.indent else '  '}{marked}{parts}"


# --- bones -----------------------------------------------------------------------------------


def bone_lines(cutting: Cutting, project: Project) -> tuple[Line, ...]:
    """Bones by stuff and cut length, the longest first; each group says how many and where they go."""
    if not cutting.bones:
        return (Line("No bones", note=_BONELESS if project.making.boning.places else _UNASKED),)
    ordered = sorted(cutting.bones, key=lambda bone: (bone.stuff, -bone.cut_length))
    groups = [tuple(group) for _, group in groupby(ordered, key=lambda bone: (bone.stuff, bone.cut_length))]
    return (*_totals(ordered, project), *(line for group in groups for line in _group(group, project)))


def _totals(bones: Iterable[Bone], project: Project) -> Iterator[Line]:
    for stock, group in groupby(bones, key=lambda bone: bone.stock):
        same = tuple(group)
        count = sum(bone.count for bone in same)
        length = sum(bone.count * bone.cut_length for bone in same)
        said = say_with_unit(length, project.unit, project.fraction)
        bones_said = "bone" if count == 1 else "bones"
        yield Line(f"All {stock}", f"{count} {bones_said}, {said}", heading=True, bones=same)


def _group(bones: tuple[Bone, ...], project: Project) -> Iterator[Line]:
    first = bones[0]
    length = _cut(first, project)
    count = sum(bone.count for bone in bones)
    yield Line(f"{length} {first.stock}", f"{count} ×", heading=True, bones=bones)
    for bone in bones:
        place = Place(panel=bone.panel)
        note = _bone_note(bone, project)
        yield Line(_upper(bone.where), f"{bone.count} ×", note, place=place, bones=(bone,))


def _cut(bone: Bone, project: Project) -> str:
    """Steel exactly, as it is sold; plastic to the mark below."""
    if bone.stuff == "plastic":
        return bone.say_cut(bone.cut_length, project.unit, project.fraction)
    return f"{say_exact(bone.cut_length, project.unit)} {project.unit}"


def _bone_note(bone: Bone, project: Project) -> str:
    def say(mm: float) -> str:
        return say_with_unit(mm, project.unit, project.fraction)

    lost = f"{say(bone.lost)} lost" if not say(bone.lost).startswith("0 ") else "hardly any lost"
    lost = lost if bone.lost > _SPECK else "nothing lost"
    shorter_said = bone.say_cut(bone.shorter, project.unit, project.fraction)
    shorter = f"; the next shorter is {shorter_said}" if bone.shorter > 0 else ""
    return f"Line {say(bone.stitch_length)}, {lost} by rounding down{shorter}."


# --- what to buy -----------------------------------------------------------------------------


def notion_lines(cutting: Cutting, project: Project) -> tuple[Line, ...]:
    """Everything that is bought besides the cloth, and how each was worked out."""
    if not cutting.notions:
        return (Line("Nothing to buy"),)
    return tuple(_notion(notion, project) for notion in cutting.notions)


def _notion(notion: Notion, project: Project) -> Line:
    return Line(notion.name, _amount(notion, project), notion.worked_out(project.unit, project.fraction))


def _amount(notion: Notion, project: Project) -> str:
    """``22 ×``, ``5¼ yd``, ``4 × = 26 in``; a single thing needs no count beside its length."""
    count = f"{notion.count} ×" if notion.count is not None else ""
    if notion.length_mm is None:
        return count
    length = by_length(notion.length_mm, project)
    return length if notion.count in (None, 1) else f"{count} = {length}"


def by_length(mm: float, project: Project) -> str:
    """A length to buy: under a yard or a metre as it is, beyond that rounded up to what is cut."""
    if project.unit == "cm":
        if mm < 1000:
            return say_with_unit(mm, "cm", project.fraction)
        return f"{ceil(mm / 100 - 1e-9) / 10:g} m"
    if mm < YARD:
        return say_with_unit(mm, "in", project.fraction)
    yards = ceil(mm / YARD * _EIGHTHS - 1e-9) / _EIGHTHS
    return f"{say_exact(yards * INCH, 'in')} yd"


# --- seams walked ----------------------------------------------------------------------------


def walk_lines(cutting: Cutting, project: Project) -> tuple[Line, ...]:
    """The verdict, what does not hold, then every pair of every layer, and the angles at closed seams."""
    failing = [row for row in cutting.walks if not row.holds]
    bent = [row for row in cutting.angles if not row.holds]
    if not cutting.walks and not cutting.angles:
        return (Line("No seams to walk", note="No layer has two pieces side by side."),)
    lines = [_verdict(len(cutting.walks), len(failing) + len(bent))]
    if failing or bent:
        lines += [Line("Look at these", heading=True)]
        lines += [_walk(row, project, with_layer=True) for row in failing] + [_angle(row) for row in bent]
    for layer, group in groupby(cutting.walks, key=lambda row: row.layer):
        lines.append(Line(label_of(layer, project.making), "left · right", heading=True))
        for _, rows in groupby(group, key=lambda row: (row.seam, row.name)):
            first, *parts = rows
            lines.append(_walk(first, project))
            lines += [_walk(row, project, part=True) for row in parts]
    if cutting.angles:
        lines.append(Line("Where seams are closed", "180° is smooth", heading=True))
        lines += [_angle(row) for row in cutting.angles]
    return tuple(lines)


def _verdict(pairs: int, amiss: int) -> Line:
    if amiss:
        return Line(f"{amiss} of {pairs} do not meet" if amiss > 1 else "One does not meet", mark="attend")
    return Line(f"All {pairs} pairs meet", mark="within")


def _walk(row: WalkRow, project: Project, *, with_layer: bool = False, part: bool = False) -> Line:
    """A pair of edges; a ``part`` of the seam above needs no name of its own."""

    def say(mm: float) -> str:
        return say_with_unit(mm, project.unit, project.fraction).removesuffix(f" {project.unit}")

    where = f", {label_of(row.layer, project.making).lower()}" if with_layer else ""
    return Line(
        _upper(row.part) if part else f"{_upper(row.name)}, {row.part}{where}",
        f"{say(row.left)} · {say(row.right)} {project.unit}",
        f"Difference {_hundredths(row.difference)} mm." if not row.holds else "",
        "within" if row.holds else "attend",
        indent=part,
        place=Place(seam=row.seam),
    )


def _angle(row: AngleRow) -> Line:
    asked = "" if row.wanted else "A corner is asked for here."
    mark: Mark | None = ("within" if row.holds else "attend") if row.wanted else None
    name = f"{_upper(row.name)}, {row.line}"
    return Line(name, f"{row.degrees:.1f}°", asked, mark, place=Place(seam=row.seam, line=row.line))


def _hundredths(mm: float) -> str:
    return f"{mm:+.2f}".replace("-", "−")


def _upper(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}"
