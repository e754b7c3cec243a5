"""Edits of the pictures of the wish, and of the one that lies behind the panels."""

from __future__ import annotations

from dataclasses import replace
from math import hypot

from workbench.document.changing import refuse
from workbench.document.project import Project
from workbench.document.wish import Behind, WishPicture
from workbench.document.wish_checks import (
    LEAST_SCALE,
    MOST_PICTURES,
    MOST_SCALE,
    NAME_MOST,
    picture_problems,
    wish_problems,
)

FIRST_HEIGHT_MM = 600.0
"""How high a picture is taken to be at first: from shoulder to hip, about (own choice)."""
LEAST_PIXELS_APART = 4.0
"""Two points closer together in a picture give no scale (own choice)."""

_ROUND_ABOUT = 1.08
"""How much larger than the panels on show a picture is at first, so that it is seen round about them
(own choice)."""

Box = tuple[float, float, float, float]
"""Left, bottom, right and top, mm."""
Spot = tuple[float, float]
"""Pixels from the left and from the top of a picture."""


def wish_named(project: Project, name: str) -> WishPicture:
    """The picture of that name; ValueError where there is none."""
    for picture in project.pictures:
        if picture.name == name:
            return picture
    raise ValueError(f"There is no picture called “{name}”.")


def add_wish(project: Project, picture: WishPicture) -> Project:
    """The project with one more picture, under a name of its own; ValueError where there is no room."""
    if len(project.pictures) >= MOST_PICTURES:
        raise ValueError(f"There are {MOST_PICTURES} pictures already; remove one first.")
    named = replace(picture, name=_free_name(picture.name, {each.name for each in project.pictures}))
    refuse(picture_problems(named, ("picture",)))
    return replace(project, pictures=(*project.pictures, named))


def _free_name(name: str, taken: set[str]) -> str:
    """The name, or the name with a number from 2 on."""
    stem = " ".join(name.split())[:NAME_MOST] or "Picture"
    free, number = stem, 1
    while free in taken:
        number += 1
        free = f"{stem[: NAME_MOST - 3]} {number}"
    return free


def remove_wish(project: Project, name: str) -> Project:
    """The project without a picture, also behind the panels and beside a fitting."""
    gone = wish_named(project, name)
    behind = project.behind
    return replace(
        project,
        pictures=tuple(picture for picture in project.pictures if picture is not gone),
        behind=None if behind and behind.picture == name else behind,
        fittings=tuple(
            replace(fitting, picture="") if fitting.picture == name else fitting
            for fitting in project.fittings
        ),
    )


def set_wish_note(project: Project, name: str, note: str) -> Project:
    """The project with another note beside a picture; ValueError where it is too long."""
    changed = replace(wish_named(project, name), note=note.strip())
    refuse(picture_problems(changed, ("picture",)))
    pictures = tuple(changed if picture.name == name else picture for picture in project.pictures)
    return replace(project, pictures=pictures)


def lay_behind(project: Project, name: str, on_show: Box | None = None) -> Project:
    """The project with a picture behind the panels: all of it behind those on show, in their middle.

    ``on_show`` is left, bottom, right and top of what is on show, mm. Without it the middle of the
    picture lies on the centre front, and it is as high as a torso. One that lies there already stays as
    it is; another one takes its place.
    """
    if project.behind is not None and project.behind.picture == name:
        return project
    picture = wish_named(project, name)
    opacity = project.behind.opacity if project.behind is not None else Behind.opacity
    scale, x, walk = _first_place(picture, on_show)
    return _with_behind(project, Behind(name, scale, x, walk, opacity))


def _first_place(picture: WishPicture, on_show: Box | None) -> tuple[float, float, float]:
    """Scale, and where the top left corner lies."""
    if on_show is None:
        scale = min(max(FIRST_HEIGHT_MM / picture.height, LEAST_SCALE), MOST_SCALE)
        return scale, -0.5 * scale * picture.width, 0.55 * scale * picture.height
    left, bottom, right, top = on_show
    fits = _ROUND_ABOUT * min((right - left) / picture.width, (top - bottom) / picture.height)
    scale = min(max(fits, LEAST_SCALE), MOST_SCALE)
    middle, level = 0.5 * (left + right), 0.5 * (bottom + top)
    return scale, middle - 0.5 * scale * picture.width, level + 0.5 * scale * picture.height


def take_away_behind(project: Project) -> Project:
    """The project with nothing behind the panels; the picture stays among the others."""
    return replace(project, behind=None)


def set_behind(project: Project, **changes: float) -> Project:
    """The project with the picture behind the panels moved, or shown more or less strongly.

    ValueError where there is none, and where a figure is out of range.
    """
    return _with_behind(project, replace(_behind(project), **changes))  # type: ignore[arg-type]  # by name


def move_behind(project: Project, right_mm: float, up_mm: float) -> Project:
    """The project with the picture behind the panels moved by so much."""
    behind = _behind(project)
    return set_behind(project, x_mm=behind.x_mm + right_mm, walk_mm=behind.walk_mm + up_mm)


def scale_behind(project: Project, mm_per_pixel: float, about: Spot | None = None) -> Project:
    """The project with that picture at another scale; ``about``, else its middle, stays where it lies."""
    behind = _behind(project)
    picture = wish_named(project, behind.picture)
    across, down = about or (0.5 * picture.width, 0.5 * picture.height)
    grown = mm_per_pixel - behind.mm_per_pixel
    return set_behind(
        project,
        mm_per_pixel=mm_per_pixel,
        x_mm=behind.x_mm - across * grown,
        walk_mm=behind.walk_mm + down * grown,
    )


def scale_between(project: Project, one: Spot, other: Spot, mm: float) -> Project:
    """The project with that picture so large that two of its points lie ``mm`` apart.

    The middle between them stays where it lies. ValueError where they are too close together.
    """
    pixels = hypot(other[0] - one[0], other[1] - one[1])
    if pixels < LEAST_PIXELS_APART:
        raise ValueError("The two points are too close together to give a scale.")
    middle = (0.5 * (one[0] + other[0]), 0.5 * (one[1] + other[1]))
    if not LEAST_SCALE <= mm / pixels <= MOST_SCALE:
        raise ValueError(
            "With that length the picture would be too small or too large to lie behind the panels."
        )
    return scale_behind(project, mm / pixels, middle)


def _behind(project: Project) -> Behind:
    if project.behind is None:
        raise ValueError("No picture lies behind the panels.")
    return project.behind


def _with_behind(project: Project, behind: Behind) -> Project:
    refuse(wish_problems(project.pictures, behind))
    return replace(project, behind=behind)
