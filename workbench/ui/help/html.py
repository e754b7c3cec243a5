"""A page of the help as the text view shows it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from html import escape
from itertools import groupby

from workbench.ui.help.made import made_html
from workbench.ui.help.pages import LINK, Block, Kind, Page, said_of
from workbench.ui.look import Look

PICTURE = "picture:"
"""Of the address of a picture, before its name."""
_LISTS: dict[Kind, str] = {"item": "ul", "step": "ol"}
_STRONG = re.compile(r"\*\*(.+?)\*\*")
_TYPED = re.compile(r"`(.+?)`")


def html_of(page: Page) -> str:
    """The page; where it stands in the order of pages is not its business."""
    return f"<h1>{escape(page.title)}</h1>{''.join(_parts(page.blocks))}"


def sheet_of(shown: Look) -> str:
    """How it is dressed, in the colours of a look."""
    ink, soft, link = (colour.name() for colour in (shown.ink, shown.soft_ink, shown.selected))
    return (
        f"body, p, li, td {{ color: {ink}; }}"
        f"h1 {{ font-size: 20px; color: {ink}; margin-bottom: 8px; }}"
        f"h2 {{ font-size: 15px; color: {ink}; margin-top: 18px; margin-bottom: 2px; }}"
        f"h3 {{ font-size: 13px; color: {ink}; margin-top: 12px; margin-bottom: 2px; }}"
        "p, li { margin-top: 4px; margin-bottom: 6px; }"
        f"a {{ color: {link}; text-decoration: underline; }}"
        f".soft {{ color: {soft}; font-size: 12px; }}"
    )


def inline(text: str) -> str:
    """A text with its links and its strong words; everything else as it stands."""
    parts, last = [], 0
    for found in LINK.finditer(text):
        reads, target = said_of(found)
        parts.append(_strong(text[last : found.start()]))
        parts.append(f'<a href="{escape(target)}">{escape(reads)}</a>')
        last = found.end()
    return "".join([*parts, _strong(text[last:])])


def _strong(text: str) -> str:
    return _TYPED.sub(r"<code>\1</code>", _STRONG.sub(r"<b>\1</b>", escape(text, quote=False)))


def _parts(blocks: tuple[Block, ...]) -> Iterator[str]:
    for kind, run in groupby(blocks, key=lambda block: block.kind):
        if kind in _LISTS:
            items = "".join(f"<li>{inline(block.text)}</li>" for block in run)
            yield f"<{_LISTS[kind]}>{items}</{_LISTS[kind]}>"
        else:
            yield from (_part(block) for block in run)


def _part(block: Block) -> str:
    if block.kind in ("heading", "small_heading"):
        size = 2 if block.kind == "heading" else 3
        return f'<h{size}><a name="{block.name}"></a>{inline(block.text)}</h{size}>'
    if block.kind == "picture":
        return f'<p><img src="{PICTURE}{block.name}"><br><span class="soft">{inline(block.text)}</span></p>'
    if block.kind == "made":
        return made_html(block.name)
    return f"<p>{inline(block.text)}</p>" if block.kind == "text" else ""
