"""How a change all round is shared out over the seams of one half."""

from __future__ import annotations

from workbench.body import LevelName
from workbench.draft import Design, Quarter


def seam_parts(design: Design, level: LevelName) -> dict[int, float]:
    """The part of each seam with a weight, by seam (1 is next to the centre front); together 1.

    Front and back take their share of the girth each, within it by the weights at the level. A
    quarter whose seams all weigh nothing shares evenly: something has to give.
    """
    side = design.front.panel_count
    front = _quarter_parts(design.front, level, design.front_share)
    back = _quarter_parts(design.back, level, 1 - design.front_share)
    parts = dict(enumerate(front[:-1], start=1))
    parts[side] = front[-1] + back[-1]
    parts |= dict(enumerate(back[:-1], start=side + 1))
    return {seam: part for seam, part in parts.items() if part > 0}


def _quarter_parts(quarter: Quarter, level: LevelName, share: float) -> list[float]:
    """The part of each inner seam in drawing order, the side seam's last."""
    weights = [
        _weight(seam.weight, {own.level: own.weight for own in seam.shares}.get(level))
        for seam in quarter.seams
    ]
    side = {own.level: own.weight for own in quarter.side_shares}.get(level)
    weights.append(_weight(quarter.side_weight, side))
    whole = sum(weights)
    if whole <= 0:
        return [share / len(weights)] * len(weights)
    return [share * weight / whole for weight in weights]


def _weight(usual: float, own: float | None) -> float:
    return usual if own is None else own
