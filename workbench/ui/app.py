"""From the command to the open window, and its end."""

from __future__ import annotations

import ctypes
import gc
import os
import signal
import sys
from pathlib import Path

from PySide6.QtCore import QLibraryInfo, QTimer
from PySide6.QtWidgets import QApplication

from workbench.document import FileTrouble
from workbench.document.keeping import Opened, open_project
from workbench.ui import access
from workbench.ui.asking import Asking
from workbench.ui.look import fonts, icon, show_look
from workbench.ui.scale import made_application
from workbench.ui.settings import Settings, data_folder
from workbench.ui.style import dress
from workbench.ui.trouble import Trouble
from workbench.ui.window import PROGRAM, Window

_SETTLED_MS = 500
"""When the first paint is over, and before she has found the first field."""
_GARBAGE = 20_000
"""Things made and not let go before garbage is looked for: one edit makes some thousands, and nearly all of
them go by themselves."""
_AHEAD_MS = 1500
"""When she looks for the first field, and long before she turns to another place."""
_BESIDE = Path(__file__).resolve().parent.parent


def open_window(path: Path | None) -> int:
    """Open the window and stay until it is closed; 2, after one line, when that cannot be done."""
    refusal = _no_screen()
    opened: Opened | None = None
    if refusal is None and path is not None:
        try:
            opened = open_project(path)
        except FileTrouble as trouble:
            refusal = str(trouble)
    if refusal is not None:
        print(refusal, file=sys.stderr)
        return 2
    return _run(path, opened)


def _run(path: Path | None, opened: Opened | None) -> int:
    # as an argument, for setStyle hands the style back, and to be handed over its class is made with all
    # its lists of constants: 4 ms that nobody asks for
    application = made_application([*sys.argv[:1], "-style", "fusion"])
    QApplication.setApplicationName("corset-workbench")
    QApplication.setApplicationDisplayName(PROGRAM)
    QApplication.setDesktopFileName("corset-workbench")  # by which a desktop knows the window's menu entry
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    settings = Settings()
    show_look(settings.scheme)
    application.setFont(fonts().body)
    window = Window(settings, demos=demo_files(), data=data_folder())
    # only now: with a style sheet in force, every widget is polished again each time it finds a parent
    dress(settings.scheme)
    trouble = Trouble(window.desk, data_folder(), Asking(window).tell)
    trouble.install()
    if opened is not None and path is not None:
        window.files.put_read(opened, path)
    window.show()
    QTimer.singleShot(0, access.install)
    QTimer.singleShot(0, _show_icon)
    QTimer.singleShot(0, window.offer_left_over)
    QTimer.singleShot(_SETTLED_MS, settle_memory)
    QTimer.singleShot(_AHEAD_MS, _read_ahead)
    status = application.exec()
    trouble.uninstall()
    return status


def _show_icon() -> None:
    """Give the window its picture in the task bar, which nobody looks at before the window."""
    QApplication.setWindowIcon(icon("program", 64))


def _read_ahead() -> None:
    """Read the other places beside the window, so that the first turn to one is not felt."""
    from workbench.ui.ahead import read_ahead  # like all that the first picture need not wait for

    read_ahead()


def settle_memory() -> None:
    """Look for garbage from now on, but never again among what the start has made.

    Going through all of that in the middle of a drag would be felt.
    """
    gc.collect()
    gc.freeze()
    gc.set_threshold(_GARBAGE, 10, 10)
    gc.enable()


def demo_files() -> tuple[Path, ...]:
    """The demo projects, beside the package in a checkout and inside it once installed."""
    installed = _BESIDE / "_demo_projects"
    folder = installed if installed.is_dir() else _BESIDE.parent / "demo_projects"
    return tuple(sorted(folder.glob("*.bodice")))


def _no_screen() -> str | None:
    """Why no window can be opened here, in one line; None when nothing speaks against it.

    Qt itself ends the program, and blames one library whichever is missing.
    """
    if not sys.platform.startswith("linux") or "QT_QPA_PLATFORM" in os.environ:
        return None
    if os.environ.get("WAYLAND_DISPLAY"):
        return None
    if not os.environ.get("DISPLAY"):
        return "There is no screen to open a window on: neither DISPLAY nor WAYLAND_DISPLAY is set."
    plugins = QLibraryInfo.path(QLibraryInfo.LibraryPath.PluginsPath)
    try:
        ctypes.CDLL(str(Path(plugins) / "platforms" / "libqxcb.so"))
    except OSError as error:
        return f"The window system cannot be used: {error}."
    return None
