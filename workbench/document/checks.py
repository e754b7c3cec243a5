"""What a project may hold, whoever fills it in: a form, a drag or a file.

Each check gives the place as a path of names and numbers, and a reason that can follow
that place in a sentence. What can merely not be drafted is no business of these checks.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from workbench.body import LIMIT_TABLE, Limits, limit_problem
from workbench.document.bead_checks import bead_problems
from workbench.document.cloth_checks import cloth_problems, plan_problems, quote_problems
from workbench.document.done_edits import done_problems
from workbench.document.fitting_checks import fitting_problems
from workbench.document.making_checks import making_problems
from workbench.document.problem import Place, Problem, text_problems
from workbench.document.project import LARGEST_NUMBER, MOST_POINTS, TEXT_LENGTHS, Client, Paper, Project
from workbench.document.taken_checks import date_problems, measurement_problems, taken_problems
from workbench.document.torso_edits import torso_problems
from workbench.document.wish_checks import style_name_problems, wish_problems
from workbench.draft import FEWEST_PANELS, MOST_PANELS, Design, Quarter, ShapePoint, Share


def problems(project: Project) -> Iterator[Problem]:
    """All that is wrong with a project, in the order of its fields."""
    yield from client_problems(project.client)
    yield from measurement_problems(project.measurements, ("measurements",))
    yield from _design_problems(project.design)
    yield from making_problems(project.making, project.design.panel_count)
    yield from _limit_problems(project.limits)
    yield from paper_problems(project.paper)
    yield from cloth_problems(project.cloths)
    yield from plan_problems(project.plans, project.cloths)
    yield from quote_problems(project.quoting)
    yield from fitting_problems(project.fittings)
    yield from bead_problems(project.beads)
    yield from taken_problems(project.earlier)
    yield from style_name_problems(project.style_name)
    yield from wish_problems(project.pictures, project.behind)
    yield from done_problems(project.done)
    yield from torso_problems(project.torso)


def client_problems(client: Client) -> Iterator[Problem]:
    """Texts that are too long or cannot be kept, and a date that is none."""
    for name, most in TEXT_LENGTHS.items():
        yield from text_problems(getattr(client, name), most, ("client", name))
    for name in ("date", "next_fitting"):
        yield from date_problems(getattr(client, name), ("client", name))


def paper_problems(paper: Paper) -> Iterator[Problem]:
    """Lengths of less than nothing; what does not fit together is for the printer to say."""
    for name in ("margin_mm", "overlap_mm", "roll_width_mm"):
        length: float = getattr(paper, name)
        if not length <= LARGEST_NUMBER:
            yield ("paper", name), "is no usable length"
        elif length < 0:
            yield ("paper", name), "cannot be less than nothing"


def _limit_problems(limits: Limits) -> Iterator[Problem]:
    for row in LIMIT_TABLE:
        problem = limit_problem(replace(Limits(), **{row.key: getattr(limits, row.key)}))
        if problem:
            yield ("limits", row.key), problem.removeprefix(row.label).strip().rstrip(".")


def _design_problems(design: Design) -> Iterator[Problem]:
    for name, quarter in (("front", design.front), ("back", design.back)):
        yield from _quarter_problems(("design", name), quarter)
    for name, points in (("neckline", design.neckline), ("hem", design.hem)):
        yield from _line_problems(("design", name), points)


def _quarter_problems(place: Place, quarter: Quarter) -> Iterator[Problem]:
    if not FEWEST_PANELS <= quarter.panel_count <= MOST_PANELS:
        yield (
            (*place, "seams"),
            f"has {len(quarter.seams)} seams; {FEWEST_PANELS - 1} to {MOST_PANELS - 1} are possible",
        )
    for number, seam in enumerate(quarter.seams):
        yield from _share_problems((*place, "seams", number, "shares"), seam.shares)
    yield from _share_problems((*place, "side_shares"), quarter.side_shares)


def _share_problems(place: Place, shares: tuple[Share, ...]) -> Iterator[Problem]:
    levels = [share.level for share in shares]
    for level in levels:
        if levels.count(level) > 1:
            yield place, f"names the level {level} twice"
            return


def _line_problems(place: Place, points: tuple[ShapePoint, ...] | None) -> Iterator[Problem]:
    """How many points there are; where they lie is a finding of the draft, which can be put right."""
    if points is not None and not 2 <= len(points) <= MOST_POINTS:
        yield place, f"has {len(points)} points; 2 to {MOST_POINTS} are possible"
