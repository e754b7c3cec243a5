"""Edges of pieces: which one a place points to, of what kind it is, and what it is called."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.draft import Design, Place, panel_name, seam_name
from workbench.pieces import EdgeKind, EdgeName

ROUND: tuple[EdgeName, ...] = ("left", "neckline", "right", "hem")
"""The edges in the order in which the hand goes round a piece."""


@dataclass(frozen=True)
class Edge:
    """One edge of the pieces that are cut from one panel."""

    panel: int
    name: EdgeName


def edge_of(place: Place | None, design: Design) -> Edge | None:
    """The edge that a place points to; None where it points to no single edge of one panel."""
    if place is None or place.panel is None or not 0 <= place.panel < design.panel_count:
        return None
    if place.seam == place.panel:
        return Edge(place.panel, "left")
    if place.seam == place.panel + 1:
        return Edge(place.panel, "right")
    return Edge(place.panel, place.line) if place.line is not None else None


def place_of_edge(edge: Edge) -> Place:
    """The place that points to an edge: it lights up in every pane."""
    if edge.name == "left":
        return Place(panel=edge.panel, seam=edge.panel)
    if edge.name == "right":
        return Place(panel=edge.panel, seam=edge.panel + 1)
    return Place(panel=edge.panel, line=edge.name)


def kind_of(edge: Edge, design: Design) -> EdgeKind:
    """The kind of an edge, by which it gets its allowance."""
    if edge.name in ("neckline", "hem"):
        return edge.name
    seam = edge.panel + (edge.name == "right")
    named: dict[int, EdgeKind] = {
        0: "centre_front",
        design.front.panel_count: "side",
        design.panel_count: "centre_back",
    }
    return named.get(seam, "seam")


def edge_words(edge: Edge, design: Design) -> str:
    """``Back 2, left edge (back seam 1)``."""
    panel = panel_name(edge.panel, design)
    if edge.name in ("neckline", "hem"):
        return f"{panel}, {edge.name}"
    seam = edge.panel + (edge.name == "right")
    if seam == 0:
        return f"{panel}, centre front"
    if seam == design.panel_count:
        return f"{panel}, centre back"
    return f"{panel}, {edge.name} edge ({seam_name(seam, design)})"
