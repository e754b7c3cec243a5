"""The start of the program, beside that of a bare window."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.bench.clock import Timing
from tests.bench.works import TWELVE_PANELS

ROOT = Path(__file__).parents[2]

_FIRST_PAINT = """
import gc, sys, time
gc.disable()  # as the command does before it reads Qt
from PySide6.QtCore import QEvent, QObject, QTimer
from PySide6.QtWidgets import QApplication, QMainWindow
class Watch(QObject):
    def eventFilter(self, target, event):
        if event.type() == QEvent.Type.Paint and not self.seen:
            self.seen = True
            QTimer.singleShot(0, self.tell)
        return False
    seen = False
    def tell(self):
        print(1000 * time.process_time(), flush=True)
        QApplication.exit(0)
watch = Watch()
run_events = QApplication.exec
def watched(*_):
    # not at the application: it would pay for a Python object of whatever is sent anything
    for window in QApplication.topLevelWidgets():
        if isinstance(window, QMainWindow):
            window.installEventFilter(watch)
    return run_events()
QApplication.exec = watched
"""
_WHOLE = _FIRST_PAINT + "from workbench.cli import main; sys.exit(main())"
_BARE = _FIRST_PAINT + "app = QApplication([]); window = QMainWindow(); window.show(); app.exec()"


def first_paint() -> Timing:
    """From the start of the process until the window with a project in it has been painted."""
    with TemporaryDirectory() as folder:
        copy = shutil.copy(TWELVE_PANELS, folder)  # nothing is left beside the demo
        _child(_WHOLE, copy)  # the first start compiles the modules, and no later one does
        whole = sorted(_child(_WHOLE, copy) for _ in range(5))
    bare = sorted(_child(_BARE) for _ in range(5))
    return Timing("start to first paint", whole[2], whole[-1], goal=350, floor=bare[2])


def _child(code: str, *arguments: str) -> float:
    with TemporaryDirectory() as folder:
        env = {
            **os.environ,
            "QT_QPA_PLATFORM": "offscreen",
            "PYTHONDONTWRITEBYTECODE": "",
            "XDG_DATA_HOME": folder,
            "XDG_CONFIG_HOME": folder,
        }
        done = subprocess.run(
            [sys.executable, "-c", code, *arguments],
            cwd=ROOT,
            env=env,
            check=True,
            capture_output=True,
            timeout=60,
        )
    return float(done.stdout.split()[0])


ALL = (first_paint,)
