"""The table of measurements: form, report and file are all made from it.

A range is where a figure is believed without asking. It is wider than the 1st to 99th
percentile of the women in the open data its source names; outside it she is asked to
check, never refused.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from workbench.frozen import dataclass

Kind = Literal["girth", "length"]
View = Literal["front", "back", "side"]


@dataclass(frozen=True)
class Measurement:
    """One measurement: what it is called, how it is taken, what is plausible (mm)."""

    key: str
    label: str
    kind: Kind
    how: str
    """Two sentences: where the tape goes, and what to mind."""
    low_mm: float
    high_mm: float
    source: str
    """Where the range comes from."""
    needed: bool
    """Whether nothing else can stand in for it. Bust can be estimated from underbust or upper chest."""
    group: str
    """Heading it stands under in a form."""
    view: View
    """The side of the body on which the tape is best shown."""
    optional: bool
    """Whether it is left empty, not estimated, when it was not taken."""


_BDIMS = "wider than 1 to 99 % of the 260 women of bdims (Heinz, Peterson, Johnson, Kerk 2003), read"
_SPANISH = "wider than 1 to 99 % of 600 women of a Spanish apparel survey (CRAN package Anthropometry), read"
_ANSUR = "wider than 1 to 99 % of the 1,986 women of ANSUR II (2012)"
_PRACTICE = "common practice, no source"


def _girth(
    key: str,
    label: str,
    how: str,
    low: float,
    high: float,
    source: str,
    view: View = "front",
    needed: bool = False,
) -> Measurement:
    return Measurement(key, label, "girth", how, low, high, source, needed, "Girths", view, False)


def _length(key: str, label: str, how: str, low: float, high: float, source: str, view: View) -> Measurement:
    return Measurement(key, label, "length", how, low, high, source, False, "Lengths", view, False)


def _extra(
    key: str, label: str, kind: Kind, how: str, low: float, high: float, source: str, group: str, view: View
) -> Measurement:
    return Measurement(key, label, kind, how, low, high, source, False, group, view, True)


MEASUREMENTS: tuple[Measurement, ...] = (
    _girth(
        "bust_girth",
        "Bust",
        "Level round the fullest part, over both bust points. She breathes normally, and wears what she will "
        "wear under it.",
        650,
        1600,
        _SPANISH,
        needed=True,
    ),
    _girth(
        "waist_girth",
        "Waist",
        "Tie a cord round her, let her bend to each side, and measure where it settles. Leave the cord on, "
        "the lengths are taken to it.",
        480,
        1550,
        f"{_BDIMS}, and of the Spanish apparel survey",
        needed=True,
    ),
    _girth(
        "underbust_girth",
        "Underbust",
        "Level round the ribs, directly below the breasts. Take it at rest, between two breaths.",
        550,
        1450,
        "bust range of the Spanish apparel survey less the 5.3 to 6.4 in of ASTM D5585-11e1, read, and wider",
    ),
    _girth(
        "top_hip_girth",
        "Top hip",
        "Level round the hip bones, about 3½ in (9 cm) below the cord. Mark the height, for waist to top hip "
        "is taken to the same line.",
        600,
        1650,
        "between the waists and the hips of bdims and of the Spanish apparel survey, read, and wider",
    ),
    _girth(
        "upper_chest_girth",
        "Upper chest",
        "Round the body high under the arms and above the breasts. Keep the tape level, and let her lower "
        "her arms before reading.",
        600,
        1500,
        _BDIMS,
    ),
    _length(
        "shoulder_to_bust",
        "Shoulder to bust point",
        "Lay the tape at the neck end of the shoulder and let it fall over the bust point. Read there, and "
        "leave the tape lying.",
        180,
        420,
        _PRACTICE,
        "front",
    ),
    _length(
        "shoulder_to_underbust",
        "Shoulder to underbust",
        "On the same tape, pressed in below the breast. Read at the underbust line.",
        240,
        500,
        _PRACTICE,
        "front",
    ),
    _length(
        "shoulder_to_waist",
        "Shoulder to waist",
        "On the same tape again, straight down to the cord. Read at the middle of the cord.",
        320,
        600,
        _PRACTICE,
        "front",
    ),
    _length(
        "bust_span",
        "Bust point to bust point",
        "Straight across from one bust point to the other. Do not follow the hollow between them.",
        110,
        330,
        _PRACTICE,
        "front",
    ),
    _length(
        "waist_to_top_hip",
        "Waist to top hip",
        "At the side, from the cord down to the line of the top hip. Let the tape follow the body.",
        30,
        160,
        f"ISO 8559-1 puts the top hip 80 to 100 mm below, from memory; {_ANSUR}, 10th rib to hip bone, read",
        "side",
    ),
    _length(
        "underarm_to_waist",
        "Underarm to waist",
        "At the side, from high under the arm straight down to the cord. Let her hold the arm a little away, "
        "not up.",
        120,
        330,
        f"{_ANSUR}, armpit to navel, read; the cord settles above the navel",
        "side",
    ),
    _length(
        "nape_to_waist",
        "Nape to waist",
        "From the bone at the base of the neck down the back to the cord. Let the tape follow the back.",
        310,
        520,
        f"{_ANSUR}, nape to navel level, read; the cord settles above the navel",
        "back",
    ),
    _extra(
        "hip_girth",
        "Hip",
        "girth",
        "Level round the fullest part of the seat. Feet together.",
        680,
        1750,
        f"{_BDIMS}, and of the Spanish apparel survey",
        "Girths if you can",
        "side",
    ),
    _extra(
        "armscye_girth",
        "Armscye",
        "girth",
        "Round the arm where it joins the body, over the shoulder end and under the arm. Lay the tape close, "
        "without pull.",
        280,
        700,
        _PRACTICE,
        "Girths if you can",
        "side",
    ),
    _extra(
        "underbust_exhale",
        "Underbust breathed out",
        "girth",
        "On the underbust line, when she has breathed right out. Draw the tape close, without pressing.",
        520,
        1450,
        "underbust range, less half a breath (3.7 to 6.4 cm in four studies, abstracts), and wider",
        "Breath",
        "front",
    ),
    _extra(
        "underbust_inhale",
        "Underbust breathed in",
        "girth",
        "On the same line, when she has breathed in as far as she can. Let the tape slide out with her.",
        560,
        1530,
        "underbust range, more half a breath (3.7 to 6.4 cm in four studies, abstracts), and wider",
        "Breath",
        "front",
    ),
    _extra(
        "seated_waist_girth",
        "Seated waist",
        "girth",
        "Round the body at the cord, while she sits upright on a hard chair. Let her breathe out and relax "
        "before reading.",
        480,
        1650,
        f"waist range, and wider; {_PRACTICE}",
        "Seated",
        "side",
    ),
    _extra(
        "waist_to_lap",
        "Seated waist to lap",
        "length",
        "Seated upright, at the centre front, from the cord down to the lap. Let the tape follow the belly.",
        60,
        330,
        f"{_PRACTICE}; {_ANSUR}, navel to crotch standing, read",
        "Seated",
        "side",
    ),
    _extra(
        "waist_to_thigh",
        "Seated waist to thigh",
        "length",
        "Seated upright, at the side, from the cord down to the top of the thigh. Let the tape follow the "
        "hip.",
        60,
        330,
        _PRACTICE,
        "Seated",
        "side",
    ),
)

BY_KEY: Mapping[str, Measurement] = {row.key: row for row in MEASUREMENTS}
