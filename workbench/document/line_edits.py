"""Edits of the neckline and the hem by their shape points.

Every edit takes the points on show. The first one turns the line of the style, which
follows the body, into a line of her own, which stays where she puts it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from workbench.document.edits import usable
from workbench.document.project import MOST_POINTS, Project
from workbench.draft import LineName, ShapePoint

LEAST_APART = 0.02
"""Least distance in u, which runs by one a panel, between two shape points (own choice)."""

Points = Sequence[ShapePoint]


def move_point(project: Project, line: LineName, number: int, u: float, t: float, points: Points) -> Project:
    """The project with a shape point moved as near to (u, t) as order allows.

    The end points stay on their centre lines; the others stay between their neighbours.
    """
    _known(number, points, line)
    u = _between(u, number, points)
    moved = replace(points[number], u=u, t=_walk(t))
    return _with_line(project, line, [*points[:number], moved, *points[number + 1 :]])


def add_point(project: Project, line: LineName, u: float, t: float, points: Points) -> Project:
    """The project with one more smooth point at (u, t), or as near to it as its neighbours allow."""
    if len(points) >= MOST_POINTS:
        raise ValueError(f"The {line} has {MOST_POINTS} points already; remove one first.")
    place = place_of(usable(u, "The place of the point"), points)
    low, high = points[place - 1].u + LEAST_APART, points[place].u - LEAST_APART
    if low > high:
        raise ValueError(f"There is no room for another point here; move a point of the {line} first.")
    added = ShapePoint(min(max(u, low), high), _walk(t))
    return _with_line(project, line, [*points[:place], added, *points[place:]])


def place_of(u: float, points: Points) -> int:
    """The number that a point added at ``u`` will have, 1 to the number of points less one."""
    before = sum(1 for point in points if point.u <= u)
    return min(max(before, 1), len(points) - 1)


def remove_point(project: Project, line: LineName, number: int, points: Points) -> Project:
    """The project without one shape point; the two ends cannot go."""
    _known(number, points, line)
    if number in (0, len(points) - 1):
        raise ValueError(f"The {line} needs a point at each centre line; move it instead.")
    return _with_line(project, line, [*points[:number], *points[number + 1 :]])


def toggle_smooth(project: Project, line: LineName, number: int, points: Points) -> Project:
    """The project with a shape point made a corner, or a corner made smooth."""
    _known(number, points, line)
    turned = replace(points[number], smooth=not points[number].smooth)
    return _with_line(project, line, [*points[:number], turned, *points[number + 1 :]])


def style_line_again(project: Project, line: LineName) -> Project:
    """The project with the line of the style in place of her own."""
    return _replaced(project, line, None)


def _known(number: int, points: Points, line: LineName) -> None:
    if not 0 <= number < len(points):
        raise ValueError(f"The {line} has no point number {number + 1}.")


def _between(u: float, place: int, points: Points) -> float:
    """``u`` held between the neighbours of a point; an end point keeps its own."""
    if place in (0, len(points) - 1):
        return points[place].u
    low, high = points[place - 1].u + LEAST_APART, points[place + 1].u - LEAST_APART
    if low > high:
        return points[place].u
    return min(max(usable(u, "The place of the point"), low), high)


def _walk(t: float) -> float:
    return usable(t, "The height of the point")


def _with_line(project: Project, line: LineName, points: list[ShapePoint]) -> Project:
    return _replaced(project, line, tuple(points))


def _replaced(project: Project, line: LineName, points: tuple[ShapePoint, ...] | None) -> Project:
    design = project.design
    own = replace(design, neckline=points) if line == "neckline" else replace(design, hem=points)
    return replace(project, design=own)
