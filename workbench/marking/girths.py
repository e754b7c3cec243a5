"""The widths of each level, rounded together over all panels of the half."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from workbench.body import LevelName
from workbench.draft import Draft
from workbench.marking.frame import Frame
from workbench.marking.records import GirthRow
from workbench.marking.rounding import Rounding, shared_out
from workbench.pieces import LayerName, Making


def girths_of(
    draft: Draft, frames: Mapping[int, Frame], turns: Sequence[float], rounding: Rounding
) -> tuple[GirthRow, ...]:
    """One row for every level, bottom to top; ``frames`` by panel, ``turns`` added to each panel, mm."""
    rows = []
    for level, tape in draft.tape_girth.items():
        exact = [
            _width(frames.get(panel.index), level, panel.widths[level] + turn)
            for panel, turn in zip(draft.panels, turns, strict=True)
        ]
        finished = tape + 2 * (sum(exact) - sum(panel.widths[level] for panel in draft.panels))
        whole = len(frames) == len(draft.panels) and all(_reaches(f, level) for f in frames.values())
        rows.append(GirthRow(level, tuple(shared_out(exact, rounding.step)), tuple(exact), finished, whole))
    return tuple(rows)


def _reaches(frame: Frame, level: LevelName) -> bool:
    return frame.on_waist if level == "waist" else level in frame.levels


def _width(frame: Frame | None, level: LevelName, otherwise: float) -> float:
    """The straight distance of the two ends of a level on its piece, or what the panel would have there."""
    if frame is None or level not in frame.levels:
        return otherwise
    left, right = frame.levels[level]
    return float(np.hypot(*(right - left)))


def turns_of(draft: Draft, making: Making, layer: LayerName) -> list[float]:
    """What the turn of cloth adds to each panel of a layer, both sides together, mm."""
    turn = making.layer(layer).turn_mm
    last = len(draft.panels)
    return [turn * ((panel.index > 0) + (panel.index + 1 < last)) if turn else 0.0 for panel in draft.panels]
