"""What pictures a project may hold, and where one of them may lie behind the panels.

Figures are own choice: how much a file may hold.
"""

from __future__ import annotations

from workbench.document.jpeg import NotJpegError, jpeg_size
from workbench.document.problem import Place, Problems, text_problems, twice
from workbench.document.wish import Behind, WishPicture

MOST_PICTURES = 6
LONGEST_SIDE = 1200
"""Pixels of the longer side of a picture."""
MOST_JPEG_BYTES = 300_000
MOST_JPEG_TEXT = 4 * ((MOST_JPEG_BYTES + 2) // 3)
"""Characters that so many bytes are in Base64 (RFC 4648, section 4)."""
NAME_MOST, NOTE_MOST = 80, 500
STYLE_NAME_MOST = 80
LEAST_SCALE, MOST_SCALE = 0.01, 50.0
"""mm a pixel: a picture of twelve millimetres across, or of sixty metres."""
FARTHEST_BEHIND = 10_000.0
"""mm from the centre front, and from the waist."""


def wish_problems(pictures: tuple[WishPicture, ...], behind: Behind | None) -> Problems:
    """Pictures that are none, too many or too large, and one behind the panels that is not among them."""
    if len(pictures) > MOST_PICTURES:
        yield ("pictures",), f"holds {len(pictures)} pictures; at most {MOST_PICTURES} are possible"
    for number, picture in enumerate(pictures):
        yield from picture_problems(picture, ("pictures", number))
    yield from twice((picture.name for picture in pictures), "the picture", ("pictures",))
    if behind is not None:
        yield from _behind_problems(behind, {picture.name for picture in pictures})


def picture_problems(picture: WishPicture, place: Place) -> Problems:
    """A picture without a name, with a text that is too long, or that is not what it says."""
    if not picture.name.strip():
        yield (*place, "name"), "is empty"
    yield from text_problems(picture.name, NAME_MOST, (*place, "name"))
    yield from text_problems(picture.note, NOTE_MOST, (*place, "note"))
    for name in ("width", "height"):
        pixels: int = getattr(picture, name)
        if not 1 <= pixels <= LONGEST_SIDE:
            yield (*place, name), f"is {pixels} pixels; 1 to {LONGEST_SIDE} are possible"
    if len(picture.jpeg) > MOST_JPEG_TEXT:
        yield (*place, "jpeg"), f"is larger than {MOST_JPEG_BYTES // 1000} kB"
        return
    try:
        size = jpeg_size(picture.jpeg)
    except NotJpegError as error:
        yield (*place, "jpeg"), str(error)
        return
    # whoever shows it makes room for what it says itself, whatever the entries beside it say
    if size != (picture.width, picture.height):
        yield (*place, "jpeg"), f"is a picture of {size[0]} × {size[1]} pixels, not of the size beside it"


def style_name_problems(name: str) -> Problems:
    """A name of the shape begun from that is too long or cannot be kept."""
    yield from text_problems(name, STYLE_NAME_MOST, ("style_name",))


def _behind_problems(behind: Behind, names: set[str]) -> Problems:
    if behind.picture not in names:
        yield ("behind", "picture"), "names no picture of the project"
    if not LEAST_SCALE <= behind.mm_per_pixel <= MOST_SCALE:
        yield ("behind", "mm_per_pixel"), f"must be {LEAST_SCALE:g} to {MOST_SCALE:g}"
    for name in ("x_mm", "walk_mm"):
        if not abs(getattr(behind, name)) <= FARTHEST_BEHIND:
            yield ("behind", name), "is too far away"
    if not 0 <= behind.opacity <= 1:
        yield ("behind", "opacity"), "must be 0 to 1"
