"""The index: what was read of each file, so that only changed files are read again.

It is a file of lines, one a project, and can be thrown away at any time: the project files
are the truth. A line that is damaged costs one file to be read again, a head that does not
fit costs all of them.

It lies in the user's cache folder, readable by nobody else, and not in the folder of the
book: that one may be write-protected or synchronised, where two machines would fight over
it, and holds what she put there and nothing else. It has in it what the list shows and no
more: no notes, no wishes, no measurements. A book's index is found by the place of its
folder.
"""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Iterable
from contextlib import suppress
from pathlib import Path
from typing import Any

from workbench.book.entry import Entry, Found, Matter
from workbench.document import FileTrouble, write_whole

_HEAD = '["client book", 1]'
"""With the form of the lines: those of another one are read anew."""
_MARKS = ("stop", "over", "attend", "note")


def index_file(cache: Path, folder: Path) -> Path:
    """Where the index of a folder lies in the cache folder of the program."""
    place = os.path.normcase(os.path.realpath(folder)).encode("utf-8", "surrogateescape")
    return cache / "book" / f"{hashlib.sha256(place).hexdigest()[:24]}.lines"


def read_index(file: Path) -> dict[str, Entry]:
    """The entries in an index by their place; none where there is no index, or one of another kind."""
    try:
        head, *lines = file.read_text(encoding="utf-8", errors="surrogatepass").split("\n")
    except (OSError, ValueError):
        return {}
    if head != _HEAD:
        return {}
    found = (_entry(line) for line in lines)
    return {entry.place: entry for entry in found if entry is not None}


def write_index(file: Path, entries: Iterable[Entry]) -> None:
    """Put the entries on disk, for nobody else to read; FileTrouble where that fails."""
    lines = [_HEAD, *map(_line, entries)]
    data = "\n".join(lines).encode("utf-8", "surrogatepass")
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        file.parent.chmod(0o700)
    except OSError as error:
        raise FileTrouble(file, f"cannot be written: {(error.strerror or str(error)).lower()}.") from error
    write_whole(file, data)


def throw_away(cache: Path, folder: Path) -> None:
    """Remove the index of a folder, as when another one becomes the book."""
    with suppress(OSError):
        index_file(cache, folder).unlink(missing_ok=True)


def _line(entry: Entry) -> str:
    return json.dumps(
        [
            *entry.found,
            entry.name,
            entry.style,
            entry.date,
            entry.next_fitting,
            entry.invented,
            [list(matter) for matter in entry.matters],
            entry.picture,
            entry.reason,
        ]
    )


def _entry(line: str) -> Entry | None:
    """The entry in a line; None where there is none."""
    try:
        place, size, mtime_ns, name, style, date, fitting, invented, matters, picture, reason = json.loads(
            line
        )
        texts: tuple[Any, ...] = (place, name, style, date, fitting, picture, reason)
        if not all(type(text) is str for text in texts) or type(invented) is not bool:
            return None
        if type(size) is not int or type(mtime_ns) is not int:
            return None
        open_matters = tuple(Matter(mark, str(words)) for mark, words in matters if mark in _MARKS)
    except (ValueError, TypeError, RecursionError):
        return None
    found = Found(place, size, mtime_ns)
    return Entry(found, name, style, date, fitting, invented, open_matters, picture, reason)
