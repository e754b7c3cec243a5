"""Where bones lie: on seams, up the middle of panels, beside what opens, at the centre front."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from numpy.typing import NDArray

from workbench.draft import Design, Draft, Outcome, Panel, seam_name
from workbench.frozen import dataclass
from workbench.pieces.making import BonePlace, BoneStuff, Boning, Making

Array = NDArray[np.float64]

EYELET_MM = 9.525
"""Across the rim of an eyelet: 3/8 in (common practice, no source)."""
BUSK_HALF_MM = 12.7
"""Width of one half of a busk: 1/2 in (common practice, no source)."""
ZIP_HALF_MM = 6.35
"""What one half of a zip and its stitching need beside the seam (common practice, no source)."""

_PAST_MM = 60.0
"""How far beyond the lowest and highest walk of an edge a line is drawn before the panel cuts it off
(own choice)."""
_SAMPLES = 161
"""Own choice: points along a line before it is cut off."""
_SPECK_MM = 0.01
"""Own choice: what is shorter is no line."""


@dataclass(frozen=True)
class _Ground:
    """What lines are laid on: the draft, and walks that reach past it."""

    draft: Draft
    walks: Array

    def narrowest(self, panels: Sequence[int]) -> Array:
        """Least width in mm of each of the panels between hem and neckline."""
        numbers, hem, neckline = (
            np.array(own) for own in (panels, self.draft.hem.seam_walks, self.draft.neckline.seam_walks)
        )
        below = np.minimum(hem[numbers], hem[numbers + 1])[:, None]
        above = np.maximum(neckline[numbers], neckline[numbers + 1])[:, None]
        drawn = (self.walks >= below) & (self.walks <= above)
        sides = 2 * numbers[:, None] + np.array([0, 1])
        x, y = self.draft.surface.edges.xy(sides[..., None], self.walks)
        chords = np.hypot(x[:, 1] - x[:, 0], y[:, 1] - y[:, 0])
        found: Array = np.where(drawn, chords, np.inf).min(axis=1)
        return found


@dataclass(frozen=True)
class Laid:
    """The line of one bone from hem to neckline, before the bone is cut."""

    place: BonePlace
    where: str
    stuff: BoneStuff
    count: int
    panel: int
    seam: int | None
    """The seam it lies on or beside; None up the middle of a panel."""
    line: Array | None
    """(n, 2), upwards; None where the panel is too narrow for it."""
    across: tuple[Array, ...] = ()
    """The other side of its seam: sewn up, a seam curves at least as tightly as either side is drawn."""


def laid_bones(outcome: Outcome, draft: Draft, making: Making) -> tuple[Laid, ...]:
    """Every bone line that was asked for, the centre front first and the opening last."""
    design, ground = outcome.design, _ground_of(draft)
    places, laid = making.boning.places, []
    if "centre_front" in places:
        laid += _at_centre_front(ground, making)
    if "seams" in places:
        laid += _on_seams(draft, design, making)
    if "mid_panel" in places:
        laid += _mid_panels(ground, making.boning)
    if "beside_opening" in places:
        laid += _beside_opening(ground, design, making)
    return tuple(laid)


def channel_width(boning: Boning) -> float:
    """Width in mm between the two rows of stitching that hold a bone."""
    return boning.width_mm + boning.channel_ease_mm


def insets(making: Making) -> tuple[float, float]:
    """Distance in mm from the centre-back edge to the middle of the bones before and beyond the eyelets.

    The foot of a loop is flat, so a channel may touch it; an eyelet's rim is kept clear.
    """
    opening, half = making.opening, 0.5 * channel_width(making.boning)
    rim = 0.5 * EYELET_MM if opening.closing == "eyelets" else 0.0
    return max(0.5 * (opening.set_in_mm - rim), half), opening.set_in_mm + rim + half


def room_at_edge(making: Making) -> float:
    """Millimetres between the centre-back edge and what the cord runs through."""
    rim = 0.5 * EYELET_MM if making.opening.closing == "eyelets" else 0.0
    return making.opening.set_in_mm - rim


def _on_seams(draft: Draft, design: Design, making: Making) -> list[Laid]:
    """One on every seam of either half; a zip takes the place of one side seam's."""
    zipped = design.front.panel_count if making.opening.closing == "side_zip" else None
    return [
        Laid(
            "seams",
            seam.name,
            making.boning.stuff,
            1 if seam.index == zipped else 2,
            seam.index - 1,
            seam.index,
            draft.panels[seam.index - 1].right,
            (draft.panels[seam.index].left,),
        )
        for seam in draft.seams
    ]


def _mid_panels(ground: _Ground, boning: Boning) -> list[Laid]:
    panels, walks = ground.draft.panels, ground.walks
    half = np.full_like(walks, 0.5)
    middles = ground.draft.surface.points(np.arange(len(panels))[:, None], half, walks)
    room = ground.narrowest(range(len(panels))) >= channel_width(boning)
    return [
        Laid(
            "mid_panel",
            f"middle of {panel.name}",
            boning.stuff,
            2,
            panel.index,
            None,
            _inside(panel, middles[panel.index, None])[0] if room[panel.index] else None,
        )
        for panel in panels
    ]


def _at_centre_front(ground: _Ground, making: Making) -> list[Laid]:
    """One on the fold; with a busk, one beside either half of it, of the stuff that does not twist."""
    boning = making.boning
    if making.front == "fold":
        return [Laid("centre_front", "centre front", boning.stuff, 1, 0, 0, ground.draft.panels[0].left)]
    line = _inset(ground, 0, BUSK_HALF_MM + 0.5 * channel_width(boning), boning)
    return [Laid("centre_front", "beside the busk", boning.opening_stuff, 2, 0, 0, line)]


def _beside_opening(ground: _Ground, design: Design, making: Making) -> list[Laid]:
    if making.opening.closing == "side_zip":
        return _beside_zip(ground, design, making.boning)
    holder = "eyelets" if making.opening.closing == "eyelets" else "loops"
    last, boning = design.panel_count - 1, making.boning
    places = (f"centre back between edge and {holder}", f"centre back beyond the {holder}")
    lines = _insets(ground, 2 * last + 1, insets(making), boning)
    return [
        Laid("beside_opening", where, boning.opening_stuff, 2, last, last + 1, line)
        for where, line in zip(places, lines, strict=True)
    ]


def _beside_zip(ground: _Ground, design: Design, boning: Boning) -> list[Laid]:
    """Before and behind the zip, on its side of the garment only."""
    side, inset = design.front.panel_count, ZIP_HALF_MM + 0.5 * channel_width(boning)
    name = seam_name(side, design)
    return [
        Laid(
            "beside_opening",
            f"{name} {way} the zip",
            boning.opening_stuff,
            1,
            edge // 2,
            side,
            _inset(ground, edge, inset, boning),
        )
        for way, edge in (("before", 2 * side - 1), ("behind", 2 * side))
    ]


def _ground_of(draft: Draft) -> _Ground:
    low = min(*(point.t for point in draft.hem.points), *draft.hem.seam_walks)
    high = max(*(point.t for point in draft.neckline.points), *draft.neckline.seam_walks)
    walks = np.linspace(low - _PAST_MM, high + _PAST_MM, _SAMPLES)
    return _Ground(draft, walks)


def _inset(ground: _Ground, edge: int, inset: float, boning: Boning) -> Array | None:
    """A line along an edge of the surface, ``inset`` mm inside its panel; None where that is too narrow."""
    return _insets(ground, edge, (inset,), boning)[0]


def _insets(ground: _Ground, edge: int, insets: Sequence[float], boning: Boning) -> list[Array | None]:
    """Several of them along one edge."""
    panel, half = edge // 2, 0.5 * channel_width(boning)
    room = float(ground.narrowest([panel])[0])
    x, y, lean = ground.draft.surface.edges.at(np.array(edge), ground.walks)
    up = np.sqrt(np.maximum(1 - lean * lean, 0))
    inwards = (-1 if edge % 2 else 1) * np.array(insets)[:, None]
    lines = np.stack((x + inwards * up, y - inwards * lean), axis=-1)
    kept = _inside(ground.draft.panels[panel], lines)
    return [line if room >= inset + half else None for line, inset in zip(kept, insets, strict=True)]


def _inside(panel: Panel, lines: Array) -> list[Array | None]:
    """The part of each line between hem and neckline; None where it is not in one piece."""
    cloth = shapely.polygons(panel.outline)
    return [_in_one_piece(part) for part in shapely.intersection(shapely.linestrings(lines), cloth)]


def _in_one_piece(inside: shapely.Geometry) -> Array | None:
    kept = [part for part in shapely.get_parts(inside) if shapely.length(part) > _SPECK_MM]
    if len(kept) != 1:
        return None
    points: Array = shapely.get_coordinates(kept[0])
    return points if points[0, 1] <= points[-1, 1] else points[::-1]
