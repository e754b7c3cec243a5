"""What the bead plan of a project may hold.

Bounds keep out slips of the key; what merely fits no bead is a finding of the plan, which
can be put right. All are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from math import isfinite

from workbench.beads import BeadKind, BeadPlan, BeadRun, BeadScatter
from workbench.cloth import finer_than_kept
from workbench.document.cloth_checks import MOST_PRICE, name_problems
from workbench.document.problem import Place, Problems, twice
from workbench.draft import MOST_PANELS

MOST_KINDS, MOST_RUNS, MOST_SCATTERS = 60, 100, 60
MOST_IN_PATTERN = 40
MOST_LINE_POINTS = 40
Span = tuple[float, float]

KIND_SPANS: Mapping[str, Span] = {
    "size_mm": (1.0, 60.0),
    "per_inch": (0.1, 100.0),
    "strand_mm": (10.0, 10_000.0),
    "per_strand": (1, 10_000),
}
RUN_SPANS: Mapping[str, Span] = {
    "spacing_mm": (0.0, 1000.0),
    "inset_mm": (0.0, 1000.0),
    "rows": (1, 40),
    "row_mm": (0.0, 500.0),
    "start": (0.0, 1.0),
    "end": (0.0, 1.0),
    "seam": (1, 2 * MOST_PANELS - 1),
}
SCATTER_SPANS: Mapping[str, Span] = {"per_square_inch": (0.0, 10_000.0), "seed": (0, 9999)}
_BANDS = ("bone_mm", "seam_mm", "edge_mm", "opening_mm", "arm_mm", "arm_depth_mm")
BAND_SPANS: Mapping[str, Span] = dict.fromkeys(_BANDS, (0.0, 1000.0))
PLAN_SPANS: Mapping[str, Span] = {"reserve_percent": (0.0, 500.0), "per_minute": (0.0, 1000.0)}
WEIGHT_SPAN: Span = (0.0, 1000.0)
PLACE_SPAN: Span = (-10_000.0, 10_000.0)


def bead_problems(plan: BeadPlan) -> Problems:
    """Figures and names that are none, and kinds that are named and not there."""
    place: Place = ("beads",)
    yield from _listed(plan.kinds, MOST_KINDS, (*place, "kinds"))
    yield from _listed(plan.runs, MOST_RUNS, (*place, "runs"))
    yield from _listed(plan.scatters, MOST_SCATTERS, (*place, "scatters"))
    for number, kind in enumerate(plan.kinds):
        yield from _kind_problems(kind, (*place, "kinds", number))
    known = {kind.name for kind in plan.kinds}
    for number, run in enumerate(plan.runs):
        yield from _run_problems(run, known, (*place, "runs", number))
    for number, scatter in enumerate(plan.scatters):
        yield from _scatter_problems(scatter, known, (*place, "scatters", number))
    yield from _spans(plan.bands, BAND_SPANS, (*place, "bands"))
    yield from _spans(plan, PLAN_SPANS, place)


def _listed(entries: Sequence[BeadKind | BeadRun | BeadScatter], most: int, place: Place) -> Problems:
    """How many, and no name twice."""
    if len(entries) > most:
        yield place, f"are more than {most}"
    for number, entry in enumerate(entries):
        yield from name_problems(entry.name, (*place, number, "name"))
    yield from twice([entry.name.casefold() for entry in entries], "the name", place)


def _kind_problems(kind: BeadKind, place: Place) -> Problems:
    yield from _spans(kind, KIND_SPANS, place)
    price = kind.price
    if not price.is_finite() or not 0 <= price <= MOST_PRICE:
        yield (*place, "price"), f"must be an amount from 0 to {MOST_PRICE:,}"
    elif finer_than_kept(price):
        yield (*place, "price"), "has more decimals than any price"


def _run_problems(run: BeadRun, known: set[str], place: Place) -> Problems:
    yield from _spans(run, RUN_SPANS, place)
    if run.start > run.end:
        yield (*place, "start"), "must not lie behind the end"
    if not 1 <= len(run.pattern) <= MOST_IN_PATTERN:
        yield (*place, "pattern"), f"has {len(run.pattern)} kinds; 1 to {MOST_IN_PATTERN} are possible"
    yield from _known(run.pattern, known, (*place, "pattern"))
    yield from _points(run, "points", place)


def _scatter_problems(scatter: BeadScatter, known: set[str], place: Place) -> Problems:
    yield from _spans(scatter, SCATTER_SPANS, place)
    for panel in scatter.panels:
        if not 0 <= panel < 2 * MOST_PANELS:
            yield (*place, "panels"), f"names panel {panel}; 0 to {2 * MOST_PANELS - 1} are possible"
    yield from twice(scatter.panels, "panel", (*place, "panels"))
    if not 1 <= len(scatter.mix) <= MOST_IN_PATTERN:
        yield (*place, "mix"), f"has {len(scatter.mix)} kinds; 1 to {MOST_IN_PATTERN} are possible"
    yield from _known([part.kind for part in scatter.mix], known, (*place, "mix"))
    yield from twice([part.kind for part in scatter.mix], "the kind", (*place, "mix"))
    for number, part in enumerate(scatter.mix):
        yield from _spans(part, {"weight": WEIGHT_SPAN}, (*place, "mix", number))
    yield from _points(scatter, "thin_to", place)


def _points(record: BeadRun | BeadScatter, name: str, place: Place) -> Problems:
    """How many points there are; where they lie is for the plan to say."""
    points = getattr(record, name)
    if len(points) > MOST_LINE_POINTS:
        yield (*place, name), f"has {len(points)} points; at most {MOST_LINE_POINTS} are possible"
    for number, point in enumerate(points):
        yield from _spans(point, {"u": PLACE_SPAN, "t": PLACE_SPAN}, (*place, name, number))


def _known(names: Iterable[str], known: set[str], place: Place) -> Problems:
    for name in names:
        if name not in known:
            yield place, f"names the kind “{name[:60]}”, which is none"


def _spans(record: object, spans: Mapping[str, Span], place: Place) -> Problems:
    for name, (low, high) in spans.items():
        value = getattr(record, name)
        if value is not None and not (isfinite(value) and low <= value <= high):
            yield (*place, name), f"must be from {low:g} to {high:g}"
