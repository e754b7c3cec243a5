"""A project in which every free text is a page that asks for a picture from elsewhere."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from tests.robust.samples import full_project
from workbench.document import Project, to_bytes
from workbench.document.file import project_from

_FREE = {"name", "wish", "measured_by", "worn", "notes", "note", "style_name", "cloth", "how", "picture"}
"""Entries that hold what somebody typed; the same words stand for the same thing wherever they are."""


def hostile_project(bait: Path) -> Project:
    """Every text names the picture at ``bait``, each with a number of its own."""
    tree = json.loads(to_bytes(full_project()))
    return project_from(json.dumps(_baited(tree, (), _Words(bait))).encode())


class _Words:
    """What stands for each text; a name that comes again is the same again."""

    def __init__(self, bait: Path) -> None:
        self._bait, self._known = bait, dict[str, str]()

    def of(self, text: str) -> str:
        if text not in self._known:
            self._known[text] = f"<img src={self._bait}>{len(self._known)}"
        return self._known[text]


def _baited(value: Any, place: tuple[str, ...], words: _Words) -> Any:
    if isinstance(value, dict):
        return {name: _baited(inner, (*place, name), words) for name, inner in value.items()}
    if isinstance(value, list):
        return [_baited(inner, place, words) for inner in value]
    if isinstance(value, str) and _is_free(place):
        return words.of(value) if value or place[0] == "client" else value
    return value


def _is_free(place: tuple[str, ...]) -> bool:
    if place[0] in ("paper", "measurements", "design", "making", "limits"):
        return False
    return place[-1] in _FREE or place[-2:] in (("mix", "kind"), ("runs", "pattern"))
