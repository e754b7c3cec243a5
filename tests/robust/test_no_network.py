"""The main jobs with every socket, unpickled class and opened address made to fail."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from tests.robust.samples import DEMOS
from tests.robust.tally import Row, row

_GUARD = """
import sys

def guard(event, arguments):
    if event.startswith(("socket.", "urllib.", "http.", "ftplib.", "smtplib.", "pickle.")):
        print("REACHED OUT:", event, arguments, file=sys.stderr, flush=True)
        import os
        os._exit(77)

sys.addaudithook(guard)
"""
_COMMAND = _GUARD + "from workbench.cli import main\nsys.exit(main(sys.argv[1:]))"
_WINDOW = (
    _GUARD
    + """
from pathlib import Path
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
from workbench.ui.actions import PLACES
from workbench.ui.app import demo_files
from workbench.ui.settings import Settings
from workbench.ui.style import dress
from workbench.ui.window import Window

folder = Path(sys.argv[1])
application = QApplication([])
window = Window(Settings(folder / "window.ini"), demos=demo_files(), data=folder / "data")
dress("light")
window.resize(1280, 720)
window.show()
window.files.open_demo(demo_files()[0])
for name in PLACES:
    window.deeds[name].trigger()
    application.processEvents()
window.desk.session.mark_saved(folder / "a.bodice")
QTimer.singleShot(0, window.close)
application.exec()
print("closed")
"""
)
_SOCKET = _GUARD + "import socket\nsocket.socket()"
_PICKLE = _GUARD + "import pickle\npickle.loads(b'cos\\nsystem\\n.')"
_WAYS = (
    ("report", "FILE"),
    ("report", "FILE", "--json"),
    ("print", "FILE", "-o", "OUT.pdf"),
    ("print", "FILE", "-o", "OUT.pdf", "--what", "card"),
    ("export", "FILE", "-o", "OUT.svg"),
    ("export", "FILE", "-o", "OUT.dxf"),
    ("export", "FILE", "-o", "OUT.pdf", "--projector"),
    ("export", "FILE", "-o", "OUT.pdf", "--what", "guide"),
    ("lay", "FILE", "--seconds", "1", "-o", "OUT.pdf"),
    ("recut", "FILE", "CLIENTS.csv", "-o", "DIR", "--print", "A4"),
    ("schema",),
)


@pytest.fixture(scope="module")
def tally() -> Row:
    return row("jobs with every socket shut")


def _run(text: str, *arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-c", text, *arguments], capture_output=True, text=True, check=False
    )


@pytest.mark.parametrize("text", [_SOCKET, _PICKLE], ids=["socket", "pickle"])
def test_the_guard_guards(text: str) -> None:
    assert _run(text).returncode == 77


@pytest.mark.parametrize("way", _WAYS, ids=" ".join)
def test_commands_reach_out_to_nobody(way: tuple[str, ...], tally: Row, tmp_path: Path) -> None:
    (tmp_path / "CLIENTS.csv").write_text("name,unit,bust_girth,waist_girth\nAnna (invented),in,36,28\n")
    words = [str(DEMOS[0]) if word == "FILE" else word for word in way]
    words = [str(tmp_path / word) if word.startswith(("OUT", "CLIENTS", "DIR")) else word for word in words]
    done = _run(_COMMAND, *words)
    assert done.returncode == 0, done.stderr
    tally.note("command")


def test_the_window_reaches_out_to_nobody(tally: Row, tmp_path: Path) -> None:
    done = _run(_WINDOW, str(tmp_path))
    assert (done.returncode, done.stdout) == (0, "closed\n"), done.stderr
    tally.note("window")
