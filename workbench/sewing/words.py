"""Counts and lists as they are said in a sentence."""

from __future__ import annotations

from collections.abc import Iterable


def counted(count: int, word: str) -> str:
    """``1 piece``, ``2 pieces``."""
    return f"{count} {word}" if count == 1 else f"{count} {word}s"


def listed(parts: Iterable[str]) -> str:
    """``a, b and c``; nothing for none."""
    *first, last = list(parts) or [""]
    return f"{', '.join(first)} and {last}" if first else last


def time_words(minutes: float) -> str:
    """``25 min``, ``1 h 20 min``: to five minutes, as nobody sews closer; nothing for less than one."""
    if minutes < 1:
        return ""
    hours, left = divmod(max(5, 5 * round(minutes / 5)), 60)
    return f"{hours} h {left} min" if hours and left else f"{hours} h" if hours else f"{left} min"
