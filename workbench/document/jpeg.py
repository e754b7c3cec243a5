"""The size that a JPEG says it has, read from its head alone: nothing is decoded.

Markers are those of ITU-T T.81, annex B (from memory).
"""

from __future__ import annotations

import binascii
from functools import lru_cache

_START = b"\xff\xd8"
_FRAMES = frozenset({0xC0, 0xC1, 0xC2})
"""Baseline, extended and progressive frames; what the rest would need, no viewer here can show (from
memory)."""
_SCAN, _END = 0xDA, 0xD9
"""Where the picture itself begins, and its end (from memory)."""
_BARE = frozenset({0x01, *range(0xD0, 0xD8)})
"""Markers without a segment behind them (from memory)."""


class NotJpegError(ValueError):
    """Base64 that is none, or holds no JPEG; its message can follow the place in a sentence."""


@lru_cache(maxsize=32)
def jpeg_size(text: str) -> tuple[int, int]:
    """Width and height in pixels of a JPEG in Base64; NotJpegError for anything else."""
    try:
        data = binascii.a2b_base64(text, strict_mode=True)
    except (binascii.Error, ValueError) as error:
        # letters outside ASCII are a ValueError of their own
        raise NotJpegError("is not written in Base64") from error
    if not data.startswith(_START):
        raise NotJpegError("is no picture in the JPEG format")
    try:
        return _frame_size(data)
    except IndexError as error:
        raise NotJpegError("is a damaged picture") from error


def _frame_size(data: bytes) -> tuple[int, int]:
    """From segment to segment until the one of the frame; IndexError where the bytes end before it."""
    at = len(_START)
    while data[at] == 0xFF:
        kind = data[at + 1]
        if kind in _FRAMES:
            high, wide = _two(data, at + 5), _two(data, at + 7)
            return wide, high
        if kind in (_SCAN, _END):
            break
        if kind == 0xFF:
            at += 1  # a byte that only fills
        else:
            at += 2 if kind in _BARE else 2 + max(_two(data, at + 2), 2)
    raise NotJpegError("is a damaged picture")


def _two(data: bytes, at: int) -> int:
    return data[at] << 8 | data[at + 1]
