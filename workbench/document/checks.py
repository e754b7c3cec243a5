"""What a project may hold, whoever fills it in: a form, a drag or a file.

Each check gives the place as a path of names and numbers, and a reason that can follow
that place in a sentence. What can merely not be drafted is no business of these checks.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date

from workbench.body import BY_KEY, LIMIT_TABLE, Length, LengthError, Limits, limit_problem, read_length
from workbench.document.cloth_checks import cloth_problems, plan_problems, quote_problems
from workbench.document.making_checks import making_problems
from workbench.document.problem import Place, Problem, text_problems
from workbench.document.project import LARGEST_NUMBER, MOST_POINTS, TEXT_LENGTHS, Client, Paper, Project
from workbench.draft import FEWEST_PANELS, MOST_PANELS, Design, Quarter, ShapePoint, Share

LEAST_MEASURE = 12.7
"""mm: half an inch; no measurement of a body is shorter, and one of nothing is a slip of the key."""
_SAME_MM = 1e-6


def problems(project: Project) -> Iterator[Problem]:
    """All that is wrong with a project, in the order of its fields."""
    yield from client_problems(project.client)
    for key, length in project.measurements.items():
        yield from _measurement_problems(key, length)
    yield from _design_problems(project.design)
    yield from making_problems(project.making, project.design.panel_count)
    yield from _limit_problems(project.limits)
    yield from paper_problems(project.paper)
    yield from cloth_problems(project.cloths)
    yield from plan_problems(project.plans, project.cloths)
    yield from quote_problems(project.quoting)


def client_problems(client: Client) -> Iterator[Problem]:
    """Texts that are too long or cannot be kept, and a date that is none."""
    for name, most in TEXT_LENGTHS.items():
        yield from text_problems(getattr(client, name), most, ("client", name))
    if client.date and not _is_date(client.date):
        yield ("client", "date"), "must be written as year-month-day, for example 2031-05-20"


def paper_problems(paper: Paper) -> Iterator[Problem]:
    """Lengths of less than nothing; what does not fit together is for the printer to say."""
    for name in ("margin_mm", "overlap_mm", "roll_width_mm"):
        length: float = getattr(paper, name)
        if not length <= LARGEST_NUMBER:
            yield ("paper", name), "is no usable length"
        elif length < 0:
            yield ("paper", name), "cannot be less than nothing"


def _is_date(text: str) -> bool:
    try:
        return len(text) == 10 and date.fromisoformat(text).isoformat() == text
    except ValueError:
        return False


def _measurement_problems(key: str, length: Length) -> Iterator[Problem]:
    """A measurement nobody knows, or one whose words say another length than its figure."""
    place = ("measurements", key)
    if key not in BY_KEY:
        yield place, "is no measurement known here"
        return
    try:
        said = read_length(length.typed, length.unit, low=LEAST_MEASURE)
    except LengthError as error:
        yield (*place, "typed"), f"cannot be read as a length ({str(error).rstrip('.')})"
        return
    if (said.typed, said.unit) != (length.typed, length.unit):
        yield (*place, "typed"), f"must be a bare figure in {length.unit}"
    if not abs(said.mm - length.mm) <= _SAME_MM:
        yield (*place, "mm"), f"is {length.mm:g}, but “{length.typed}” {length.unit} is {said.mm:g} mm"


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
