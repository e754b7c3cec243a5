"""Fittings of every kind that a project may hold."""

from __future__ import annotations

from hypothesis import strategies as st

from workbench.body import LEVELS
from workbench.document.fitting_checks import MOST_MM, WIDEST_GAP_MM
from workbench.fitting import CHANGE_KINDS, Change, Fitting, Gaps

_texts = st.text(st.characters(exclude_categories=["Cs"]), max_size=30)
_gaps = st.none() | st.floats(0, WIDEST_GAP_MM)


@st.composite
def _changes(draw: st.DrawFn, panels: tuple[int, int]) -> Change:
    kind, amount = draw(st.sampled_from(CHANGE_KINDS)), draw(st.floats(-MOST_MM, MOST_MM))
    on, note = draw(st.booleans()), draw(_texts)
    count = sum(panels)
    if kind in ("neckline", "hem"):
        return Change(kind, amount, u=draw(st.floats(0, count)), on=on, note=note)
    seam = draw(st.integers(1, count - 1)) if kind == "seam" else None
    return Change(kind, amount, draw(st.sampled_from(LEVELS)), seam, on=on, note=note)


@st.composite
def _fittings(draw: st.DrawFn) -> Fitting:
    panels = draw(st.integers(2, 4)), draw(st.integers(2, 4))
    return Fitting(
        date=draw(st.just("") | st.dates().map(str)),
        cloth=draw(_texts),
        panels=panels,
        gaps=draw(st.builds(Gaps, _gaps, _gaps, _gaps)),
        changes=tuple(draw(st.lists(_changes(panels), max_size=4))),
        notes=draw(_texts),
        picture=draw(_texts),
        applied=draw(st.booleans()),
    )


fittings = st.lists(_fittings(), max_size=3).map(tuple)

FITTED = (
    Fitting(
        "2031-05-20",
        "calico",
        (3, 3),
        Gaps(76.2, 50.8, 50.8),
        (
            Change("seam", 6.35, "waist", 3),
            Change("length", -12.7, "waist"),
            Change("neckline", 9.5, u=1.5, note="for the brooch"),
        ),
    ),
)
"""One fitting, with changes of three kinds (figures invented)."""
