"""From a body and a design to panels, or to the findings that say why not."""

from __future__ import annotations

import numpy as np

from workbench.body import Body
from workbench.draft import trouble
from workbench.draft.design import Design
from workbench.draft.edges import edges_through
from workbench.draft.intake import blocks_of, ledger_of, levels_of
from workbench.draft.lines import LineError, Nodes, nodes_of
from workbench.draft.monotone import Array
from workbench.draft.panels import edge_places, hold_girths, panels_of, seams_of, sides_of
from workbench.draft.result import Draft, EdgeLine, Finding, LedgerLine, Level, LineName, Outcome
from workbench.draft.styles import style_line
from workbench.draft.surface import Surface


class _Stopped(Exception):  # noqa: N818  it carries findings, it is not an error to report
    def __init__(self, findings: tuple[Finding, ...]) -> None:
        super().__init__()
        self.findings = findings


def work_out(body: Body, design: Design) -> Outcome:
    """All that follows from a body and a design: levels, ledger and, unless a finding stops it, the draft.

    The same input gives the same outline, bit for bit.
    """
    stops = trouble.in_design(design)
    levels = levels_of(body, design)
    blocks = blocks_of(levels, design)
    ledger = ledger_of(levels, blocks, design)
    stops += trouble.in_girths(levels, design) + trouble.in_ledger(ledger, design)
    if stops:
        return Outcome(body, design, levels, blocks, ledger, None, stops)
    try:
        x = edge_places(design, levels, blocks, ledger, body.value("bust_span"))
        draft, findings = _drafted(design, levels, ledger, x)
    except _Stopped as stopped:
        return Outcome(body, design, levels, blocks, ledger, None, stopped.findings)
    return Outcome(body, design, levels, blocks, ledger, draft, findings)


def _drafted(
    design: Design, levels: tuple[Level, ...], ledger: tuple[LedgerLine, ...], x: Array
) -> tuple[Draft, tuple[Finding, ...]]:
    walks = np.array([level.walk for level in levels])
    _stop_on(trouble.in_places(x, levels, design))
    x = hold_girths(walks, x)
    edges = edges_through(walks, x)
    _stop_on(trouble.in_edges(edges, levels, design))
    surface = Surface(edges, design.panel_count)
    neckline, neckline_nodes = _line("neckline", design, levels, surface)
    hem, hem_nodes = _line("hem", design, levels, surface)
    _stop_on(trouble.in_lines(neckline_nodes, hem_nodes, design))
    sides = sides_of(edges, hem_nodes.at_seams(), neckline_nodes.at_seams())
    low, high = hem_nodes.sampled(surface), neckline_nodes.sampled(surface)
    _stop_on(trouble.in_sampled_lines(high, low, design) + trouble.in_widths(surface, low, high, design))
    panels = panels_of(design, levels, surface, sides, low, high)
    seams = seams_of(design, levels, sides, panels, hem_nodes, neckline_nodes)
    tape = {
        level.name: 2 * sum(panel.widths[level.name] for panel in panels) + design.opening_mm
        for level in levels
    }
    draft = Draft(panels, seams, neckline, hem, tape, surface)
    return draft, trouble.in_flare(seams, ledger, design)


def _stop_on(findings: tuple[Finding, ...]) -> None:
    if findings:
        raise _Stopped(findings)


def _line(
    name: LineName, design: Design, levels: tuple[Level, ...], surface: Surface
) -> tuple[EdgeLine, Nodes]:
    own = design.neckline if name == "neckline" else design.hem
    points = style_line(name, design, levels) if own is None else own
    _stop_on(trouble.in_points(name, points, levels, design))
    try:
        nodes = nodes_of(points, surface)
    except LineError as error:
        raise _Stopped((trouble.undrawable_line(name, error),)) from error
    walks = tuple(float(walk) for walk in nodes.at_seams())
    return EdgeLine(name, points, walks, own is not None), nodes
