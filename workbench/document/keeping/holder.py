"""Which running program holds something, and whether it is still running.

On its own machine a program is known by its number and the moment it was started, which
no change of the clock touches. From another machine, as in a folder that is synchronised,
only its last sign of life can be seen.
"""

from __future__ import annotations

import os
import platform
import time
from collections.abc import Callable
from contextlib import suppress
from dataclasses import asdict, dataclass, fields, replace
from functools import cache
from pathlib import Path
from typing import Any

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
    here: str
    """Tells one start of one machine from all others; empty where the system does not say."""
    pid: int
    started: str
    """When the program was started, as the system counts; empty where it does not say."""
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
    now = clock()
    return Holder(
        platform.node() or "this machine", _here(), os.getpid(), _started(os.getpid()), now, now, token
    )


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
    return (holder.here, holder.pid, holder.started, holder.machine) == (
        mine.here,
        mine.pid,
        mine.started,
        mine.machine,
    )


def is_running(holder: Holder, clock: Clock = time.time) -> bool:
    """Whether the holder must be taken to be at work still.

    A last sign of life that lies in the future comes from a clock that was wrong then or is
    wrong now; it says nothing, and the holder counts as running.
    """
    known = _known(holder)
    return clock() - holder.seen < SILENT_SECONDS if known is None else known


def _known(holder: Holder) -> bool | None:
    """Whether it runs on this machine; None where that cannot be known from here."""
    if not holder.here or (holder.machine, holder.here) != (_machine(), _here()):
        return None
    started = _started(holder.pid)
    if started or holder.started:
        # a number is given out again; the start tells the new program from the old
        return bool(started) and started == holder.started
    return None


def _machine() -> str:
    return platform.node() or "a machine without a name"


@cache
def _here() -> str:
    """This start of this machine, and the set of programs that see each other's numbers."""
    parts = []
    with suppress(OSError):
        parts.append(Path("/proc/sys/kernel/random/boot_id").read_text("ascii").strip())
        parts.append(os.readlink("/proc/self/ns/pid"))
    return " ".join(parts)


def _started(pid: int) -> str:
    """Ticks from the start of the machine to that of a program; empty where there is none to be seen."""
    try:
        told = Path(f"/proc/{pid}/stat").read_text("utf-8", "replace")
    except OSError:
        return ""
    # the name in brackets may hold blanks and brackets of its own
    after_name = told.rpartition(")")[2].split()
    # proc(5): state is the 3rd entry, the start the 22nd; a zombie has ended and waits to be noted
    return "" if after_name[0] in "ZX" else after_name[19]
