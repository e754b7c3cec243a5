"""Doors of folders whose files are read when a name behind them is first asked for.

A window that opens need not wait for what only a later place, a sheet or a command uses.
A name that is spelled like the file it stands in cannot be behind such a door: once the
file has been read, Python keeps the file under that name.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Mapping
from importlib import import_module


def when_asked(package: str, files: Mapping[str, str]) -> Callable[[str], object]:
    """A ``__getattr__`` for the door of a package; ``files`` says which names stand in which file,
    with a blank between them.

    What it returns raises AttributeError for any other name (PEP 562).
    """
    file_of = {name: file for file, names in files.items() for name in names.split()}

    def asked(name: str) -> object:
        if name not in file_of:
            raise AttributeError(f"there is no {name} in {package}")
        value: object = getattr(import_module(f"{package}.{file_of[name]}"), name)
        setattr(sys.modules[package], name, value)
        return value

    return asked
