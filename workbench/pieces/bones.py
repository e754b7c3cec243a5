"""Bones cut to what is sold, and what would hurt or not hold.

Clearances, stock steps and widths are common practice, no source.
"""

from __future__ import annotations

from math import floor

from workbench.draft import Draft, Finding, Outcome, Place
from workbench.pieces.bone_lines import Laid, channel_width, laid_bones, room_at_edge
from workbench.pieces.making import BoneStuff, Boning, Making
from workbench.pieces.polyline import length_of, part_of, tightest_radius
from workbench.pieces.result import Bone

LEAST_CLEARANCE_MM = 6.35
"""Nearer to the finished edge than 1/4 in, a bone works through the cloth."""
SHORTEST_STEEL_MM = 50.8
"""Steel is not sold shorter than 2 in."""
PLASTIC_STEP_MM = 1.0
_HAIR = 1e-9
"""Lifts a length that floating point has put a hair below a stock length, in steps."""

Findings = tuple[Finding, ...]


def bones_of(outcome: Outcome, making: Making) -> tuple[tuple[Bone, ...], Findings]:
    """The bones of the garment, each line of the half once, and what to look at; nothing without a draft."""
    draft = outcome.draft
    if draft is None:
        return (), ()
    laid = laid_bones(outcome, draft, making)
    made = [(line, _bone(line, making.boning)) for line in laid]
    found = [finding for line, bone in made for finding in _trouble(line, bone, making.boning)]
    return tuple(bone for _, bone in made if bone is not None), (*_edge_trouble(draft, making), *found)


def stock_length(wanted: float, stuff: BoneStuff, boning: Boning) -> float:
    """The longest length in mm that is sold and not longer than wanted; 0 where there is none."""
    step = stock_step(stuff, boning)
    length = round(floor(wanted / step + _HAIR) * step, 6)
    shortest = step if stuff == "plastic" else max(step, SHORTEST_STEEL_MM)
    return length if length > shortest - _HAIR else 0.0


def stock_step(stuff: BoneStuff, boning: Boning) -> float:
    """Millimetres from one length that is sold to the next; nothing is cut finer than a millimetre."""
    return PLASTIC_STEP_MM if stuff == "plastic" else max(boning.steel_step_mm, PLASTIC_STEP_MM)


def _bone(laid: Laid, boning: Boning) -> Bone | None:
    """The bone of one line; None where the line has no room or no bone is short enough."""
    if laid.line is None:
        return None
    finished = length_of(laid.line)
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
        tightest_radius=min(tightest_radius(side) for side in (laid.line, *laid.across)),
    )


def _trouble(laid: Laid, bone: Bone | None, boning: Boning) -> Findings:
    place = Place(seam=laid.seam, panel=laid.panel)
    if laid.line is None:
        return (_no_room(laid, place),)
    if bone is None:
        return (_too_short(laid, place, length_of(laid.line), boning),)
    found = []
    if bone.stuff == "flat_steel" and bone.tightest_radius < boning.flat_radius_mm:
        found.append(_too_curved(bone, place, boning))
    if 0.5 * (bone.stitch_length - bone.cut_length) < LEAST_CLEARANCE_MM - _HAIR:
        found.append(_stabs(bone, place))
    return tuple(found)


def _no_room(laid: Laid, place: Place) -> Finding:
    return Finding(
        "attend",
        "no_room_for_bone",
        "Bone for {bone}: the panel is too narrow for it, so it is left out.",
        words={"bone": laid.where},
        place=place,
        remedy="Make the panel wider there, or switch these bones off.",
    )


def _too_short(laid: Laid, place: Place, finished: float, boning: Boning) -> Finding:
    return Finding(
        "attend",
        "bone_too_short",
        "Bone for {bone}: its line is {length}; less {clearance} at each end, no bone sold is that short.",
        {"length": finished, "clearance": boning.clearance_mm},
        {"bone": laid.where},
        place,
        "Take less clearance, or leave this bone out.",
    )


def _too_curved(bone: Bone, place: Place, boning: Boning) -> Finding:
    return Finding(
        "attend",
        "flat_steel_in_curve",
        "Bone for {bone}: its line curves to a radius of {radius}, tighter than the {limit} you set for "
        "flat steel, which would stand off or stab.",
        {"radius": bone.tightest_radius, "limit": boning.flat_radius_mm},
        {"bone": bone.where},
        place,
        "Take spiral steel there, or ease the curve of the seam.",
        bone.tightest_radius,
        boning.flat_radius_mm,
    )


def _stabs(bone: Bone, place: Place) -> Finding:
    gap = max(0.5 * (bone.stitch_length - bone.cut_length), 0.0)
    remedy = "Give it more clearance at each end"
    shorter = {"shorter": bone.shorter} if bone.shorter else {}
    return Finding(
        "attend",
        "bone_reaches_edge",
        "Bone for {bone}: it ends {gap} from the finished edge; nearer than {least} a bone works through "
        "the cloth and stabs.",
        {"gap": gap, "least": LEAST_CLEARANCE_MM, **shorter},
        {"bone": bone.where},
        place,
        f"{remedy}, or take the next shorter one, {{shorter}}." if shorter else f"{remedy}.",
        gap,
        LEAST_CLEARANCE_MM,
    )


def _edge_trouble(draft: Draft, making: Making) -> Findings:
    """Whether a channel fits between the centre-back edge and what the cord runs through."""
    opening, channel, room = making.opening, channel_width(making.boning), room_at_edge(making)
    laced = opening.closing != "side_zip" and "beside_opening" in making.boning.places
    if not laced or room >= channel - _HAIR:
        return ()
    return (
        Finding(
            "attend",
            "eyelets_near_edge" if opening.closing == "eyelets" else "loops_near_edge",
            "At the centre back the {holder} leave {room} to the edge; the bone between needs a channel "
            "{channel} wide.",
            {"room": max(room, 0.0), "channel": channel, "least": opening.set_in_mm - room + channel},
            {"holder": opening.closing},
            Place(seam=len(draft.panels), panel=len(draft.panels) - 1),
            "Set them in by at least {least}, or take narrower bones.",
        ),
    )
