"""Search and order of the book."""

from __future__ import annotations

import pytest

from workbench.book import Entry, Found, Matter, Order, found_by, in_order
from workbench.book.order import folded

TODAY = "2031-06-10"


def entry(place: str, name: str = "", **more: object) -> Entry:
    return Entry(Found(place, 1, 1), name, **more)  # type: ignore[arg-type]


BOOK = (
    entry("z.bodice", "Émile", date="2031-01-01", next_fitting="2031-06-10"),
    entry("y.bodice", "anna", date="2031-03-01", next_fitting="2031-06-09"),
    entry("brides/x.bodice", "Zoë", style="Plunge, 4 + 3 panels", next_fitting="2031-07-01"),
    entry("w.bodice", "Berta", date="2030-03-01", matters=(Matter("over", "above"),)),
    entry("v.bodice", "Cara", matters=(Matter("note", "not measured"), Matter("stop", "no draft"))),
    entry("a.bodice", reason="damaged"),
    entry("m_unnamed.bodice"),
)


@pytest.mark.parametrize(
    ("order", "titles"),
    [
        ("client", ["anna", "Berta", "Cara", "Émile", "m_unnamed", "Zoë", "a"]),
        ("date", ["anna", "Émile", "Berta", "Cara", "m_unnamed", "Zoë", "a"]),
        ("next_fitting", ["Émile", "Zoë", "anna", "Berta", "Cara", "m_unnamed", "a"]),
        ("open", ["a", "Cara", "Berta", "anna", "Émile", "m_unnamed", "Zoë"]),
    ],
)
def test_orders(order: Order, titles: list[str]) -> None:
    assert [one.title for one in in_order(BOOK, order, TODAY)] == titles


@pytest.mark.parametrize(
    ("wanted", "titles"),
    [
        ("", ["Émile", "anna", "Zoë", "Berta", "Cara", "a", "m_unnamed"]),
        ("emile", ["Émile"]),
        ("ZOE plunge", ["Zoë"]),
        ("brides", ["Zoë"]),
        ("unnamed", ["m_unnamed"]),
        ("  nobody ", []),
    ],
)
def test_searches(wanted: str, titles: list[str]) -> None:
    assert [one.title for one in found_by(BOOK, wanted)] == titles


def test_case_and_accents_make_no_difference() -> None:
    # Unicode's own: ß folds to ss, é is e with a combining accent (UAX 15, from memory)
    assert folded("Straße É") == "strasse e"
    assert folded("PLAIN") == "plain"
