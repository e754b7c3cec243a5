"""From a body and a design to panels, or to the findings that say why not."""

from __future__ import annotations

import numpy as np

from workbench.body import Body
from workbench.draft import trouble_asked as asked
from workbench.draft import trouble_drawn as drawn
from workbench.draft.design import Design, ShapePoint
from workbench.draft.edges import edges_through
from workbench.draft.fitted import NO_CORRECTIONS, Corrections
from workbench.draft.intake import blocks_of, ledger_of, levels_of
from workbench.draft.lines import LineError, Nodes, nodes_of, sampled, seam_walks
from workbench.draft.monotone import Array, Spacing
from workbench.draft.panels import by_panel, edge_places, hold_girths, panels_of, seams_of, sides_of
from workbench.draft.result import Draft, EdgeLine, Finding, LedgerLine, Level, LineName, Outcome
from workbench.draft.styles import style_line
from workbench.draft.surface import Surface


class _Stopped(Exception):  # noqa: N818  it carries findings, it is not an error to report
    def __init__(self, findings: tuple[Finding, ...]) -> None:
        super().__init__()
        self.findings = findings


def work_out(body: Body, design: Design, corrections: Corrections = NO_CORRECTIONS) -> Outcome:
    """All that follows from a body and a design: levels, ledger and, unless a finding stops it, the draft.

    ``corrections`` is what fittings changed of it. The same input gives the same outline, bit for bit.
    """
    stops = asked.in_design(design)
    levels = designed = levels_of(body, design)
    blocks = blocks_of(levels, design)
    ledger = ledger_of(levels, blocks, design)
    if corrections and not stops:
        levels, ledger, stops = _corrected(levels, ledger, corrections, design)
    before = designed if corrections else ()
    stops += asked.in_girths(levels, design) + asked.in_ledger(ledger, design)
    if stops:
        return Outcome(body, design, levels, blocks, ledger, None, stops, before)
    try:
        # where seams stand is a matter of the design: levels that moved apart take them along
        x = edge_places(design, designed, blocks, ledger, body.value("bust_span"))
        if corrections:
            _stop_on(_taken_in_too_far(x, levels, ledger, corrections, design))
        draft, findings = _drafted(design, designed, levels, x, corrections)
    except _Stopped as stopped:
        return Outcome(body, design, levels, blocks, ledger, None, stopped.findings, before)
    return Outcome(body, design, levels, blocks, ledger, draft, findings, before)


def _drafted(
    design: Design,
    designed: tuple[Level, ...],
    levels: tuple[Level, ...],
    x: Array,
    corrections: Corrections,
) -> tuple[Draft, tuple[Finding, ...]]:
    walks = Spacing(np.array([level.walk for level in levels]))
    _stop_on(drawn.in_places(x, levels, design))
    x = hold_girths(walks, x)
    edges = edges_through(walks, x)
    _stop_on(drawn.in_edges(edges, levels, design))
    surface = Surface(edges, design.panel_count)
    own_hem, own_neckline = _line("hem", design, designed), _line("neckline", design, designed)
    if corrections:
        hem, neckline, (hem_nodes, neckline_nodes) = _raised(
            own_hem, own_neckline, designed, levels, surface, corrections
        )
    else:
        hem, neckline = own_hem, own_neckline
        hem_nodes, neckline_nodes = _nodes(hem, neckline, surface)
    hem_walks, neckline_walks = seam_walks(hem_nodes), seam_walks(neckline_nodes)
    _stop_on(drawn.in_lines(neckline_walks, hem_walks, design))
    sides = sides_of(edges, hem_walks, neckline_walks)
    lines = sampled((hem_nodes, neckline_nodes), surface)
    points = surface.points(lines.panel[:, None], lines.v, lines.t)
    below, above = slice(0, len(hem_nodes) - 1), slice(len(hem_nodes) - 1, None)
    low, high = lines.part(below), lines.part(above)
    _stop_on(
        drawn.in_sampled_lines(high, low, design) + drawn.in_widths(surface, sides.points, low, high, design)
    )
    _stop_on(drawn.in_steepness(lines, len(hem_nodes) - 1, design))
    count = design.panel_count
    hem_parts, neckline_parts = (by_panel(lines.panel[part], points[part], count) for part in (below, above))
    panels = panels_of(design, levels, surface, sides, hem_parts, neckline_parts)
    _stop_on(drawn.in_corners(panels, (hem_nodes, neckline_nodes), design))
    seams = seams_of(design, levels, sides, panels, hem_nodes, neckline_nodes)
    tape = {
        level.name: 2 * sum(panel.widths[level.name] for panel in panels) + design.opening_mm
        for level in levels
    }
    _stop_on(drawn.in_tape(tape, levels))
    own = design.neckline is not None, design.hem is not None
    draft = Draft(
        panels,
        seams,
        EdgeLine("neckline", neckline, neckline_walks, own[0], own_neckline),
        EdgeLine("hem", hem, hem_walks, own[1], own_hem),
        tape,
        surface,
    )
    return draft, drawn.in_flare(seams, edges)


def _stop_on(findings: tuple[Finding, ...]) -> None:
    if findings:
        raise _Stopped(findings)


def _line(name: LineName, design: Design, levels: tuple[Level, ...]) -> tuple[ShapePoint, ...]:
    """Her own shape points, or the style's."""
    own = design.neckline if name == "neckline" else design.hem
    points = style_line(name, design, levels) if own is None else own
    _stop_on(asked.in_points(name, points, levels, design))
    return points


def _nodes(
    hem: tuple[ShapePoint, ...], neckline: tuple[ShapePoint, ...], surface: Surface
) -> tuple[Nodes, Nodes]:
    try:
        hem_nodes, neckline_nodes = nodes_of((hem, neckline), surface)
    except LineError as error:
        raise _undrawable(error) from error
    return hem_nodes, neckline_nodes


def _undrawable(error: LineError) -> _Stopped:
    return _Stopped((drawn.undrawable_line(("hem", "neckline")[error.line], error),))


# --- what fittings changed: read when there is anything, as most bodices are not fitted yet --------


def _corrected(
    levels: tuple[Level, ...], ledger: tuple[LedgerLine, ...], corrections: Corrections, design: Design
) -> tuple[tuple[Level, ...], tuple[LedgerLine, ...], tuple[Finding, ...]]:
    """Levels and ledger as fittings left them, and what of that cannot be."""
    from workbench.draft import corrections as fitting

    after = fitting.corrected_levels(levels, corrections)
    placed = fitting.corrected_ledger(ledger, corrections, design)
    return after, placed, fitting.in_lengths(after, corrections)


def _taken_in_too_far(
    x: Array,
    levels: tuple[Level, ...],
    ledger: tuple[LedgerLine, ...],
    corrections: Corrections,
    design: Design,
) -> tuple[Finding, ...]:
    from workbench.draft import corrections as fitting

    return fitting.in_widths(x, levels, ledger, corrections, design)


def _raised(
    hem: tuple[ShapePoint, ...],
    neckline: tuple[ShapePoint, ...],
    designed: tuple[Level, ...],
    levels: tuple[Level, ...],
    surface: Surface,
    corrections: Corrections,
) -> tuple[tuple[ShapePoint, ...], tuple[ShapePoint, ...], tuple[Nodes, Nodes]]:
    """Hem and neckline carried along by their levels and raised where they were: points, and nodes."""
    from workbench.draft import corrections as fitting
    from workbench.draft.raised import on_nodes, raised_nodes_of

    hem, neckline = (fitting.moved_points(line, designed, levels) for line in (hem, neckline))
    if not corrections.raised:
        return hem, neckline, _nodes(hem, neckline, surface)
    lifts = [fitting.lifts_of(line, corrections) for line in ("hem", "neckline")]
    try:
        below, above = raised_nodes_of((hem, neckline), lifts, surface)
    except LineError as error:
        raise _undrawable(error) from error
    return on_nodes(hem, below), on_nodes(neckline, above), (below, above)
