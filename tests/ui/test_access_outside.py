"""The tree that a screen reader sees, read from another program over AT-SPI, the bus of the Linux desktop."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).resolve().parents[2]
READER = Path(__file__).with_name("outside.py")
PYTHON = "/usr/bin/python3"
LAUNCHERS = ("/usr/libexec/at-spi-bus-launcher", "/usr/lib/at-spi2-core/at-spi-bus-launcher")
_NAMED = ("push button", "text", "spin button", "slider", "combo box", "canvas", "list item", "menu item")
"""Roles that are of no use without a name."""


def missing() -> str:
    """What this machine lacks; empty where it has everything."""
    if not sys.platform.startswith("linux"):
        return "AT-SPI is the bus of Linux desktops"
    for tool in ("Xvfb", "dbus-run-session"):
        if shutil.which(tool) is None:
            return f"{tool} is not installed"
    if not any(map(os.path.exists, LAUNCHERS)):
        return "at-spi2-core is not installed"
    asked = "import gi; gi.require_version('Atspi', '2.0'); from gi.repository import Atspi"
    if not os.path.exists(PYTHON) or subprocess.run([PYTHON, "-c", asked], capture_output=True).returncode:
        return "the system's Python has no binding of AT-SPI (gir1.2-atspi-2.0, python3-gi)"
    return ""


pytestmark = pytest.mark.skipif(bool(missing()), reason=missing() or "everything is there")


@pytest.fixture(scope="module")
def screen() -> Iterator[str]:
    """A virtual screen, and its name."""
    read, write = os.pipe()
    made = subprocess.Popen(
        ["Xvfb", "-displayfd", str(write), "-screen", "0", "1440x900x24", "-nolisten", "tcp"],
        pass_fds=(write,),
        stderr=subprocess.DEVNULL,
    )
    os.close(write)
    with os.fdopen(read) as told:
        yield f":{told.readline().strip()}"
    made.terminate()
    made.wait(10)


@pytest.fixture(scope="module")
def found(screen: str, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    """What is read of a demo project that is open in the draft."""
    folder = tmp_path_factory.mktemp("outside")
    folder.chmod(0o700)
    launcher = next(filter(os.path.exists, LAUNCHERS))
    demo = sorted((ROOT / "demo_projects").glob("*.bodice"))[0]
    words = (
        f"{launcher} --launch-immediately & bus=$!; sleep 1; "
        f"{sys.executable} -m workbench {demo} & shown=$!; "
        f"{PYTHON} -W ignore {READER} corset-workbench; "
        "kill $shown $bus; wait $shown"
    )
    surroundings = os.environ | {
        "DISPLAY": screen,
        "QT_QPA_PLATFORM": "xcb",
        "QT_LINUX_ACCESSIBILITY_ALWAYS_ON": "1",
        "XDG_RUNTIME_DIR": str(folder),
        "XDG_DATA_HOME": str(folder / "data"),
        "XDG_CONFIG_HOME": str(folder / "config"),
    }
    done = subprocess.run(
        ["dbus-run-session", "--", "bash", "-c", words],
        cwd=ROOT,
        env=surroundings,
        capture_output=True,
        text=True,
        timeout=90,
    )
    lines = [line for line in done.stdout.splitlines() if line.startswith("{")]
    assert lines, done.stderr
    told: dict[str, Any] = json.loads(lines[-1])
    return told


def things(found: dict[str, Any], role: str) -> list[dict[str, Any]]:
    return [thing for thing in found["things"] if thing["role"] == role]


def test_shape_points_bars_and_figures_are_read_with_their_values(found: dict[str, Any]) -> None:
    sliders = {thing["name"]: thing for thing in things(found, "slider")}
    assert any(name.startswith("Neckline point 1") for name in sliders)
    waist = sliders["Waist, finished girth"]
    assert 20 < waist["value"] < 40
    assert {"Press", "Increase", "Decrease"} <= set(waist["deeds"])
    intakes = [thing for thing in things(found, "spin button") if thing["name"].startswith("Intake of")]
    assert intakes
    assert all(intake["value"] >= 0 for intake in intakes)


def test_fields_are_read_with_their_names(found: dict[str, Any]) -> None:
    names = {thing["name"] for thing in things(found, "text")}
    assert {"Bust", "Waist"} <= {name.split(",")[0].removesuffix(" girth") for name in names}


def test_nothing_that_can_be_used_is_without_a_name(found: dict[str, Any]) -> None:
    nameless = [
        thing for role in _NAMED for thing in things(found, role) if thing["shown"] and not thing["name"]
    ]
    assert nameless == []


def test_a_value_set_from_outside_edits_the_project(found: dict[str, Any]) -> None:
    assert found["moved"]["now"] == pytest.approx(found["moved"]["wanted"], abs=0.01)
