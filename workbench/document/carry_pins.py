"""Pinned intakes on another body: each keeps its part of what its level takes in."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from workbench.body import LEVEL_LABEL, LevelName
from workbench.document.project import Project
from workbench.document.seam_edits import set_pin
from workbench.draft import Finding, LedgerLine, Outcome, Place, QuarterName, seam_name

LEAST_INTAKE_MM = 3.175
"""An eighth of an inch, what a hand draft is good to: a part of less than that means nothing (common
practice, no source)."""
_HAIR = 1e-6
"""mm: what sums of girths are off by, so that it is no change (own choice)."""


class _Pin(NamedTuple):
    quarter: QuarterName
    level: LevelName
    seam: int
    before: float
    after: float


def pins_in_proportion(project: Project, old: Outcome, new: Outcome) -> tuple[Project, tuple[Finding, ...]]:
    """The project with its pins in proportion to the intake of each level, and a note for each one changed.

    ``old`` and ``new`` are its design on the body it was drawn for and on the body of the project.
    """
    changed = [pin for line in old.ledger for pin in _changed(line, new.line(line.quarter, line.level))]
    for pin in changed:
        project = set_pin(project, pin.quarter, pin.seam, pin.level, pin.after)
    return project, tuple(_scaled(pin, new) for pin in changed)


def _changed(old: LedgerLine, new: LedgerLine) -> Iterator[_Pin]:
    factor = _factor(old, new)
    for taking in old.takings:
        after = factor * taking.total
        if taking.pinned and abs(after - taking.total) > _HAIR:
            yield _Pin(old.quarter, old.level, taking.seam, taking.total, after)


def _factor(old: LedgerLine, new: LedgerLine) -> float:
    """By how much the intake of a line has grown; 1 where its pins are no part of that intake.

    One that is negative, or more than all there is to take in, was set for its own sake.
    """
    pins = [taking.total for taking in old.takings if taking.pinned]
    parts = all(-_HAIR <= pin <= old.needed + _HAIR for pin in pins)
    return new.needed / old.needed if parts and old.needed >= LEAST_INTAKE_MM else 1.0


def _scaled(pin: _Pin, outcome: Outcome) -> Finding:
    return Finding(
        "note",
        "carried_pin",
        "{level}: the {quarter}’s {seam} takes in {after} a quarter instead of {before}, "
        "the same part of the intake.",
        {"before": pin.before, "after": pin.after},
        _words(pin.quarter, pin.level, pin.seam, outcome),
        Place(level=pin.level, seam=pin.seam),
        value_mm=pin.after,
    )


def pins_freed(project: Project, outcome: Outcome) -> tuple[Project, tuple[Finding, ...]]:
    """The project without the pins of each ledger line that does not close, and a finding for each pin."""
    loose = list(_loose(outcome.ledger))
    for line, seam, _ in loose:
        project = set_pin(project, line.quarter, seam, line.level, None)
    return project, tuple(_freed(line, seam, mm, outcome) for line, seam, mm in loose)


def _loose(ledger: Iterable[LedgerLine]) -> Iterator[tuple[LedgerLine, int, float]]:
    for line in ledger:
        if not line.closes:
            for taking in line.takings:
                if taking.pinned:
                    yield line, taking.seam, taking.total


def _freed(line: LedgerLine, seam: int, mm: float, outcome: Outcome) -> Finding:
    return Finding(
        "attend",
        "carried_pin_freed",
        "{level}: the {quarter}’s {seam} is no longer pinned to {pin}: "
        "with it the intake of {needed} a quarter does not add up.",
        {"pin": mm, "needed": line.needed},
        _words(line.quarter, line.level, seam, outcome),
        Place(level=line.level, seam=seam),
        "It is shared by weight now.",
        value_mm=mm,
    )


def _words(quarter: QuarterName, level: LevelName, seam: int, outcome: Outcome) -> dict[str, str]:
    # an inner seam's name says its quarter already
    name = seam_name(seam, outcome.design).removeprefix(f"{quarter} ")
    return {"level": LEVEL_LABEL[level], "quarter": quarter, "seam": name}


def pinned(project: Project) -> bool:
    """Whether anything is pinned."""
    design = project.design
    quarters = (design.front, design.back)
    shares = [share for quarter in quarters for share in quarter.side_shares]
    shares += [share for quarter in quarters for seam in quarter.seams for share in seam.shares]
    return any(share.pin_mm is not None for share in shares)
