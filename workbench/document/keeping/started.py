"""When a running program was started: with its number, that tells it from any other of this machine.

Numbers are given out again; the start of a program never changes, whatever the clock does.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path


def started(pid: int) -> str:
    """The start of a running program as its system tells it; empty where none of that number runs."""
    if sys.platform == "win32":
        return _by_windows(pid)
    if Path("/proc/self/stat").exists():
        return by_proc(pid)
    return by_ps(pid)


def by_proc(pid: int) -> str:
    """Ticks from the start of the machine, as Linux counts."""
    try:
        told = Path(f"/proc/{pid}/stat").read_text("utf-8", "replace")
    except OSError:
        return ""
    # the name in brackets may hold blanks and brackets of its own
    after_name = told.rpartition(")")[2].split()
    # proc(5): state is the 3rd entry, the start the 22nd; a zombie has ended and waits to be noted
    return "" if after_name[0] in "ZX" else after_name[19]


def by_ps(pid: int) -> str:
    """Date and time to the second, as the other systems of this family tell."""
    import subprocess  # most systems need none for it

    command = ["ps", "-o", "stat=", "-o", "lstart=", "-p", str(pid)]
    try:
        # the same words for the same moment, wherever the machine is carried
        env = {**os.environ, "LC_ALL": "C", "TZ": "UTC"}
        told = subprocess.run(command, capture_output=True, env=env, timeout=5, check=False).stdout
    except (OSError, subprocess.SubprocessError):
        return ""
    state, _, start = told.decode("ascii", "replace").strip().partition(" ")
    return "" if state.startswith("Z") else " ".join(start.split())


if sys.platform == "win32":
    import ctypes
    from ctypes import wintypes

    _ASK_LITTLE = 0x1000
    """PROCESS_QUERY_LIMITED_INFORMATION, Microsoft: Process Security and Access Rights (from memory)."""

    def _by_windows(pid: int) -> str:
        """Steps of 100 ns since 1601; a program that has ended but is still held open has an end too."""
        kernel = ctypes.WinDLL("kernel32")
        kernel.OpenProcess.restype = wintypes.HANDLE
        kernel.GetProcessTimes.argtypes = (wintypes.HANDLE, *[ctypes.POINTER(wintypes.FILETIME)] * 4)
        kernel.CloseHandle.argtypes = (wintypes.HANDLE,)
        handle = kernel.OpenProcess(_ASK_LITTLE, False, pid)
        if not handle:
            return ""
        start, end, in_kernel, in_user = (wintypes.FILETIME() for _ in range(4))
        done = kernel.GetProcessTimes(handle, start, end, in_kernel, in_user)
        kernel.CloseHandle(handle)
        running = done and not (end.dwHighDateTime or end.dwLowDateTime)
        return str(start.dwHighDateTime << 32 | start.dwLowDateTime) if running else ""
