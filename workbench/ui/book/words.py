"""What the list says of one entry, and the pane of them all."""

from __future__ import annotations

from datetime import date

from workbench.book import Entry, Shelf

_FAR_DAYS = 60
"""A fitting further off is a date and no count of days."""


def second_line(entry: Entry) -> str:
    """Style and file; or why it cannot be opened."""
    if entry.reason:
        return f"Cannot be opened: {entry.reason}"
    return f"{entry.style}  ·  {entry.place}" if entry.style else entry.place


def first_line(entry: Entry) -> str:
    """The client, with a word where she is made up and does not say so herself."""
    if entry.invented and "invented" not in entry.title.lower():
        return f"{entry.title} (invented)"
    return entry.title


def days_away(day: str, today: date) -> str:
    """How far off a date is in words; nothing where it is none, or too far to count."""
    try:
        days = (date.fromisoformat(day) - today).days
    except ValueError:
        return ""
    if abs(days) > _FAR_DAYS:
        return "" if days > 0 else "passed"
    if abs(days) <= 1:
        return {0: "today", 1: "tomorrow", -1: "yesterday"}[days]
    return f"in {days} days" if days > 0 else f"{-days} days ago"


def matters_words(entry: Entry) -> str:
    """What is open, for a tip and a screen reader."""
    return ", ".join(matter.words for matter in entry.matters)


def counted(shelf: Shelf, shown: int, wanted: str) -> str:
    """How many projects there are, how many the search leaves, and how many cannot be opened."""
    count = len(shelf.entries)
    projects = f"{count:,} project{'' if count == 1 else 's'}"
    said = f"{shown:,} of {projects}" if wanted else projects
    bad = sum(bool(entry.reason) for entry in shelf.entries)
    return f"{said}; {'one' if bad == 1 else f'{bad:,}'} cannot be opened." if bad else f"{said}."
