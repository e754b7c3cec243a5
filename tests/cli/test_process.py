"""The commands as a process of their own: no window system, no Qt, quiet ends."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

BRIDE = Path(__file__).parents[2] / "demo_projects" / "bride_first_wear.bodice"
NO_DISPLAY = {
    name: value
    for name, value in os.environ.items()
    if name not in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM", "PYTHONIOENCODING")
}

_WITHOUT_QT = """
import sys
from workbench.cli import main

bride, out = sys.argv[1:]
for arguments in (["report", bride], ["report", bride, "--json"], ["schema"], ["print", bride, "-o", out]):
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
