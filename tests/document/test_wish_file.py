"""Pictures from outside: what is kept is small, upright and tells of nothing but itself."""

from __future__ import annotations

import base64
import io
import struct
import subprocess
import sys
import zlib
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from workbench.document import FileTrouble
from workbench.document.jpeg import jpeg_size
from workbench.document.wish import WishPicture
from workbench.document.wish_checks import LONGEST_SIDE, MOST_JPEG_BYTES, picture_problems
from workbench.document.wish_file import PictureTrouble, read_wish, wish_of

GPS, MAKER, ORIENTATION = 0x8825, 0x010F, 0x0112
"""Tags of Exif 2.3 (from memory)."""
RED, BLUE = (200, 30, 30), (30, 30, 200)


def halves(mode: str = "RGB", size: tuple[int, int] = (80, 40)) -> Image.Image:
    """Red at the left, blue at the right."""
    image = Image.new("RGB", size, RED)
    image.paste(BLUE, (size[0] // 2, 0, *size))
    return image.convert(mode)


def packed(image: Image.Image, kind: str = "JPEG", **how: object) -> bytes:
    out = io.BytesIO()
    image.save(out, kind, **how)
    return out.getvalue()


def unpacked(picture: WishPicture) -> Image.Image:
    return Image.open(io.BytesIO(base64.b64decode(picture.jpeg, validate=True)))


def near(seen: object, wanted: tuple[int, int, int]) -> bool:
    assert isinstance(seen, tuple)
    return all(abs(one - other) < 30 for one, other in zip(seen, wanted, strict=True))


def kept(data: bytes) -> Image.Image:
    """The picture as it is kept, after all that a project demands of it."""
    picture = wish_of(data, "a picture")
    assert list(picture_problems(picture, ("picture",))) == []
    image = unpacked(picture)
    assert image.mode == "RGB"
    assert image.size == (picture.width, picture.height) == jpeg_size(picture.jpeg)
    return image


@pytest.mark.parametrize(
    ("kind", "mode"),
    [
        ("JPEG", "RGB"),
        ("JPEG", "CMYK"),
        ("PNG", "RGB"),
        ("PNG", "RGBA"),
        ("PNG", "P"),
        ("WEBP", "RGB"),
        ("GIF", "P"),
        ("BMP", "RGB"),
        ("TIFF", "RGB"),
        ("TIFF", "CMYK"),
        ("TIFF", "LAB"),
    ],
)
def test_every_usual_kind_is_taken_in(kind: str, mode: str) -> None:
    image = halves("RGB")
    if mode == "LAB":
        from PIL import ImageCms

        turn = ImageCms.buildTransform(
            ImageCms.createProfile("sRGB"), ImageCms.createProfile("LAB"), "RGB", "LAB"
        )
        image = ImageCms.applyTransform(image, turn) or image
    else:
        image = image.convert(mode)
    shown = kept(packed(image, kind))
    assert near(shown.getpixel((10, 20)), RED)
    assert near(shown.getpixel((70, 20)), BLUE)


def test_a_large_picture_is_made_small_in_proportion() -> None:
    assert kept(packed(halves(size=(4000, 3000)))).size == (LONGEST_SIDE, 900)


def test_a_small_picture_keeps_its_size() -> None:
    assert kept(packed(halves())).size == (80, 40)


def test_the_narrowest_picture_keeps_one_pixel() -> None:
    assert kept(packed(halves(size=(20_000, 2)), "PNG")).size == (LONGEST_SIDE, 1)


def test_noise_is_squeezed_to_what_may_be_kept() -> None:
    noise = np.random.default_rng(7).integers(0, 256, (2400, 2400, 3), dtype=np.uint8)
    picture = wish_of(packed(Image.fromarray(noise), "PNG"), "noise")
    assert len(base64.b64decode(picture.jpeg)) <= MOST_JPEG_BYTES
    assert list(picture_problems(picture, ("picture",))) == []


@pytest.mark.parametrize(
    ("turned", "first", "last"),
    [(1, (5, 20), (75, 20)), (3, (75, 20), (5, 20)), (6, (20, 5), (20, 75)), (8, (20, 75), (20, 5))],
)
def test_it_stands_upright(turned: int, first: tuple[int, int], last: tuple[int, int]) -> None:
    """Orientation 3 is half a turn, 6 and 8 a quarter to either side (Exif 2.3, from memory)."""
    exif = Image.Exif()
    exif[ORIENTATION] = turned
    shown = kept(packed(halves(), exif=exif))
    assert near(shown.getpixel(first), RED)
    assert near(shown.getpixel(last), BLUE)


def test_nothing_of_where_and_with_what_it_was_taken_is_kept() -> None:
    exif = Image.Exif()
    exif[MAKER] = "A maker of cameras"
    exif.get_ifd(GPS)[2] = (48.0, 12.0, 30.0)
    data = packed(halves(), exif=exif, comment=b"her address", icc_profile=b"p" * 200)
    assert b"A maker of cameras" in data
    assert b"her address" in data
    again = unpacked(wish_of(data, "a picture"))
    whole = base64.b64decode(wish_of(data, "a picture").jpeg)
    assert not dict(again.getexif())
    assert {"exif", "comment", "icc_profile", "xmp"} & set(again.info) == set()
    for word in (b"Exif", b"maker", b"address", b"ICC_PROFILE", b"ns.adobe.com"):
        assert word not in whole


def test_what_was_transparent_is_white() -> None:
    clear = Image.new("RGBA", (40, 40), (0, 0, 0, 0))
    clear.paste((*RED, 255), (0, 0, 20, 40))
    shown = kept(packed(clear, "PNG"))
    assert near(shown.getpixel((5, 20)), RED)
    assert near(shown.getpixel((35, 20)), (255, 255, 255))


def test_of_a_picture_that_moves_the_first_frame_is_kept() -> None:
    first, second = halves("P"), Image.new("RGB", (80, 40), "white").convert("P")
    shown = kept(packed(first, "GIF", save_all=True, append_images=[second]))
    assert near(shown.getpixel((10, 20)), RED)


@pytest.mark.parametrize("kind", ["PNG", "TIFF"])
def test_sixteen_bits_of_grey_are_not_cut_off(kind: str) -> None:
    ramp = np.linspace(0, 65_535, 80).astype(np.uint16)
    shown = kept(packed(Image.fromarray(np.tile(ramp, (40, 1))), kind))
    middle = shown.getpixel((40, 20))
    assert isinstance(middle, tuple)
    assert abs(middle[0] - 129) < 8
    assert near(shown.getpixel((79, 20)), (255, 255, 255))


def test_sixteen_bits_a_colour() -> None:
    rows = b"".join(b"\0" + struct.pack(">3H", 51_400, 7_710, 7_710) * 8 for _ in range(8))
    assert near(kept(_png(8, 8, rows, depth=16)).getpixel((4, 4)), RED)


def _png(wide: int, high: int, rows: bytes, depth: int = 8) -> bytes:
    """A PNG of three colours by hand (ISO/IEC 15948, chunks of length, name, data, CRC; from memory)."""
    head = struct.pack(">IIBBBBB", wide, high, depth, 2, 0, 0, 0)
    chunks = ((b"IHDR", head), (b"IDAT", zlib.compress(rows, 1)), (b"IEND", b""))
    made = b"\x89PNG\r\n\x1a\n"
    for name, data in chunks:
        made += struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
    return made


def cut_off() -> bytes:
    noise = np.random.default_rng(3).integers(0, 256, (300, 300, 3), dtype=np.uint8)
    whole = packed(Image.fromarray(noise))
    return whole[: len(whole) // 2]


def text_bomb() -> bytes:
    """A few kilobytes of note that unfold to fifty megabytes."""
    whole = packed(halves(), "PNG")
    note = b"Comment\0\0" + zlib.compress(b"x" * 50_000_000)
    chunk = struct.pack(">I", len(note)) + b"zTXt" + note + struct.pack(">I", zlib.crc32(b"zTXt" + note))
    return whole[:33] + chunk + whole[33:]


@pytest.mark.parametrize(
    ("make", "said"),
    [
        (lambda: b"", "is empty"),
        (lambda: b"just words, no picture", "no picture that can be read"),
        (lambda: b"<svg xmlns='http://www.w3.org/2000/svg'/>", "no picture that can be read"),
        (lambda: b"%PDF-1.7\n", "no picture that can be read"),
        (lambda: b"\xff\xd8\xff\xe0", "no picture that can be read|damaged"),
        (lambda: b"\0\0\0\x18ftypheic" + b"\0" * 40, "format of some phones"),
        (cut_off, "damaged or cut off"),
        (lambda: _png(200_000, 200_000, b""), "more than 50 million pixels"),
        (lambda: _png(9_000, 6_000, b""), "more than 50 million pixels"),
        (lambda: _png(600, 600, b"\0" * 10), "damaged or cut off"),
        (text_bomb, "damaged or cut off|no picture"),
    ],
)
def test_what_is_no_picture_is_refused_in_one_sentence(make: Callable[[], bytes], said: str) -> None:
    with pytest.raises(PictureTrouble, match=said) as caught:
        wish_of(make(), "a picture")
    assert str(caught.value).count(". ") == 0


WHOLE = {kind: packed(halves(), kind) for kind in ("JPEG", "PNG", "GIF", "WEBP", "TIFF", "BMP")}


@given(st.sampled_from(sorted(WHOLE)), st.data())
@settings(max_examples=150)
def test_a_damaged_file_gives_a_sound_picture_or_one_sentence(kind: str, data: st.DataObject) -> None:
    """Cut off anywhere, with bytes changed anywhere: never another error, never a picture beyond bounds."""
    broken = bytearray(WHOLE[kind][: data.draw(st.integers(1, len(WHOLE[kind])))])
    for place, value in data.draw(
        st.lists(st.tuples(st.integers(0, len(broken) - 1), st.integers(0, 255)), max_size=6)
    ):
        broken[place] = value
    try:
        picture = wish_of(bytes(broken), "broken")
    except PictureTrouble:
        return  # any other error would come through
    assert list(picture_problems(picture, ("picture",))) == []


def test_a_file_of_two_hundred_megabytes_is_not_read(tmp_path: Path) -> None:
    large = tmp_path / "large.png"
    with large.open("wb") as file:
        file.truncate(200_000_000)
    with pytest.raises(FileTrouble, match=r"large\.png: .* larger than 40 MB"):
        read_wish(large)


@pytest.mark.parametrize("kind", ["missing", "folder"])
def test_what_is_no_file_is_named(kind: str, tmp_path: Path) -> None:
    path = tmp_path / "x.jpg"
    if kind == "folder":
        path.mkdir()
    with pytest.raises(FileTrouble, match=r"x\.jpg"):
        read_wish(path)


def test_the_file_is_named_when_it_is_no_picture(tmp_path: Path) -> None:
    path = tmp_path / "wish.jpg"
    path.write_bytes(b"no picture")
    with pytest.raises(FileTrouble, match=r"wish\.jpg: this is no picture"):
        read_wish(path)


def test_a_name_is_made_plain() -> None:
    assert wish_of(packed(halves()), "  a\tb\n\ud800 c ").name == "a b c"
    assert wish_of(packed(halves()), "\n").name == "Picture"
    assert len(wish_of(packed(halves()), "x" * 300).name) == 80


def test_reading_a_project_does_not_load_the_library_for_pictures() -> None:
    code = (
        "import sys, workbench.document.wish_file, workbench.document.wish_edits; print('PIL' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


_MEASURE = """
import resource, sys
from workbench.document.wish_file import PictureTrouble, wish_of
data = open(sys.argv[1], "rb").read()
import PIL.Image, PIL.PngImagePlugin, PIL.JpegImagePlugin
before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
try:
    wish_of(data, "x")
except PictureTrouble:
    pass
print((resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before) // 1024)
"""


@pytest.mark.skipif(sys.platform != "linux", reason="the unit of ru_maxrss differs")
@pytest.mark.parametrize("mode", ["RGB", "L"])
def test_memory_stays_bounded(mode: str, tmp_path: Path) -> None:
    """The largest picture that is taken in, all of one colour: 50 million pixels in a few kilobytes."""
    path = tmp_path / "large.png"
    Image.new(mode, (10_000, 5_000)).save(path, compress_level=1)
    assert path.stat().st_size < 1_000_000
    done = subprocess.run(
        [sys.executable, "-c", _MEASURE, str(path)], capture_output=True, text=True, check=True
    )
    assert int(done.stdout) < 450
