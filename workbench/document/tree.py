"""JSON read strictly: no entry twice, no figure that is none, and every fault with its place."""

from __future__ import annotations

import json
from collections.abc import Mapping
from math import isfinite
from typing import Any

from workbench.document.problem import Place, keepable

DEEPEST = 12
"""Groups within groups that a file may have; a project has half as many (own choice)."""


class TreeError(ValueError):
    """A fault in the text of a file: one sentence with the place, without the file's name."""

    def __init__(self, place: Place, reason: str) -> None:
        super().__init__(f"{say_place(place)} {reason}.".lstrip())
        self.place = place


def say_place(place: Place) -> str:
    """A path of names and list numbers in words: ``design › hem › no. 3 › t``."""
    return " › ".join(f"no. {step + 1}" if isinstance(step, int) else step[:60] for step in place)


class _Twice:
    """Stands in the tree for a group that has an entry twice, until its place is known."""

    def __init__(self, name: str) -> None:
        self.name = name


class _NoNumber:
    """Stands in the tree for a figure that JSON has no spelling for."""


def parsed(data: bytes, largest: float, larger: Mapping[str, float]) -> Any:
    """The JSON tree in UTF-8 ``data``; TreeError for anything else.

    Figures go up to ``largest``, and in some entries of the whole up to what ``larger`` says.
    """
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise TreeError((), f"line {line} is no text; the file is damaged or of another kind") from error
    if not text.strip():
        raise TreeError((), "the file is empty")
    try:
        tree = json.loads(
            text,
            object_pairs_hook=_group,
            parse_constant=lambda _: _NoNumber(),
            parse_float=_figure,
            parse_int=_whole_figure,
        )
    except json.JSONDecodeError as error:
        raise TreeError((), _syntax(error, text)) from error
    except RecursionError as error:
        raise TreeError((), "the file is nested too deeply to be a project") from error
    _check(tree, (), largest, larger)
    return tree


def _group(pairs: list[tuple[str, Any]]) -> dict[str, Any] | _Twice:
    group: dict[str, Any] = {}
    for name, value in pairs:
        if name in group:
            return _Twice(name)
        group[name] = value
    return group


def _figure(text: str) -> float | _NoNumber:
    value = float(text)
    return value if isfinite(value) else _NoNumber()


def _whole_figure(text: str) -> int | _NoNumber:
    # Python refuses to read figures of some thousand digits, and nobody needs one of twenty
    return int(text) if len(text) <= 20 else _NoNumber()


def _syntax(error: json.JSONDecodeError, text: str) -> str:
    if error.pos >= len(text.rstrip()):
        return f"the file ends in the middle, in line {error.lineno}"
    return f"line {error.lineno}, column {error.colno} is damaged ({error.msg.lower()})"


def _check(value: Any, place: Place, largest: float, larger: Mapping[str, float]) -> None:
    """TreeError for the first thing in the tree that no project can hold."""
    if len(place) > DEEPEST:
        raise TreeError((), "the file is nested too deeply to be a project")
    if isinstance(value, dict):
        for name, inner in value.items():
            most = larger.get(name, largest) if not place else largest
            _check(inner, (*place, name), most, larger)
    elif isinstance(value, list):
        for number, inner in enumerate(value):
            _check(inner, (*place, number), largest, larger)
    elif isinstance(value, _Twice):
        raise TreeError((*place, value.name), "stands there twice")
    elif isinstance(value, _NoNumber):
        raise TreeError(place, "is no usable number")
    elif isinstance(value, str) and not keepable(value):
        raise TreeError(place, "holds half a character, which cannot be kept")
    elif isinstance(value, int | float) and not -largest <= value <= largest:
        raise TreeError(place, "is too large a number")
