"""What pip installs in an empty environment is the whole program, with its fonts, drawings and demos."""

from __future__ import annotations

import os
import subprocess
import tarfile
from pathlib import Path
from zipfile import ZipFile

import pytest

from tests.delivery.conftest import ROOT

pytestmark = pytest.mark.skipif(os.name != "posix", reason="environments are laid out otherwise elsewhere")

_OPENS = """
import sys
from pathlib import Path
from PySide6.QtCore import QTimer
import workbench
from workbench.cli import main
from workbench.ui.app import demo_files

assert Path(sys.prefix) in Path(workbench.__file__).parents, workbench.__file__

def look():
    from PySide6.QtWidgets import QApplication
    (window,) = [each for each in QApplication.topLevelWidgets() if each.isVisible() and each.windowTitle()]
    picture = window.grab().toImage()
    places = [(x, y) for x in range(0, picture.width(), 3) for y in range(0, picture.height(), 3)]
    shades = {picture.pixel(x, y) for x, y in places}
    assert not QApplication.windowIcon().isNull() and QApplication.desktopFileName() == "corset-workbench"
    print(window.windowTitle(), len(shades))
    QApplication.exit(0)

# once it has settled
QTimer.singleShot(0, lambda: QTimer.singleShot(900, look))
sys.exit(main([str(demo_files()[0])]))
"""


def run(home: Path, *command: str | Path) -> str:
    """What a command says that is started far from this project; it must end well, without complaint."""
    env = {"PATH": "/usr/bin:/bin", "HOME": str(home), "LANG": "C.UTF-8", "QT_QPA_PLATFORM": "offscreen"}
    done = subprocess.run(
        command, capture_output=True, text=True, env=env, cwd=home, timeout=120, check=False
    )
    assert done.returncode == 0, done.stderr
    assert done.stderr == ""
    return done.stdout


def pip(home: Path, empty: Path, *arguments: str | Path) -> None:
    """Install without asking any registry."""
    options = ("--quiet", "--no-index", "--no-deps", "--disable-pip-version-check")
    run(home, empty / "bin" / "python", "-m", "pip", "install", *options, "--force-reinstall", *arguments)


def works(home: Path, empty: Path) -> None:
    """It says its version, reports on a demo that it brought along, and opens its window on it."""
    program = empty / "bin" / "corset-workbench"
    assert run(home, program, "--version").startswith("corset-workbench ")
    (demo,) = empty.glob("lib/python*/site-packages/workbench/_demo_projects/bride_first_wear.bodice")
    assert "27¾" in run(home, program, "report", demo)
    title, shades = run(home, empty / "bin" / "python", "-c", _OPENS).rsplit(maxsplit=1)
    assert "bride_first_wear.bodice" in title
    assert int(shades) > 30


def test_the_wheel(built: tuple[Path, Path], empty: Path, tmp_path: Path) -> None:
    pip(tmp_path, empty, built[0])
    works(tmp_path, empty)


def test_the_source_archive(built: tuple[Path, Path], empty: Path, tmp_path: Path) -> None:
    pip(tmp_path, empty, "--no-build-isolation", built[1])
    works(tmp_path, empty)


def test_everything_that_is_asked_for_is_in_the_wheel(built: tuple[Path, Path]) -> None:
    inside = set(ZipFile(built[0]).namelist())
    folders = {
        "workbench": "workbench",
        "resources": "workbench/_resources",
        "demo_projects": "workbench/_demo_projects",
    }
    kept = _tracked()
    for path in kept:
        top, _, rest = path.partition("/")
        if top in folders and not path.startswith(("resources/pictures/", "resources/packaging/")):
            assert f"{folders[top]}/{rest}" in inside, path
    assert not [name for name in inside if name.endswith((".open", ".pyc", ".pdf"))]
    assert not [name for name in inside if name.split("/")[0] == "tests"]


def test_the_source_archive_can_be_tested_and_built(built: tuple[Path, Path]) -> None:
    with tarfile.open(built[1]) as archive:
        inside = {name.partition("/")[2] for name in archive.getnames()}
    assert not [
        path for path in _tracked() if path not in inside and not path.startswith((".ci/", ".pre-commit"))
    ]
    assert "uv.lock" not in inside


def _tracked() -> list[str]:
    """Files that belong to the project; those not yet kept are nobody's."""
    if not (ROOT / ".git").exists():
        pytest.skip("only where the history is can it be said which files belong to the project")
    listed = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    return [path for path in listed.splitlines() if (ROOT / path).exists()]
