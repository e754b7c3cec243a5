"""Edits of fittings: what was measured and pinned, and which of it is carried into the draft.

As all edits, each takes the project as it stands and returns the project as it should
be; ValueError in one sentence for what no fitting can hold.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from workbench.document.changing import refuse, with_entries
from workbench.document.fitting_checks import (
    MOST_CHANGES,
    MOST_FITTINGS,
    change_problems,
    fitting_problems,
    gap_problems,
)
from workbench.document.project import Project
from workbench.fitting import CHANGE_KINDS, Change, ChangeKind, Fitting

FROM_OPENING = "From the opening."
"""The note of every change that a reading of the opening proposed."""

Entry = str | bool | float | int | None


def add_fitting(project: Project, date: str = "") -> Project:
    """The project with one more fitting, of the panels it has now, made up in what the last one was."""
    if len(project.fittings) >= MOST_FITTINGS:
        raise ValueError(f"{MOST_FITTINGS} fittings are kept already: remove one first.")
    cloth = project.fittings[-1].cloth if project.fittings else ""
    panels = project.design.front.panel_count, project.design.back.panel_count
    return _with(project, (*project.fittings, Fitting(date, cloth, panels)))


def remove_fitting(project: Project, number: int) -> Project:
    """The project without one of its fittings, and without what it changed."""
    _one(project, number)
    return replace(project, fittings=(*project.fittings[:number], *project.fittings[number + 1 :]))


def set_fitting(project: Project, number: int, **changes: Entry) -> Project:
    """The project with other entries of a fitting: date, cloth, notes, picture, applied."""
    for name in changes.keys() - {"date", "cloth", "notes", "picture", "applied"}:
        raise ValueError(f"A fitting has nothing called “{name}” that can be told.")
    return _with_one(project, number, with_entries(_one(project, number), changes, "fitting"))


def set_gap(project: Project, number: int, where: str, mm: float | None) -> Project:
    """The project with the opening as it was measured at the ``top``, the ``waist`` or the ``hem``."""
    fitting = _one(project, number)
    gaps = with_entries(fitting.gaps, {where: mm}, "opening")
    refuse(gap_problems(gaps, ("opening",)))
    return _with_one(project, number, replace(fitting, gaps=gaps))


def add_pinned(project: Project, number: int, kind: ChangeKind) -> Project:
    """The project with one more change of this kind, of nothing yet."""
    fitting = _one(project, number)
    return _with_changes(project, number, (*fitting.changes, _usual(kind, fitting)))


def set_pinned(project: Project, number: int, which: int, **entries: Entry) -> Project:
    """The project with other entries of one change; another kind begins at its usual place."""
    fitting = _one(project, number)
    before = _change(fitting, which)
    kind = next((kind for kind in CHANGE_KINDS if kind == entries.get("kind")), before.kind)
    if kind != before.kind:
        before = replace(_usual(kind, fitting), amount_mm=before.amount_mm, on=before.on, note=before.note)
    after = with_entries(before, entries, "change")
    refuse(change_problems(after, sum(fitting.panels), ("change",)))
    return _with_changes(project, number, (*fitting.changes[:which], after, *fitting.changes[which + 1 :]))


def remove_pinned(project: Project, number: int, which: int) -> Project:
    """The project without one change of a fitting."""
    fitting = _one(project, number)
    _change(fitting, which)
    return _with_changes(project, number, (*fitting.changes[:which], *fitting.changes[which + 1 :]))


def take_proposal(project: Project, number: int, changes: Sequence[Change]) -> Project:
    """The project with what a reading of the opening proposed, in place of an earlier proposal."""
    own = tuple(change for change in _one(project, number).changes if change.note != FROM_OPENING)
    return _with_changes(project, number, (*own, *(replace(change, note=FROM_OPENING) for change in changes)))


def _usual(kind: ChangeKind, fitting: Fitting) -> Change:
    """A change of nothing where such a change is usually pinned."""
    if kind == "seam":
        return Change(kind, 0.0, level="waist", seam=fitting.panels[0])
    if kind == "length":
        return Change(kind, 0.0, level="waist")
    return Change(kind, 0.0, u=0.0)


def _one(project: Project, number: int) -> Fitting:
    if not 0 <= number < len(project.fittings):
        raise ValueError(f"There is no fitting number {number + 1}.")
    return project.fittings[number]


def _change(fitting: Fitting, which: int) -> Change:
    if not 0 <= which < len(fitting.changes):
        raise ValueError(f"The fitting has no line {which + 1}.")
    return fitting.changes[which]


def _with_changes(project: Project, number: int, changes: tuple[Change, ...]) -> Project:
    if len(changes) > MOST_CHANGES:
        raise ValueError(f"A fitting has at most {MOST_CHANGES} lines.")
    return _with_one(project, number, replace(project.fittings[number], changes=changes))


def _with_one(project: Project, number: int, fitting: Fitting) -> Project:
    return _with(project, (*project.fittings[:number], fitting, *project.fittings[number + 1 :]))


def _with(project: Project, fittings: tuple[Fitting, ...]) -> Project:
    refuse(fitting_problems(fittings))
    return replace(project, fittings=fittings)
