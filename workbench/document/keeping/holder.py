"""Which running program holds something, and whether it is still running.

On its own machine a program is known by its number and the moment it was started, which no change
of the clock touches. From another machine, as in a folder that is synchronised, only its last sign
of life can be seen. Figures are own choice, how long is waited.
"""

from __future__ import annotations

import hashlib
import os
import platform
import time
import uuid
from collections.abc import Callable
from contextlib import suppress
from dataclasses import asdict, fields, replace
from functools import cache
from pathlib import Path
from typing import Any

from workbench.document.keeping.started import started
from workbench.frozen import dataclass

SIGN_SECONDS = 30.0
"""How often a program that holds something says that it is there."""
SILENT_SECONDS = 600.0
"""Silence after which a program out of sight counts as ended: clocks differ, and a synchronised
folder lags."""

Clock = Callable[[], float]


@dataclass(frozen=True)
class Holder:
    """A running program, as it wrote itself down."""

    machine: str
    """Its name, for her to read."""
    box: str
    """Tells this machine from others of the same name; empty where that is not known."""
    boot: str
    """Tells this start of the machine from earlier ones; empty where that is not known."""
    room: str
    """Programs of one room see each other's numbers."""
    pid: int
    started: str
    since: float
    """Seconds of the clock, when it began to hold."""
    seen: float
    """Seconds of the clock, at its last sign of life."""
    token: str = ""

    def seen_at(self, now: float) -> Holder:
        """The same, with a sign of life."""
        return replace(self, seen=now)

    def plain(self) -> dict[str, Any]:
        """Its entries, as they are written."""
        return asdict(self)


def this_program(token: str = "", clock: Clock = time.time) -> Holder:
    """The program that runs this."""
    now, pid = clock(), os.getpid()
    return Holder(_machine(), _box(), _boot(), _room(), pid, _own_start(pid), now, now, token)


def holder_from(tree: Any) -> Holder | None:
    """The holder in a tree that was read; None where it is none."""
    if not isinstance(tree, dict):
        return None
    kinds = {"pid": (int,), "since": (int, float), "seen": (int, float)}
    values: dict[str, Any] = {field.name: tree.get(field.name) for field in fields(Holder)}
    if any(type(value) not in kinds.get(name, (str,)) for name, value in values.items()):
        return None
    return Holder(**values)


def is_this_program(holder: Holder) -> bool:
    """Whether it is the program that asks."""
    mine = this_program()
    return mine == replace(holder, since=mine.since, seen=mine.seen, token=mine.token)


def is_running(holder: Holder, clock: Clock = time.time, in_doubt: bool = True) -> bool:
    """Whether the holder must be taken to be at work still.

    A last sign of life that lies in the future comes from a clock that was wrong then or is
    wrong now; it says nothing, and ``in_doubt`` is the answer.
    """
    known = _known(holder)
    if known is not None:
        return known
    silence = clock() - holder.seen
    return in_doubt if silence < 0 else silence < SILENT_SECONDS


def _known(holder: Holder) -> bool | None:
    """Whether it runs on this machine; None where that cannot be known from here."""
    if not holder.box or (holder.machine, holder.box) != (_machine(), _box()):
        return None
    if holder.boot != _boot():
        return False
    if holder.room != _room():
        return None
    start = started(holder.pid)
    return (bool(start) and start == holder.started) if start or holder.started else None


def _machine() -> str:
    return platform.node() or "a machine without a name"


@cache
def _own_start(pid: int) -> str:
    return started(pid)


@cache
def _box() -> str:
    """A mark made of what the system calls this machine; the name itself is not for others to read."""
    for place in ("/etc/machine-id", "/var/lib/dbus/machine-id"):
        with suppress(OSError):
            if name := Path(place).read_bytes().strip():
                return _mark(name)
    node = uuid.getnode()
    # RFC 4122, 4.5: without a network card the number is drawn anew each time, and this bit says so
    return "" if node >> 40 & 1 else _mark(str(node).encode("ascii"))


def _mark(name: bytes) -> str:
    return hashlib.sha256(b"lock of a bodice project " + name).hexdigest()[:16]


@cache
def _boot() -> str:
    with suppress(OSError):
        return Path("/proc/sys/kernel/random/boot_id").read_text("ascii").strip()
    return ""


@cache
def _room() -> str:
    with suppress(OSError):
        return os.readlink("/proc/self/ns/pid")
    return ""
