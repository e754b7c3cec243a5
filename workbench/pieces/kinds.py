"""Which kind of edge a side is, and the allowance it gets in each layer."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property
from math import isfinite
from typing import Literal

from workbench.draft import Design, Draft, Finding, LineName, Panel, Place, seam_name
from workbench.frozen import dataclass
from workbench.pieces.cutline import Widths
from workbench.pieces.making import EDGE_KINDS, EdgeKind, EdgeName, LayerChoice, LayerName, Making
from workbench.pieces.outline import IN_RING

Kind = EdgeKind | Literal["fold", "free"]
Turns = tuple[float, float]
"""How far the left and the right side are set out for the turn of cloth, mm."""
Kinds = tuple[Kind, Kind, Kind, Kind]
"""In the order of the ring: hem, right, neckline, left."""

_UNCUT: tuple[Kind, ...] = ("fold", "free")
"""Edges that never have an allowance."""

PANEL_LAYERS: tuple[LayerName, ...] = ("fashion", "strength", "interfacing", "lining")
"""Layers with a piece for each panel."""
_KIND_WORDS = {
    "seam": "joining seams",
    "side": "side seam",
    "centre_back": "centre back",
    "centre_front": "centre front",
    "neckline": "neckline",
    "hem": "hem",
}


@dataclass(frozen=True)
class Edging:
    """Kinds and allowances of the edges of the panels, and of what is cut from them."""

    design: Design
    making: Making

    @cached_property
    def sides(self) -> tuple[Kind, ...]:
        """The kind of the edges that lie on each seam, from the centre front (0) to the centre back."""
        front, last = self.design.front.panel_count, self.design.panel_count
        middle: tuple[Kind, ...] = tuple("side" if seam == front else "seam" for seam in range(1, last))
        return "fold" if self.making.front == "fold" else "centre_front", *middle, "centre_back"

    def side(self, seam: int) -> Kind:
        """The kind of the edge that lies on a seam; 0 is the centre front."""
        return self.sides[seam]

    def panel(self, panel: int) -> Kinds:
        """The kinds of a panel's four edges."""
        return "hem", self.sides[panel + 1], "neckline", self.sides[panel]

    def turns(self, panel: int, turn: float) -> Turns:
        """A hair at every joining seam; centre front and centre back keep their place."""
        joined = ("seam", "side")
        left, right = self.sides[panel] in joined, self.sides[panel + 1] in joined
        return turn if left else 0.0, turn if right else 0.0

    def width(self, layer: LayerName, panel: int, edge: EdgeName, kind: Kind) -> float:
        """The allowance in mm; what cannot be cut counts as none."""
        wanted = self._own.get((layer, panel, edge)) if self._own and kind not in _UNCUT else None
        if wanted is None:
            wanted = self._usual[kind] if layer not in self._net else 0.0
        return wanted if isfinite(wanted) and wanted > 0 else 0.0

    @cached_property
    def _own(self) -> dict[tuple[LayerName, int, str], float]:
        """What was asked for single edges; of two for one edge the first counts."""
        owns = reversed(self.making.own_allowances)
        return {(own.layer, own.panel, own.edge): own.allowance_mm for own in owns}

    @cached_property
    def _usual(self) -> dict[Kind, float]:
        none: dict[Kind, float] = {"fold": 0.0, "free": 0.0}
        return {**none, **{kind: self.making.allowances.of(kind) for kind in EDGE_KINDS}}

    @cached_property
    def _net(self) -> set[LayerName]:
        return {choice.layer for choice in self.making.layers if choice.net}

    def widths(self, layer: LayerName, panel: int) -> Widths:
        """The allowances of a panel's four edges."""
        key = layer, panel
        if key not in self._widths:
            hem, right, neckline, left = map(self.width, [layer] * 4, [panel] * 4, IN_RING, self.panel(panel))
            self._widths[key] = hem, right, neckline, left
        return self._widths[key]

    @cached_property
    def _widths(self) -> dict[tuple[LayerName, int], Widths]:
        return {}


def choice_of(making: Making, layer: LayerName) -> LayerChoice:
    """The choice for one layer; one that is not made where nothing is said of it."""
    for choice in making.layers:
        if choice.layer == layer:
            return choice
    return LayerChoice(layer, False)


def panels_in(choice: LayerChoice, draft: Draft) -> list[Panel]:
    """The panels a layer is made of."""
    return [panel for panel in draft.panels if panel.index not in choice.left_out]


def edge_words(edge: EdgeName) -> str:
    """An edge's name in the middle of a sentence."""
    return f"{edge} side" if edge in ("left", "right") else edge


def place_of(panel: int, edge: EdgeName) -> Place:
    """Where a finding about one edge of one piece points."""
    if edge in ("left", "right"):
        return Place(panel=panel, seam=panel + (edge == "right"))
    line: LineName = "neckline" if edge == "neckline" else "hem"
    return Place(panel=panel, line=line)


def allowance_findings(edging: Edging, draft: Draft) -> tuple[Finding, ...]:
    """What is wrong with the allowances as they were asked for."""
    return (*_kinds_amiss(edging.making), *_own_amiss(draft, edging.making), *_wider(edging, draft))


def _kinds_amiss(making: Making) -> Iterator[Finding]:
    for kind in EDGE_KINDS:
        if not 0 <= making.allowances.of(kind) < float("inf"):
            yield Finding(
                "attend",
                "allowance_amiss",
                "The allowance at the {kind} is not a width that can be cut; none is drawn there.",
                words={"kind": _KIND_WORDS[kind]},
                place=Place(field=f"allowances.{kind}"),
                remedy="Give it a width of nothing or more.",
            )


def _own_amiss(draft: Draft, making: Making) -> Iterator[Finding]:
    for own in making.own_allowances:
        if 0 <= own.allowance_mm < float("inf") or own.panel not in range(len(draft.panels)):
            continue
        yield Finding(
            "attend",
            "allowance_amiss",
            "The allowance at the {edge} of {panel} is not a width that can be cut; none is drawn there.",
            words={"edge": edge_words(own.edge), "panel": draft.panels[own.panel].name},
            place=place_of(own.panel, own.edge),
            remedy="Give it a width of nothing or more.",
        )


def _wider(edging: Edging, draft: Draft) -> Iterator[Finding]:
    """Each edge whose allowance is wider than its panel, once, whichever layers it is cut in."""
    told: set[tuple[int, EdgeName]] = set()
    rooms: dict[tuple[int, EdgeName], float] = {}
    for choice in edging.making.layers:
        if choice.layer not in PANEL_LAYERS or not choice.made:
            continue
        for panel in panels_in(choice, draft):
            for edge, width in zip(IN_RING, edging.widths(choice.layer, panel.index), strict=True):
                key = panel.index, edge
                if width == 0 or key in told:
                    continue
                if key not in rooms:
                    rooms[key] = _room(panel, edge)
                if width > rooms[key]:
                    told.add(key)
                    yield _too_wide(panel, edge, width, rooms[key], edging.design)


def _room(panel: Panel, edge: EdgeName) -> float:
    """How wide the panel is behind an edge at its narrowest, or how high, mm."""
    if edge in ("left", "right"):
        drawn = [panel.widths[name] for name in panel.level_lines] or list(panel.widths.values())
        return min(drawn)
    return float(min(side[-1, 1] - side[0, 1] for side in (panel.left, panel.right)))


def _too_wide(panel: Panel, edge: EdgeName, width: float, room: float, design: Design) -> Finding:
    words = {"edge": edge_words(edge), "panel": panel.name}
    if edge in ("left", "right"):
        words["edge"] = f"{words['edge']} ({seam_name(panel.index + (edge == 'right'), design)})"
    return Finding(
        "attend",
        "allowance_wider_than_panel",
        "The allowance at the {edge} of {panel} is {width}, wider than the panel itself, {room}.",
        {"width": width, "room": room},
        words,
        place_of(panel.index, edge),
        "Give this edge less, or check its width.",
        value_mm=width,
        limit_mm=room,
    )
