"""What can be wrong with what came out: edges, lines, widths, corners, flare.

Figures are own choice, what can still be drawn and sewn, unless said.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from workbench.body import LEVEL_LABEL, LevelName
from workbench.draft.design import Design
from workbench.draft.edges import STEEPEST, Edges
from workbench.draft.lines import LineError, Nodes, Sampled
from workbench.draft.monotone import Array
from workbench.draft.names import Findings, low_label, panel_name, seam_name, stop
from workbench.draft.result import Finding, Level, LineName, Panel, Place, SeamLine, Severity
from workbench.draft.surface import Surface
from workbench.draft.trouble_asked import line_trouble

SHARP_FLARE = 0.5
"""Run per walk above which a seam is too sharp to sew flat (the drafting method's own bound)."""
THINNEST = 2.0
"""Least width of a panel anywhere, mm."""
SHORTEST = 10.0
"""Least length of a seam between hem and neckline, mm."""
GIRTH_HELD = 0.9
"""Most the tape girth may be off, mm round the body; without a sharp flare it is off by a hundredth."""
SHARPEST_CORNER = 15.0
"""Degrees: a sharper one is thinner than 2 mm for more than its last 7 mm."""
STEEPEST_CLIMB = 4.0
"""Rise per run of a neckline or hem between two nodes: 76 degrees."""
_GENTLE_RISE = 2.0
"""Rise per run of a line with which it meets a seam, to which it is square at 0, in 26 degrees at least."""
_GENTLE_RUN = 0.45
"""Run per walk at the points where an edge is integrated; between those it is at most a tenth more."""


def in_places(x: Array, levels: tuple[Level, ...], design: Design) -> Findings:
    """Panels whose two edges meet or cross at a level."""
    widths = x[1::2] - x[::2]
    if widths.min() > THINNEST:
        return ()
    return tuple(
        _crossing(int(panel), level, levels, design, float(widths[panel, level]))
        for panel, level in np.argwhere(~(widths > THINNEST))[:6]
    )


def _crossing(panel: int, level: int, levels: tuple[Level, ...], design: Design, width: float) -> Finding:
    name = levels[level].name
    return stop(
        "edges_cross",
        "{panel} has {width} of width left at the {level}: {left} and {right} cross there.",
        Place(panel=panel, level=name),
        "Move one of the two apart, or let another seam take more in.",
        panel=panel_name(panel, design),
        level=low_label(name),
        left=seam_name(panel, design),
        right=seam_name(panel + 1, design),
        width=max(width, 0.0),
    )


def in_edges(edges: Edges, levels: tuple[Level, ...], design: Design) -> Findings:
    """Edges so steep between two levels that they cannot be drawn at their true length."""
    if edges.steepest.max() < STEEPEST:
        return ()
    found = {}
    for row, piece in np.argwhere(~(edges.steepest < STEEPEST)).tolist():
        seam = (row + 1) // 2
        found[seam, piece] = _too_steep(seam, levels[piece], levels[piece + 1], design)
    return tuple(found.values())


def _too_steep(seam: int, low: Level, high: Level, design: Design) -> Finding:
    return stop(
        "too_steep",
        "The {seam} would have to run level between {low} and {high}, {apart} apart: it cannot be drawn.",
        Place(seam=seam, level=high.name),
        "Check the girths and heights of the two levels, or let other seams take more of the difference.",
        seam=seam_name(seam, design),
        low=low_label(low.name),
        high=low_label(high.name),
        apart=float(high.walk - low.walk),
    )


def undrawable_line(name: LineName, error: LineError) -> Finding:
    """The finding for a line that could not be followed round the body."""
    return line_trouble(name, str(error), error.point)


def in_lines(neckline: tuple[float, ...], hem: tuple[float, ...], design: Design) -> Findings:
    """Seams at whose walks the neckline is not above the hem."""
    gaps = [high - low for high, low in zip(neckline, hem, strict=True)]
    return tuple(_below_hem(seam, gap, design) for seam, gap in enumerate(gaps) if not gap >= SHORTEST)


def _below_hem(seam: int, gap: float, design: Design) -> Finding:
    return stop(
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
                stop(
                    "neckline_below_hem",
                    "In {panel} the neckline dips to the hem.",
                    Place(panel=panel, line="neckline"),
                    "Raise the neckline or lower the hem there.",
                    panel=panel_name(panel, design),
                )
            )
    return tuple(found)


def in_widths(surface: Surface, sides: Array, hem: Sampled, neckline: Sampled, design: Design) -> Findings:
    """Panels that pinch to nothing between two levels, within what is cut.

    ``sides`` (edges, m, 2) are the edges as drawn: where the two of a panel keep apart
    altogether there is nothing to look for.
    """
    x = sides[..., 0]
    if (x[1::2].min(axis=1) - x[::2].max(axis=1)).min() > THINNEST:
        return ()
    walks = np.linspace(hem.t.min(), neckline.t.max(), 25)
    x, _ = surface.edges.xy(np.arange(2 * surface.panel_count)[:, None], walks)
    thin = x[1::2] - x[::2] <= THINNEST
    found = []
    for panel in np.flatnonzero(thin.any(axis=1)):
        low, high = hem.t[hem.panel == panel].min(), neckline.t[neckline.panel == panel].max()
        if thin[panel, (walks >= low) & (walks <= high)].any():
            found.append(
                stop(
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


def in_steepness(lines: Sampled, of_hem: int, design: Design) -> Findings:
    """Pieces of hem and neckline that climb so steeply that they leave a horn of cloth beside them.

    The first ``of_hem`` of the pieces are those of the hem.
    """
    climb = np.abs(lines.t[:, -1] - lines.t[:, 0])
    steep = np.flatnonzero((climb > STEEPEST_CLIMB * lines.run) & (climb > SHORTEST))
    places: list[tuple[LineName, int]] = [
        ("hem" if piece < of_hem else "neckline", lines.panel.item(piece)) for piece in steep.tolist()
    ]
    return tuple(_climbs(name, panel, design) for name, panel in dict.fromkeys(places))


def _climbs(name: LineName, panel: int, design: Design) -> Finding:
    return stop(
        "line_climbs",
        "In {panel} the {line} climbs too steeply to be cut.",
        Place(panel=panel, line=name),
        "Move its points apart, or level them.",
        panel=panel_name(panel, design),
        line=name,
    )


def in_corners(panels: tuple[Panel, ...], lines: tuple[Nodes, Nodes], design: Design) -> Findings:
    """Corners so sharp that the cloth would end in a spike.

    They are measured only where one of the lines climbs enough to make such a corner.
    """
    rises = [rise for nodes in lines for node in nodes for rise in (node.slope_in, node.slope_out)]
    if min(rises) > -_GENTLE_RISE and max(rises) < _GENTLE_RISE:
        return ()
    sharp = [
        (panel, corner)
        for panel in panels
        for corner, angle in enumerate(panel.corner_angles)
        if not angle >= SHARPEST_CORNER
    ]
    return tuple(_spike(panel, corner, design) for panel, corner in sharp)


def _spike(panel: Panel, corner: int, design: Design) -> Finding:
    line: LineName = "hem" if corner < 2 else "neckline"
    seam = panel.index + (1 if corner in (1, 2) else 0)
    return stop(
        "spike",
        "{panel} ends in a spike where the {line} meets the {seam}.",
        Place(panel=panel.index, seam=seam, line=line),
        "Let the {line} run less steeply there.",
        panel=panel.name,
        line=line,
        seam=seam_name(seam, design),
    )


def in_tape(tape: Mapping[LevelName, float], levels: tuple[Level, ...]) -> Findings:
    """Levels where the panels do not measure the finished girth along the tape."""
    return tuple(
        stop(
            "girth_lost",
            "{level}: the panels measure {found} where {wanted} is wanted: the flare there is too sharp.",
            Place(level=level.name),
            "Let other seams take more of it, or check the girths and heights.",
            level=LEVEL_LABEL[level.name],
            found=tape[level.name],
            wanted=level.finished,
        )
        for level in levels
        if not abs(tape[level.name] - level.finished) <= GIRTH_HELD
    )


def in_flare(seams: tuple[SeamLine, ...], edges: Edges) -> Findings:
    """Seams that flare too sharply to be sewn flat, measured only where an edge comes near it."""
    if edges.steepest.max() < _GENTLE_RUN:
        return ()
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
        {"seam": seam.name, "low": low_label(low), "high": low_label(high)},
        Place(seam=seam.index, level=high),
        f"Give it a smaller share there{other}.",
    )
