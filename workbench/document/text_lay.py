"""Lay plans as lines to read: what each cloth takes, what to buy, and where each piece lies."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from workbench.cloth import Copy, Placed, laid, say_money, to_coin
from workbench.document.lays import Lay
from workbench.document.project import Project
from workbench.document.text_lines import Said, bullets, section, table
from workbench.draft import Finding


def lay_text(lays: Sequence[Lay], project: Project, also: Sequence[Finding] = ()) -> str:
    """The plans as text; ``also`` is what went wrong on the way to them."""
    say = Said(project)
    lines = [project.client.name or "No client named"]
    for lay in lays:
        title = f"{lay.cloth.name}, {say.unit(lay.cloth.width_mm)} wide"
        lines.extend(section(title, (*_summary(lay, say), *_places(lay, say))))
    notes = [finding.text(project.unit, project.fraction) for finding in also]
    lines.extend(section("What to look at", bullets(notes)) if notes else ())
    return "\n".join(line.rstrip() for line in lines) + "\n"


def _summary(lay: Lay, say: Said) -> Iterator[str]:
    plan, buy = lay.plan, lay.buy
    if plan is None or buy is None or not lay.copies:
        yield "Nothing is cut from it."
        return
    currency = say.project.quoting.currency
    cost = f", {say_money(to_coin(buy.cost, currency), currency)}" if buy.cost else ""
    used = f"{100 * plan.utilisation:.1f} % of it in pieces"
    yield f"Takes {say.unit(plan.length_mm)}, {used}. To buy: {buy.words}{cost}."
    findings = (finding.text(say.project.unit, say.project.fraction) for finding in lay.findings)
    yield from bullets(note for note in (plan.how, buy.note, *findings) if note)


def _places(lay: Lay, say: Said) -> Iterator[str]:
    if lay.plan is None or not lay.plan.placed:
        return
    copies = {copy.key: copy for copy in lay.copies}
    head = ("", "layer", "copy", "across from", "along from", "turned", "")
    found = [
        (*_nearest(own, copies[own.piece, own.copy]), own)
        for own in lay.plan.placed
        if (own.piece, own.copy) in copies
    ]
    rows = [
        _place_row(own, copies[own.piece, own.copy], across, along, say)
        for along, across, own in sorted(found, key=lambda each: each[:2])
    ]
    yield from table([head, *rows], words=(0, 1, 6))


def _nearest(own: Placed, copy: Copy) -> tuple[float, float]:
    """How far along and across the piece begins, mm from the cut end and the selvedge."""
    across, along = np.min(laid(copy, own), axis=0).tolist()
    return along, across


def _place_row(own: Placed, copy: Copy, across: float, along: float, say: Said) -> tuple[str, ...]:
    over = ("turned over", "pinned")
    said = [words for words, on in zip(over, (own.mirrored, own.pinned), strict=True) if on]
    turned = f"{own.degrees:g}°"
    layer = copy.layer.replace("_", " ")
    return (copy.name, layer, str(own.copy), say(across), say(along), turned, ", ".join(said))
