"""Any bead plan that a project may hold, and one with a bit of everything (invented)."""

from __future__ import annotations

from hypothesis import strategies as st

from tests.document.cloth_values import NAMES, amounts
from workbench.beads import (
    BeadBands,
    BeadKind,
    BeadPlan,
    BeadRun,
    BeadScatter,
    BeadWeight,
    usual_kinds,
)
from workbench.document.bead_checks import BAND_SPANS, KIND_SPANS, PLAN_SPANS, RUN_SPANS, SCATTER_SPANS, Span
from workbench.draft import ShapePoint

BEADED = BeadPlan(
    kinds=usual_kinds(),
    runs=(
        BeadRun("Edge", "neckline", ("Pearl 6 mm", "Pearl 4 mm"), 8.0),
        BeadRun("Down the seam", "seam", ("Seed bead 8/0",), 4.0, seam=1, towards="front"),
        BeadRun(
            "Swirl", "drawn", ("Pearl 4 mm",), 6.0, points=(ShapePoint(0.3, -40.0), ShapePoint(1.6, 20.0))
        ),
    ),
    scatters=(
        BeadScatter(
            "Front",
            (0, 1),
            (BeadWeight("Pearl 4 mm", 2.0), BeadWeight("Seed bead 8/0")),
            4.0,
            thin_from="neckline",
            thin_to=(ShapePoint(0.0, 0.0), ShapePoint(6.0, 0.0)),
        ),
    ),
)
_points = st.lists(
    st.builds(ShapePoint, st.floats(-1, 9), st.floats(-400, 400), st.booleans()), max_size=4
).map(tuple)


def _within(span: Span) -> st.SearchStrategy[float]:
    return st.floats(*span)


def _whole(span: Span) -> st.SearchStrategy[int]:
    return st.integers(int(span[0]), int(span[1]))


def _figures(spans: dict[str, Span], *left_out: str) -> dict[str, st.SearchStrategy[float]]:
    return {name: _within(span) for name, span in spans.items() if name not in left_out}


def _kinds(name: str) -> st.SearchStrategy[BeadKind]:
    return st.builds(
        BeadKind,
        st.just(name),
        _within(KIND_SPANS["size_mm"]),
        st.none() | _within(KIND_SPANS["per_inch"]),
        _within(KIND_SPANS["strand_mm"]),
        st.none() | _whole(KIND_SPANS["per_strand"]),
        amounts(1000, 3),
        st.sampled_from(["disc", "ring", "diamond", "square", "triangle", "bar"]),
    )


def _runs(name: str, kinds: list[str]) -> st.SearchStrategy[BeadRun]:
    ends = st.lists(st.floats(0, 1), min_size=2, max_size=2).map(sorted)
    pattern = st.lists(st.sampled_from(kinds), min_size=1, max_size=4).map(tuple)
    return st.tuples(ends, pattern).flatmap(
        lambda drawn: st.builds(
            BeadRun,
            st.just(name),
            st.sampled_from(["neckline", "hem", "seam", "drawn"]),
            st.just(drawn[1]),
            rows=_whole(RUN_SPANS["rows"]),
            start=st.just(drawn[0][0]),
            end=st.just(drawn[0][1]),
            seam=_whole(RUN_SPANS["seam"]),
            towards=st.sampled_from(["front", "back", "both"]),
            points=_points,
            **_figures(dict(RUN_SPANS), "rows", "start", "end", "seam"),
        )
    )


def _scatters(name: str, kinds: list[str]) -> st.SearchStrategy[BeadScatter]:
    weights = st.builds(BeadWeight, st.sampled_from(kinds), st.floats(0, 9))
    return st.builds(
        BeadScatter,
        st.just(name),
        st.lists(st.integers(0, 7), unique=True, max_size=3).map(tuple),
        st.lists(weights, min_size=1, max_size=3, unique_by=lambda part: part.kind).map(tuple),
        _within(SCATTER_SPANS["per_square_inch"]),
        _whole(SCATTER_SPANS["seed"]),
        st.sampled_from(["none", "neckline", "hem"]),
        _points,
    )


@st.composite
def bead_plans(draw: st.DrawFn) -> BeadPlan:
    """Some kinds, and where there are any, some runs and scatters of them."""
    names = st.lists(NAMES, max_size=3, unique_by=str.casefold)
    kinds = draw(names)
    runs, scatters = (draw(names), draw(names)) if kinds else ([], [])
    return BeadPlan(
        tuple(draw(_kinds(name)) for name in kinds),
        tuple(draw(_runs(name, kinds)) for name in runs),
        tuple(draw(_scatters(name, kinds)) for name in scatters),
        draw(st.builds(BeadBands, **_figures(dict(BAND_SPANS)))),
        **{name: draw(_within(span)) for name, span in PLAN_SPANS.items()},
    )
