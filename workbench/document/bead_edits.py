"""Edits of the bead plan: kinds, runs, scatters, bands, and the points of drawn lines.

As all edits, each takes the project as it stands and returns the project as it should be;
ValueError in one sentence that names the field where that is no plan.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from itertools import pairwise
from typing import Literal, TypeVar

from workbench.beads import (
    Along,
    BeadKind,
    BeadPlan,
    BeadRun,
    BeadScatter,
    BeadWeight,
    usual_kinds,
)
from workbench.document.bead_checks import MOST_LINE_POINTS, bead_problems
from workbench.document.changing import refuse, with_entries
from workbench.document.project import Project
from workbench.draft import ShapePoint

Value = str | float | int | bool | Decimal | None | Sequence[object]
LineOwner = Literal["runs", "scatters"]
_NAMES: dict[Along, str] = {"neckline": "Neckline", "hem": "Hem", "seam": "Seam", "drawn": "Drawn line"}
_Entry = TypeVar("_Entry", BeadKind, BeadRun, BeadScatter)
SEAM_INSET_MM = 15.875
"""From a seam to the first row beside it, clear of a bone channel: 5/8 in (common practice, no source)."""
NEW_SIZE_MM = 5.0
"""Across a bead that is added (own choice)."""
USUAL_DENSITY = 4.0
"""Beads to the square inch: an open scatter (common practice, no source)."""


def add_usual_kinds(project: Project) -> Project:
    """The project with the usual kinds it has not yet."""
    had = {kind.name.casefold() for kind in project.beads.kinds}
    new = tuple(kind for kind in usual_kinds() if kind.name.casefold() not in had)
    return _with(project, replace(project.beads, kinds=(*project.beads.kinds, *new)))


def add_kind(project: Project) -> Project:
    """The project with one kind more, a round pearl to be changed."""
    name = _free_name("New bead", project.beads.kinds)
    return _with(project, replace(project.beads, kinds=(*project.beads.kinds, BeadKind(name, NEW_SIZE_MM))))


def set_kind(project: Project, number: int, **changes: Value) -> Project:
    """The project with another figure of a kind; a new name is carried to all that name it."""
    plan = project.beads
    old = _at(plan.kinds, number, "kind of bead")
    new = with_entries(old, changes, "bead")
    plan = replace(plan, kinds=_put(plan.kinds, number, new))
    return _with(project, plan if old.name == new.name else _renamed(plan, old.name, new.name))


def remove_kind(project: Project, number: int) -> Project:
    """The project without a kind; ValueError while a run or a scatter is of it."""
    plan = project.beads
    name = _at(plan.kinds, number, "kind of bead").name
    for run in plan.runs:
        if name in run.pattern:
            raise ValueError(f"“{name}” is in the run “{run.name}”: take it out there first.")
    for scatter in plan.scatters:
        if name in {part.kind for part in scatter.mix}:
            raise ValueError(f"“{name}” is in the scatter “{scatter.name}”: take it out there first.")
    return _with(project, replace(plan, kinds=_without(plan.kinds, number)))


def add_run(project: Project, along: Along, *, seam: int = 1, points: tuple[ShapePoint, ...] = ()) -> Project:
    """The project with a run of its first kind, two sizes apart; with the usual kinds if it had none."""
    project = project if project.beads.kinds else add_usual_kinds(project)
    plan = project.beads
    kind = plan.kinds[0]
    run = BeadRun(
        _free_name(_NAMES[along], plan.runs),
        along,
        (kind.name,),
        2 * kind.size_mm,
        row_mm=max(2 * kind.size_mm, BeadRun.row_mm),
        inset_mm=BeadRun.inset_mm if along != "seam" else SEAM_INSET_MM,
        seam=seam,
        points=points,
    )
    return _with(project, replace(plan, runs=(*plan.runs, run)))


def set_run(project: Project, number: int, **changes: Value) -> Project:
    """The project with another figure of a run, by the names of :class:`BeadRun`."""
    plan = project.beads
    run = with_entries(_at(plan.runs, number, "run"), changes, "run")
    return _with(project, replace(plan, runs=_put(plan.runs, number, run)))


def remove_run(project: Project, number: int) -> Project:
    """The project without a run."""
    _at(project.beads.runs, number, "run")
    return _with(project, replace(project.beads, runs=_without(project.beads.runs, number)))


def add_scatter(project: Project, panels: tuple[int, ...] = (0,)) -> Project:
    """The project with a scatter of its first kind over panels; the usual kinds if it had none."""
    project = project if project.beads.kinds else add_usual_kinds(project)
    plan = project.beads
    mix = (BeadWeight(plan.kinds[0].name),)
    scatter = BeadScatter(_free_name("Scatter", plan.scatters), panels, mix, USUAL_DENSITY)
    return _with(project, replace(plan, scatters=(*plan.scatters, scatter)))


def set_scatter(project: Project, number: int, **changes: Value) -> Project:
    """The project with another figure of a scatter, by the names of :class:`BeadScatter`.

    One that is to thin out and has no line to thin out to is given the waist line.
    """
    plan = project.beads
    scatter = with_entries(_at(plan.scatters, number, "scatter"), changes, "scatter")
    if scatter.thin_from != "none" and not scatter.thin_to:
        waist = (ShapePoint(0.0, 0.0), ShapePoint(float(project.design.panel_count), 0.0))
        scatter = replace(scatter, thin_to=waist)
    return _with(project, replace(plan, scatters=_put(plan.scatters, number, scatter)))


def remove_scatter(project: Project, number: int) -> Project:
    """The project without a scatter."""
    _at(project.beads.scatters, number, "scatter")
    return _with(project, replace(project.beads, scatters=_without(project.beads.scatters, number)))


def set_bands(project: Project, **changes: float) -> Project:
    """The project with other widths kept free, by the names of :class:`BeadBands`, in mm."""
    bands = with_entries(project.beads.bands, changes, "band")
    return _with(project, replace(project.beads, bands=bands))


def set_beading(project: Project, **changes: float) -> Project:
    """The project with another reserve, or another rate of beads a minute."""
    for name in changes:
        if name not in ("reserve_percent", "per_minute"):
            raise ValueError(f"Setting {name} has an edit of its own.")
    return _with(project, with_entries(project.beads, changes, "plan"))


# --- drawn lines --------------------------------------------------------------------------


def line_of(project: Project, owner: LineOwner, number: int) -> tuple[ShapePoint, ...]:
    """The points of a drawn run, or of the line at which a scatter ends."""
    if owner == "runs":
        return _at(project.beads.runs, number, "run").points
    return _at(project.beads.scatters, number, "scatter").thin_to


def set_line(project: Project, owner: LineOwner, number: int, points: tuple[ShapePoint, ...]) -> Project:
    """The project with that line through other points."""
    if len(points) > MOST_LINE_POINTS:
        raise ValueError(f"A line has at most {MOST_LINE_POINTS} points.")
    plan = project.beads
    if owner == "runs":
        run = replace(_at(plan.runs, number, "run"), points=points)
        return _with(project, replace(plan, runs=_put(plan.runs, number, run)))
    scatter = replace(_at(plan.scatters, number, "scatter"), thin_to=points)
    return _with(project, replace(plan, scatters=_put(plan.scatters, number, scatter)))


def move_line_point(
    project: Project, owner: LineOwner, number: int, point: int, u: float, t: float
) -> Project:
    """The project with one point of a line elsewhere."""
    points = line_of(project, owner, number)
    old = _at(points, point, "point of the line")
    return set_line(project, owner, number, _put(points, point, replace(old, u=u, t=t)))


def add_line_point(project: Project, owner: LineOwner, number: int, u: float, t: float) -> Project:
    """The project with a point more: between the two it lies nearest to, or at the nearer end."""
    points = line_of(project, owner, number)
    new = ShapePoint(u, t)
    at = _where(points, new)
    return set_line(project, owner, number, (*points[:at], new, *points[at:]))


def remove_line_point(project: Project, owner: LineOwner, number: int, point: int) -> Project:
    """The project with a point of a line taken out."""
    points = line_of(project, owner, number)
    _at(points, point, "point of the line")
    return set_line(project, owner, number, _without(points, point))


def toggle_line_corner(project: Project, owner: LineOwner, number: int, point: int) -> Project:
    """The project with a smooth point a corner, or a corner smooth."""
    points = line_of(project, owner, number)
    old = _at(points, point, "point of the line")
    return set_line(project, owner, number, _put(points, point, replace(old, smooth=not old.smooth)))


_U_MM = 60.0
"""About the width of a panel: what one in u is reckoned as where points are compared (own choice)."""


def _where(points: tuple[ShapePoint, ...], new: ShapePoint) -> int:
    """Where a new point makes the line longer by the least."""
    if len(points) < 2:
        return len(points)
    ways = {0: _apart(new, points[0]), len(points): _apart(points[-1], new)}
    for at, (a, b) in enumerate(pairwise(points), start=1):
        ways[at] = _apart(a, new) + _apart(new, b) - _apart(a, b)
    return min(ways, key=lambda at: ways[at])


def _apart(one: ShapePoint, other: ShapePoint) -> float:
    return float(abs(complex(_U_MM * (one.u - other.u), one.t - other.t)))


# --- all of it ----------------------------------------------------------------------------


def _with(project: Project, plan: BeadPlan) -> Project:
    refuse(bead_problems(plan))
    return replace(project, beads=plan)


_Any = TypeVar("_Any")


def _at(entries: tuple[_Any, ...], number: int, what: str) -> _Any:
    if not 0 <= number < len(entries):
        raise ValueError(f"There is no {what} no. {number + 1}.")
    return entries[number]


def _put(entries: tuple[_Any, ...], number: int, entry: _Any) -> tuple[_Any, ...]:
    return (*entries[:number], entry, *entries[number + 1 :])


def _without(entries: tuple[_Any, ...], number: int) -> tuple[_Any, ...]:
    return (*entries[:number], *entries[number + 1 :])


def _renamed(plan: BeadPlan, old: str, new: str) -> BeadPlan:
    runs = (
        replace(run, pattern=tuple(new if name == old else name for name in run.pattern)) for run in plan.runs
    )
    scatters = (
        replace(
            scatter,
            mix=tuple(replace(part, kind=new) if part.kind == old else part for part in scatter.mix),
        )
        for scatter in plan.scatters
    )
    return replace(plan, runs=tuple(runs), scatters=tuple(scatters))


def _free_name(wanted: str, entries: tuple[_Entry, ...]) -> str:
    """The name, with a number behind it where it is taken."""
    taken: set[str] = {entry.name.casefold() for entry in entries}
    names = [wanted, *(f"{wanted} {number}" for number in range(2, len(taken) + 3))]
    return next(name for name in names if name.casefold() not in taken)
