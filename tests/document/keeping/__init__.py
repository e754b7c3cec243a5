"""Nothing she has made is lost: what is kept besides the file, and what may go wrong meanwhile."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

posix = pytest.mark.skipif(os.name != "posix", reason="links, modes and signals of POSIX systems")
linux = pytest.mark.skipif(
    not Path("/proc/self/stat").exists(), reason="when a program was started is read in /proc"
)


@contextmanager
def program(text: str, *arguments: str) -> Iterator[subprocess.Popen[str]]:
    """Another program that runs this text; it is killed at the end."""
    pipe = subprocess.PIPE
    command = [sys.executable, "-c", text, *arguments]
    with subprocess.Popen(command, stdin=pipe, stdout=pipe, text=True) as running:
        try:
            yield running
        finally:
            running.kill()


def said(running: subprocess.Popen[str]) -> str:
    """The next line it prints."""
    assert running.stdout is not None
    return running.stdout.readline().strip()


def tell(running: subprocess.Popen[str], line: str) -> None:
    """Hand it one line."""
    assert running.stdin is not None
    running.stdin.write(f"{line}\n")
    running.stdin.flush()


@contextmanager
def small_disk(folder: Path, kilobytes: int) -> Iterator[Path]:
    """A memory disk of this size; the test is skipped where none may be mounted."""
    disk = folder / "disk"
    disk.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o", f"size={kilobytes}k", "tmpfs", str(disk)]
    try:
        mounted = subprocess.run(mount, capture_output=True, check=False).returncode == 0
    except FileNotFoundError:
        mounted = False
    if not mounted:
        pytest.skip("no memory disk can be mounted here")
    try:
        yield disk
    finally:
        subprocess.run(["umount", str(disk)], check=True)
