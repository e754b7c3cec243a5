"""A picture from outside: looked at before it is decoded, made small, and kept as a JPEG of its own.

Only pixels are kept. Where and with what a picture was taken, who is in it, and what else its file
may carry, stays outside. Figures are own choice, how much is read and kept.
"""

from __future__ import annotations

import base64
import io
import warnings
from pathlib import Path
from typing import TYPE_CHECKING

from workbench.document.storage import FileTrouble, read_whole
from workbench.document.wish import WishPicture
from workbench.document.wish_checks import LONGEST_SIDE, MOST_JPEG_BYTES, NAME_MOST

if TYPE_CHECKING:
    from PIL.Image import Image

MOST_FILE_BYTES = 40_000_000
MOST_PIXELS = 50_000_000
"""Twice what a good camera takes; decoded it is 200 MB at most."""
_KINDS = ("JPEG", "PNG", "WEBP", "GIF", "BMP", "TIFF")
_QUALITIES = (88, 80, 70, 60, 50, 40)
_SMALLER = 0.8
_DEEP = ("I;16", "I;16L", "I;16B", "I;16N", "I", "F")
"""Grey of more than eight bits, which is squeezed into eight; Pillow by itself would cut it off."""
_PHONE = (b"heic", b"heix", b"hevc", b"mif1", b"msf1", b"avif")


class PictureTrouble(ValueError):  # noqa: N818  said to the user, who has trouble with a picture
    """A picture that cannot be kept: one sentence, without the name of its file."""


def read_wish(path: Path) -> WishPicture:
    """The picture in a file, made small; FileTrouble names the file and why it cannot be kept."""
    data = read_whole(path, MOST_FILE_BYTES)
    try:
        return wish_of(data, path.stem)
    except PictureTrouble as trouble:
        reason = str(trouble)
        raise FileTrouble(path, f"{reason[:1].lower()}{reason[1:]}") from trouble


def wish_of(data: bytes, name: str) -> WishPicture:
    """The picture in the bytes of a file, made small; PictureTrouble says why it cannot be kept.

    At most 1,200 pixels on its longer side and 300 kB. It stands upright, on white where it
    was transparent; of one that moves it is the first frame.
    """
    if len(data) > MOST_FILE_BYTES:
        raise PictureTrouble(
            f"The picture is larger than {MOST_FILE_BYTES // 1_000_000} MB and was not read."
        )
    if not data:
        raise PictureTrouble("The file is empty.")
    if data[4:8] == b"ftyp" and data[8:12] in _PHONE:
        raise PictureTrouble("This is the format of some phones, which cannot be read here: send it as JPEG.")
    with warnings.catch_warnings():
        # what it warns of is judged here, and said in one sentence
        warnings.simplefilter("ignore")
        jpeg, (wide, high) = _squeezed(_small(data))
    return WishPicture(_plain(name), base64.b64encode(jpeg).decode("ascii"), wide, high)


def _plain(name: str) -> str:
    """The name of a file as that of a picture."""
    whole = name.encode(errors="ignore").decode()
    said = "".join(sign if sign.isprintable() else " " for sign in whole)
    return " ".join(said.split())[:NAME_MOST].strip() or "Picture"


def _small(data: bytes) -> Image:
    """The picture upright, on white, no larger than is kept, with nothing but its pixels."""
    try:
        return _flat(_upright(_shrunk(_opened(data))))
    except PictureTrouble:
        raise
    except MemoryError as error:
        raise PictureTrouble("There is not enough memory to read this picture.") from error
    except Exception as error:  # what a damaged file meets in a decoder is of any kind
        raise PictureTrouble("The picture is damaged or cut off, and was not read.") from error


def _opened(data: bytes) -> Image:
    """The picture with its head read and nothing decoded."""
    # only here: it takes longer to load than opening a project does
    from PIL import Image, UnidentifiedImageError

    try:
        image = Image.open(io.BytesIO(data), formats=_KINDS)
    except UnidentifiedImageError as error:
        raise PictureTrouble("This is no picture that can be read here: take a JPEG or a PNG.") from error
    except Image.DecompressionBombError as error:
        raise PictureTrouble(_too_large()) from error
    if image.width * image.height > MOST_PIXELS:
        raise PictureTrouble(_too_large())
    return image


def _too_large() -> str:
    return f"The picture has more than {MOST_PIXELS // 1_000_000} million pixels and was not read."


def _shrunk(image: Image) -> Image:
    """The first frame, with the longer side as long as is kept or shorter."""
    from PIL.Image import Resampling

    # a JPEG is decoded at a part of its size already, which spares time and memory
    image.draft("RGB", (2 * LONGEST_SIDE, 2 * LONGEST_SIDE))
    if image.mode in _DEEP:
        image = _in_eight_bits(image)
    elif image.mode == "1":
        image = image.convert("L")
    elif image.mode in ("P", "PA"):
        image = image.convert("RGBA")
    image.thumbnail((LONGEST_SIDE, LONGEST_SIDE), Resampling.LANCZOS)
    return image


def _in_eight_bits(image: Image) -> Image:
    """Deep grey by its highest value: whole for eight and sixteen bits, else stretched to white."""
    whole = image.convert("F")
    # a band of one kind of number has one lowest and one highest
    _, high = (float(str(value)) for value in whole.getextrema())
    white = 255.0 if 1.0 < high <= 255.0 else 65_535.0 if 255.0 < high <= 65_535.0 else max(high, 1e-6)
    return whole.point(lambda value: value * (255.0 / white) + 0.0).convert("L")


def _upright(image: Image) -> Image:
    """Turned as its camera says it was held; as it is where that note is damaged."""
    from PIL import ImageOps

    try:
        return ImageOps.exif_transpose(image)
    except Exception:  # a damaged note is no reason to refuse a sound picture
        return image


def _flat(image: Image) -> Image:
    """In three colours on white. It is a new picture: notes of the old one cannot have come along."""
    from PIL import Image

    clean = Image.new("RGB", image.size, "white")
    if image.has_transparency_data:
        shown = image.convert("RGBA")
        clean.paste(shown, mask=shown.getchannel("A"))
    else:
        clean.paste(image.convert("RGB"))
    return clean


def _squeezed(image: Image) -> tuple[bytes, tuple[int, int]]:
    """The picture as a JPEG that may be kept, and its size: first less finely, then smaller."""
    while True:
        for quality in _QUALITIES:
            out = io.BytesIO()
            image.save(out, "JPEG", quality=quality, optimize=True)
            if out.tell() <= MOST_JPEG_BYTES:
                return out.getvalue(), image.size
        wide, high = (max(int(_SMALLER * side), 1) for side in image.size)
        image = image.resize((wide, high))
