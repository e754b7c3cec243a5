"""Twenty thousand edits at the window, and it holds no more than it did at noon."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from tests.robust import how_many
from tests.robust.tally import row

linux = pytest.mark.skipif(not Path("/proc/self/fd").is_dir(), reason="what is held is read in /proc")

_PROGRAM = """
import sys
from pathlib import Path
from workbench.ui.raised import raise_whole
raise_whole()  # before any of the window's classes is read, as the program itself does
from tests.robust.soak import main
sys.exit(main(int(sys.argv[1]), Path(sys.argv[2])))
"""
Held = dict[str, Any]
_MOST_MEMORY = 1.08
"""From the middle of the day to its end; rows once made are kept for the next time they are wanted."""
_MOST_OBJECTS = 1.12
_EVEN = ("handles", "threads", "timers")


def _day(folder: Path, edits: int) -> tuple[list[Held], list[str], list[str]]:
    """What was held each time, what went wrong, and what was told."""
    command = [sys.executable, "-X", "faulthandler", "-c", _PROGRAM, str(edits), str(folder)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    lines = [json.loads(line) for line in done.stdout.splitlines()]
    assert lines, done.stderr
    assert "wrong" in lines[-1], done.stderr
    return lines[:-1], lines[-1]["wrong"], lines[-1]["told"]


@linux
def test_a_long_day(tmp_path: Path) -> None:
    tally = row("edits with the window open")
    held, wrong, told = _day(tmp_path, how_many("edits"))
    tally.tried = held[-1]["edits"]
    tally.fell += wrong
    middle, end = held[len(held) // 2], held[-1]
    for name in ("memory_mb", "handles", "threads", "objects", "widgets", "timers"):
        tally.figures[name.removesuffix("_mb")] = f"{held[0][name]:g} {middle[name]:g} {end[name]:g}"
    tally.check()
    assert told == []
    assert {name: end[name] for name in _EVEN} == {name: middle[name] for name in _EVEN}
    assert end["memory_mb"] < _MOST_MEMORY * middle["memory_mb"]
    for name in ("objects", "widgets"):
        assert end[name] < _MOST_OBJECTS * middle[name], name
    assert max(each["active_timers"] for each in held) <= 4
