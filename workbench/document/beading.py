"""What the beads of a project come to, in its quote and its report."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

from workbench.beads import Beading, KindCount, per_inch_of, per_strand_of
from workbench.cloth import MOST_ROWS, HoursRow, PriceRow, Quoting
from workbench.document.records import plain, said_plainly
from workbench.pieces import Notion

Data = dict[str, Any]
BEADING_STEP = "Sewing on beads"
"""The stage of the work that beads are sewn on in; her own hours for it count where she has entered some."""


def bead_notions(beading: Beading) -> tuple[Notion, ...]:
    """A line of the shopping list for each kind, its beads with the reserve."""
    return tuple(
        Notion(_key(line), line.kind.name, line.with_reserve, None, _how(line, beading), {})
        for line in beading.count.kinds
    )


def quoting_with_beads(quoting: Quoting, beading: Beading) -> Quoting:
    """What stands behind the price, with strands at their prices and the hours of sewing beads on.

    A price that she has put into the list itself, and hours of her own for the beads, come first.
    """
    if not beading.count.total:
        return quoting
    own = {row.key for row in quoting.prices if row.price}
    rows = [_price_row(line) for line in beading.count.kinds if _key(line) not in own]
    keys = {row.key for row in rows}
    prices = (*(row for row in quoting.prices if row.key not in keys), *rows)[:MOST_ROWS]
    hours = quoting.hours
    if beading.count.hours and len(hours) < MOST_ROWS and all(row.step != BEADING_STEP for row in hours):
        hours = (*hours, HoursRow(BEADING_STEP, beading.count.hours))
    return replace(quoting, prices=prices, hours=hours)


def bead_minutes(beading: Beading) -> float:
    """Minutes to sew them all on; nothing where there is no rate."""
    rate = beading.plan.per_minute
    return beading.count.total / rate if rate > 0 else 0.0


def beads_data(beading: Beading | None) -> Data:
    """The bead plan worked out, ready for JSON; lengths in mm, amounts as text."""
    if beading is None:
        return {"beads": None}
    count = beading.count
    return {
        "beads": {
            "plan": plain(beading.plan),
            "total": count.total,
            "hours": said_plainly(count.hours),
            "cost": said_plainly(count.cost),
            "kinds": [_kind(line) for line in count.kinds],
            "laid": [
                {
                    "name": each.name,
                    "what": each.what,
                    "total": each.total,
                    "counts": dict(each.counts),
                    "rows": [
                        {"length_mm": row.length, "places": row.asked, "laid": row.placed}
                        for row in each.rows
                    ],
                    "beads": [
                        {"panel": panel, "kind": beading.plan.kinds[kind].name, "x": x, "y": y, "once": once}
                        for (x, y), panel, kind, once in zip(
                            each.beads.points.tolist(),
                            each.beads.panels.tolist(),
                            each.beads.kinds.tolist(),
                            each.beads.once.tolist(),
                            strict=True,
                        )
                    ],
                }
                for each in beading.beaded
            ],
        }
    }


def _kind(line: KindCount) -> Data:
    return {
        "name": line.kind.name,
        "in_runs": line.in_runs,
        "in_scatters": line.in_scatters,
        "total": line.total,
        "with_reserve": line.with_reserve,
        "per_strand": per_strand_of(line.kind),
        "strands": line.strands,
        "cost": None if line.cost is None else said_plainly(line.cost),
    }


def _key(line: KindCount) -> str:
    return f"beads/{line.kind.name}"


def _how(line: KindCount, beading: Beading) -> str:
    reserve = Decimal(str(beading.plan.reserve_percent))
    return (
        f"{line.total:,} sewn on and {said_plainly(reserve)} % in reserve, on strands of "
        f"{per_strand_of(line.kind):,} ({per_inch_of(line.kind):.3g} to the inch)."
    )


def _price_row(line: KindCount) -> PriceRow:
    return PriceRow(_key(line), line.kind.name, line.kind.price, "pack", per_strand_of(line.kind))
