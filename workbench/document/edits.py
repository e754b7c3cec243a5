"""Edits: each takes the project as it stands and returns the project as it should be.

Nothing is changed in place and nothing is drafted here. What makes no sense is refused
with a ValueError of one sentence; what merely cannot be drafted is let through, because
the draft says so beside the picture and the next edit may put it right.
"""

from __future__ import annotations

from dataclasses import fields, replace

from workbench.body import BY_KEY, Fraction, LevelName, Limits, Unit, limit_problem, read_length
from workbench.document.bead_panels import beads_with_panels_changed
from workbench.document.checks import client_problems, paper_problems
from workbench.document.making_panels import with_panels_changed
from workbench.document.problem import Problems
from workbench.document.project import LARGEST_NUMBER, Project
from workbench.document.taken_checks import LEAST_MEASURE
from workbench.draft import (
    FEWEST_PANELS,
    MOST_PANELS,
    Comfort,
    Design,
    Quarter,
    QuarterName,
    Rule,
    Style,
    usual_quarter,
    with_panels,
)
from workbench.draft import take_the_most as most_of
from workbench.pieces import LayerName


def _with_design(project: Project, **changes: object) -> Project:
    """The project with some fields of its design replaced."""
    return replace(project, design=replace(project.design, **changes))  # type: ignore[arg-type]  # fields by name


def usable(value: float, what: str) -> float:
    """The value; ValueError names ``what`` where it is no usable number."""
    if not -LARGEST_NUMBER <= value <= LARGEST_NUMBER:
        raise ValueError(f"{what} is no usable number.")
    return float(value)


def set_measurement(project: Project, key: str, text: str) -> Project:
    """The project with a measurement as she typed it; blank means that it was not taken."""
    if key not in BY_KEY:
        raise ValueError(f"There is no measurement called “{key}”.")
    if not text.strip():
        return project.with_measurement(key, None)
    return project.with_measurement(key, read_length(text, project.unit, low=LEAST_MEASURE))


def set_reduction(project: Project, level: LevelName, mm: float) -> Project:
    """The project with another reduction at a level, in mm round the body; negative is ease.

    Under the one-figure rule waist and underbust share one reduction, so either sets it.
    """
    shared = project.design.rule == "one_figure" and level == "underbust"
    name = "waist" if shared else level
    reductions = replace(project.design.reductions, **{name: usable(mm, "The reduction")})
    return _with_design(project, reductions=reductions)


def set_rule(project: Project, rule: Rule) -> Project:
    """The project with waist and underbust on one figure, or each on its own."""
    return _with_design(project, rule=rule)


def set_opening(project: Project, mm: float) -> Project:
    """The project with another opening at the centre back, as worn."""
    return _with_design(project, opening_mm=_not_negative(mm, "The opening"))


def set_front_share(project: Project, share: float) -> Project:
    """The project with another part, 0 to 1, of the finished half girth in front."""
    if not 0 < share < 1:
        raise ValueError("The front’s share must lie between 0 and 100 %.")
    return _with_design(project, front_share=float(share))


def set_style(project: Project, style: Style) -> Project:
    """The project in another style, its seams and lines as usual there; reductions and opening stay.

    The style it already has is left as it is.
    """
    design = project.design
    if style == design.style:
        return project
    front = usual_quarter("front", design.front.panel_count, style)
    back = usual_quarter("back", design.back.panel_count, style)
    changed = replace(design, style=style, front=front, back=back, neckline=None, hem=None)
    return replace(project, design=changed)


def set_panels(project: Project, quarter: QuarterName, count: int) -> Project:
    """The project with another number of panels in one quarter, its seams and pieces as usual there."""
    if not FEWEST_PANELS <= count <= MOST_PANELS:
        raise ValueError(f"The {quarter} can have {FEWEST_PANELS} to {MOST_PANELS} panels.")
    if count == quarter_of(project.design, quarter).panel_count:
        return project
    design = with_panels(project.design, quarter, count)
    making = with_panels_changed(project.making, project.design, design)
    beads = project.beads
    if not beads.empty:
        beads = beads_with_panels_changed(beads, project.design, design)
    return replace(project, design=design, making=making, beads=beads)


def quarter_of(design: Design, quarter: QuarterName) -> Quarter:
    """The front or the back quarter."""
    return design.front if quarter == "front" else design.back


def take_the_most(project: Project, comfort: Comfort, step: float) -> Project:
    """The project with the largest waist reduction that keeps every limit, in whole steps of mm."""
    return replace(project, design=most_of(project.design, comfort, step))


def set_limit(project: Project, key: str, value: float) -> Project:
    """The project with another limit for this client, by its name in :class:`Limits`."""
    if key not in {field.name for field in fields(Limits)}:
        raise ValueError(f"There is no limit called “{key}”.")
    limits = replace(project.limits, **{key: float(value)})
    problem = limit_problem(limits, project.unit)
    if problem:
        raise ValueError(problem)
    return replace(project, limits=limits)


def set_client(project: Project, **changes: str | bool) -> Project:
    """The project with other particulars of the client; ValueError names a field that is too long."""
    client = replace(project.client, **changes)  # type: ignore[arg-type]  # fields by name
    _refuse(client_problems(client))
    return replace(project, client=client)


def set_unit(project: Project, unit: Unit, fraction: Fraction) -> Project:
    """The project shown in another unit; no stored length changes."""
    return replace(project, unit=unit, fraction=fraction)


def set_paper(project: Project, **changes: str | float | bool | tuple[LayerName, ...]) -> Project:
    """The project printed on other paper; what does not fit is refused when it is printed."""
    paper = replace(project.paper, **changes)  # type: ignore[arg-type]  # fields by name
    _refuse(paper_problems(paper))
    return replace(project, paper=paper)


def _not_negative(value: float, what: str) -> float:
    if usable(value, what) < 0:
        raise ValueError(f"{what} cannot be less than nothing.")
    return float(value)


def _refuse(found: Problems) -> None:
    """ValueError in one sentence for the first of the problems, if there is any."""
    for place, reason in found:
        what = str(place[-1]).removesuffix("_mm").replace("_", " ")
        raise ValueError(f"The {place[0]}’s {what} {reason}.")
