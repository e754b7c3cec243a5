"""Edits of seams: where each stands, and what it takes in at each level.

A seam goes by its number from the centre front, 1 to one less than the panels of the
half. The side seam belongs to both quarters: there ``quarter`` says which side is meant.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from workbench.body import LEVELS, LevelName
from workbench.document.edits import quarter_of, usable
from workbench.document.project import Project
from workbench.draft import Design, Quarter, QuarterName, Seam, Share


def set_pin(project: Project, quarter: QuarterName, seam: int, level: LevelName, mm: float | None) -> Project:
    """The project with the intake of a seam at a level fixed in mm a quarter, or with None shared again."""
    pin = None if mm is None else usable(mm, "The pinned intake")
    return _with_share(project, quarter, seam, level, lambda share: replace(share, pin_mm=pin))


def set_level_weight(
    project: Project, quarter: QuarterName, seam: int, level: LevelName, weight: float | None
) -> Project:
    """The project with a weight of its own for a seam at one level, or with None its usual one."""
    own = None if weight is None else _weight(weight)
    return _with_share(project, quarter, seam, level, lambda share: replace(share, weight=own))


def set_weight(project: Project, quarter: QuarterName, seam: int, weight: float) -> Project:
    """The project with another weight for a seam: its part of what the pins leave, at every level."""
    weight = _weight(weight)
    described, inner = _found(project.design, quarter, seam)
    if inner is None:
        return _with_quarter(project, quarter, replace(described, side_weight=weight))
    return _with_seam(project, quarter, inner, weight=weight)


def set_left_part(
    project: Project, quarter: QuarterName, seam: int, level: LevelName | None, part: float
) -> Project:
    """The project with another part, 0 to 1, of a seam's intake taken from the panel to its left.

    At one level, or with None at all of them; a level's own part gives way to the latter.
    """
    if not 0 <= part <= 1:
        raise ValueError("The left part must lie between 0 and 100 %.")
    described, inner = _found(project.design, quarter, seam)
    if inner is None:
        raise ValueError("The side seam has one side in each quarter; give the two sides weights instead.")
    if level is not None:
        return _with_share(project, quarter, seam, level, lambda share: replace(share, left_part=float(part)))
    shares = tuple(replace(share, left_part=None) for share in described.seams[inner].shares)
    return _with_seam(project, quarter, inner, left_part=float(part), shares=_kept(shares))


def set_seam_place(project: Project, quarter: QuarterName, seam: int, lower: float, upper: float) -> Project:
    """The project with a seam at other places, as parts of the block quarter from its centre line.

    A seam through the bust point stays there when it is leaned; moved as a whole, it leaves it.
    """
    inner, old = _inner_seam(project.design, quarter, seam)
    if not (0 < lower < 1 and 0 < upper < 1):
        raise ValueError("A seam must stand inside its quarter, between 0 and 100 %.")
    leaned = abs((upper - lower) - (old.upper - old.lower)) > 1e-9
    through = old.through_bust_point and (leaned or (lower, upper) == (old.lower, old.upper))
    return _with_seam(
        project, quarter, inner, lower=float(lower), upper=float(upper), through_bust_point=through
    )


def set_through_bust_point(project: Project, seam: int, on: bool) -> Project:
    """The project with a front seam through the bust point, and no other; or not, where ``on`` is false."""
    inner, _ = _inner_seam(project.design, "front", seam)
    front = project.design.front
    if not on:
        return _with_seam(project, "front", inner, through_bust_point=False)
    seams = tuple(
        replace(other, through_bust_point=place == inner) for place, other in enumerate(front.seams)
    )
    return _with_quarter(project, "front", replace(front, seams=seams))


def share_evenly(project: Project, quarter: QuarterName, level: LevelName) -> Project:
    """The project with nothing pinned in one line of the ledger, every seam on its usual weight and split."""
    described = quarter_of(project.design, quarter)
    seams = tuple(replace(seam, shares=_without(seam.shares, level)) for seam in described.seams)
    side = _without(described.side_shares, level)
    return _with_quarter(project, quarter, replace(described, seams=seams, side_shares=side))


def _weight(weight: float) -> float:
    if usable(weight, "The weight") < 0:
        raise ValueError("A weight cannot be less than nothing.")
    return float(weight)


def _found(design: Design, quarter: QuarterName, seam: int) -> tuple[Quarter, int | None]:
    """The quarter, and the seam's place in it counted from 0; None for the side seam."""
    side = design.front.panel_count
    if seam == side:
        return quarter_of(design, quarter), None
    if quarter == "front" and 1 <= seam < side:
        return design.front, seam - 1
    if quarter == "back" and side < seam < design.panel_count:
        return design.back, seam - side - 1
    raise ValueError(f"The {quarter} has no seam number {seam}.")


def _inner_seam(design: Design, quarter: QuarterName, seam: int) -> tuple[int, Seam]:
    described, inner = _found(design, quarter, seam)
    if inner is None:
        raise ValueError("The side seam stands where front and back meet; change the front’s share instead.")
    return inner, described.seams[inner]


def _with_quarter(project: Project, quarter: QuarterName, described: Quarter) -> Project:
    design = project.design
    changed = replace(design, front=described) if quarter == "front" else replace(design, back=described)
    return replace(project, design=changed)


def _with_seam(project: Project, quarter: QuarterName, inner: int, **changes: object) -> Project:
    described = quarter_of(project.design, quarter)
    seams = list(described.seams)
    seams[inner] = replace(seams[inner], **changes)  # type: ignore[arg-type]  # fields by name
    return _with_quarter(project, quarter, replace(described, seams=tuple(seams)))


def _with_share(
    project: Project,
    quarter: QuarterName,
    seam: int,
    level: LevelName,
    change: Callable[[Share], Share],
) -> Project:
    described, inner = _found(project.design, quarter, seam)
    old = described.side_shares if inner is None else described.seams[inner].shares
    before = next((share for share in old if share.level == level), Share(level))
    shares = _kept((*_without(old, level), change(before)))
    if inner is None:
        return _with_quarter(project, quarter, replace(described, side_shares=shares))
    return _with_seam(project, quarter, inner, shares=shares)


def _without(shares: tuple[Share, ...], level: LevelName) -> tuple[Share, ...]:
    return tuple(share for share in shares if share.level != level)


def _kept(shares: tuple[Share, ...]) -> tuple[Share, ...]:
    """Those that say anything, bottom to top, so that equal designs are equal values."""
    telling = (share for share in shares if share != Share(share.level))
    return tuple(sorted(telling, key=lambda share: LEVELS.index(share.level)))
