"""What the hand does on a cloth, as an edit of the project: one kept plan for another."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from workbench.cloth import Cloth, Copy, CopyKey, Placed, Plan, bottom_left, kept, laid, plan_at, ways_of
from workbench.document import BY_HAND, Project, keep_plan
from workbench.ui.cloth.lays import Lay

_ALIKE = 0.01
"""Degrees within which two ways of lying are the same."""


def key_of(placed: Placed) -> CopyKey:
    """What a placed piece is found by."""
    return placed.piece, placed.copy


def with_placed(plan: Plan, lay: Lay, changed: Placed) -> Plan:
    """The plan with one piece elsewhere, checked anew."""
    placed = tuple(changed if key_of(each) == key_of(changed) else each for each in plan.placed)
    return plan_at(placed, lay.copies, lay.cloth, by_hand(plan.how))


def by_hand(how: str) -> str:
    """How a plan was found, after the hand has been at it."""
    return how if how.endswith(BY_HAND) else f"{how} {BY_HAND}".strip()


def keeping(project: Project, plan: Plan) -> Project:
    """The project that keeps this plan."""
    return keep_plan(project, kept(plan))


def pinned_in(plan: Plan | None) -> tuple[Placed, ...]:
    """The pieces that are pinned."""
    return tuple(placed for placed in plan.placed if placed.pinned) if plan is not None else ()


def laid_round(lay: Lay, pinned: Sequence[Placed]) -> Plan:
    """The rest laid round the pinned pieces; LayError where nothing can be laid."""
    return bottom_left(lay.copies, lay.cloth, pinned)


def turned_on(placed: Placed, copy: Copy, cloth: Cloth) -> Placed:
    """The piece in the next of the ways it may lie, about its own middle; as it is where there is but one."""
    ways = ways_of(copy, cloth)
    at = nearest_way(placed, ways)
    degrees, mirrored = ways[(at + 1) % len(ways)]
    return about_middle(placed, copy, degrees, mirrored)


def nearest_way(placed: Placed, ways: Sequence[tuple[float, bool]]) -> int:
    """The number of the way that a piece lies in, tilt left aside."""

    def away(way: tuple[float, bool]) -> tuple[bool, float]:
        turn = (placed.degrees - way[0]) % 360
        return way[1] != placed.mirrored, min(turn, 360 - turn)

    return min(range(len(ways)), key=lambda number: away(ways[number]))


def about_middle(placed: Placed, copy: Copy, degrees: float, mirrored: bool) -> Placed:
    """The piece turned so, with the middle of its box where it was; a half keeps to its fold."""
    before = middle_of(copy, placed)
    turned = replace(placed, degrees=degrees % 360, mirrored=mirrored)
    after = middle_of(copy, turned)
    x = turned.x if copy.on_fold else placed.x + before[0] - after[0]
    return replace(turned, x=x, y=placed.y + before[1] - after[1])


def middle_of(copy: Copy, placed: Placed) -> tuple[float, float]:
    """Middle of the box of a piece where it lies, across and along, mm."""
    ring = laid(copy, placed)
    low, high = ring.min(axis=0), ring.max(axis=0)
    x, y = (0.5 * (low + high)).tolist()
    return x, y


def is_turned(placed: Placed, copy: Copy, cloth: Cloth) -> bool:
    """Whether a piece lies end for end to how it is drawn."""
    straight = replace(cloth, run="one_way")
    first = ways_of(copy, straight)
    turn = min(((placed.degrees - degrees) % 360 for degrees, _ in first), key=lambda t: min(t, 360 - t))
    return min(turn, 360 - turn) > 90 + _ALIKE


def at_repeat(y: float, cloth: Cloth) -> float:
    """The nearest height at which the waist line lies at a whole repeat of the print."""
    return round(y / cloth.repeat_mm) * cloth.repeat_mm if cloth.repeat_mm > 0 else y
