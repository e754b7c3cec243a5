"""A shape given to the project on the desk, and a shape made of it without a word about its client."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from workbench.body import Length
from workbench.document.changing import refuse
from workbench.document.making_panels import with_panels_changed
from workbench.document.problem import text_problems
from workbench.document.project import Client, Project
from workbench.document.style_carry import CARRIED, Shape, carried, fitted
from workbench.document.usual_cloths import usual_cloths
from workbench.document.wish_checks import STYLE_NAME_MOST
from workbench.draft import Design, Finding
from workbench.pieces import Making

PURPOSE_MOST = 200
"""Characters of the line that says what a shape is for (own choice)."""


def in_shape(project: Project, shape: Shape) -> tuple[Project, tuple[Finding, ...]]:
    """The project in another shape, and what to look at, the gravest first.

    Seams, shares, neckline and hem are those of the shape, in proportion to this body; how far she
    is drawn in, the opening and all that is not shape stay hers. Findings as for :func:`carried`.
    """
    old, new = project.design, shape.project.design
    design = replace(new, rule=old.rule, reductions=old.reductions, opening_mm=old.opening_mm)
    changed = replace(
        project,
        design=design,
        making=_made(project.making, shape.project.making, old, design),
        style_name=shape.project.style_name,
        fittings=tuple(replace(fitting, applied=False) for fitting in project.fittings),
    )
    return fitted(changed, shape, _given_up(project, changed))


def _made(making: Making, shape: Making, old: Design, new: Design) -> Making:
    """Her making for other panels; only how the front closes belongs to the shape.

    A busk of the length she has at hand stays what it is only while there is a busk.
    """
    made = with_panels_changed(making, old, new)
    return made if made.front == shape.front else replace(made, front=shape.front, busk_mm=None)


def _given_up(before: Project, after: Project) -> Iterator[Finding]:
    """What the project had and the shape has not."""
    if before.making.front != after.making.front:
        how = "opens with a busk" if after.making.front == "busk" else "is cut on the fold, without a busk"
        yield Finding("note", f"{CARRIED}front", "The centre front {how} now.", words={"how": how})
    lost = len(before.making.own_allowances) - len(after.making.own_allowances)
    if lost:
        yield Finding(
            "attend",
            f"{CARRIED}allowances",
            "Allowances of single edges were left behind, as their panels are other ones now.",
            remedy="Look at them among the pieces.",
        )
    if any(fitting.applied and fitting.changes for fitting in before.fittings):
        yield Finding(
            "attend",
            f"{CARRIED}fittings",
            "Changes pinned at a fitting are switched off: they were pinned on the shape before.",
            remedy="Switch on those that still hold.",
        )


def as_shape(
    project: Project, name: str, purpose: str, measurements: Mapping[str, Length], body_name: str
) -> tuple[Project, tuple[Finding, ...]]:
    """The design and making of a project on another, invented body, and what had to give for it.

    Nothing else goes along: no client, measurements, dates, pictures, fittings, cloths or prices.
    ValueError where the name is missing or a text is too long.
    """
    name, purpose = " ".join(name.split()), " ".join(purpose.split())
    if not name:
        raise ValueError("The shape needs a name.")
    refuse(text_problems(name, STYLE_NAME_MOST, ("the name of the shape",)))
    refuse(text_problems(purpose, PURPOSE_MOST, ("what it is for",)))
    bare = Project(
        unit=project.unit,
        fraction=project.fraction,
        measurements=project.measurements,
        design=project.design,
        making=replace(project.making, busk_mm=None),
        cloths=usual_cloths(project.unit),
    )
    client = Client(name=body_name, notes=purpose, invented=True)
    shape, findings = carried(bare, measurements, project.unit, client)
    return replace(shape, style_name=name), findings
