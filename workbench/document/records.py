"""Frozen records to plain data and back, strictly, by their own type hints.

A general validation library is slower to load than everything else that opening a
project needs; it only makes the schema, and the tests hold this reader against it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from decimal import Decimal
from functools import cache
from types import NoneType, UnionType
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

from workbench.document.problem import Place
from workbench.document.tree import TreeError

AMOUNT = re.compile(r"-?[0-9]{1,30}(\.[0-9]{1,30})?")
"""How an amount is written: plainly, so that it is the same amount to the last decimal."""
_WANTED = {str: "text in quotation marks", float: "a number", int: "a whole number", bool: "true or false"}


def plain(value: Any) -> Any:
    """Records as groups with every entry in order, tuples as lists, amounts as text, the rest as it is."""
    if is_dataclass(value):
        return {field.name: plain(getattr(value, field.name)) for field in fields(value)}
    if isinstance(value, Mapping):
        return {name: plain(inner) for name, inner in value.items()}
    if isinstance(value, tuple):
        return [plain(inner) for inner in value]
    if isinstance(value, Decimal):
        return said_plainly(value)
    return value


def said_plainly(amount: Decimal) -> str:
    """An amount in figures, the same text for equal amounts: ``12.5``, ``100``, ``0``."""
    if not amount.is_finite() or amount == 0:
        return "0" if amount.is_zero() else str(amount)
    text = f"{amount:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def record_of(kind: Any, group: Any, place: Place) -> Any:
    """A record of class ``kind`` from a group of entries.

    TreeError names the first entry that is missing, not known, or of another kind.
    """
    if not isinstance(group, dict):
        raise TreeError(place, "must be a group of entries in braces")
    kinds = _kinds(kind)
    for name in group:
        if name not in kinds:
            raise TreeError((*place, name), "is not known here")
    for name in kinds:
        if name not in group:
            # a default that steps in for a lost entry would be cut in cloth
            raise TreeError((*place, name), "is missing")
    return kind(**{name: _value(inner, group[name], (*place, name)) for name, inner in kinds.items()})


@cache
def _kinds(record: Any) -> dict[str, Any]:
    """What each entry of a record holds, in order."""
    hints = get_type_hints(record)
    return {field.name: hints[field.name] for field in fields(record)}


def _value(kind: Any, value: Any, place: Place) -> Any:
    if is_dataclass(kind):
        return record_of(kind, value, place)
    inner = get_args(kind)
    match get_origin(kind):
        case None:
            return _single(kind, value, place)
        case origin if origin is Literal:
            return _choice(inner, value, place)
        case origin if origin in (Union, UnionType):
            only = next(one for one in inner if one is not NoneType)
            return None if value is None else _value(only, value, place)
        case origin if origin is tuple and inner[-1] is not Ellipsis:
            return _each_of(inner, value, place)
        case origin if origin is tuple:
            return _items(inner[0], value, place)
        case _:
            return _named_items(inner[1], value, place)


def _single(kind: type, value: Any, place: Place) -> Any:
    if type(value) is kind:
        return value
    if kind is float and type(value) is int:
        return float(value)
    if kind is Decimal:
        return _amount(value, place)
    raise TreeError(place, f"must be {_WANTED[kind]}")


def _amount(value: Any, place: Place) -> Decimal:
    # as a bare number it would be read as a binary one first, and no longer be the same amount
    if not isinstance(value, str) or not AMOUNT.fullmatch(value):
        raise TreeError(place, "must be an amount in quotation marks, such as “12.50”")
    return Decimal(value)


def _choice(choices: tuple[Any, ...], value: Any, place: Place) -> Any:
    for choice in choices:
        if type(value) is type(choice) and value == choice:
            return choice
    *others, last = map(str, choices)
    raise TreeError(place, f"must be {', '.join(others)} or {last}")


def _items(kind: Any, value: Any, place: Place) -> tuple[Any, ...]:
    if not isinstance(value, list):
        raise TreeError(place, "must be a list in square brackets")
    return tuple(_value(kind, item, (*place, number)) for number, item in enumerate(value))


def _each_of(kinds: tuple[Any, ...], value: Any, place: Place) -> tuple[Any, ...]:
    if not isinstance(value, list) or len(value) != len(kinds):
        raise TreeError(place, f"must be a list of {len(kinds)} in square brackets")
    pairs = enumerate(zip(kinds, value, strict=True))
    return tuple(_value(kind, item, (*place, number)) for number, (kind, item) in pairs)


def _named_items(kind: Any, value: Any, place: Place) -> dict[str, Any]:
    if not isinstance(value, dict):
        raise TreeError(place, "must be a group of entries in braces")
    return {name: _value(kind, item, (*place, name)) for name, item in value.items()}
