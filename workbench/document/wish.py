"""Pictures of what the client wishes for, kept inside the project."""

from __future__ import annotations

from typing import Any, ClassVar

from workbench.frozen import dataclass


@dataclass(frozen=True)
class WishPicture:
    """One picture, copied in and made small enough to travel with the file."""

    name: str
    """No two pictures of a project have the same one."""
    jpeg: str
    """The picture itself as JPEG, in Base64 (RFC 4648, with padding)."""
    width: int
    """Pixels, as is ``height``."""
    height: int
    note: str = ""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}


@dataclass(frozen=True)
class Behind:
    """Which picture lies behind the panels, how large and how strong."""

    picture: str
    mm_per_pixel: float
    x_mm: float
    """Of the picture's top left corner, on the canvas of the half laid apart."""
    walk_mm: float
    """Of the same corner, from the waist up."""
    opacity: float = 0.35
    """From 0, not to be seen, to 1 (own choice)."""

    __pydantic_config__: ClassVar[Any] = {"extra": "forbid"}
