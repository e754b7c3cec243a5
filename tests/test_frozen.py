"""A frozen record behaves as Python's own frozen dataclass does, whichever way it is made."""

from __future__ import annotations

import copy
import dataclasses
import pickle
import subprocess
import sys
from functools import cached_property
from inspect import signature
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from workbench import frozen

ROOT = Path(__file__).parents[1]


@frozen.dataclass(frozen=True)
class Ours:
    """A record."""

    wide: float
    names: tuple[str, ...] = ()
    more: list[int] = dataclasses.field(default_factory=list)

    @cached_property
    def twice(self) -> float:
        return 2 * self.wide


@dataclasses.dataclass(frozen=True)
class Theirs:
    """A record."""

    wide: float
    names: tuple[str, ...] = ()
    more: list[int] = dataclasses.field(default_factory=list)

    @cached_property
    def twice(self) -> float:
        return 2 * self.wide


@frozen.dataclass(frozen=True)
class One:
    """A record of one field."""

    only: Any


BOTH = pytest.mark.parametrize("kind", [Ours, Theirs])


@BOTH
def test_it_is_given_what_a_dataclass_is_given(kind: Any) -> None:
    record = kind(2.0, more=[3])
    assert (record.wide, record.names, record.more, record.twice) == (2.0, (), [3], 4.0)
    assert kind(1.0).more is not kind(1.0).more
    with pytest.raises(TypeError, match=r"__init__\(\) missing 1 required positional argument: 'wide'"):
        kind()
    with pytest.raises(TypeError, match="unexpected keyword argument 'broad'"):
        kind(1.0, broad=2.0)


@BOTH
def test_it_cannot_be_changed(kind: Any) -> None:
    record = kind(2.0)
    with pytest.raises(dataclasses.FrozenInstanceError, match="cannot assign to field 'wide'"):
        record.wide = 3.0
    with pytest.raises(dataclasses.FrozenInstanceError, match="cannot delete field 'wide'"):
        del record.wide
    assert dataclasses.replace(record, wide=3.0) == kind(3.0)


@BOTH
def test_two_are_equal_where_their_fields_are(kind: Any) -> None:
    assert kind(2.0) == kind(2.0)
    assert kind(2.0) != kind(3.0)
    assert kind(2.0) != (2.0, (), [])
    with pytest.raises(TypeError, match="unhashable type: 'list'"):
        hash(kind(2.0))
    again = pickle.loads(pickle.dumps(kind(2.0, ("a",))))
    assert again == kind(2.0, ("a",)) == copy.deepcopy(again)


def test_both_say_the_same_of_themselves() -> None:
    assert repr(Ours(2.0)).replace("Ours", "Theirs") == repr(Theirs(2.0))
    assert dataclasses.asdict(Ours(2.0)) == dataclasses.asdict(Theirs(2.0))
    assert [field.name for field in dataclasses.fields(Ours)] == ["wide", "names", "more"]
    assert Ours.__match_args__ == Theirs.__match_args__
    assert list(signature(Ours).parameters) == list(signature(Theirs).parameters)


def test_one_array_is_equal_to_itself() -> None:
    array = np.zeros(3)
    assert One(array) == One(array)
    assert hash(One(3)) == hash(One(3))


def test_what_a_class_says_itself_stays() -> None:
    @frozen.dataclass(frozen=True, eq=False)
    class Apart:
        """Never equal to another."""

        wide: float

        def __repr__(self) -> str:
            return f"{self.wide} wide"

    one = Apart(1.0)
    assert repr(one) == "1.0 wide"
    assert one != Apart(1.0)
    assert one in {one}


def test_what_can_be_changed_is_not_made_here() -> None:
    with pytest.raises(ValueError, match="only what is frozen is made here"):
        frozen.dataclass(frozen=False)


def test_no_frozen_record_of_the_start_is_made_the_long_way() -> None:
    code = (
        "import dataclasses, sys\n"
        "from workbench.cli import main\n"
        "import workbench.ui.app\n"
        "for name, module in sys.modules.items():\n"
        "    for kind in vars(module).values() if name.startswith('workbench.') else ():\n"
        "        if isinstance(kind, type) and kind.__module__ == name and dataclasses.is_dataclass(kind):\n"
        "            if kind.__dataclass_params__.frozen and '__slots__' not in vars(kind):\n"
        "                print(f'{name}.{kind.__qualname__}')\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, check=True, capture_output=True, text=True, timeout=60
    )
    assert done.stdout.split() == []
