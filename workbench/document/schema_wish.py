"""The bounds of pictures in the schema of project files."""

from __future__ import annotations

from workbench.document.schema_parts import Schema
from workbench.document.wish_checks import (
    FARTHEST_BEHIND,
    LEAST_SCALE,
    LONGEST_SIDE,
    MOST_JPEG_TEXT,
    MOST_PICTURES,
    MOST_SCALE,
    NAME_MOST,
    NOTE_MOST,
    STYLE_NAME_MOST,
)

_BASE64 = "^(?:[A-Za-z0-9+/]{4})*(?:[A-Za-z0-9+/]{2}==|[A-Za-z0-9+/]{3}=)?$"
"""RFC 4648, section 4, with padding."""


def bound_wish(schema: Schema) -> None:
    """Add the bounds that the records of pictures do not carry."""
    records, whole = schema["$defs"], schema["properties"]
    whole["pictures"]["maxItems"] = MOST_PICTURES
    whole["style_name"]["maxLength"] = STYLE_NAME_MOST
    picture, behind = records["WishPicture"]["properties"], records["Behind"]["properties"]
    picture["name"].update(minLength=1, maxLength=NAME_MOST)
    picture["note"]["maxLength"] = NOTE_MOST
    picture["jpeg"].update(minLength=1, maxLength=MOST_JPEG_TEXT, pattern=_BASE64)
    for name in ("width", "height"):
        picture[name].update(minimum=1, maximum=LONGEST_SIDE)
    behind["mm_per_pixel"].update(minimum=LEAST_SCALE, maximum=MOST_SCALE)
    behind["opacity"].update(minimum=0, maximum=1)
    for name in ("x_mm", "walk_mm"):
        behind[name].update(minimum=-FARTHEST_BEHIND, maximum=FARTHEST_BEHIND)
