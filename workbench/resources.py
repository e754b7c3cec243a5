"""Where the files that come with the program lie: fonts, icons, drawings."""

from __future__ import annotations

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent
_FOLDERS = (_PACKAGE / "_resources", _PACKAGE.parent / "resources")
"""In an installed wheel the files travel inside the package; in a checkout they stand beside it."""


def resource(name: str) -> Path:
    """Path of a file such as ``fonts/NotoSans-Regular.ttf``; FileNotFoundError where it is missing."""
    for folder in _FOLDERS:
        path = folder / name
        if path.exists():
            return path
    raise FileNotFoundError(f"The program’s own file {name} is missing; install the program again.")
