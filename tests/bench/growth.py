"""How cost grows: panels, points of an edge, pieces on the cloth, clients in the book.

A quarter of a bodice has two to four panels, so the half has four to eight and the whole
garment eight to sixteen; more cannot be drafted. To see how the curves themselves grow,
edges are also drawn alone, up to sixty-four of them, which would be 32 panels.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from functools import partial
from itertools import cycle, islice
from math import log
from unittest.mock import patch

import numpy as np

from tests.bench.books import book_of, built, searched, warm
from tests.bench.clock import Act, best
from tests.bench.works import LARGEST, TWELVE_PANELS
from workbench.body import complete
from workbench.cloth import Copy, bottom_left
from workbench.document import picture_of, read_project, set_panels
from workbench.draft import panels as panels_file
from workbench.draft import work_out
from workbench.draft.edges import edges_through
from workbench.draft.monotone import Spacing
from workbench.pieces import cutting_of

HALVES = ((2, 2), (3, 2), (3, 3), (4, 3), (4, 4))
"""Panels of front and back quarter."""
EDGES = (8, 16, 32, 64)
POINTS = (33, 65, 129, 257, 513)
PIECES = (6, 12, 25, 50, 100)
CLIENTS = (10, 100, 1000, 10_000)


@dataclass(frozen=True)
class Growth:
    """What one kind of work costs at several sizes."""

    what: str
    counted: str
    sizes: tuple[int, ...]
    ms: tuple[float, ...]
    """The least of several times, process time."""

    @property
    def power(self) -> float:
        """By which power of its size the cost grows from the first to the last: 1 is in proportion."""
        return log(self.ms[-1] / self.ms[0]) / log(self.sizes[-1] / self.sizes[0])


def grown(what: str, counted: str, acts: Sequence[tuple[int, Act]], times: int = 20) -> Growth:
    """The least time of each act, by its size."""
    return Growth(what, counted, tuple(size for size, _ in acts), tuple(best(act, times) for _, act in acts))


def with_panels() -> tuple[Growth, Growth]:
    """Draft and pieces by the panels of the half."""
    drafts: list[tuple[int, Act]] = []
    pieces: list[tuple[int, Act]] = []
    for front, back in HALVES:
        project = set_panels(set_panels(read_project(TWELVE_PANELS), "front", front), "back", back)
        body = complete(project.taken())
        outcome = work_out(body, project.design)
        assert outcome.draft is not None
        drafts.append((front + back, partial(work_out, body, project.design)))
        pieces.append((front + back, partial(cutting_of, outcome, project.making)))
    return grown("draft", "panels of the half", drafts, 60), grown("pieces", "panels of the half", pieces)


def edges_alone() -> Growth:
    """The curves of so many edges, through eight levels each."""
    walks = np.linspace(-120.0, 300.0, 8)

    def act(count: int) -> Act:
        places = 30.0 + 20.0 * np.sin(np.linspace(0.0, 2.0, 8) + np.arange(float(count))[:, None])
        return lambda: edges_through(Spacing(walks), places)

    return grown("curves alone", "edges", [(count, act(count)) for count in EDGES], 60)


def with_points() -> tuple[Growth, Growth]:
    """Draft and pieces by the points along a side of a panel."""
    project = read_project(TWELVE_PANELS)
    body = complete(project.taken())

    def draft(points: int) -> Act:
        def act() -> object:
            with sampled_at(points):
                return work_out(body, project.design)

        return act

    def pieces(points: int) -> Act:
        with sampled_at(points):
            outcome = work_out(body, project.design)
        return lambda: cutting_of(outcome, project.making)

    counted = "points of an edge"
    return (
        grown("draft", counted, [(points, draft(points)) for points in POINTS], 60),
        grown("pieces", counted, [(points, pieces(points)) for points in POINTS]),
    )


@contextmanager
def sampled_at(points: int) -> Iterator[None]:
    """Edges sampled at so many points, not at the number that the program has chosen."""
    share = 0.5 - 0.5 * np.cos(np.linspace(0.0, np.pi, points))
    with patch.object(panels_file, "_EDGE_SHARE", share):
        yield


def with_pieces() -> Growth:
    """A plain lay plan by the pieces on the cloth: those of the largest demo over and over."""
    picture = picture_of(read_project(LARGEST))
    cloth = max(picture.project.cloths, key=lambda cloth: len(picture.copies_of(cloth.name)))
    copies = picture.copies_of(cloth.name)

    def act(count: int) -> Act:
        many = tuple(_numbered(islice(cycle(copies), count)))
        return lambda: bottom_left(many, cloth)

    return grown("plain lay plan", "pieces", [(count, act(count)) for count in PIECES], 5)


def _numbered(copies: Iterator[Copy]) -> Iterator[Copy]:
    return (replace(copy, number=number) for number, copy in enumerate(copies, 1))


def with_clients(sizes: Sequence[int] = CLIENTS) -> tuple[Growth, Growth]:
    """The list of the client book and a search in it."""
    lists, searches = [], []
    for size in sizes:
        with book_of(size) as (folder, index):
            shelf, _ = built(folder, index)
            lists.append(warm(folder, index).middle)
            searches.append(searched(shelf).middle)
    counted = "clients"
    return (
        Growth("list of the client book", counted, tuple(sizes), tuple(lists)),
        Growth("search in the client book", counted, tuple(sizes), tuple(searches)),
    )


ALL: tuple[Callable[[], Growth | tuple[Growth, ...]], ...] = (
    with_panels,
    edges_alone,
    with_points,
    with_pieces,
    with_clients,
)


def all_growth() -> list[Growth]:
    """Every row, in the order of the table."""
    rows: list[Growth] = []
    for one in ALL:
        made = one()
        rows += [made] if isinstance(made, Growth) else made
    return rows


def growth_table(rows: Sequence[Growth]) -> str:
    """One line for each kind of work: sizes, times in ms, and the power it grows by."""
    return "\n".join(map(_line, rows))


def _line(row: Growth) -> str:
    sizes = " ".join(f"{size:>8}" for size in row.sizes)
    times = " ".join(f"{ms:>8.2f}" for ms in row.ms)
    head = f"{row.what} by {row.counted}"
    return f"{head:40} {sizes}\n{'   ms, grows by the power of ' + f'{row.power:.2f}':40} {times}"
