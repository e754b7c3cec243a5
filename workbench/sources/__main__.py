"""Make the page of sources again: ``python -m workbench.sources`` in a checkout."""

from __future__ import annotations

import sys
from collections.abc import Sequence

from workbench.sources.collect import PACKAGE, collected
from workbench.sources.page import FILE, as_file, as_markdown
from workbench.sources.records import Section

BEGIN, END = "<!-- sources: begin -->", "<!-- sources: end -->"


def with_page(readme: str, sections: Sequence[Section]) -> str:
    """The README with the page between its two marks; ValueError where a mark is missing."""
    before, begin, rest = readme.partition(BEGIN)
    _, end, after = rest.partition(END)
    if not begin or not end:
        raise ValueError(f"README.md has no {BEGIN} and {END}.")
    return f"{before}{begin}\n{as_markdown(sections)}{end}{after}"


def main() -> int:
    """Write both; 1 with one line for each figure that says nothing of where it comes from."""
    sections = collected()
    lacking = [entry for section in sections for entry in section.entries if not entry.statuses]
    for entry in lacking:
        print(f"{entry.place}: {entry.name} = {entry.value} has no source and no status.", file=sys.stderr)
    root = PACKAGE.parent
    if not (root / "README.md").exists():
        print("The page is made in a checkout, beside README.md.", file=sys.stderr)
        return 1
    (root / "resources" / FILE).write_text(as_file(sections), encoding="utf-8")
    readme = root / "README.md"
    readme.write_text(with_page(readme.read_text(encoding="utf-8"), sections), encoding="utf-8")
    return 1 if lacking else 0


if __name__ == "__main__":
    sys.exit(main())
