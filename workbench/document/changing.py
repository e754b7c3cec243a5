"""A record with some of its entries changed, read as strictly as from a file."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields
from typing import TypeVar

from workbench.document.problem import Problems
from workbench.document.records import plain, record_of
from workbench.document.tree import TreeError, say_place

_Record = TypeVar("_Record")


def with_entries(record: _Record, changes: Mapping[str, object], what: str) -> _Record:
    """The record with these entries; ValueError in one sentence, which calls the record ``what``."""
    named = {field.name for field in fields(record)}  # type: ignore[arg-type]  # every record is a dataclass
    for name in changes:
        if name not in named:
            raise ValueError(f"The {what} has nothing called “{name}”.")
    try:
        changed: _Record = record_of(type(record), {**plain(record), **plain(changes)}, (what,))
    except TreeError as error:
        raise ValueError(_sentence(str(error))) from error
    return changed


def refuse(problems: Problems) -> None:
    """ValueError in one sentence for the first of the problems, if there is any."""
    for place, reason in problems:
        raise ValueError(_sentence(f"{say_place(place)} {reason}."))


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}"
