"""Why a finding is said and what to do about it, by its code: read from the page of findings."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
from typing import NamedTuple

from workbench.ui.help.pages import Block, pages, plain

PAGE = "findings"
"""The page whose sections have ``codes:`` lines."""
_WHY, _DO = "**Why.**", "**What to do.**"


class Why(NamedTuple):
    """What the page says of a finding."""

    why: str
    do: str
    anchor: str
    """Of its section on the page."""


@cache
def whys() -> Mapping[str, Why]:
    """Every finding explained, by its code; ValueError where a section lacks a part."""
    return {code: why for codes, why in _sections(pages()[PAGE].blocks) for code in codes}


def why_of(code: str) -> Why | None:
    """Why a finding of this code is said; None for one that nothing is written about."""
    return whys().get(code)


def page_of_code(code: str) -> str:
    """Where the help speaks of a finding, as a link; the head of the page for one it does not know."""
    why = why_of(code)
    return f"{PAGE}#{why.anchor}" if why is not None else PAGE


def _sections(blocks: tuple[Block, ...]) -> Iterator[tuple[list[str], Why]]:
    """Each run of blocks from a heading to the next that names codes."""
    heading, codes, texts = "", [""], [""]
    for block in (*blocks, Block("heading", "", "")):
        if block.kind in ("heading", "small_heading"):
            if codes and heading:
                yield codes, _why(heading, texts)
            heading, codes, texts = block.name, [], []
        elif block.kind == "codes":
            codes = block.text.split()
        elif block.kind == "text":
            texts.append(block.text)


def _why(heading: str, texts: list[str]) -> Why:
    why = next((text for text in texts if text.startswith(_WHY)), "")
    do = next((text for text in texts if text.startswith(_DO)), "")
    if not (why and do):
        raise ValueError(f"The section {heading} of the findings lacks why it is said or what to do.")
    return Why(plain(why[len(_WHY) :]).strip(), plain(do[len(_DO) :]).strip(), heading)
