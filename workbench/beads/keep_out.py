"""Where beads may lie: within the stitch lines of a panel, and clear of every band that is kept free.

Bone channels run the whole length of their line, so that the whole of it is kept free and not the
bone alone. A seam's channel lies half on either panel. Figures are own choice, how exactly places
are kept free.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np
import shapely

from workbench.beads.records import BeadBands
from workbench.beads.result import Array, Band, BandWhy, Flags
from workbench.draft import Draft, Outcome, Panel
from workbench.pieces import Bone, Making

Geometry = Any
"""shapely has no types of its own."""

ON_FOLD_MM = 1e-6
_RING_SEGMENTS = 8
_TRIM_MM = 0.005
"""Lines are measured from with only as many points as this calls for, and kept so much farther from: the
distance from a line of a hundred points is what placing beads would spend its time on."""


@dataclass(frozen=True)
class KeptFree:
    """One thing that beads keep away from, on one panel: its line or shape, and how far in mm."""

    why: BandWhy
    shape: Geometry
    clear: float


@dataclass(frozen=True)
class Room:
    """The room for beads on one panel."""

    panel: Panel
    kept_free: tuple[KeptFree, ...]
    fold: bool
    """Whether its left edge is the fold of the centre front, which a bead may lie on."""

    @cached_property
    def outline(self) -> Geometry:
        """The stitch outline as a shape."""
        shape = shapely.polygons(self.panel.outline)
        shapely.prepare(shape)
        return shape

    @cached_property
    def edge(self) -> Geometry:
        """The stitch outline as a line, with few points."""
        return shapely.simplify(shapely.boundary(self.outline), _TRIM_MM)

    def clearance(self, points: Array) -> Array:
        """(n,) how far in mm each point is from what is kept free; below nothing within it.

        A bead of a radius may lie where this is no less than the radius. From one point to another
        it changes by no more than their distance.
        """
        dots = shapely.points(points)
        inside = shapely.contains_xy(self.outline, points[:, 0], points[:, 1])
        room = shapely.distance(self.edge, dots) - _TRIM_MM
        room[~inside] *= -1.0
        for kept in self.kept_free:
            np.minimum(room, shapely.distance(kept.shape, dots) - kept.clear, out=room)
        return np.asarray(room, dtype=np.float64)

    def free(self, points: Array, radii: Array) -> Flags:
        """(n,) whether a bead of each radius may lie at each point."""
        free: Flags = self.clearance(points) >= radii - ON_FOLD_MM
        if self.fold:
            on_fold = np.abs(points[:, 0]) <= ON_FOLD_MM
            free[on_fold] = self._free_on_fold(points[on_fold], radii[on_fold])
        return free

    def why_not(self, points: Array) -> list[BandWhy]:
        """What stands nearest in the way of each point."""
        dots = shapely.points(points)
        far = np.array([shapely.distance(kept.shape, dots) - kept.clear for kept in self.kept_free])
        return [self.kept_free[number].why for number in far.argmin(axis=0)] if len(far) else []

    def _free_on_fold(self, points: Array, radii: Array) -> Flags:
        """A bead on the fold lies half on this side; the fold itself is no edge to it."""
        dots = shapely.points(points)
        free = np.ones(len(points), np.bool_)
        for kept in self.kept_free:
            free &= shapely.distance(kept.shape, dots) >= kept.clear + radii - ON_FOLD_MM
        for line in (self.panel.neckline, self.panel.hem):
            free &= shapely.distance(shapely.linestrings(line), dots) >= radii - ON_FOLD_MM
        return free

    def bands(self) -> Iterator[Band]:
        """What is kept free, as rings to be shaded."""
        for kept in self.kept_free:
            wide = shapely.buffer(kept.shape, kept.clear, quad_segs=_RING_SEGMENTS)
            within = shapely.intersection(wide, self.outline)
            for part in shapely.get_parts(within):
                if shapely.area(part) > 0:
                    rings = shapely.get_rings(part)
                    yield Band(self.panel.index, kept.why, tuple(map(shapely.get_coordinates, rings)))


def rooms_of(
    outcome: Outcome, draft: Draft, making: Making, bones: tuple[Bone, ...], bands: BeadBands
) -> tuple[Room, ...]:
    """The room on every panel of the half, with what either half keeps free: the left mirrors the right."""
    side = outcome.design.front.panel_count
    fold = making.front == "fold"
    return tuple(
        Room(
            panel,
            (
                *_edges(panel, side, len(draft.panels), fold, making, bands),
                *_arm(panel, side, bands),
                *_channels(panel, draft, making, bones, bands),
            ),
            fold and panel.index == 0,
        )
        for panel in draft.panels
    )


def channel_half(making: Making) -> float:
    """Half the width in mm of a bone channel."""
    return 0.5 * (making.boning.width_mm + making.boning.channel_ease_mm)


def _edges(
    panel: Panel, side: int, count: int, fold: bool, making: Making, bands: BeadBands
) -> Iterator[KeptFree]:
    """Neckline, hem, and either side: a seam, or what opens."""
    for line in (panel.neckline, panel.hem):
        yield _beside("edge", line, bands.edge_mm)
    zipped = making.opening.closing == "side_zip"
    for line, seam in ((panel.left, panel.index), (panel.right, panel.index + 1)):
        if seam == 0 and fold:
            continue
        opens = seam == 0 or (seam == side if zipped else seam == count)
        why: BandWhy = "opening" if opens else "seam"
        yield _beside(why, line, bands.opening_mm if opens else bands.seam_mm)


def _beside(why: BandWhy, line: Array, clear: float) -> KeptFree:
    return KeptFree(why, shapely.simplify(shapely.linestrings(line), _TRIM_MM), clear + _TRIM_MM)


def _arm(panel: Panel, side: int, bands: BeadBands) -> Iterator[KeptFree]:
    """A strip along the side seam from the neckline down, on the panels at either side of it."""
    if panel.index not in (side - 1, side) or not (bands.arm_mm > 0 and bands.arm_depth_mm > 0):
        return
    seam = panel.right if panel.index == side - 1 else panel.left
    steps = np.hypot(*np.diff(seam[::-1], axis=0).T)
    down = np.concatenate(([0.0], np.cumsum(steps)))[::-1]
    upper = seam[down <= bands.arm_depth_mm]
    low = [np.interp(bands.arm_depth_mm, down[::-1], axis[::-1]) for axis in seam.T]
    line = np.vstack((low, upper)) if down[0] > bands.arm_depth_mm else seam
    # on beyond the neckline, which may rise away from the seam
    line = np.vstack((line, line[-1] + _unit(line[-1] - line[-2]) * 4 * bands.arm_mm))
    strip = shapely.buffer(shapely.linestrings(line), bands.arm_mm, cap_style="flat")
    yield KeptFree("arm", strip, 0.0)


def _channels(
    panel: Panel, draft: Draft, making: Making, bones: tuple[Bone, ...], bands: BeadBands
) -> Iterator[KeptFree]:
    clear = channel_half(making) + bands.bone_mm
    for bone in bones:
        if bone.place == "seams":
            # the line of a bone on a seam is drawn on the panel before it, its channel lies on both
            if panel.index in (bone.panel, bone.panel + 1):
                line = panel.right if panel.index == bone.panel else panel.left
                yield _beside("bone", line, clear)
        elif bone.panel == panel.index:
            yield _beside("bone", _whole_channel(bone), clear)


def _whole_channel(bone: Bone) -> Array:
    """The line of a bone, straight on to neckline and hem, where its channel ends."""
    line = bone.line
    more = 0.5 * (bone.stitch_length - bone.cut_length)
    low = line[0] - _unit(line[1] - line[0]) * more
    high = line[-1] + _unit(line[-1] - line[-2]) * more
    return np.vstack((low, line, high))


def _unit(vector: Array) -> Array:
    length: Array = vector / np.hypot(*vector)
    return length
