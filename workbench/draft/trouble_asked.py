"""What can be wrong with what was asked for: design, girths, ledger, shape points."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf, isfinite

from workbench.body import LEVEL_LABEL
from workbench.draft.design import FEWEST_PANELS, MOST_PANELS, Design, Quarter, QuarterName, Seam, ShapePoint
from workbench.draft.intake import QUARTERS
from workbench.draft.names import Findings, low_label, seam_name, stop
from workbench.draft.result import Finding, LedgerLine, Level, LineName, Place

LEAST_QUARTER = 40.0
"""Least finished quarter girth, mm: below this nothing is left to divide into panels (own choice)."""
WIDEST_OPENING = 400.0
"""mm that the back may be left open (own choice)."""
LEAST_SHARE, MOST_SHARE = 0.3, 0.7
"""Of the half girth that the front may have (own choice)."""
LONGEST_PIN = 500.0
"""mm that may be pinned in one seam at one level (own choice)."""
MOST_ABOVE, MOST_BELOW = 200.0, 300.0
"""How far a shape point may lie above the uppermost and below the lowest level, mm (own choice)."""


def in_design(design: Design) -> Findings:
    """Figures of the design that cannot be drafted, each with the field that holds it."""
    return tuple(_design_troubles(design))


def _design_troubles(design: Design) -> Iterator[Finding]:
    if not 0 <= design.opening_mm <= WIDEST_OPENING:
        yield _field("opening", "opening_mm", "The opening", "between 0 and 16 in (40 cm)")
    if not LEAST_SHARE <= design.front_share <= MOST_SHARE:
        yield _field("front_share", "front_share", "The front's share", "between 30 and 70 %")
    for level in design.levels:
        if not isfinite(design.reductions.at(level)):
            yield _field(
                "reduction", f"reductions.{level}", f"The reduction at the {low_label(level)}", "a length"
            )
    for quarter in QUARTERS:
        yield from _quarter_troubles(quarter, design)


def _field(code: str, name: str, what: str, wanted: str) -> Finding:
    return stop(code, f"{what} must be {wanted}.", Place(field=name), "")


def _quarter_troubles(quarter: QuarterName, design: Design) -> Iterator[Finding]:
    described: Quarter = design.front if quarter == "front" else design.back
    if not FEWEST_PANELS <= described.panel_count <= MOST_PANELS:
        count = str(described.panel_count)
        yield stop(
            "panel_count",
            "The {quarter} half has {count} panels; it can have 2 to 4.",
            Place(field=f"{quarter}.panels"),
            "",
            quarter=quarter,
            count=count,
        )
        return
    first = 1 if quarter == "front" else design.front.panel_count + 1
    for number, seam in enumerate(described.seams):
        yield from _seam_troubles(seam, first + number, quarter, design)
    yield from _weight_troubles(described, quarter)


def _seam_troubles(seam: Seam, index: int, quarter: QuarterName, design: Design) -> Iterator[Finding]:
    name, place = seam_name(index, design), Place(seam=index, field=f"{quarter}.seams")
    if not (0 < seam.lower < 1 and 0 < seam.upper < 1):
        yield stop(
            "seam_place",
            "The {seam} stands outside its quarter.",
            place,
            "Set it between 0 and 100 %.",
            seam=name,
        )
    parts = [seam.left_part, *(s.left_part for s in seam.shares if s.left_part is not None)]
    if not all(0 <= part <= 1 for part in parts):
        yield stop(
            "left_part", "The left part of the {seam} must be between 0 and 100 %.", place, "", seam=name
        )


def _weight_troubles(described: Quarter, quarter: QuarterName) -> Iterator[Finding]:
    shares = (*described.side_shares, *(s for seam in described.seams for s in seam.shares))
    weights = [described.side_weight, *(s.weight for s in described.seams)]
    weights += [s.weight for s in shares if s.weight is not None]
    if not all(0 <= weight < inf for weight in weights):
        yield stop(
            "weight",
            "A weight of the {quarter} seams is below nothing or no number.",
            Place(field=f"{quarter}.seams"),
            "Give each seam a weight of 0 or more.",
            quarter=quarter,
        )
    if not all(s.pin_mm is None or abs(s.pin_mm) <= LONGEST_PIN for s in shares):
        yield stop(
            "pin",
            "A pinned intake of the {quarter} is no usable length.",
            Place(field=f"{quarter}.seams"),
            "Unpin it.",
            quarter=quarter,
        )


def in_girths(levels: tuple[Level, ...], design: Design) -> Findings:
    """Levels where too little girth is left to make panels of."""
    return tuple(
        stop(
            "no_girth",
            "{level}: a finished girth of {finished}, opening {opening}, leaves too little for panels.",
            Place(level=level.name, field=f"reductions.{level.name}"),
            "Reduce less, or plan a smaller opening.",
            level=LEVEL_LABEL[level.name],
            finished=level.finished,
            opening=float(design.opening_mm),
        )
        for level in levels
        if not level.fabric >= 4 * LEAST_QUARTER
    )


def in_ledger(ledger: tuple[LedgerLine, ...], design: Design) -> Findings:
    """Lines of the ledger that do not close."""
    return tuple(_ledger_trouble(line, design) for line in ledger if not line.closes)


def _ledger_trouble(line: LedgerLine, design: Design) -> Finding:
    over = line.gap > 0
    pinned = [seam_name(taking.seam, design) for taking in line.takings if taking.pinned]
    return stop(
        "ledger_over" if over else "ledger_short",
        "{level}, {quarter}: the seams take in {placed} a quarter where {needed} is needed, {gap} "
        + ("over." if over else "short."),
        Place(level=line.level, seam=next((t.seam for t in line.takings if t.pinned), None)),
        "Unpin or change the {pins}." if pinned else "Give a seam some weight.",
        level=LEVEL_LABEL[line.level],
        quarter=line.quarter,
        placed=float(line.placed),
        needed=float(line.needed),
        gap=float(abs(line.gap)),
        pins=" or the ".join(pinned),
    )


def in_points(
    name: LineName, points: tuple[ShapePoint, ...], levels: tuple[Level, ...], design: Design
) -> Findings:
    """Shape points out of order or out of reach."""
    low, high = levels[0].walk - MOST_BELOW, levels[-1].walk + MOST_ABOVE
    if len(points) < 2 or points[0].u != 0 or points[-1].u != design.panel_count:
        return (
            stop(
                "line_ends",
                "The {line} must begin at the centre front and end at the centre back.",
                Place(line=name),
                "Use the line of the style.",
                line=name,
            ),
        )
    for number, point in enumerate(points):
        if not low <= point.t <= high:
            return (_out_of_reach(name, number, low, high),)
        if number and not points[number - 1].u < point.u:
            return (line_trouble(name, "lies level with or behind the point before it", number),)
    return ()


def _out_of_reach(name: LineName, number: int, low: float, high: float) -> Finding:
    return stop(
        "point_reach",
        "Point {number} of the {line} is out of reach: {low} to {high} from the waist is possible.",
        Place(line=name, point=number),
        "Move it back, or remove it.",
        number=str(number + 1),
        line=name,
        low=float(low),
        high=float(high),
    )


def line_trouble(name: LineName, what: str, point: int | None) -> Finding:
    """The finding for a line, or one of its points, that cannot be drawn."""
    who = f"Point {point + 1} of the {name}" if point is not None else f"The {name}"
    return stop("line", f"{who} {what}.", Place(line=name, point=point), "Move it, or remove it.")
