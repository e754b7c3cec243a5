"""One run laid on the table: places along its rows, less those that are kept free."""

from __future__ import annotations

from collections import Counter

import numpy as np

from workbench.beads import trouble
from workbench.beads.records import BeadRun
from workbench.beads.result import NONE, Array, Beaded, Flags, Ints, RowCount, Strewn, together
from workbench.beads.rows import Row, rows_of
from workbench.beads.table import Table
from workbench.draft import Finding

Findings = list[Finding]
_HAIR = 1e-6
"""Spacings: a line this little short of another bead has it (own choice)."""
_NEAR_FOLD_MM = 1e-3
"""Lines are cut by outlines that are a hair too wide (own choice)."""


def run_laid(number: int, table: Table) -> tuple[Beaded, Findings]:
    """The run of that number in the plan, and what to look at; no beads where it cannot be laid."""
    run = table.plan.runs[number]
    stopped = trouble.run_trouble(number, run, table.plan, table.draft)
    if stopped is not None:
        return _beaded(run, NONE, (), table), [stopped]
    rows, leaves = rows_of(run, table.draft)
    found = [trouble.leaves_panels(number, run, bool(rows))] if leaves else []
    if not rows:
        return _beaded(run, NONE, (), table), found or [trouble.no_row(number, run)]
    asked = sum(places(row, run) for row in rows)
    if asked > table.left:
        place = trouble.run_place(number, "spacing_mm")
        return _beaded(run, NONE, (), table), [trouble.too_many("run", run.name, place, asked)]
    beads, counts, why = _laid(rows, run, table)
    short = trouble.left_out(number, run, asked, why)
    return _beaded(run, beads, counts, table), found + ([short] if short else [])


def places(row: Row, run: BeadRun) -> int:
    """How many beads stand along a row: its length from start to end by the spacing, and the first one."""
    return int((run.end - run.start) * row.length / run.spacing_mm + _HAIR) + 1


def _beaded(run: BeadRun, beads: Strewn, rows: tuple[RowCount, ...], table: Table) -> Beaded:
    return Beaded(run.name, "run", beads, table.counts(beads.kinds, beads.once), rows)


def _laid(rows: list[Row], run: BeadRun, table: Table) -> tuple[Strewn, tuple[RowCount, ...], Counter[str]]:
    pattern = table.numbers(list(run.pattern))
    why = Counter[str]()
    laid, counts = [], []
    for row in rows:
        count = places(row, run)
        along: Array = run.start * row.length + run.spacing_mm * np.arange(float(count))
        points, panels = row.at(along)
        kinds = np.resize(pattern, count)
        once = _on_fold(points, panels, table)
        kept = _taken(points, panels, kinds, table, why)
        laid.append(Strewn(points, panels, kinds, once).part(kept))
        counts.append(RowCount((run.end - run.start) * row.length, count, int(kept.sum())))
    beads = together(laid)
    table.laid += len(beads)
    return beads, tuple(counts), why


def _on_fold(points: Array, panels: Ints, table: Table) -> Flags:
    """Which lie on the fold of the centre front; they are put on it to the last digit."""
    if not table.rooms[0].fold:
        return np.zeros(len(points), np.bool_)
    once: Flags = (panels == 0) & (np.abs(points[:, 0]) <= _NEAR_FOLD_MM)
    points[once, 0] = 0.0
    return once


def _taken(points: Array, panels: Ints, kinds: Ints, table: Table, why: Counter[str]) -> Flags:
    """Which places get their bead; ``why`` counts the others by what stands in the way."""
    sizes = table.sizes(kinds)
    kept = np.zeros(len(points), np.bool_)
    for panel in np.unique(panels).tolist():
        own = np.flatnonzero(panels == panel)
        free = table.rooms[panel].free(points[own], 0.5 * sizes[own])
        why.update(table.rooms[panel].why_not(points[own[~free]]))
        own = own[free]
        laid = table.ground(panel).take(points[own], sizes[own], np.zeros(len(own)))
        why["taken"] += int((~laid).sum())
        kept[own[laid]] = True
    return kept
