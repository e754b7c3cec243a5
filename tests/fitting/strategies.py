"""Corrections of every kind for a design."""

from __future__ import annotations

from hypothesis import strategies as st

from workbench.draft import Corrections, Design, Lengthened, Raised, TakenIn


@st.composite
def corrections(draw: st.DrawFn, design: Design) -> Corrections:
    """A few of each, an inch and less; some groups of raised places, some places on seams."""
    count = design.panel_count
    taken = st.builds(TakenIn, st.integers(1, count - 1), st.sampled_from(design.levels), st.floats(-20, 20))
    longer = st.builds(Lengthened, st.sampled_from(design.levels[:-1]), st.floats(-15, 15))
    places = st.floats(0, count) | st.integers(0, count).map(float)
    raised = st.builds(Raised, st.sampled_from(["neckline", "hem"]), places, st.floats(-12, 12))
    return Corrections(
        tuple(draw(st.lists(taken, max_size=4))),
        tuple(draw(st.lists(longer, max_size=2))),
        tuple(tuple(group) for group in draw(st.lists(st.lists(raised, min_size=1, max_size=3), max_size=2))),
    )
