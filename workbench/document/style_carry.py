"""A style used again: the design and making of one project on another body.

What is a proportion already carries over as it is: seam places, shares, weights, the lines
of the style. Pins and lines of her own are put in proportion to the levels of the new body.
Reductions, ease and opening stay the lengths they are. They are chosen as lengths, and a
fixed part of a larger girth would draw her in further than anybody has decided; two bodies
that differ by an inch all round then differ by an inch all round in the garment, too.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Literal

from workbench.body import Body, BodyError, Length, Limits, Unit, complete
from workbench.document.carry_beads import carried_beads
from workbench.document.carry_lines import carried_line
from workbench.document.carry_pins import pinned, pins_freed, pins_in_proportion
from workbench.document.picture import picture_of
from workbench.document.project import Client, Project
from workbench.draft import Design, Finding, Outcome, Place, by_weight, seam_name, work_out
from workbench.worn import Torso

Reckoning = Literal["lengths", "percent"]
"""Whether a reduction stays so many mm, or the same part of the girth."""
CARRIED = "carried_"
"""How the codes of the findings begin that say what had to give."""
_NOTABLE_MM = 1.0
"""A seam that moves by less is where it was: a tape reads no closer (own choice)."""


@dataclass(frozen=True)
class Shape:
    """A style with what it comes to on the body it was drawn for; None where it has no body."""

    project: Project
    outcome: Outcome | None


def shape_of(style: Project) -> Shape:
    """The style worked out, to be put on any number of bodies.

    What was pinned on the one it was drawn for is no part of it.
    """
    return Shape(style, picture_of(replace(style, fittings=())).outcome)


def carried(
    style: Project,
    measurements: Mapping[str, Length],
    unit: Unit,
    client: Client,
    reductions: Reckoning = "lengths",
) -> tuple[Project, tuple[Finding, ...]]:
    """The style as a project for another client, and what to look at, the gravest first.

    The findings whose codes begin with ``carried_`` say what had to give; the others are those
    of the new draft. Among them is a stop where it cannot be drafted.
    """
    return put_on(shape_of(style), measurements, unit, client, reductions)


def put_on(
    shape: Shape,
    measurements: Mapping[str, Length],
    unit: Unit,
    client: Client,
    reductions: Reckoning = "lengths",
) -> tuple[Project, tuple[Finding, ...]]:
    """As :func:`carried`, for a style that has been worked out already."""
    project = _for_client(shape.project, measurements, unit, client)
    return fitted(project, shape, _left_behind(shape.project), reductions)


def fitted(
    project: Project, shape: Shape, gave_before: Iterable[Finding] = (), reductions: Reckoning = "lengths"
) -> tuple[Project, tuple[Finding, ...]]:
    """A project that has the design of the shape, with pins and lines in proportion to its own body.

    What had to give comes with ``gave_before`` among the findings, as for :func:`carried`. A project
    that has no body yet is left as it is.
    """
    try:
        body = complete(project.taken())
    except BodyError:
        return project, picture_of(project).findings
    gave = list(gave_before)
    if shape.outcome is None:
        gave.extend(_no_body(shape.project))
    else:
        project, moved = _in_proportion(project, body, shape.outcome, reductions)
        gave.extend(moved)
    picture = picture_of(project)
    if picture.outcome is not None and pinned(project):
        project, freed = pins_freed(project, picture.outcome)
        gave.extend(freed)
        picture = picture_of(project, picture)
    return project, by_weight((*gave, *picture.findings))


def _for_client(style: Project, measurements: Mapping[str, Length], unit: Unit, client: Client) -> Project:
    """The project of another client, with nothing in it that was decided for the first one alone.

    Limits are set for one client, so hers begin as usual. What was at hand, dates and lay plans
    belong to the first garment; prices, hours and kinds of cloth to the workroom.
    """
    quoting = replace(style.quoting, not_bought=(), fitting_dates="", ready_by="", valid_until="")
    return replace(
        style,
        client=client,
        unit=unit,
        measurements=dict(measurements),
        limits=Limits(),
        cloths=tuple(replace(cloth, at_hand_mm=0.0, remnant=None) for cloth in style.cloths),
        plans=(),
        quoting=quoting,
        earlier=(),
        fittings=(),
        pictures=(),
        behind=None,
        done=(),
        torso=Torso(),
    )


def _in_proportion(
    project: Project, body: Body, old: Outcome, reductions: Reckoning
) -> tuple[Project, list[Finding]]:
    """The project with reductions, pins and lines as they are on this body, and what had to give."""
    new = work_out(body, project.design)
    if reductions == "percent":
        project = replace(project, design=_same_percent(project.design, old, new))
        new = work_out(body, project.design)
    project, gave = pins_in_proportion(project, old, new)
    neckline = carried_line(project.design.neckline, old.levels, new.levels)
    hem = carried_line(project.design.hem, old.levels, new.levels)
    design = replace(project.design, neckline=neckline, hem=hem)
    beads = carried_beads(project.beads, old.levels, new.levels)
    return replace(project, design=design, beads=beads), [*gave, *_bust_seams(design, old, new)]


def _same_percent(design: Design, old: Outcome, new: Outcome) -> Design:
    """The design with each reduction the same part of the girth it is taken from."""
    scaled = {
        level.name: design.reductions.at(level.name) * new.level(level.name).reckoned / level.reckoned
        for level in old.levels
    }
    return replace(design, reductions=replace(design.reductions, **scaled))


def _bust_seams(design: Design, old: Outcome, new: Outcome) -> Iterator[Finding]:
    """A note for the seam through the bust point, where that lies elsewhere on this body."""
    before, after = 0.5 * old.body.value("bust_span"), 0.5 * new.body.value("bust_span")
    for number, seam in enumerate(design.front.seams, start=1):
        if seam.through_bust_point and abs(after - before) >= _NOTABLE_MM:
            yield Finding(
                "note",
                f"{CARRIED}bust_seam",
                "The {seam} moves to the bust point: {after} from the centre front there, not {before}.",
                {"before": before, "after": after},
                {"seam": seam_name(number, design)},
                Place(level="bust", seam=number),
                value_mm=after,
            )


def _left_behind(style: Project) -> Iterator[Finding]:
    """What was decided for the first client alone and does not go with the style."""
    if style.limits != Limits():
        yield Finding(
            "attend",
            f"{CARRIED}limits",
            "The limits are the usual ones: those of the style were set for another client.",
            remedy="Set hers.",
        )
    if any(cloth.at_hand_mm or cloth.remnant for cloth in style.cloths) or style.quoting.not_bought:
        yield Finding(
            "note", f"{CARRIED}at_hand", "What was at hand for the style is not counted again: all is bought."
        )
    if style.making.front == "busk" and style.making.busk_mm is not None:
        yield Finding(
            "attend",
            f"{CARRIED}busk",
            "The busk stays {busk} long, as it was for the style.",
            {"busk": style.making.busk_mm},
            remedy="Check that it fits her front.",
            value_mm=style.making.busk_mm,
        )


def _no_body(style: Project) -> Iterator[Finding]:
    """What a style without measurements of its own cannot put in proportion."""
    if pinned(style) or style.design.neckline is not None or style.design.hem is not None:
        yield Finding(
            "attend",
            f"{CARRIED}as_it_was",
            "The style has no body of its own to be in proportion to: pins and lines keep their lengths.",
            remedy="Check them on the draft.",
        )
