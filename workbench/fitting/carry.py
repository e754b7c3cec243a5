"""From what was written down at fittings to corrections of the draft on the table now.

A change is switched off by itself or with its whole fitting. What no longer suits the bodice,
because its panels or its style have changed since, is left out and said.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from workbench.body import LEVEL_LABEL
from workbench.draft import (
    NO_CORRECTIONS,
    Corrections,
    Design,
    Finding,
    Lengthened,
    LineName,
    Place,
    Raised,
    TakenIn,
)
from workbench.fitting.records import Change, Fitting
from workbench.fitting.words import fitting_said


class Carried(NamedTuple):
    """What is carried into the draft, and what could not be."""

    corrections: Corrections
    findings: tuple[Finding, ...]


def carried(fittings: Sequence[Fitting], design: Design) -> Carried:
    """The corrections of all fittings that are applied, in order, and a finding for each one left out."""
    if not fittings:
        return _NOTHING
    taken: list[TakenIn] = []
    longer: list[Lengthened] = []
    raised: list[tuple[Raised, ...]] = []
    findings: list[Finding] = []
    for number, fitting in enumerate(fittings):
        if not fitting.applied:
            continue
        lines: list[Raised] = []
        for which, change in enumerate(fitting.changes):
            if not (change.on and change.amount_mm):
                continue
            said, field = line_said(fitting, which), field_of(number, which)
            trouble = _trouble(change, fitting, design, said, field)
            if trouble is not None:
                findings.append(trouble)
            elif change.kind == "seam":
                taken.append(_taken_in(change, fitting, design, said, field))
            elif change.kind == "length" and change.level is not None:
                longer.append(Lengthened(change.level, change.amount_mm, said, field))
            else:
                lines.append(_raised(change, fitting, design, said, field))
        if lines:
            raised.append(tuple(lines))
    return Carried(Corrections(tuple(taken), tuple(longer), tuple(raised)), tuple(findings))


_NOTHING = Carried(NO_CORRECTIONS, ())


def line_said(fitting: Fitting, number: int) -> str:
    """A change as a sentence names it: ``Line 2 of the fitting of 20 May 2031``."""
    return f"Line {number + 1} of {fitting_said(fitting)}"


def field_of(fitting: int, change: int) -> str:
    """The path of a change, by which findings and fields know it."""
    return f"fittings.{fitting}.changes.{change}"


def _taken_in(change: Change, fitting: Fitting, design: Design, said: str, field: str) -> TakenIn:
    seam = seam_now(change.seam or 0, fitting, design)
    assert seam is not None  # a trouble where it is
    assert change.level is not None  # a project without one is not opened
    return TakenIn(seam, change.level, change.amount_mm, said, field)


def _raised(change: Change, fitting: Fitting, design: Design, said: str, field: str) -> Raised:
    line: LineName = "neckline" if change.kind == "neckline" else "hem"
    return Raised(line, u_now(change.u or 0.0, fitting, design), change.amount_mm, said, field)


def seam_now(seam: int, fitting: Fitting, design: Design) -> int | None:
    """The number that a seam of a fitting has today; None where it is no longer there.

    The side seam always is. Inner seams are those of another draft once the panels of their
    quarter are no longer as many.
    """
    front_then, back_then = fitting.panels
    front, back = design.front.panel_count, design.back.panel_count
    if seam == front_then:
        return front
    if seam < front_then:
        return seam if front == front_then else None
    return seam - front_then + front if back == back_then else None


def u_now(u: float, fitting: Fitting, design: Design) -> float:
    """A place round the body of a fitting, in the panels of today: the same part of its quarter."""
    front_then, back_then = fitting.panels
    front, back = design.front.panel_count, design.back.panel_count
    if u <= front_then:
        return u * front / front_then
    return front + (u - front_then) * back / back_then


def _trouble(change: Change, fitting: Fitting, design: Design, said: str, field: str) -> Finding | None:
    """Why a change cannot be carried into this design; None where it can."""
    return next(_troubles(change, fitting, design, said, field), None)


def _troubles(change: Change, fitting: Fitting, design: Design, said: str, field: str) -> Iterator[Finding]:
    if change.kind == "seam" and seam_now(change.seam or 0, fitting, design) is None:
        quarter = "front" if (change.seam or 0) < fitting.panels[0] else "back"
        then = fitting.panels[0] if quarter == "front" else fitting.panels[1]
        now = design.front.panel_count if quarter == "front" else design.back.panel_count
        yield _left_out(
            "fitting_seam_gone",
            f"its seam is no longer there: the {quarter} had {then} panels then and has {now} now.",
            "Pin it on a seam of today, or switch the line off.",
            said,
            field,
        )
    if change.kind in ("seam", "length") and change.level is not None:
        levels = design.levels if change.kind == "seam" else design.levels[:-1]
        if change.level not in levels:
            yield _left_out(
                "fitting_level_gone",
                f"this style does not reach beyond its level, the {LEVEL_LABEL[change.level].lower()}.",
                "Switch the line off, or choose another level.",
                said,
                field,
            )


def _left_out(code: str, why: str, remedy: str, said: str, field: str) -> Finding:
    return Finding(
        "attend",
        code,
        "{said} is left out: " + why,
        words={"said": said},
        place=Place(field=field),
        remedy=remedy,
    )
