"""The strict reader of records against pydantic, which reads the same records by the same hints."""

from __future__ import annotations

import json
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import example as case
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import TypeAdapter, ValidationError

from tests.document import example, projects
from workbench.document import Project
from workbench.document.records import plain, record_of
from workbench.document.tree import TreeError

ADAPTER = TypeAdapter(Project)
OTHERS: list[Any] = [
    None,
    True,
    False,
    0,
    1,
    8,
    -2.5,
    "",
    "in",
    "waist",
    "A4",
    [],
    [0.5],
    {},
    {"mm": 1.0},
    [None],
    [[]],
]

Tree = dict[str, Any]


def ours(tree: Tree) -> object:
    try:
        return record_of(Project, tree, ())
    except TreeError:
        return None


def theirs(tree: Tree) -> object:
    try:
        return ADAPTER.validate_json(json.dumps(tree), strict=True)
    except ValidationError:
        return None


def places(value: object, place: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    """Where in a tree another value can be put."""
    if isinstance(value, dict):
        inner = [found for name in value for found in places(value[name], (*place, name))]
    elif isinstance(value, list):
        inner = [found for number, item in enumerate(value) for found in places(item, (*place, number))]
    else:
        inner = []
    return [place, *inner] if place else inner


def is_amount(value: Any, place: tuple[str | int, ...]) -> bool:
    """Whether the project holds an amount of money there."""
    for step in place:
        value = value[step] if isinstance(step, int) or isinstance(value, dict) else getattr(value, step)
    return isinstance(value, Decimal)


@given(projects)
@settings(max_examples=60, deadline=None)
def test_both_write_the_same_and_read_it_back(project: Project) -> None:
    tree = plain(project)
    assert tree == ADAPTER.dump_python(project, mode="json")
    assert ours(tree) == theirs(tree) == project


@given(projects, st.data(), st.sampled_from(OTHERS))
@settings(max_examples=200, deadline=None)
def test_both_refuse_the_same_wrong_values(project: Project, data: st.DataObject, other: object) -> None:
    tree = json.loads(json.dumps(plain(project)))
    place = data.draw(st.sampled_from([each for each in places(tree) if not is_amount(project, each)]))
    inner = tree
    for step in place[:-1]:
        inner = inner[step]
    inner[place[-1]] = other
    missing = isinstance(other, dict) and other == {} and place != ("measurements",)
    if missing:
        # the one wanted difference: an entry left out is refused, not filled in with its default
        assert ours(tree) is None
    else:
        assert ours(tree) == theirs(tree)


@given(st.sampled_from(["colour", "Unit", "", "unit "]))
@case("format")
def test_both_refuse_an_entry_nobody_knows(name: str) -> None:
    tree = {**plain(example()), name: 1}
    assert ours(tree) is theirs(tree) is None


def test_whole_figures_are_read_as_lengths() -> None:
    tree = plain(example())
    tree["design"]["opening_mm"] = 40
    read = record_of(Project, tree, ())
    assert read.design.opening_mm == 40.0
    assert type(read.design.opening_mm) is float


def with_rate(rate: object) -> Tree:
    tree: Tree = plain(example())
    tree["quoting"]["rate"] = rate
    return tree


@pytest.mark.parametrize("text", ["12.50", "0", "0.000001", "-3", "123456789012345678.123456", "007"])
def test_amounts_are_read_to_the_last_decimal(text: str) -> None:
    """As pydantic reads the same text; no figure on the way is a binary one."""
    read = record_of(Project, with_rate(text), ())
    assert read.quoting.rate == ADAPTER.validate_python(with_rate(text)).quoting.rate
    assert str(read.quoting.rate) == str(Decimal(text))


@pytest.mark.parametrize(
    "other",
    [
        12.5,
        12,
        True,
        None,
        "",
        " 2",
        "2 ",
        "1e5",
        "NaN",
        "Infinity",
        "1_000",
        "1,5",
        ".5",
        "5.",
        "٣",
        "9" * 31,
    ],
)
def test_amounts_in_no_other_spelling(other: object) -> None:
    with pytest.raises(TreeError, match="quoting › rate must be an amount in quotation marks, such as"):
        record_of(Project, with_rate(other), ())


@pytest.mark.parametrize(
    ("amount", "text"), [("12.50", "12.5"), ("1E+3", "1000"), ("-0.0", "0"), ("100", "100"), ("0E-9", "0")]
)
def test_equal_amounts_are_written_alike(amount: str, text: str) -> None:
    assert plain(Decimal(amount)) == text
