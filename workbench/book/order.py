"""The order of the book, and what a search leaves of it."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from typing import Literal

from workbench.book.entry import Entry

Order = Literal["client", "date", "next_fitting", "open"]
_WEIGHT = {"stop": 0, "over": 1, "attend": 2, "note": 3}
_NOTHING_OPEN = 4


def folded(text: str) -> str:
    """The text as it is compared: without case and accents, so that Émile is found by ``emile``."""
    if text.isascii():
        return text.lower()
    apart = unicodedata.normalize("NFKD", text.casefold())
    return "".join(sign for sign in apart if not unicodedata.combining(sign))


def found_by(entries: Iterable[Entry], wanted: str) -> list[Entry]:
    """Those in whose client, style, file or folder every word stands; all of them where none is asked for."""
    words = folded(wanted).split()
    return [entry for entry in entries if all(word in entry.words for word in words)]


def in_order(entries: Iterable[Entry], order: Order, today: str) -> list[Entry]:
    """The entries in one of the orders; ``today`` is the ISO date from which a fitting is still to come.

    By client: A to Z. By date: the latest first. By next fitting: the next one first, those
    that have passed after them, the latest of those first. By what is open: the gravest first.
    What has no date, and what cannot be opened, comes last; equals are in the order of clients.
    """
    named = sorted(entries, key=_by_client)
    if order == "date":
        named.sort(key=lambda entry: entry.date, reverse=True)
    elif order == "next_fitting":
        named.sort(key=lambda entry: entry.next_fitting, reverse=True)
        named.sort(key=lambda entry: _when(entry, today))
    elif order == "open":
        named.sort(key=_gravest)
    return named


def _by_client(entry: Entry) -> tuple[bool, str, str]:
    return bool(entry.reason), folded(entry.title), entry.place


def _when(entry: Entry, today: str) -> tuple[int, str]:
    """To come, by day; then passed, as they lie; then none."""
    if not entry.next_fitting:
        return 2, ""
    return (0, entry.next_fitting) if entry.next_fitting >= today else (1, "")


def _gravest(entry: Entry) -> int:
    if entry.reason:
        return -1
    return min((_WEIGHT[matter.mark] for matter in entry.matters), default=_NOTHING_OPEN)
