"""The commands as a process of their own: no window system, no Qt, quiet ends."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

BRIDE = Path(__file__).parents[2] / "demo_projects" / "bride_first_wear.bodice"
NO_DISPLAY = {
    name: value
    for name, value in os.environ.items()
    if name not in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM", "PYTHONIOENCODING")
}

_NEVER_SEEKS = """
import sys
from workbench.cli import main

assert main(["report", sys.argv[1]]) == 0
assert main(["report", sys.argv[1], "--json"]) == 0
assert "spyrrow" not in sys.modules
"""

_WITHOUT_QT = """
import sys
from workbench.cli import main

bride, out = sys.argv[1:]
lay = ["lay", bride, "--cloth", "Interfacing", "--seconds"]
for arguments in (["report", bride], ["report", bride, "--json"], ["schema"], ["print", bride, "-o", out]):
    assert main(arguments) == 0
for arguments in ([*lay, "0"], [*lay, "1", "--json"]):
    assert main(arguments) == 0
loaded = [name for name in sys.modules if name.split(".")[0] in ("PySide6", "shiboken6", "workbench.ui")]
assert not loaded, loaded
"""


def python(*arguments: object, **more: str) -> subprocess.CompletedProcess[bytes]:
    command = [sys.executable, *map(str, arguments)]
    return subprocess.run(command, capture_output=True, check=False, env={**NO_DISPLAY, **more}, timeout=60)


def test_no_command_needs_a_display_or_loads_qt(tmp_path: Path) -> None:
    done = python("-c", _WITHOUT_QT, BRIDE, tmp_path / "out.pdf")
    assert done.stderr == b""
    assert done.returncode == 0


def test_a_report_starts_no_search() -> None:
    done = python("-c", _NEVER_SEEKS, BRIDE)
    assert done.stderr == b""
    assert done.returncode == 0


def _runs(process: str) -> bool:
    """Whether a process still does something; one that has ended may be listed until it is asked for."""
    try:
        return ") Z " not in Path(f"/proc/{process}/stat").read_text()
    except OSError:
        return False


@pytest.mark.skipif(not Path("/proc/self/task").is_dir(), reason="Linux is asked for the children")
def test_an_interrupted_search_ends_quietly_with_its_child() -> None:
    command = [sys.executable, "-m", "workbench", "lay", str(BRIDE), "--seconds", "60"]
    laying = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, env=NO_DISPLAY)
    listed = Path(f"/proc/{laying.pid}/task/{laying.pid}/children")
    until = time.monotonic() + 30
    try:
        while not (children := listed.read_text().split()):
            assert time.monotonic() < until
            time.sleep(0.02)
        laying.send_signal(signal.SIGINT)
        out, errors = laying.communicate(timeout=5)
    finally:
        laying.kill()
    assert (out, errors, laying.returncode) == (b"", b"", 2)
    while any(_runs(child) for child in children):
        assert time.monotonic() < until
        time.sleep(0.02)


def test_module_and_a_terminal_that_knows_no_fractions() -> None:
    done = python("-m", "workbench", "report", BRIDE, LC_ALL="C", PYTHONIOENCODING="ascii", PYTHONUTF8="0")
    assert done.returncode == 0
    assert "27¾" in done.stdout.decode("utf-8")
    done = python("-m", "workbench", "report", "no½file", PYTHONIOENCODING="ascii", PYTHONUTF8="0")
    assert (done.returncode, done.stdout) == (2, b"")
    assert done.stderr.count(b"\n") == 1


@pytest.mark.skipif(os.name != "posix", reason="pipes of POSIX systems")
def test_reader_that_has_had_enough() -> None:
    reading, writing = os.pipe()
    os.close(reading)
    try:
        done = subprocess.run(
            [sys.executable, "-m", "workbench", "report", str(BRIDE), "--json"],
            stdout=writing,
            stderr=subprocess.PIPE,
            check=False,
            env=NO_DISPLAY,
            timeout=60,
        )
    finally:
        os.close(writing)
    assert done.stderr == b""
    assert done.returncode == 2
