"""Grips: the shape points of neckline and hem that face the eye, where they lie on the picture."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QPointF

from workbench.draft import ShapePoint
from workbench.ui.board.handles import LINES, REACH, HandleKey
from workbench.ui.worn.stage import Stage
from workbench.worn import Sight


@dataclass(frozen=True)
class Grip:
    """A shape point on one half of the garment; both halves show the same point."""

    key: HandleKey
    point: ShapePoint
    mirrored: bool
    x: float
    """mm on the picture."""
    y: float


def grips_of(sight: Sight) -> tuple[Grip, ...]:
    """The shape points on the near half, neckline first; those in the middle are there once."""
    draft = sight.worn.outcome.draft
    if draft is None:
        return ()
    found = [
        (HandleKey(name, number), point)
        for name in LINES
        for number, point in enumerate(draft.line(name).points)
    ]
    track = sight.worn.track(
        np.array([point.u for _, point in found]), np.array([point.t for _, point in found])
    )
    row, share = np.tile(track.row, 2), np.concatenate((track.share, -track.share))
    points = sight.points(row, share).tolist()
    aside = sight.aside(row, share)
    near = (np.abs(aside - np.round(aside)) <= 0.25).tolist()
    return tuple(
        Grip(*found[number % len(found)], number >= len(found), x, y)
        for number, (x, y) in enumerate(points)
        if near[number] and not (number >= len(found) and found[number % len(found)][1].u == 0.0)
    )


def grip_at(grips: tuple[Grip, ...], stage: Stage, pixel: QPointF) -> Grip | None:
    """The nearest shape point within reach of a pixel."""
    best, nearest = None, REACH
    for grip in grips:
        away = stage.pixel(grip.x, grip.y) - pixel
        distance = (away.x() ** 2 + away.y() ** 2) ** 0.5
        if distance <= nearest:
            best, nearest = grip, distance
    return best
