"""Small pictures to keep in projects."""

from __future__ import annotations

import base64
import io
from functools import lru_cache

from hypothesis import strategies as st
from PIL import Image

from workbench.document.wish import Behind, WishPicture

Kept = tuple[tuple[WishPicture, ...], Behind | None]


@lru_cache(maxsize=64)
def jpeg(wide: int = 6, high: int = 4) -> str:
    """A grey picture of that size, in Base64."""
    out = io.BytesIO()
    Image.new("L", (wide, high), 128).save(out, "JPEG")
    return base64.b64encode(out.getvalue()).decode()


def picture(name: str = "front", wide: int = 6, high: int = 4, note: str = "") -> WishPicture:
    """A picture of that size under that name."""
    return WishPicture(name, jpeg(wide, high), wide, high, note)


@st.composite
def wishes(draw: st.DrawFn) -> Kept:
    """Up to six pictures, perhaps with one of them behind the panels."""
    names = st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=20)
    kept = draw(st.lists(names.filter(str.strip), max_size=6, unique=True))
    sides = st.integers(1, 8)
    pictures = tuple(
        picture(name, draw(sides), draw(sides), draw(st.text("ab", max_size=9))) for name in kept
    )
    if not kept or draw(st.booleans()):
        return pictures, None
    far = st.floats(-10_000, 10_000)
    behind = st.builds(Behind, st.sampled_from(kept), st.floats(0.01, 50), far, far, st.floats(0, 1))
    return pictures, draw(behind)
