"""Cuttings for quotes: one really cut, and lists of notions made by hand. All invented."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache

from hypothesis import strategies as st

from tests.pieces.figures import outcome
from workbench.pieces import Cutting, Making, Notion, cutting_of


@cache
def usual_cutting() -> Cutting:
    return cutting_of(outcome(), Making())


def cutting_with(notions: Iterable[Notion] = ()) -> Cutting:
    return Cutting((), (), None, None, tuple(notions), (), (), ())


def notion(key: str, count: int | None = None, length_mm: float | None = None, each: float = 0.0) -> Notion:
    return Notion(key, key.capitalize(), count, length_mm, "", {"each": each} if each else {})


KEYS = (
    "bone/flat_steel/200",
    "bone/spiral_steel/190.5",
    "bone/plastic/132",
    "channels",
    "tips",
    "busk",
    "eyelets",
    "cord",
    "binding",
    "thread",
    "beads/4",
)
COUNTS = st.none() | st.integers(1, 10_000)
LENGTHS = st.none() | st.floats(0.1, 1e6)
NOTIONS = st.lists(
    st.builds(notion, st.sampled_from(KEYS), COUNTS, LENGTHS), unique_by=lambda one: one.key
).map(tuple)
