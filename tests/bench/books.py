"""What the client book costs from ten clients to ten thousand: ``python -m tests.bench.books``."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.bench.clock import Timing, table, timed
from workbench.book import Shelf, found_by, in_order, index_file, keep, look_at, read_waiting
from workbench.document import read_project, set_client, to_bytes

DEMOS = sorted((Path(__file__).parents[2] / "demo_projects").glob("*.bodice"))
SIZES = (10, 100, 1000, 5000, 10_000)
GOAL_MS = 1000.0
"""The list of five thousand projects from an index that is there."""
GOAL_COUNT = 5000
LONG_AGO = 1_600_000_000
LOOKS = 9


@contextmanager
def book_of(count: int) -> Iterator[tuple[Path, Path]]:
    """A folder with so many invented clients in sub-folders of a hundred, and where its index belongs."""
    texts = [to_bytes(set_client(read_project(path), name="NAME")).decode("utf-8") for path in DEMOS]
    with TemporaryDirectory() as whole:
        folder = Path(whole) / "clients"
        for number in range(count):
            path = folder / f"{number // 100:03d}" / f"{number:05d}.bodice"
            path.parent.mkdir(parents=True, exist_ok=True)
            text = texts[number % len(texts)].replace("NAME", f"Client {number} (invented)")
            path.write_text(text, encoding="utf-8")
            os.utime(path, (LONG_AGO, LONG_AGO))
        yield folder, index_file(Path(whole) / "cache", folder)


def built(folder: Path, index: Path) -> tuple[Shelf, Timing]:
    """The shelf with everything read and kept, and the time that each file took."""
    shelf = look_at(folder, index)
    waiting = read_waiting(shelf)
    read = []
    middle, high = timed([lambda: read.append(next(waiting))] * len(shelf.waiting))
    shelf = shelf.with_read(read)
    keep(shelf, index)
    return shelf, Timing(f"reading one of {len(read)} files", middle, high)


def warm(folder: Path, index: Path) -> Timing:
    """The list from an index that is there: folder walked, index read, sorted."""

    def act() -> None:
        shelf = look_at(folder, index)
        assert not shelf.waiting
        in_order(shelf.entries, "next_fitting", "2031-06-10")

    act()
    middle, high = timed([act] * LOOKS)
    count = len(look_at(folder, index).entries)
    return Timing(f"list of {count} from the index", middle, high, goal=GOAL_MS * count / GOAL_COUNT)


def searched(shelf: Shelf) -> Timing:
    """A letter more in the search."""
    found_by(shelf.entries, "client 7")
    middle, high = timed([lambda: found_by(shelf.entries, "client 77")] * LOOKS)
    return Timing(f"search among {len(shelf.entries)}", middle, high)


def rows_of(count: int) -> list[Timing]:
    """All rows for a book of one size."""
    with book_of(count) as (folder, index):
        shelf, reading = built(folder, index)
        return [warm(folder, index), searched(shelf), reading]


def main(sizes: Sequence[str]) -> int:
    """Print the table."""
    rows = [row for size in map(int, sizes or map(str, SIZES)) for row in rows_of(size)]
    print(table(rows))
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
