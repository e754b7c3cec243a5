"""Where something is wrong with a project, and why."""

from __future__ import annotations

from collections.abc import Iterator

Place = tuple[str | int, ...]
"""A path of names and list numbers, from the whole project inwards."""
Problem = tuple[Place, str]
"""The place, and a reason that can follow it in a sentence."""
Problems = Iterator[Problem]
