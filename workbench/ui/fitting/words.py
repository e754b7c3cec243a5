"""The comparison in words: one sentence for the foot, and the lines of the list."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from workbench.body import say_closely, say_with_unit
from workbench.document import FROM_OPENING, Picture, Project
from workbench.draft import Finding
from workbench.fitting import Change, Difference, Fitting, fitting_said
from workbench.ui.fitting.bench import Compared
from workbench.ui.pieces.lines import Line

_GROUPS = {
    "girth": "Round the body, finished",
    "walk": "Level lines, from the waist",
    "width": "Widths of the panels",
    "seam": "Lengths of the seams",
    "neckline": "Neckline, from the waist",
    "hem": "Hem, from the waist",
}
_AS_KEPT = 0.01
"""mm between what was taken and what is proposed that come of keeping it in a file."""
_GRAVE = ("stop", "over", "near")


def findings_of(picture: Picture, compared: Compared | None) -> list[Finding]:
    """What is to be said here: what wants attention, then what the fitting comes to."""
    grave = [
        finding
        for finding in picture.findings
        if finding.severity in _GRAVE or finding.code.startswith("fitting_")
    ]
    summary = _summary(compared) if compared is not None else None
    return [*grave, summary] if summary is not None else grave


def _summary(compared: Compared) -> Finding | None:
    """What the fitting comes to round the body."""
    if compared.fitting is None:
        return Finding(
            "note", "fitting_none", "No fitting yet: add one, and write down what was measured and pinned."
        )
    said = fitting_said(compared.fitting)
    named = f"{said[:1].upper()}{said[1:]}" if compared.scope == "this" else "All fittings together"
    found = told(compared)
    girths = [one for one in found if one.what == "girth"]
    if not found:
        return Finding("note", "fitting_nothing", "{named}: nothing differs.", words={"named": named})
    project = compared.picture.project
    parts = [f"{one.name.lower()} {signed(one.change, project)}" for one in girths]
    round_body = f"{', '.join(parts)} round the body" if parts else "no girth differs"
    others = len(found) - len(girths)
    rest = f"; {others} other figures differ" if others > 1 else ""
    counts = compared.fitting.applied or compared.scope == "all"
    carried = "" if counts else " It is not carried into the draft."
    return Finding(
        "note",
        "fitting_summary",
        "{named}: {what}.{carried}",
        words={"named": named, "what": f"{round_body}{rest}", "carried": carried},
    )


def signed(mm: float, project: Project) -> str:
    """A difference with its sign: ``+¼ in``, ``−½ in``."""
    said, nothing = (say_closely(length, project.unit, project.fraction) for length in (abs(mm), 0.0))
    return said if said == nothing else f"{'+' if mm > 0 else '−'}{said}"


def taken_words(fitting: Fitting, proposed: tuple[Change, ...]) -> tuple[str, str]:
    """What there is to say of the lines taken from the opening, and what the button says.

    Both are empty where there is nothing to say, or nothing to take.
    """
    if not proposed:
        return "", ""
    taken = [n for n, change in enumerate(fitting.changes, start=1) if change.note == FROM_OPENING]
    if not taken:
        return "", "Take the proposal"
    if _alike([fitting.changes[n - 1] for n in taken], proposed):
        return f"Taken: {_lines_named(taken)} from it, under What was pinned.", ""
    lines = f"line {taken[0]}" if len(taken) == 1 else f"{len(taken)} lines"
    return f"What was taken before differs: taking this puts it in place of {lines}.", "Take it instead"


def _lines_named(taken: list[int]) -> str:
    if len(taken) == 1:
        return f"line {taken[0]} is"
    in_a_row = taken == list(range(taken[0], taken[-1] + 1))
    return f"lines {taken[0]} to {taken[-1]} are" if in_a_row else f"{len(taken)} lines are"


def _alike(changes: list[Change], proposed: tuple[Change, ...]) -> bool:
    """Whether lines still are what is proposed; a file keeps lengths to a thousandth of a mm."""
    return len(changes) == len(proposed) and all(
        (one.kind, one.level, one.seam) == (other.kind, other.level, other.seam)
        and abs(one.amount_mm - other.amount_mm) < _AS_KEPT
        for one, other in zip(changes, proposed, strict=True)
    )


def told(compared: Compared) -> tuple[Difference, ...]:
    """The differences that come to anything in the user's unit."""
    project = compared.picture.project
    nothing = signed(0.0, project)
    return tuple(one for one in compared.differences if signed(one.change, project) != nothing)


def lines_of(compared: Compared) -> tuple[Line, ...]:
    """The differences as a list, by what they are."""
    if compared.fitting is None:
        return (Line("Nothing to compare", note="What a fitting changes is listed here."),)
    stopped = compared.after is not None and compared.after.draft is None
    if stopped:
        first = compared.after.findings[0] if compared.after is not None else None
        project = compared.picture.project
        why = first.text(project.unit, project.fraction) if first is not None else ""
        return (Line("It cannot be drafted", note=why, mark="stop", place=first.place if first else None),)
    if not told(compared):
        return (Line("Nothing differs", note="The panels are those of before."),)
    return tuple(_grouped(told(compared), compared.picture.project))


def _grouped(differences: tuple[Difference, ...], project: Project) -> Iterator[Line]:
    for what, group in groupby(differences, key=lambda one: one.what):
        yield Line(_GROUPS[what], heading=True)
        for one in group:
            yield Line(_name(one), signed(one.change, project), _note(one, project), place=one.place)


def _name(one: Difference) -> str:
    """Without what its heading says already."""
    if one.what in ("neckline", "hem"):
        said = one.name.split(", ", 1)[1]
        return f"{said[:1].upper()}{said[1:]}"
    return one.name


def _note(one: Difference, project: Project) -> str:
    """Before and after; where the ruler shows no difference, to the sixteenth, which may."""
    for fraction in (project.fraction, 16):
        before, after = (say_with_unit(mm, project.unit, fraction) for mm in (one.before, one.after))
        if before != after:
            return f"{before} before, {after} after"
    return f"{before} before and after, to the nearest mark"
