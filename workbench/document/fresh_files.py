"""Files that nobody has yet: plain names inside one folder, and nothing ever written over."""

from __future__ import annotations

import os
import re
import secrets
import unicodedata
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path

from workbench.document.storage import FileTrouble

_MOST_BYTES = 120
"""Of a stem: with its number and ending it fits any file system, whatever the letters (own choice)."""
_NOT_PLAIN = re.compile(r'[<>:"/\\|?*]+|\.{2,}')
"""What some file system takes for a folder, a device or a pattern."""
_DEVICES = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)(\..*)?", re.I)
"""Names that one operating system keeps for devices, whatever their ending."""


def plain_stem(name: str, otherwise: str) -> str:
    """The name as the stem of a file: no folder in it, nothing a file system objects to.

    What is left of nothing is ``otherwise``.
    """
    printable = "".join(sign if sign.isprintable() else " " for sign in unicodedata.normalize("NFC", name))
    plain = " ".join(_NOT_PLAIN.sub("-", printable).split())
    short = plain.strip(" .-_").encode("utf-8")[:_MOST_BYTES].decode("utf-8", "ignore").strip(" .-_")
    if _DEVICES.fullmatch(short):
        return f"{otherwise} {short}"
    return short or otherwise


def free_stem(folder: Path, stem: str, endings: Sequence[str]) -> str:
    """The stem, or the stem with a number from 2 on, for which there is no file with any of the endings.

    Numbers are sought by doubling, so that the ten-thousandth of one name takes no longer than the tenth.
    """

    def free(number: int) -> bool:
        return not any(os.path.lexists(folder / f"{_numbered(stem, number)}{end}") for end in endings)

    if free(1):
        return stem
    taken, number = 1, 2
    while not free(number):
        taken, number = number, 2 * number
    while number - taken > 1:
        middle = (taken + number) // 2
        taken, number = (taken, middle) if free(middle) else (middle, number)
    return _numbered(stem, number)


def _numbered(stem: str, number: int) -> str:
    return stem if number == 1 else f"{stem} {number}"


def write_fresh(path: Path, data: bytes) -> bool:
    """Put ``data`` in a file that was not there, whole; False, and nothing done, where there is one already.

    FileTrouble says why it could not be written.
    """
    part = path.with_name(f".{secrets.token_hex(8)}.part")
    try:
        try:
            with part.open("xb") as file:
                file.write(data)
                file.flush()
                os.fsync(file.fileno())
            return _named(part, path)
        finally:
            with suppress(OSError):
                part.unlink()
    except OSError as error:
        raise FileTrouble(path, f"cannot be written: {reason_of(error)}.") from error


def _named(part: Path, path: Path) -> bool:
    """Give the finished file its name; False where somebody has it."""
    try:
        os.link(part, path)
    except FileExistsError:
        return False
    except OSError:
        # a file system without links: take the name first, then put the file there
        try:
            path.open("xb").close()
        except FileExistsError:
            return False
        os.replace(part, path)
    return True


def make_folder(folder: Path) -> None:
    """Make sure that the folder is there and can be written; FileTrouble where it cannot."""
    probe = folder / f".{secrets.token_hex(8)}.part"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        probe.open("xb").close()
        probe.unlink()
    except FileExistsError as error:
        raise FileTrouble(folder, "is a file, not a folder.") from error
    except OSError as error:
        raise FileTrouble(folder, f"cannot be written: {reason_of(error)}.") from error


def settle_folder(folder: Path) -> None:
    """Make the new names in a folder last through a power cut, as far as the system can."""
    with suppress(OSError):
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)


def reason_of(error: OSError) -> str:
    """What the system says, to follow a colon."""
    reason = error.strerror or str(error)
    return f"{reason[:1].lower()}{reason[1:]}"
