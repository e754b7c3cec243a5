"""Numbers and lists as they are said in a sentence."""

from __future__ import annotations

from collections.abc import Iterable


def counted(count: int, word: str) -> str:
    """``1 length``, ``2 lengths``."""
    return f"{count} {word}" if count == 1 else f"{count} {word}s"


def listed(parts: Iterable[str]) -> str:
    """``a, b and c``."""
    *first, last = parts
    return f"{', '.join(first)} and {last}" if first else last
