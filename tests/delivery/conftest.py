"""The wheel and the source archive, built once for all tests that install them."""

from __future__ import annotations

import subprocess
import sys
import venv
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    """The wheel, and the source archive."""
    folder = tmp_path_factory.mktemp("built")
    command = [sys.executable, "-m", "hatchling", "build", "-t", "sdist", "-t", "wheel", "-d", str(folder)]
    subprocess.run(command, cwd=ROOT, check=True, capture_output=True, timeout=120)
    (wheel,) = folder.glob("*.whl")
    (archive,) = folder.glob("*.tar.gz")
    return wheel, archive


@pytest.fixture(scope="session")
def empty(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A new environment with pip alone, which finds the libraries of this one but not this project."""
    folder = tmp_path_factory.mktemp("empty")
    venv.create(folder, with_pip=True, symlinks=True)
    (packages,) = folder.glob("lib/python*/site-packages")
    libraries = next(path for path in map(Path, sys.path) if (path / "numpy").is_dir())
    (packages / "libraries.pth").write_text(f"{libraries}\n")
    return folder
