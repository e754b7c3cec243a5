"""Where something is wrong with a project, and why."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Iterator

Place = tuple[str | int, ...]
"""A path of names and list numbers, from the whole project inwards."""
Problem = tuple[Place, str]
"""The place, and a reason that can follow it in a sentence."""
Problems = Iterator[Problem]


def twice(values: Iterable[Hashable], what: str, place: Place) -> Problems:
    """The first value that stands there a second time; it is named where it is a word or a number."""
    seen: set[Hashable] = set()
    for value in values:
        if value in seen:
            named = f" {value}" if isinstance(value, str | int) else ""
            yield place, f"names {what}{named} twice"
            return
        seen.add(value)


def text_problems(text: str, most: int, place: Place) -> Problems:
    """A text that is too long or cannot be kept."""
    if len(text) > most:
        yield place, f"is longer than {most} characters"
    elif not keepable(text):
        yield place, "holds half a character, which cannot be kept"


def keepable(text: str) -> bool:
    """Whether a text can be written as UTF-8; half of a pair of surrogates, as some pastes leave, cannot."""
    try:
        text.encode("utf-8")
    except UnicodeEncodeError:
        return False
    return True
