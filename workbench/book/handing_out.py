"""Everything of one client in one packed file, to be handed to her or put away."""

from __future__ import annotations

import os
import secrets
import time
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path, PurePosixPath
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from workbench.book.belongings import Belongings, Kept
from workbench.document import SUFFIX, FileTrouble, plain_stem, to_bytes
from workbench.document.keeping import Unsaved, Version

CONTENTS = "contents.txt"
_EARLIER, _UNSAVED = "earlier versions", "unsaved work"


def hand_out(belongings: Belongings, out: Path) -> int:
    """How many files are in the packed file at ``out``, which is whole or not there.

    Project files keep their place in the book, so that two of one name stay apart. FileTrouble
    names the file that could not be read or written.
    """
    part = out.with_name(f".{secrets.token_hex(8)}.part")
    try:
        try:
            count = _pack(belongings, part)
            os.replace(part, out)
        finally:
            with suppress(OSError):
                part.unlink()
    except OSError as error:
        named = Path(error.filename) if error.filename and error.filename != str(part) else out
        what = "written" if named == out else "read"
        raise FileTrouble(named, f"cannot be {what}: {(error.strerror or str(error)).lower()}.") from error
    return count


def _pack(belongings: Belongings, part: Path) -> int:
    names: list[str] = []
    # what it holds is a client's: for nobody else to read
    with (
        open(os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as file,
        ZipFile(file, "w", ZIP_DEFLATED) as packed,
    ):
        for name, data in _contents(belongings):
            info = ZipInfo(_free(name, names), date_time=time.localtime()[:6])
            info.compress_type = ZIP_DEFLATED
            packed.writestr(info, data)
            names.append(info.filename)
        packed.writestr(CONTENTS, _list(belongings, names))
        file.flush()
    return len(names)


def _contents(belongings: Belongings) -> Iterator[tuple[PurePosixPath, bytes]]:
    for kept in belongings.projects:
        yield PurePosixPath(kept.place), kept.file.read_bytes()
        for version in kept.versions:
            yield _earlier(kept, version), version.file.read_bytes()
        for number, unsaved in enumerate(kept.unsaved, start=1):
            yield _not_saved(kept, number, unsaved), to_bytes(unsaved.project)
    for number, unsaved in enumerate(belongings.never_saved, start=1):
        name = f"{number} {_day(unsaved.when)}{SUFFIX}"
        yield PurePosixPath(_UNSAVED) / "never saved" / name, to_bytes(unsaved.project)
    for path in belongings.prints:
        yield PurePosixPath("prints") / path.name, path.read_bytes()


def _earlier(kept: Kept, version: Version) -> PurePosixPath:
    place = PurePosixPath(kept.place)
    return (
        PurePosixPath(_EARLIER)
        / place.with_suffix("")
        / f"{version.number:06d} {_day(version.when)}{place.suffix}"
    )


def _not_saved(kept: Kept, number: int, unsaved: Unsaved) -> PurePosixPath:
    place = PurePosixPath(kept.place)
    return PurePosixPath(_UNSAVED) / place.with_suffix("") / f"{number} {_day(unsaved.when)}{place.suffix}"


def _day(seconds: float) -> str:
    try:
        return time.strftime("%Y-%m-%d", time.localtime(seconds))
    except (OverflowError, OSError, ValueError):
        return "unknown day"


def _free(name: PurePosixPath, names: list[str]) -> str:
    """The name, or the name with a number where it is taken; it leads nowhere out of where it is unpacked."""
    folders = [plain_stem(part, "folder") for part in name.parts[:-1]]
    plain = PurePosixPath(*folders, plain_stem(name.stem, "file") + name.suffix)
    free, number = plain, 2
    while str(free) in names:
        free, number = plain.with_name(f"{plain.stem} {number}{plain.suffix}"), number + 1
    return str(free)


def _list(belongings: Belongings, names: list[str]) -> str:
    head = f"All that was kept of {belongings.name}: {len(names)} files.\n"
    return head + "".join(f"{name}\n" for name in names)
