"""What can be wrong with a draft, each said in one sentence that names the place and the way out."""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite

import numpy as np

from workbench.body import LEVEL_LABEL, LevelName
from workbench.draft.design import FEWEST_PANELS, MOST_PANELS, Design, Quarter, QuarterName, Seam, ShapePoint
from workbench.draft.edges import STEEPEST, Edges
from workbench.draft.intake import QUARTERS
from workbench.draft.lines import LineError, Nodes, Sampled, seam_walks
from workbench.draft.monotone import Array
from workbench.draft.panels import panel_name, seam_name
from workbench.draft.result import Finding, LedgerLine, Level, LineName, Place, SeamLine, Severity
from workbench.draft.surface import Surface

SHARP_FLARE = 0.5
"""Run per walk above which a seam is too sharp to sew flat (the drafting method's own bound)."""
THINNEST = 2.0
"""Least width of a panel anywhere, mm."""
SHORTEST = 10.0
"""Least length of a seam between hem and neckline, mm."""
LEAST_QUARTER = 40.0
"""Least finished quarter girth, mm: below this nothing is left to divide into panels."""
MOST_ABOVE, MOST_BELOW = 200.0, 300.0
"""How far a shape point may lie above the uppermost and below the lowest level, mm."""

Findings = tuple[Finding, ...]


def in_design(design: Design) -> Findings:
    """Figures of the design that cannot be drafted, each with the field that holds it."""
    return tuple(_design_troubles(design))


def _stop(code: str, sentence: str, place: Place, remedy: str, **values: float | str) -> Finding:
    lengths = {name: value for name, value in values.items() if isinstance(value, float)}
    words = {name: value for name, value in values.items() if isinstance(value, str)}
    return Finding("stop", code, sentence, lengths, words, place, remedy)


def _design_troubles(design: Design) -> Iterator[Finding]:
    if not (isfinite(design.opening_mm) and 0 <= design.opening_mm <= 400):
        yield _field("opening", "opening_mm", "The opening", "between 0 and 16 in (40 cm)")
    if not (isfinite(design.front_share) and 0.3 <= design.front_share <= 0.7):
        yield _field("front_share", "front_share", "The front's share", "between 30 and 70 %")
    if not (isfinite(design.allowance_mm) and 0 <= design.allowance_mm <= 100):
        yield _field("allowance", "allowance_mm", "The seam allowance", "between 0 and 4 in (10 cm)")
    for level in design.levels:
        if not isfinite(design.reductions.at(level)):
            yield _field(
                "reduction", f"reductions.{level}", f"The reduction at the {_low(level)}", "a length"
            )
    for quarter in QUARTERS:
        yield from _quarter_troubles(quarter, design)


def _field(code: str, name: str, what: str, wanted: str) -> Finding:
    return _stop(code, f"{what} must be {wanted}.", Place(field=name), "")


def _quarter_troubles(quarter: QuarterName, design: Design) -> Iterator[Finding]:
    described: Quarter = design.front if quarter == "front" else design.back
    if not FEWEST_PANELS <= described.panel_count <= MOST_PANELS:
        count = str(described.panel_count)
        yield _stop(
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
    if not all(isfinite(v) and 0 < v < 1 for v in (seam.lower, seam.upper)):
        yield _stop(
            "seam_place",
            "The {seam} stands outside its quarter.",
            place,
            "Set it between 0 and 100 %.",
            seam=name,
        )
    parts = [seam.left_part, *(s.left_part for s in seam.shares if s.left_part is not None)]
    if not all(isfinite(part) and 0 <= part <= 1 for part in parts):
        yield _stop(
            "left_part", "The left part of the {seam} must be between 0 and 100 %.", place, "", seam=name
        )


def _weight_troubles(described: Quarter, quarter: QuarterName) -> Iterator[Finding]:
    shares = (*described.side_shares, *(s for seam in described.seams for s in seam.shares))
    weights = [described.side_weight, *(s.weight for s in described.seams)]
    weights += [s.weight for s in shares if s.weight is not None]
    if not all(isfinite(weight) and weight >= 0 for weight in weights):
        yield _stop(
            "weight",
            "A weight of the {quarter} seams is below nothing or no number.",
            Place(field=f"{quarter}.seams"),
            "Give each seam a weight of 0 or more.",
            quarter=quarter,
        )
    if not all(s.pin_mm is None or (isfinite(s.pin_mm) and abs(s.pin_mm) <= 500) for s in shares):
        yield _stop(
            "pin",
            "A pinned intake of the {quarter} is no usable length.",
            Place(field=f"{quarter}.seams"),
            "Unpin it.",
            quarter=quarter,
        )


def in_girths(levels: tuple[Level, ...], design: Design) -> Findings:
    """Levels where too little girth is left to make panels of."""
    return tuple(
        _stop(
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
    return _stop(
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


def in_places(x: Array, levels: tuple[Level, ...], design: Design) -> Findings:
    """Panels whose two edges meet or cross at a level."""
    widths = x[1::2] - x[::2]
    return tuple(
        _crossing(int(panel), level, levels, design, float(widths[panel, level]))
        for panel, level in np.argwhere(~(widths > THINNEST))[:6]
    )


def _crossing(panel: int, level: int, levels: tuple[Level, ...], design: Design, width: float) -> Finding:
    name = levels[level].name
    return _stop(
        "edges_cross",
        "{panel} has {width} of width left at the {level}: {left} and {right} cross there.",
        Place(panel=panel, level=name),
        "Move one of the two apart, or let another seam take more in.",
        panel=panel_name(panel, design),
        level=_low(name),
        left=seam_name(panel, design),
        right=seam_name(panel + 1, design),
        width=max(width, 0.0),
    )


def in_edges(edges: Edges, levels: tuple[Level, ...], design: Design) -> Findings:
    """Edges so steep between two levels that they cannot be drawn at their true length."""
    found = {}
    for row, piece in np.argwhere(~(edges.steepest < STEEPEST)).tolist():
        seam = (row + 1) // 2
        found[seam, piece] = _too_steep(seam, levels[piece], levels[piece + 1], design)
    return tuple(found.values())


def _too_steep(seam: int, low: Level, high: Level, design: Design) -> Finding:
    return _stop(
        "too_steep",
        "The {seam} would have to run level between {low} and {high}, {apart} apart: it cannot be drawn.",
        Place(seam=seam, level=high.name),
        "Check the girths and heights of the two levels, or let other seams take more of the difference.",
        seam=seam_name(seam, design),
        low=_low(low.name),
        high=_low(high.name),
        apart=float(high.walk - low.walk),
    )


def in_points(
    name: LineName, points: tuple[ShapePoint, ...], levels: tuple[Level, ...], design: Design
) -> Findings:
    """Shape points out of order or out of reach."""
    low, high = levels[0].walk - MOST_BELOW, levels[-1].walk + MOST_ABOVE
    if len(points) < 2 or points[0].u != 0 or points[-1].u != design.panel_count:
        return (
            _stop(
                "line_ends",
                "The {line} must begin at the centre front and end at the centre back.",
                Place(line=name),
                "Use the line of the style.",
                line=name,
            ),
        )
    for number, point in enumerate(points):
        if not (isfinite(point.t) and low <= point.t <= high):
            return (_out_of_reach(name, number, low, high),)
        if number and not points[number - 1].u < point.u:
            return (_line_trouble(name, "lies level with or behind the point before it", number),)
    return ()


def _out_of_reach(name: LineName, number: int, low: float, high: float) -> Finding:
    return _stop(
        "point_reach",
        "Point {number} of the {line} is out of reach: {low} to {high} from the waist is possible.",
        Place(line=name, point=number),
        "Move it back, or remove it.",
        number=str(number + 1),
        line=name,
        low=float(low),
        high=float(high),
    )


def _line_trouble(name: LineName, what: str, point: int | None) -> Finding:
    who = f"Point {point + 1} of the {name}" if point is not None else f"The {name}"
    return _stop("line", f"{who} {what}.", Place(line=name, point=point), "Move it, or remove it.")


def undrawable_line(name: LineName, error: LineError) -> Finding:
    """The finding for a line that could not be followed round the body."""
    return _line_trouble(name, str(error), error.point)


def in_lines(neckline: Nodes, hem: Nodes, design: Design) -> Findings:
    """Seams where the neckline is not above the hem."""
    gaps = [high - low for high, low in zip(seam_walks(neckline), seam_walks(hem), strict=True)]
    return tuple(_below_hem(seam, gap, design) for seam, gap in enumerate(gaps) if not gap >= SHORTEST)


def _below_hem(seam: int, gap: float, design: Design) -> Finding:
    return _stop(
        "neckline_below_hem",
        "At the {seam} the neckline is below the hem."
        if gap < 0
        else "At the {seam} the neckline is only {gap} above the hem.",
        Place(seam=seam, line="neckline"),
        "Raise the neckline or lower the hem there.",
        seam=seam_name(seam, design),
        gap=gap,
    )


def in_sampled_lines(neckline: Sampled, hem: Sampled, design: Design) -> Findings:
    """Panels in which the neckline dips to the hem between its seams."""
    if neckline.t.min() - hem.t.max() > THINNEST:
        return ()
    found = []
    for panel in range(design.panel_count):
        v, low = hem.v[hem.panel == panel].ravel(), hem.t[hem.panel == panel].ravel()
        at, high = neckline.v[neckline.panel == panel].ravel(), neckline.t[neckline.panel == panel].ravel()
        if (high - np.interp(at, v, low)).min() < THINNEST:
            found.append(
                _stop(
                    "neckline_below_hem",
                    "In {panel} the neckline dips to the hem.",
                    Place(panel=panel, line="neckline"),
                    "Raise the neckline or lower the hem there.",
                    panel=panel_name(panel, design),
                )
            )
    return tuple(found)


def in_widths(surface: Surface, hem: Sampled, neckline: Sampled, design: Design) -> Findings:
    """Panels that pinch to nothing between two levels, within what is cut."""
    walks = np.linspace(hem.t.min(), neckline.t.max(), 25)
    x, _, _ = surface.edges.at(np.arange(2 * surface.panel_count)[:, None], walks)
    thin = x[1::2] - x[::2] <= THINNEST
    found = []
    for panel in np.flatnonzero(thin.any(axis=1)):
        low, high = hem.t[hem.panel == panel].min(), neckline.t[neckline.panel == panel].max()
        if thin[panel, (walks >= low) & (walks <= high)].any():
            found.append(
                _stop(
                    "edges_cross",
                    "{panel} pinches to nothing: {left} and {right} meet between two levels.",
                    Place(panel=int(panel)),
                    "Move one of the two apart, or let another seam take more in.",
                    panel=panel_name(int(panel), design),
                    left=seam_name(int(panel), design),
                    right=seam_name(int(panel) + 1, design),
                )
            )
    return tuple(found)


def in_flare(seams: tuple[SeamLine, ...], ledger: tuple[LedgerLine, ...], design: Design) -> Findings:
    """Seams that flare too sharply to be sewn flat."""
    gentlest = min(seams, key=lambda seam: seam.steepest)
    return tuple(_sharp(seam, gentlest) for seam in seams if seam.steepest > SHARP_FLARE)


def _sharp(seam: SeamLine, gentlest: SeamLine) -> Finding:
    low, high = seam.steepest_between
    severity: Severity = "attend"
    other = f", or let the {gentlest.name} take more" if gentlest.steepest <= SHARP_FLARE else ""
    return Finding(
        severity,
        "sharp_flare",
        "The {seam} flares too sharply between {low} and {high} to be sewn flat.",
        {},
        {"seam": seam.name, "low": _low(low), "high": _low(high)},
        Place(seam=seam.index, level=high),
        f"Give it a smaller share there{other}.",
    )


def _low(level: LevelName) -> str:
    return LEVEL_LABEL[level].lower()
