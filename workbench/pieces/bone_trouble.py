"""What would hurt, not hold or not go in: the findings about bones."""

from __future__ import annotations

from itertools import product
from math import ceil

import shapely

from workbench.draft import Draft, Finding, Place
from workbench.pieces.bone_lines import Laid, channel_width, room_at_edge
from workbench.pieces.making import Boning, Making
from workbench.pieces.polyline import length_of
from workbench.pieces.result import Bone

LEAST_CLEARANCE_MM = 6.35
"""Nearer to the finished edge than 1/4 in, a bone works through the cloth (common practice, no source)."""
_EIGHTH = 3.175
"""mm: what is asked for is rounded up to an eighth of an inch, so that it does when it is done (own
choice)."""
_HAIR = 1e-9
"""Own choice: mm, rounding of sums."""

Findings = tuple[Finding, ...]


def bone_trouble(laid: Laid, bone: Bone | None, making: Making) -> Findings:
    """What to look at in one bone; ``bone`` is None where none could be cut for its line."""
    boning = making.boning
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
        at_most=("gap", "shorter"),
    )


def edge_trouble(draft: Draft, making: Making) -> Findings:
    """Whether a channel fits between the centre-back edge and what the cord runs through."""
    opening, channel, room = making.opening, channel_width(making.boning), room_at_edge(making)
    laced = opening.closing != "side_zip" and "beside_opening" in making.boning.places
    if not laced or room >= channel - _HAIR:
        return ()
    least = ceil((opening.set_in_mm - room + channel) / _EIGHTH) * _EIGHTH
    return (
        Finding(
            "attend",
            "eyelets_near_edge" if opening.closing == "eyelets" else "loops_near_edge",
            "At the centre back the {holder} leave {room} to the edge; the bone between needs a channel "
            "{channel} wide.",
            {"room": max(room, 0.0), "channel": channel, "least": least},
            {"holder": opening.closing},
            Place(seam=len(draft.panels), panel=len(draft.panels) - 1),
            "Set them in by at least {least}, or take narrower bones.",
        ),
    )


def overlap_trouble(bones: tuple[Bone, ...], making: Making) -> Findings:
    """Bones up the middle of a panel whose channel runs into that of a bone beside what opens."""
    middles = [bone for bone in bones if bone.place == "mid_panel"]
    beside = [bone for bone in bones if bone.place in ("beside_opening", "centre_front")]
    return tuple(
        _overlaps(middle, other, channel_width(making.boning))
        for middle, other in product(middles, beside)
        if middle.panel == other.panel and _apart(middle, other) < channel_width(making.boning) - _HAIR
    )


def _apart(one: Bone, other: Bone) -> float:
    return float(shapely.distance(shapely.linestrings(one.line), shapely.linestrings(other.line)))


def _overlaps(middle: Bone, other: Bone, channel: float) -> Finding:
    return Finding(
        "attend",
        "bones_overlap",
        "Bone for {bone}: it lies closer than one channel, {channel}, to the bone for {other}.",
        {"channel": channel},
        {"bone": middle.where, "other": other.where},
        Place(panel=middle.panel),
        "Leave one of the two out, or make the panel wider.",
    )
