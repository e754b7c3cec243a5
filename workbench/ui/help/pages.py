"""The pages of the help, read from plain text files: headings, paragraphs, lists, pictures.

A page is a file of its own in ``resources/help/en``; ``contents.txt`` there gives their order.
A line that begins with ``words:`` holds more words by which the search finds what stands above
it, one that begins with ``codes:`` names the findings that a section is about, and
``{{name}}`` stands for a part that is made from the program itself.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal

from workbench.resources import resource

Kind = Literal["heading", "small_heading", "text", "item", "step", "picture", "words", "codes", "made"]

_FOLDER = "help/en"
_STARTS: tuple[tuple[str, Kind], ...] = (
    ("### ", "small_heading"),
    ("## ", "heading"),
    ("- ", "item"),
    ("1. ", "step"),
    ("words: ", "words"),
    ("codes: ", "codes"),
)
_PICTURE = re.compile(r"!\[(.*)\]\((.*)\)")
_MADE = re.compile(r"\{\{(\w+)\}\}")
LINK = re.compile(r"\[\[([^\]|]+)(?:\|([^\]]+))?\]\]|\[([^\]]+)\]\(([^)]+)\)")
"""``[[term]]`` and ``[[term|as it reads]]`` lead to a term, ``[as it reads](page#heading)`` to a page."""
TERMS = "words"
"""The page on which each heading is a term of the trade."""


@dataclass(frozen=True)
class Block:
    """A heading, a paragraph, one entry of a list, a picture, or a part made from the program."""

    kind: Kind
    text: str
    """Of a picture the caption."""
    name: str = ""
    """Of a picture or a made part; of a heading its anchor."""


@dataclass(frozen=True)
class Page:
    """One page of the help."""

    name: str
    title: str
    blocks: tuple[Block, ...]


@dataclass(frozen=True)
class Chapter:
    """Pages that belong together."""

    title: str
    pages: tuple[Page, ...]


@cache
def chapters() -> tuple[Chapter, ...]:
    """All pages in the order in which they are read; FileNotFoundError where one is missing."""
    found: list[tuple[str, list[Page]]] = []
    for line in _text("contents.txt").splitlines():
        if line.startswith(" "):
            found[-1][1].append(page_of(line.strip(), _text(f"{line.strip()}.md")))
        elif line.strip():
            found.append((line.strip(), []))
    return tuple(Chapter(title, tuple(pages)) for title, pages in found)


@cache
def pages() -> Mapping[str, Page]:
    """The pages by name."""
    return {page.name: page for chapter in chapters() for page in chapter.pages}


def page_of(name: str, text: str) -> Page:
    """The page that a text makes; ValueError where it has no title."""
    first, _, rest = text.partition("\n")
    if not first.startswith("# "):
        raise ValueError(f"The help page {name} does not begin with its title.")
    return Page(name, first[2:].strip(), tuple(_blocks(rest)))


def anchor_of(heading: str) -> str:
    """What a heading is called in a link: ``Above the limit`` is ``above-the-limit``."""
    return re.sub(r"[^a-z0-9]+", "-", heading.lower()).strip("-")


def plain(text: str) -> str:
    """A text as it reads, without its links and marks."""
    return LINK.sub(lambda found: said_of(found)[0], text).replace("**", "").replace("`", "")


def said_of(found: re.Match[str]) -> tuple[str, str]:
    """How a link reads, and where it leads: ``page`` or ``page#anchor``."""
    term, reads, words, target = found.groups()
    if term is not None:
        return reads or term, f"{TERMS}#{anchor_of(term)}"
    return words, target


def _text(name: str) -> str:
    return resource(f"{_FOLDER}/{name}").read_text(encoding="utf-8")


def _blocks(text: str) -> Iterator[Block]:
    """A line that is set in, and one of plain text after plain text, goes on with the block before it."""
    held: list[str] = []
    for line in (*text.splitlines(), ""):
        if held and not _goes_on(held[0], line):
            yield _block(" ".join(held))
            held = []
        if line.strip():
            held.append(line.strip())


def _goes_on(first: str, line: str) -> bool:
    """A line that begins strong is a paragraph of its own."""
    if line.startswith("  ") and line.strip():
        return True
    plainly = _kind_of(first) == "text" and _kind_of(line) == "text"
    return plainly and bool(line.strip()) and not line.startswith("**")


def _kind_of(line: str) -> Kind:
    if _PICTURE.fullmatch(line.strip()):
        return "picture"
    if _MADE.fullmatch(line.strip()):
        return "made"
    return next((kind for start, kind in _STARTS if line.startswith(start)), "text")


def _block(text: str) -> Block:
    kind = _kind_of(text)
    if picture := _PICTURE.fullmatch(text):
        return Block(kind, picture[1], picture[2])
    if made := _MADE.fullmatch(text):
        return Block(kind, "", made[1])
    start = next((start for start, known in _STARTS if known == kind), "")
    said = text[len(start) :].strip()
    return Block(kind, said, anchor_of(said) if kind in ("heading", "small_heading") else "")
