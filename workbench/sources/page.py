"""The page as it is kept beside the program, and as text."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from dataclasses import asdict

from workbench.resources import resource
from workbench.sources.records import Entry, Section
from workbench.sources.words import MEANING, STATUSES

FILE = "sources.json"
INTRODUCTION = (
    "Every figure that the program reckons with, and where it comes from. No figure here makes a garment "
    "harmless: limits are compared with, nothing more."
)


def sources_page() -> tuple[Section, ...]:
    """Every constant and rule with its source and status, a section for each part of the program.

    Read from the page that comes with the program; FileNotFoundError where that is missing.
    """
    tree = json.loads(resource(FILE).read_text(encoding="utf-8"))
    return tuple(Section(part["title"], tuple(map(_entry, part["entries"]))) for part in tree)


def _entry(tree: dict[str, str]) -> Entry:
    return Entry(**{**tree, "statuses": tuple(tree["statuses"])})  # type: ignore[arg-type]  # JSON has lists


def as_file(sections: Sequence[Section]) -> str:
    """The page as it is kept: JSON, one entry a line, so that a change of one is seen as one."""
    parts = []
    for section in sections:
        rows = ",\n".join(json.dumps(asdict(entry), ensure_ascii=False) for entry in section.entries)
        parts.append(f'{{"title": {json.dumps(section.title)}, "entries": [\n{rows}\n]}}')
    return "[\n" + ",\n".join(parts) + "\n]\n"


def as_markdown(sections: Sequence[Section]) -> str:
    """The page as Markdown: what has a source line by line, our own choices together by file."""
    return "\n".join(_lines(sections)) + "\n"


def _lines(sections: Sequence[Section]) -> Iterator[str]:
    yield f"{INTRODUCTION} {_counted(sections)}"
    yield ""
    for status in STATUSES:
        yield f"- **{status}**: {MEANING[status]}"
    for section in sections:
        yield from ("", f"### {section.title}", "")
        outside = [entry for entry in section.entries if entry.sourced]
        if outside:
            yield from (
                "| figure or rule | value | status | source | in |",
                "| --- | --- | --- | --- | --- |",
            )
            yield from map(_row, outside)
        own = list(_own(section))
        if own:
            yield from ("", "Own choice:", "", *own) if outside else ("Own choice:", "", *own)


def _counted(sections: Sequence[Section]) -> str:
    entries = [entry for section in sections for entry in section.entries]
    outside = sum(entry.sourced for entry in entries)
    own = len(entries) - outside
    return f"There are {len(entries)}: {outside} from outside or derived, {own} of our own choice."


def _row(entry: Entry) -> str:
    cells = (entry.name, entry.value, ", ".join(entry.statuses), entry.words, f"`{entry.place}`")
    return f"| {' | '.join(cell.replace('|', chr(92) + '|') for cell in cells)} |"


def _own(section: Section) -> Iterator[str]:
    """One line for each file: its name, then the figures."""
    files = dict.fromkeys(entry.place for entry in section.entries if not entry.sourced)
    for place in files:
        own = [entry for entry in section.entries if entry.place == place and not entry.sourced]
        yield f"- `{place}`: " + "; ".join(f"{entry.name} {entry.value}".strip() for entry in own)
