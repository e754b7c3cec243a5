"""The search through the help: every word asked for, at the beginning of a word of the passage."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache

from workbench.ui.help.made import made_text
from workbench.ui.help.pages import TERMS, Page, chapters, plain

MOST = 40
"""Passages listed; nobody reads further."""
_EXCERPT = 130
"""Characters of the text shown of a passage."""


@dataclass(frozen=True)
class Passage:
    """What stands under one heading of a page."""

    page: str
    anchor: str
    """Empty for what stands at the head of the page."""
    title: str
    heading: str
    text: str
    words: str
    """More words by which it is found."""
    page_words: str
    """More words for the whole page."""

    @property
    def link(self) -> str:
        """Where it stands."""
        return f"{self.page}#{self.anchor}" if self.anchor else self.page


@dataclass(frozen=True)
class Found:
    """A passage, and the part of its text that shows why."""

    passage: Passage
    excerpt: str
    whole: bool
    """Whether it holds every word that was asked for."""


def search(wanted: str) -> tuple[Found, ...]:
    """The passages that hold every word, the likeliest first; with none, those that hold most of them."""
    asked = _words(wanted)
    if not asked:
        return ()
    scored = [(_score(entry, asked), entry) for entry in _index()]
    best = max((held for (held, _), _ in scored), default=0)
    if best == 0:
        return ()
    kept = [(weight, entry) for (held, weight), entry in scored if held == best]
    kept.sort(key=lambda row: -row[0])
    whole = best == len(asked)
    return tuple(Found(entry.passage, _excerpt(entry.passage.text, asked), whole) for _, entry in kept[:MOST])


@dataclass(frozen=True)
class _Entry:
    """A passage made ready: its words in three runs, each word after a blank."""

    passage: Passage
    heading: str
    title: str
    text: str


@cache
def _index() -> tuple[_Entry, ...]:
    return tuple(
        _Entry(
            passage,
            _run(passage.heading or passage.title),
            _run(f"{passage.title} {passage.page_words}"),
            _run(f"{passage.text} {passage.words}"),
        )
        for passage in passages()
    )


@cache
def passages() -> tuple[Passage, ...]:
    """Everything the search looks through, in the order of the pages."""
    return tuple(passage for chapter in chapters() for page in chapter.pages for passage in _of_page(page))


def _of_page(page: Page) -> Iterator[Passage]:
    sections = list(_sections(page))
    of_page = sections[0][3]
    for number, (heading, anchor, text, words) in enumerate(sections):
        if heading or text:
            yield Passage(page.name, anchor, page.title, heading, text, words if number else "", of_page)


def _sections(page: Page) -> Iterator[tuple[str, str, str, str]]:
    """Heading, anchor, text and further words of each part; the first is what stands before all headings."""
    heading, anchor = "", ""
    texts: list[str] = []
    words: list[str] = []
    for block in page.blocks:
        if block.kind in ("heading", "small_heading"):
            yield heading, anchor, " ".join(texts), " ".join(words)
            heading, anchor, texts, words = block.text, block.name, [], []
        elif block.kind in ("words", "codes"):
            words.append(block.text)
        else:
            texts.append(made_text(block.name) if block.kind == "made" else plain(block.text))
    yield heading, anchor, " ".join(texts), " ".join(words)


def _words(text: str) -> list[str]:
    """Words without accents, capitals and marks; figures count as words."""
    bare = unicodedata.normalize("NFKD", text.casefold())
    return re.findall(r"[a-z0-9]+", "".join(sign for sign in bare if not unicodedata.combining(sign)))


def _run(text: str) -> str:
    return " " + " ".join(_words(text))


def _score(entry: _Entry, asked: Sequence[str]) -> tuple[int, float]:
    """How many of the words it holds, and how much they weigh there."""
    held, weight = 0, 0.0
    if entry.heading == " " + " ".join(asked):
        weight = 40.0 if entry.passage.page == TERMS else 10.0
    for word in asked:
        start = f" {word}"
        whole = f"{entry.heading} ".count(f"{start} ") > 0
        found = 8.0 * whole + 6.0 * (start in entry.heading) + 2.0 * (start in entry.title)
        found += min(entry.text.count(start), 3)
        held += found > 0
        weight += found
    return held, weight


def _excerpt(text: str, asked: Sequence[str]) -> str:
    """The text from a little before the first word found, cut at words."""
    lower = text.casefold()
    places = [lower.find(word) for word in asked]
    first = min((place for place in places if place >= 0), default=0)
    start = 0 if first < 50 else lower.rfind(" ", 0, first - 30) + 1
    shown = text[start : start + _EXCERPT]
    if start + _EXCERPT < len(text):
        shown = shown.rpartition(" ")[0] + " …"
    return f"… {shown}" if start else shown
