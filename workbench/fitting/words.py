"""Fittings and their changes in words."""

from __future__ import annotations

from datetime import date
from functools import cache

from workbench.body import LEVEL_LABEL, LEVELS, Fraction, Unit, say_closely
from workbench.draft import Design, Finding, Outcome, Place, panel_name, seam_name, usual_design
from workbench.fitting.records import Change, Fitting


def fitting_said(fitting: Fitting) -> str:
    """A fitting in the middle of a sentence: ``the fitting of 20 May 2031``."""
    said = date_said(fitting.date)
    return f"the fitting of {said}" if said else "the fitting without a date"


def date_said(iso: str) -> str:
    """An ISO date as it is said: ``20 May 2031``; as it stands where it is none."""
    try:
        day = date.fromisoformat(iso)
    except ValueError:
        return iso
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"


# by hand: the names that the system's language would give are not those of the window
_MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
_SPECK = 0.2
"""mm: what a level lost or moved by less is nothing she could sew (own choice)."""
_VERBS = {
    "seam": ("Take in", "Let out"),
    "length": ("Lengthen", "Shorten"),
    "neckline": ("Raise", "Lower"),
    "hem": ("Raise", "Lower"),
}


def verb_of(change: Change) -> str:
    """What is done: ``Take in``, ``Let out``, ``Lengthen``, ``Shorten``, ``Raise``, ``Lower``."""
    more, less = _VERBS[change.kind]
    return less if change.amount_mm < 0 else more


def where_said(change: Change, panels: tuple[int, int]) -> str:
    """Where: ``front seam 1, waist``; ``between waist and underbust``; ``neckline at the side seam``."""
    if change.kind == "seam" and change.level is not None:
        return f"{seam_said(change.seam or 0, panels)}, {LEVEL_LABEL[change.level].lower()}"
    if change.kind == "length" and change.level is not None:
        above = LEVELS[min(LEVELS.index(change.level) + 1, len(LEVELS) - 1)]
        return f"between {LEVEL_LABEL[change.level].lower()} and {LEVEL_LABEL[above].lower()}"
    return f"{change.kind} {place_said(change.u or 0.0, panels)}"


def seam_said(seam: int, panels: tuple[int, int]) -> str:
    """The name of a seam where front and back have so many panels."""
    return seam_name(seam, _counted(panels))


@cache
def _counted(panels: tuple[int, int]) -> Design:
    """Any design of so many panels: names hang on their number alone."""
    front, back = panels
    return usual_design(front_panels=front, back_panels=back)


def place_said(u: float, panels: tuple[int, int]) -> str:
    """A place round the body: ``at the side seam``, ``40 % across front 2``."""
    if abs(u - round(u)) < 1e-3:
        return f"at the {seam_said(round(u), panels)}"
    return f"{100 * (u % 1):.0f} % across {panel_name(int(u), _counted(panels)).lower()}"


def change_said(change: Change, panels: tuple[int, int], unit: Unit, fraction: Fraction = 8) -> str:
    """A change as a line: ``Take in ¼ in at front seam 1, waist``."""
    amount = say_closely(abs(change.amount_mm), unit, fraction)
    joint = "" if change.kind == "length" else "at " if change.kind == "seam" else "the "
    return f"{verb_of(change)} {amount} {joint}{where_said(change, panels)}"


def comes_to(change: Change, unit: Unit, fraction: Fraction = 8) -> str:
    """What a change of a seam comes to round the body; empty for the others."""
    if change.kind != "seam" or not change.amount_mm:
        return ""
    said = say_closely(2 * abs(change.amount_mm), unit, fraction)
    return f"{said} {'less' if change.amount_mm > 0 else 'more'} round the body: the seam is there twice."


def fitted_words(outcome: Outcome, unit: Unit, fraction: Fraction = 8) -> str:
    """What fittings changed in an outcome, level by level: one sentence, or nothing where none did."""
    note = fitted_note(outcome)
    return note.text(unit, fraction) if note is not None else ""


def fitted_note(outcome: Outcome) -> Finding | None:
    """The same as a finding about the fittings; None where none changed anything."""
    if not outcome.designed:
        return None
    parts: list[str] = []
    lengths: dict[str, float] = {}
    for before, level in zip(reversed(outcome.designed), reversed(outcome.levels), strict=True):
        label, higher = LEVEL_LABEL[level.name].lower(), level.walk - before.walk
        if abs(level.fitted) >= _SPECK:
            lengths[f"girth_{level.name}"] = abs(level.fitted)
            how = "smaller" if level.fitted > 0 else "larger"
            parts.append(f"{label} {{girth_{level.name}}} {how} round the body")
        if abs(higher) >= _SPECK:
            lengths[f"walk_{level.name}"] = abs(higher)
            parts.append(f"{label} {{walk_{level.name}}} {'higher' if higher > 0 else 'lower'}")
    listed = f": {', '.join(parts)}" if parts else " at neckline or hem"
    sentence, place = f"With the corrections of fittings{listed}.", Place(field="fittings")
    return Finding("note", "fittings_in", sentence, lengths, place=place)
