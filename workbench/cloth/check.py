"""Every plan is looked over, by other means than it was made with, before it is given out."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from math import degrees, hypot

import numpy as np
import shapely

from workbench.cloth.fingerprint import digest
from workbench.cloth.fits import HAIR, length_of
from workbench.cloth.plan import Copy, CopyKey, Plan, area_in, by_key, laid, turned
from workbench.cloth.records import Cloth, Placed
from workbench.cloth.room import Room, area_used, room_of
from workbench.draft import Finding, Place

Shapes = np.ndarray[tuple[int, ...], np.dtype[np.object_]]
Laid = list[tuple[Placed, Copy]]

_DEGREE = 1e-3
"""Own choice: rounding of angles, degrees."""
_OVERLAP = 0.5
"""Square mm that two outlines may share and still only touch (own choice)."""
_NAMED = 4
"""So many pieces are named in one sentence; the others are counted (own choice)."""


def plan_at(placed: Sequence[Placed], copies: Sequence[Copy], cloth: Cloth, how: str) -> Plan:
    """A plan of pieces that lie where they are said to, with what is wrong with it.

    Serves what a solver found and what was moved by hand. LayError where the cloth cannot be.
    """
    room, known = room_of(cloth), by_key(copies)
    there = [(own, known[own.piece, own.copy]) for own in placed if (own.piece, own.copy) in known]
    shapes = np.array([shapely.polygons(laid(copy, own)) for own, copy in there], dtype=object)
    length = length_of(shapes, room)
    area = area_used(cloth, length)
    laid_keys = {copy.key for _, copy in there}
    return Plan(
        cloth.name,
        digest(copies, cloth),
        tuple(placed),
        length,
        area_in(copy for _, copy in there) / area if area > 0 else 0.0,
        how,
        tuple(copy.key for copy in copies if copy.key not in laid_keys),
        tuple(_findings(placed, there, shapes, copies, cloth, room)),
    )


def check_plan(plan: Plan, copies: Sequence[Copy], cloth: Cloth) -> tuple[Finding, ...]:
    """What is wrong with a plan: nothing where all pieces lie inside, clear of each other and true."""
    return plan_at(plan.placed, copies, cloth, plan.how).findings


def _findings(
    placed: Sequence[Placed], there: Laid, shapes: Shapes, copies: Sequence[Copy], cloth: Cloth, room: Room
) -> Iterator[Finding]:
    yield from _counts(placed, copies, cloth)
    if there:
        yield from _outside(there, shapes, cloth, room)
        yield from _too_close(there, shapes, cloth)
        yield from _off_grain(there, cloth)
        yield from _wrong_side(there)
        yield from _off_fold(there, shapes, room)
        yield from _off_repeat(there, cloth)


def _counts(placed: Sequence[Placed], copies: Sequence[Copy], cloth: Cloth) -> Iterator[Finding]:
    counted: Counter[CopyKey] = Counter((own.piece, own.copy) for own in placed)
    known = by_key(copies)
    twice = [known[key] for key, count in counted.items() if count > 1 and key in known]
    if twice:
        yield _said("laid_twice", "{pieces} {is_are} on the plan more than once.", twice, cloth)
    strange = [key[0] for key in counted if key not in known]
    if strange:
        text = "{pieces} {is_are} on the plan but not cut from {cloth}."
        yield _finding("not_cut", text, strange, cloth, Place())
    missing = [copy for copy in copies if copy.key not in counted]
    if missing and cloth.remnant is not None:
        yield _said("no_room", "There is no room on {cloth} for {pieces}.", missing, cloth)
    elif missing:
        yield _said("not_laid", "{pieces} {is_are} not on the plan of {cloth}.", missing, cloth)


def _outside(there: Laid, shapes: Shapes, cloth: Cloth, room: Room) -> Iterator[Finding]:
    usable = shapely.buffer(room.polygon, HAIR, join_style="mitre")
    shapely.prepare(usable)
    out = [
        copy for (_, copy), inside in zip(there, shapely.covers(usable, shapes), strict=True) if not inside
    ]
    if out:
        yield _said("outside", "{pieces} {reaches} past the usable part of {cloth}.", out, cloth)


def _too_close(there: Laid, shapes: Shapes, cloth: Cloth) -> Iterator[Finding]:
    """Pairs that overlap, then pairs with less than the gap between them."""
    one, other = shapely.STRtree(shapes).query(shapes, "dwithin", max(cloth.gap_mm - HAIR, 0.0))
    pairs = one < other
    one, other = one[pairs], other[pairs]
    shared = shapely.area(shapely.intersection(shapes[one], shapes[other]))
    rows = list(zip(one.tolist(), other.tolist(), shared.tolist(), strict=True))
    over = [row for row in rows if row[2] > _OVERLAP]
    near = [row for row in rows if row[2] <= _OVERLAP] if cloth.gap_mm > HAIR else []
    for code, text, found in (
        ("overlap", "{first} and {second} overlap{more}.", over),
        ("gap", "{first} and {second} lie closer than {gap}{more}.", near),
    ):
        if found:
            words = {"first": there[found[0][0]][1].name, "second": there[found[0][1]][1].name}
            words["more"] = f", and so do {len(found) - 1} more pairs" if len(found) > 1 else ""
            place = Place(panel=there[found[0][0]][1].panel)
            yield Finding("attend", code, text, {"gap": cloth.gap_mm}, words, place)


def _off_grain(there: Laid, cloth: Cloth) -> Iterator[Finding]:
    off = [copy for own, copy in there if lean(own, copy, cloth) > cloth.tilt_degrees + _DEGREE]
    if off:
        text = "{pieces} {is_are} not true to the grain."
        if cloth.run == "one_way":
            text = "{pieces} {is_are} not true to the grain, or the wrong way up for {cloth}."
        yield _said("grain", text, off, cloth)


def lean(placed: Placed, copy: Copy, cloth: Cloth) -> float:
    """Degrees between the copy's grain and the length of the cloth, 0 to 180."""
    x, y = turned(np.array([copy.grain]), placed.degrees, placed.mirrored)[0].tolist()
    along = abs(y) if cloth.run == "either_way" else y
    return abs(degrees(np.arctan2(abs(x), along))) if hypot(x, y) > 0 else 0.0


def _wrong_side(there: Laid) -> Iterator[Finding]:
    wrong = [copy for own, copy in there if not copy.either_side and own.mirrored != copy.mirrored]
    if wrong:
        yield _said(
            "wrong_side", "{pieces} {is_are} turned over, so that two of the same side come out.", wrong
        )


def _off_fold(there: Laid, shapes: Shapes, room: Room) -> Iterator[Finding]:
    """A half lies with its fold edge on the fold, so that nothing of it is beyond and its foot is at it."""
    off = []
    for (own, copy), low in zip(there, shapely.bounds(shapes)[:, 0].tolist(), strict=True):
        upright = own.degrees % 360 == (180.0 if own.mirrored else 0.0)
        if copy.on_fold and not (upright and abs(low - room.left) <= HAIR):
            off.append(copy)
    if off:
        yield _said("fold", "The fold edge of {pieces} does not lie on the fold.", off)


def _off_repeat(there: Laid, cloth: Cloth) -> Iterator[Finding]:
    """Waist lines, which pieces have at 0, lie at whole repeats."""
    repeat = cloth.repeat_mm
    if repeat <= 0:
        return
    off = [copy for own, copy in there if abs(own.y - round(own.y / repeat) * repeat) > HAIR]
    if off:
        text = "The waist line of {pieces} does not lie at a whole repeat of the print."
        yield _said("repeat", text, off, cloth)


def _said(code: str, text: str, copies: Sequence[Copy], cloth: Cloth | None = None) -> Finding:
    return _finding(code, text, [copy.name for copy in copies], cloth, Place(panel=copies[0].panel))


def _finding(code: str, text: str, names: Sequence[str], cloth: Cloth | None, place: Place) -> Finding:
    one = len(names) == 1
    words = {
        "pieces": listed(names),
        "is_are": "is" if one else "are",
        "reaches": "reaches" if one else "reach",
    }
    return Finding("attend", code, text, {}, {**words, "cloth": cloth.name if cloth else ""}, place)


def listed(names: Sequence[str]) -> str:
    """``Front 1, Back 2 and 3 more``: each name once."""
    once = list(dict.fromkeys(names))
    shown, more = once[:_NAMED], len(once) - _NAMED
    if more > 0:
        return f"{', '.join(shown)} and {more} more"
    return f"{', '.join(shown[:-1])} and {shown[-1]}" if len(shown) > 1 else shown[0]
