"""Bones cut to what is sold, and what would hurt or not hold.

Clearances, stock steps and widths are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import floor

from workbench.draft import Finding, Outcome
from workbench.pieces.bone_lines import Laid, laid_bones
from workbench.pieces.bone_trouble import bone_trouble, edge_trouble, overlap_trouble
from workbench.pieces.making import BoneStuff, Boning, Making
from workbench.pieces.polyline import Lines, part_of
from workbench.pieces.result import Bone

SHORTEST_STEEL_MM = 50.8
"""Steel is not sold shorter than 2 in."""
PLASTIC_STEP_MM = 1.0
"""Cut to the millimetre; common practice, no source."""
_HAIR = 1e-9
"""Lifts a length that floating point has put a hair below a stock length, in steps (own choice)."""

Findings = tuple[Finding, ...]


def bones_of(outcome: Outcome, making: Making) -> tuple[tuple[Bone, ...], Findings]:
    """The bones of the garment, each line of the half once, and what to look at; nothing without a draft."""
    draft = outcome.draft
    if draft is None:
        return (), ()
    laid = laid_bones(outcome, draft, making)
    ways = _ways(laid)
    made = [_bone(line, ways, making.boning) for line in laid]
    bones = tuple(bone for bone in made if bone is not None)
    found = [
        finding for line, bone in zip(laid, made, strict=True) for finding in bone_trouble(line, bone, making)
    ]
    return bones, (*edge_trouble(draft, making), *found, *overlap_trouble(bones, making))


def stock_length(wanted: float, stuff: BoneStuff, boning: Boning) -> float:
    """The longest length in mm that is sold and not longer than wanted; 0 where there is none."""
    step = stock_step(stuff, boning)
    length = round(floor(wanted / step + _HAIR) * step, 6)
    shortest = step if stuff == "plastic" else max(step, SHORTEST_STEEL_MM)
    return length if length > shortest - _HAIR else 0.0


def stock_step(stuff: BoneStuff, boning: Boning) -> float:
    """Millimetres from one length that is sold to the next; nothing is cut finer than a millimetre."""
    return PLASTIC_STEP_MM if stuff == "plastic" else max(boning.steel_step_mm, PLASTIC_STEP_MM)


_Ways = dict[int, tuple[float, float]]
"""Length of a line and its least radius over any inch, mm, by the line's identity."""


def _ways(laid: Sequence[Laid]) -> _Ways:
    """Every line of a bone, and the other side of its seam, measured at once."""
    lines = [line for own in laid for line in (own.line, *own.across) if line is not None]
    if not lines:
        return {}
    measured = Lines(lines)
    found = zip(lines, measured.totals.tolist(), measured.turned(), strict=True)
    return {id(line): (length, radius) for line, length, radius in found}


def _bone(laid: Laid, ways: _Ways, boning: Boning) -> Bone | None:
    """The bone of one line; None where the line has no room or no bone is short enough."""
    if laid.line is None:
        return None
    finished = ways[id(laid.line)][0]
    wanted = finished - 2 * boning.clearance_mm
    cut = stock_length(wanted, laid.stuff, boning)
    if cut <= 0:
        return None
    return Bone(
        place=laid.place,
        where=laid.where,
        stuff=laid.stuff,
        count=laid.count,
        line=part_of(laid.line, 0.5 * (finished - cut), 0.5 * (finished + cut)),
        panel=laid.panel,
        stitch_length=finished,
        wanted_length=wanted,
        cut_length=cut,
        shorter=stock_length(cut - stock_step(laid.stuff, boning), laid.stuff, boning),
        lost=max(wanted - cut, 0.0),
        tightest_radius=min(ways[id(side)][1] for side in (laid.line, *laid.across)),
    )
