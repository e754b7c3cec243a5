"""What is different between two states of a project, in words: which field, and what it says in each."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from workbench.body import BY_KEY, LIMIT_TABLE, Length, say_closely, shown
from workbench.document.project import Project
from workbench.document.records import plain

_PARTS: Mapping[str, str] = {
    "client": "Client",
    "design": "Shape",
    "making": "Making",
    "paper": "Paper",
    "cloths": "Cloths",
    "plans": "Lay plans",
    "quoting": "Costs",
    "done": "Steps ticked off",
    "fittings": "Fittings",
    "beads": "Beads",
    "earlier": "Earlier measurements",
    "style_name": "Shape begun from",
    "pictures": "Pictures",
    "behind": "Picture behind the panels",
    "torso": "Torso",
}
_LIMITS = {row.key: row.label for row in LIMIT_TABLE}
_LONGEST = 40
"""Own choice: characters of a text that are shown."""
_NOTHING = "nothing"


def differences(before: Project, after: Project, word: str = "was") -> tuple[str, ...]:
    """One line for each field that differs: its name, what ``after`` says, and what it ``was`` before.

    Lengths typed are said as typed, reductions in the unit on show. Fields that have no value in words,
    such as shape points, are named alone.
    """
    return (*_measured(before, after, word), *_drawn_in(before, after, word), *_others(before, after, word))


def _measured(before: Project, after: Project, word: str) -> Iterator[str]:
    for key, measurement in BY_KEY.items():
        old, new = before.measurements.get(key), after.measurements.get(key)
        if old != new:
            yield f"{measurement.label}: {_length(new, after)}, {word} {_length(old, after)}"


def _length(length: Length | None, project: Project) -> str:
    if length is None:
        return "not taken"
    return f"{shown(length, project.unit, project.fraction)} {project.unit}"


def _drawn_in(before: Project, after: Project, word: str) -> Iterator[str]:
    old, new = plain(before.design.reductions), plain(after.design.reductions)
    for name in new:
        if old[name] != new[name]:
            was, now = (say_closely(mm, after.unit, after.fraction) for mm in (old[name], new[name]))
            yield f"Reduction, {_words(name).lower()}: {now}, {word} {was}"


def _others(before: Project, after: Project, word: str) -> Iterator[str]:
    old, new = plain(before), plain(after)
    for tree in (old, new):
        del tree["measurements"], tree["design"]["reductions"]
    for name in new:
        if old[name] != new[name]:
            said = [_line(name, path, was, now, word) for path, was, now in _leaves(old[name], new[name], ())]
            # several shape points or shares of one line are one thing to her
            yield from dict.fromkeys(said)


def _leaves(old: Any, new: Any, path: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], Any, Any]]:
    """The innermost named fields that differ; a list is one field."""
    if isinstance(old, dict) and isinstance(new, dict) and old.keys() == new.keys():
        for name in new:
            if old[name] != new[name]:
                yield from _leaves(old[name], new[name], (*path, name))
    else:
        yield path, old, new


def _line(part: str, path: tuple[str, ...], old: Any, new: Any, word: str) -> str:
    head = _PARTS.get(part, _words(part))
    if part == "limits":
        name = f"Limit, {_LIMITS.get(path[-1], _words(path[-1])).lower()}" if path else "Limits"
    elif path:
        name = f"{head}, {', '.join(_words(step).lower() for step in path)}"
    else:
        name = head
    if _is_plain(old) and _is_plain(new):
        return f"{name}: {_said(new)}, {word} {_said(old)}"
    return name


def _is_plain(value: Any) -> bool:
    # lengths in these parts are millimetres and would be no figures of hers
    return value is None or isinstance(value, str | bool)


def _said(value: Any) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    text = " ".join(str(value or "").split())
    if not text:
        return _NOTHING
    return f"“{text}”" if len(text) <= _LONGEST else f"“{text[:_LONGEST]}…”"


def _words(name: str) -> str:
    return name.removesuffix("_mm").replace("_", " ").capitalize()
