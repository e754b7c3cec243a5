"""A child process that is told one job, and can be ended at once."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from contextlib import suppress
from pathlib import Path
from queue import Empty, SimpleQueue
from threading import Thread
from typing import Any
from weakref import finalize

import workbench

_ROOT = str(Path(workbench.__file__).parents[1])
# No console window on Windows, and the program itself goes before its search.
_QUIETLY = getattr(subprocess, "CREATE_NO_WINDOW", 0) | getattr(subprocess, "BELOW_NORMAL_PRIORITY_CLASS", 0)
_END_WITHIN = 1.0
"""Seconds a process that is done or killed may take to be gone (own choice)."""

Message = dict[str, Any]


def child_command() -> list[str]:
    """The child as this very Python starts it; never a module that lies in the working folder."""
    return [sys.executable, "-P", "-m", "workbench.cloth.child"]


class Worker:
    """Starts at once; messages are read beside it, so that neither side waits for the other."""

    def __init__(self, job: bytes, command: list[str] | None = None) -> None:
        self.process = subprocess.Popen(
            command or child_command(),
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            env=_environment(),
            creationflags=_QUIETLY,
        )
        self._said: SimpleQueue[Message] = SimpleQueue()
        self._talk = Thread(target=_talk, args=(self.process, job, self._said), daemon=True)
        self._talk.start()
        self._end = finalize(self, _end, self.process, self._talk)

    @property
    def ended(self) -> bool:
        """Whether nothing more will be said than what :meth:`messages` gives now."""
        return not self._talk.is_alive()

    def messages(self) -> list[Message]:
        """What it has said since it was last asked."""
        said = []
        with suppress(Empty):
            while True:
                said.append(self._said.get_nowait())
        return said

    def wait(self, seconds: float) -> None:
        """Until it has ended, or so many seconds."""
        self._talk.join(seconds)

    def end(self) -> int:
        """End the process if it still runs; the code it ended with."""
        self._end()
        return self.process.returncode or 0


def _environment() -> dict[str, str]:
    """The child finds this very package, wherever it was started from."""
    paths = [_ROOT, os.environ.get("PYTHONPATH", "")]
    return {**os.environ, "PYTHONPATH": os.pathsep.join(filter(None, paths))}


def _talk(process: subprocess.Popen[bytes], job: bytes, said: SimpleQueue[Message]) -> None:
    assert process.stdin is not None
    assert process.stdout is not None
    # A child that is already gone takes no job; that it said nothing is noticed by who asks.
    with suppress(OSError, ValueError):
        process.stdin.write(job)
        process.stdin.flush()
        for text in process.stdout:
            # The last line of a child that was killed may be cut off.
            with suppress(ValueError):
                said.put(json.loads(text))


def _end(process: subprocess.Popen[bytes], talk: Thread) -> None:
    if talk.is_alive():
        process.kill()
    try:
        process.wait(_END_WITHIN)
    except subprocess.TimeoutExpired:
        # It has closed its output and goes on all the same.
        process.kill()
    talk.join(_END_WITHIN)
    for pipe in (process.stdin, process.stdout):
        if pipe is not None:
            with suppress(OSError):
                pipe.close()
