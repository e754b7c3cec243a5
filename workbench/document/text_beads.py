"""The bead plan in the report to read: what to buy, and what each run and scatter comes to."""

from __future__ import annotations

from collections.abc import Iterator

from workbench.beads import Beaded, Beading, per_strand_of
from workbench.cloth import say_money
from workbench.document.picture import Picture
from workbench.document.text_lines import Said, section, table


def bead_lines(picture: Picture, say: Said) -> Iterator[str]:
    """Two sections, or nothing where nothing is beaded."""
    beading = picture.beading
    if beading is None:
        return
    yield from section("Beads to buy", _to_buy(beading, say))
    yield from section("Beads by run and scatter", _laid(beading, say))


def _to_buy(beading: Beading, say: Said) -> Iterator[str]:
    rows: list[tuple[str, ...]] = [("", "sewn on", "with reserve", "on a strand", "strands", "cost")]
    for line in beading.count.kinds:
        cost = "no price" if line.cost is None else say_money(line.cost, say.project.quoting.currency)
        counts = (line.total, line.with_reserve, per_strand_of(line.kind), line.strands)
        rows.append((line.kind.name, *(f"{count:,}" for count in counts), cost))
    yield from table(rows)
    if beading.count.hours:
        yield f"About {beading.count.hours} h to sew on at {beading.plan.per_minute:g} beads a minute."


def _laid(beading: Beading, say: Said) -> Iterator[str]:
    rows = [("", "length, half", "places, half", "laid, half", "on the garment")]
    for each in beading.beaded:
        rows.append((each.name, "", "", f"{len(each.beads):,}", f"{each.total:,}"))
        rows += list(_rows(each, say))
    yield from table(rows)


def _rows(each: Beaded, say: Said) -> Iterator[tuple[str, str, str, str, str]]:
    for number, row in enumerate(each.rows, 1):
        yield (f"  row {number}", say.unit(row.length), f"{row.asked:,}", f"{row.placed:,}", "")
