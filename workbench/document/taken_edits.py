"""Edits of measurements by date: a sitting begun, taken up again, told about, removed.

As all edits, each takes the project as it stands and returns the project as it should
be; ValueError in one sentence for what cannot be done.
"""

from __future__ import annotations

from dataclasses import replace

from workbench.document.changing import refuse
from workbench.document.project import Project
from workbench.document.taken import Taken
from workbench.document.taken_checks import MOST_EARLIER, taken_problems


def taken_now(project: Project) -> Taken:
    """The measurements the bodice is drafted from, as one sitting among the others."""
    client = project.client
    return Taken(client.date, client.measured_by, client.worn, project.measurements)


def measure_anew(project: Project, date: str) -> Project:
    """The project with its measurements set aside, and the same figures under a new date to type over.

    Who measured and what was worn stay too: they are as a rule the same, and stand beside the figures.
    """
    if not project.measurements:
        raise ValueError("Nothing has been measured yet, so there is nothing to set aside.")
    if len(project.earlier) >= MOST_EARLIER:
        raise ValueError(f"{MOST_EARLIER} earlier days are kept already: remove one first.")
    aside = _by_date((taken_now(project), *project.earlier))
    return _checked(replace(project, client=replace(project.client, date=date), earlier=aside))


def take_back(project: Project, number: int) -> Project:
    """The project drafted from an earlier sitting; the one it was drafted from takes its place among them.

    One with no measurements in it is not kept.
    """
    again, others = _one(project, number), _others(project, number)
    now = taken_now(project)
    aside = _by_date((now, *others)) if now.measurements else others
    client = replace(project.client, date=again.date, measured_by=again.measured_by, worn=again.worn)
    return replace(project, client=client, measurements=again.measurements, earlier=aside)


def remove_taken(project: Project, number: int) -> Project:
    """The project without one of its earlier sittings."""
    _one(project, number)
    return replace(project, earlier=_others(project, number))


def set_taken(project: Project, number: int, **changes: str) -> Project:
    """The project with another date, measurer or garment worn told of an earlier sitting.

    They stay in the order of their dates.
    """
    for name in changes.keys() - {"date", "measured_by", "worn"}:
        raise ValueError(f"A sitting has nothing called “{name}” that can be told.")
    told = replace(_one(project, number), **changes)  # type: ignore[arg-type]  # texts by name
    others = _others(project, number)
    kept = (*others[:number], told, *others[number:])
    return _checked(replace(project, earlier=_by_date(kept)))


def _one(project: Project, number: int) -> Taken:
    if not 0 <= number < len(project.earlier):
        raise ValueError("There are no such earlier measurements.")
    return project.earlier[number]


def _others(project: Project, number: int) -> tuple[Taken, ...]:
    return (*project.earlier[:number], *project.earlier[number + 1 :])


def _by_date(taken: tuple[Taken, ...]) -> tuple[Taken, ...]:
    """The newest first; ISO dates sort as they are, and those of an unknown day come last."""
    return tuple(sorted(taken, key=lambda one: one.date, reverse=True))


def _checked(project: Project) -> Project:
    refuse(taken_problems(project.earlier))
    return project
