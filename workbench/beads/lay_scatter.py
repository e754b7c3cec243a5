"""One scatter laid on the table, panel by panel."""

from __future__ import annotations

import numpy as np

from workbench.beads import trouble
from workbench.beads.lattice import PITCH_MM, Lattice
from workbench.beads.records import BeadScatter
from workbench.beads.result import NONE, Array, Beaded, Ints, Strewn, together
from workbench.beads.strew import FULL, SQUARE_INCH, Darts, Sowing, darts_for, strewn
from workbench.beads.table import Table
from workbench.beads.thinning import thin_line, thinning_of
from workbench.draft import Finding

Findings = list[Finding]
_SHORT = 0.97
"""A scatter that comes to less than this part of what was asked is said to (own choice)."""


def scatter_laid(number: int, table: Table) -> tuple[Beaded, Findings]:
    """The scatter of that number in the plan, and what to look at; no beads where it cannot be laid."""
    scatter = table.plan.scatters[number]
    stopped = _stopped(number, scatter, table)
    if stopped is not None:
        return _beaded(scatter, NONE, table), [stopped]
    gone = trouble.scatter_panels(number, scatter, len(table.draft.panels))
    found = [gone] if gone else []
    thrown = _darts(scatter, table)
    wanted = sum(darts.wanted for darts in thrown.values())
    beads = together([_strewn(panel, darts, table) for panel, darts in thrown.items()])
    table.laid += len(beads)
    if not len(beads):
        found.append(trouble.scatter_empty(number, scatter))
    elif len(beads) < _SHORT * wanted:
        found.append(trouble.scatter_short(number, scatter, wanted, len(beads)))
    return _beaded(scatter, beads, table), found


def _stopped(number: int, scatter: BeadScatter, table: Table) -> Finding | None:
    """What keeps it from being laid at all."""
    panels = _panels(scatter, table)
    if not panels:
        return trouble.scatter_panels(number, scatter, len(table.draft.panels))
    if scatter.thin_from != "none" and thin_line(scatter.thin_to, len(table.draft.panels)) is None:
        return trouble.scatter_line(number, scatter)
    if sum(part.weight for part in scatter.mix) <= 0:
        return trouble.scatter_no_kind(number, scatter)
    if scatter.per_square_inch <= 0:
        return trouble.scatter_empty(number, scatter)
    about = _about(scatter, panels, table)
    if about > table.left:
        place = trouble.scatter_place(number, "per_square_inch")
        return trouble.too_many("scatter", scatter.name, place, about)
    most = _most_to_the_inch(scatter, table)
    if scatter.per_square_inch > most:
        return trouble.scatter_dense(number, scatter, most)
    return None


def _panels(scatter: BeadScatter, table: Table) -> list[int]:
    """Those of its panels that this bodice has, from the front."""
    return sorted(panel for panel in scatter.panels if panel < len(table.draft.panels))


def _about(scatter: BeadScatter, panels: list[int], table: Table) -> float:
    """Roughly how many beads it comes to, before a dart is thrown."""
    thinning = thinning_of(scatter, table.draft)
    kinds, _ = _mix(scatter, table)
    radius = 0.5 * float(table.sizes(kinds).min())
    free = 0.0
    for panel in panels:
        open_ = table.clear(panel).values >= radius
        share = 1.0 if thinning is None else thinning[panel].values
        free += float((open_ * share).sum()) * PITCH_MM**2
    return free * scatter.per_square_inch / SQUARE_INCH


def _most_to_the_inch(scatter: BeadScatter, table: Table) -> float:
    """As many of this mix as lie beside each other without a pattern, to the square inch."""
    kinds, shares = _mix(scatter, table)
    sizes = table.sizes(kinds)
    apart = 0.5 * (sizes[:, None] + sizes)
    return FULL * SQUARE_INCH / float(shares @ (apart * apart) @ shares)


def _mix(scatter: BeadScatter, table: Table) -> tuple[Ints, Array]:
    """Kinds with a weight, and their shares of the whole."""
    parts = [part for part in scatter.mix if part.weight > 0]
    weights = np.array([part.weight for part in parts])
    return table.numbers([part.kind for part in parts]), weights / weights.sum()


def _darts(scatter: BeadScatter, table: Table) -> dict[int, Darts]:
    kinds, shares = _mix(scatter, table)
    thinning = thinning_of(scatter, table.draft)
    return {
        panel: darts_for(
            Sowing(
                kinds,
                table.sizes(kinds),
                shares,
                scatter.per_square_inch / SQUARE_INCH,
                scatter.seed,
                _of(thinning, panel),
            ),
            table.rooms[panel],
            table.clear(panel),
            np.array(table.draft.surface.point(panel + 0.5, 0.0)[:2]),
        )
        for panel in _panels(scatter, table)
    }


def _of(thinning: dict[int, Lattice] | None, panel: int) -> Lattice | None:
    return None if thinning is None else thinning[panel]


def _strewn(panel: int, darts: Darts, table: Table) -> Strewn:
    taken = strewn(darts, table.ground(panel))
    count = len(taken)
    return Strewn(
        darts.points[taken],
        np.full(count, panel, np.intp),
        darts.kinds[taken],
        np.zeros(count, np.bool_),
    )


def _beaded(scatter: BeadScatter, beads: Strewn, table: Table) -> Beaded:
    return Beaded(scatter.name, "scatter", beads, table.counts(beads.kinds, beads.once))
