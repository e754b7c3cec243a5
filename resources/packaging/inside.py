"""What does not go into the built program though PyInstaller would take it along.

Each line was left out, the program built, and every command and the window tried by
``try_out.py``. The picture formats of Qt all stay: she may be sent any of them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import PurePosixPath

_FOR_CHECKING = """
    _pytest ast_serialize grimp hatchling hypothesis importlinter librt lxml mypy mypyc pikepdf pip
    pkg_resources pypdfium2 pytest pytestqt ruff scipy setuptools svgpathtools
"""
_OTHER_WINDOWS = "tkinter matplotlib IPython"
_NO_NETWORK = "PySide6.QtNetwork PySide6.QtDBus"
_BITMAPS_OF_REPORTLAB = "rlPyCairo _rl_renderPM"
_COLOURED_TRACEBACKS = "rich pygments markdown_it mdurl"
LEFT_OUT = " ".join(
    (_FOR_CHECKING, _OTHER_WINDOWS, _NO_NETWORK, _BITMAPS_OF_REPORTLAB, _COLOURED_TRACEBACKS)
).split()
"""Python packages by name."""

_PLUGINS_KEPT = {
    "platforms": ("xcb", "wayland", "offscreen", "windows", "cocoa"),
    "platformthemes": ("xdgdesktopportal",),
    "platforminputcontexts": ("composeplatforminputcontextplugin", "ibusplatforminputcontextplugin"),
    "imageformats": None,
    "iconengines": None,
    "styles": None,
    "wayland-decoration-client": None,
    "wayland-graphics-integration-client": ("qt-plugin-wayland-egl",),
    "wayland-shell-integration": ("xdg-shell", "qt-shell"),
}
"""Of each kind of Qt's plugins the ones that are wanted; None for all of a kind. No other kind is."""
Entry = tuple[str, str, str]
"""As PyInstaller lists files: the name in the program, where it comes from, its kind."""


def goes_along(name: str) -> bool:
    """Whether the file that would lie under this name in the program is wanted in it."""
    path = PurePosixPath(name.replace("\\", "/"))
    if "PySide6" in path.parts and "translations" in path.parts:
        return False
    if "plugins" in path.parts and "PySide6" in path.parts:
        return _plugin_kept(path.parent.name, path.stem.removeprefix("lib").removeprefix("q"))
    return True


def _plugin_kept(kind: str, name: str) -> bool:
    if kind not in _PLUGINS_KEPT:
        return False
    kept = _PLUGINS_KEPT[kind]
    return kept is None or name in {wanted.removeprefix("q") for wanted in kept}


def still_needed(entries: Iterable[Entry], asks_for: Callable[[str], Iterable[str]]) -> list[Entry]:
    """The entries without libraries that only what was left out has asked for.

    ``asks_for`` gives the names of the libraries that a file wants. Python's own library and
    what lies in the folder of a package is asked for by name, and stays.
    """
    entries = list(entries)
    libraries = {entry[0]: entry for entry in entries if _is_library(entry)}
    by_name = {PurePosixPath(name).name: entry for name, entry in libraries.items()}
    kept: set[str] = set()
    to_look_at = [entry[1] for entry in entries if entry[0] not in libraries]
    while to_look_at:
        for wanted in asks_for(to_look_at.pop()):
            entry = by_name.get(wanted)
            if entry is not None and entry[0] not in kept:
                kept.add(entry[0])
                to_look_at.append(entry[1])
    return [entry for entry in entries if entry[0] not in libraries or entry[0] in kept]


def without_dead_links(entries: Iterable[Entry], all_names: Iterable[str]) -> list[Entry]:
    """The entries without links to what is not among the names of what goes along."""
    names = set(all_names)
    return [entry for entry in entries if entry[2] != "SYMLINK" or _target(entry) in names]


def _target(entry: Entry) -> str:
    return (PurePosixPath(entry[0]).parent / entry[1]).as_posix()


def _is_library(entry: Entry) -> bool:
    """Whether an entry is there for others: the system's libraries, and those of Qt."""
    path = PurePosixPath(entry[0])
    lies = path.parent.as_posix()
    return (
        entry[2] != "EXTENSION" and lies in (".", "PySide6/Qt/lib") and not path.name.startswith("libpython")
    )
