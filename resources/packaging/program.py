"""What the built program does first: the command line, or the child that seeks a lay.

The built program is its own Python. It starts the child with the very words a Python would
be asked with, and finds them here again.
"""

from __future__ import annotations

import os
import sys

CHILD = ["-P", "-m", "workbench.cloth.child"]
_CHANGED = ("LD_LIBRARY_PATH", "DYLD_LIBRARY_PATH", "LIBPATH")
_ADDED = ("QT_PLUGIN_PATH", "QML2_IMPORT_PATH")


def give_back() -> None:
    """Set the environment as the user had it: a viewer that is opened for a print has libraries of its own.

    PyInstaller keeps what stood there before under a second name; the libraries of this
    program have been found by then (its manual: Launching external programs).
    """
    for name in _CHANGED:
        before = os.environ.pop(f"{name}_ORIG", None)
        os.environ.pop(name, None)
        if before:
            os.environ[name] = before
    # PySide6 tells Qt by itself where its plugins lie
    for name in _ADDED:
        os.environ.pop(name, None)


def main() -> int:
    """The exit status of what was asked for."""
    give_back()
    if sys.argv[1:] == CHILD:
        from workbench.cloth.child import main as seek

        seek()
        return 0
    from workbench.cli import main as carry_out

    return int(carry_out())


if __name__ == "__main__":
    sys.exit(main())
