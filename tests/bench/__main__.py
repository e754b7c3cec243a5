"""Print the table: ``python -m tests.bench``.

``--growth`` shows how cost grows, too, and ``--readme`` puts both into the README.
"""

from __future__ import annotations

import sys
from argparse import ArgumentParser
from collections.abc import Sequence
from pathlib import Path

from tests.bench import growth, scenes, searching, starting, works
from tests.bench.clock import table
from tests.bench.readme import machine_kind, with_tables

README = Path(__file__).parents[2] / "README.md"


def main(arguments: Sequence[str] | None = None) -> int:
    """Print what is asked for, and put it into the README where that is."""
    parser = ArgumentParser(prog="python -m tests.bench", description="How long things take.")
    parser.add_argument("--growth", action="store_true", help="how cost grows, too: some minutes")
    parser.add_argument("--readme", action="store_true", help="both, and put into README.md")
    given = parser.parse_args(arguments)
    rows = [scene() for scene in (*works.ALL, *scenes.ALL, *starting.ALL, *searching.ALL)]
    print(table(rows), flush=True)
    if given.growth or given.readme:
        grown = growth.growth_table(growth.all_growth())
        print(f"\n{grown}\n\n{machine_kind()}")
    if given.readme:
        README.write_text(with_tables(README.read_text("utf-8"), rows, grown), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
