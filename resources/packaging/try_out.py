"""Tries the built program as somebody would who has no Python: every command, then the window on a screen.

What it writes must be what the program writes when it runs from its source, to the byte.
Takes a Linux with Xvfb and xwininfo; says what was tried and how long the window took.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[1]
BUILT = ROOT / "dist" / "corset-workbench" / "corset-workbench"
DEMOS = sorted((ROOT / "demo_projects").glob("*.bodice"))
STARTS = 5
WITHIN = 30.0
"""Seconds after which a window that has not come does not come."""
SCREEN = (1280, 720)
WRITTEN = (
    ("print", "-o", "print.pdf"),
    ("print", "--what", "order", "-o", "order.pdf"),
    ("export", "-o", "pieces.svg"),
    ("export", "-o", "pieces.dxf"),
    ("lay", "--seconds", "0", "-o", "plan.pdf"),
)
"""Commands that write a file, with what follows the name of the demo; the first for all demos."""
SAID = (("report",), ("report", "--json"), ("lay", "--seconds", "0", "--json"))
"""Commands that answer; likewise."""


class Fell(Exception):  # noqa: N818  carries one line to whoever built it
    """Something that the built program does not do as it should."""


def bare(home: Path) -> dict[str, str]:
    """The environment of somebody who has just unpacked the folder: nothing of this Python is in it."""
    return {"PATH": "/usr/bin:/bin", "HOME": str(home), "LANG": "C.UTF-8"}


def asked(command: list[str | Path], home: Path) -> bytes:
    """What a command says; Fell with its own words when it ends badly."""
    done = subprocess.run(command, capture_output=True, env=bare(home), cwd=home, timeout=120, check=False)
    if done.returncode or done.stderr:
        raise Fell(f"{' '.join(map(str, command))} ended with {done.returncode}: {done.stderr.decode()}")
    return done.stdout


def same_as_source(home: Path) -> int:
    """How many outputs are the same as those of the source, to the byte; Fell at the first that is not."""
    source: list[str | Path] = [Path(sys.executable), "-P", "-c", _FROM_SOURCE, str(ROOT)]
    tried = 0
    for demo in DEMOS:
        first = demo == DEMOS[0]
        for command, *more in SAID if first else SAID[:1]:
            if asked([BUILT, command, demo, *more], home) != asked([*source, command, demo, *more], home):
                raise Fell(f"{command} {' '.join(more)} of {demo.name} is not what the source says.")
            tried += 1
        for command, *more, name in WRITTEN if first else WRITTEN[:1]:
            ask: list[str | Path] = [command, demo, *more]
            if _written([BUILT, *ask], home / f"built {name}") != _written([*source, *ask], home / name):
                raise Fell(f"{name} of {demo.name} is not what the source writes.")
            tried += 1
    return tried


def _written(command: list[str | Path], path: Path) -> bytes:
    asked([*command, path], path.parent)
    return path.read_bytes()


_FROM_SOURCE = (
    "import sys; sys.path.insert(0, sys.argv.pop(1)); from workbench.cli import main; sys.exit(main())"
)


def seeks_a_lay(home: Path) -> None:
    """The search of the packing library, which is a process of its own, must find something."""
    import json

    command: list[str | Path] = [BUILT, "lay", DEMOS[0], "--seconds", "2", "--json"]
    cloths = json.loads(asked(command, home))["cloths"]
    if not any(cloth["plan"] == "found" for cloth in cloths):
        raise Fell("The search for a shorter lay has found nothing: its process does not start.")


@contextmanager
def screen() -> Iterator[str]:
    """The name of an X display that is there for as long as this lasts."""
    reading, writing = os.pipe()
    size = f"{SCREEN[0]}x{SCREEN[1]}x24"
    # it would begin anew, and refuse for that moment, whenever nobody is connected any more
    command = ["Xvfb", "-displayfd", str(writing), "-screen", "0", size, "-nolisten", "tcp", "-noreset"]
    server = subprocess.Popen(command, pass_fds=[writing], stderr=subprocess.DEVNULL)
    os.close(writing)
    try:
        with os.fdopen(reading) as told:
            number = told.readline().strip()
        if not number:
            raise Fell("Xvfb gives no screen.")
        yield f":{number}"
    finally:
        server.terminate()
        server.wait()


def window_comes(display: str, home: Path, picture: Path | None = None) -> tuple[float, float]:
    """Seconds until the window with the demo's name stands there: by the clock, and of the processor."""
    env = {**bare(home), "DISPLAY": display}
    # what is open is marked beside it, and the demos are not there for that
    opened = home / DEMOS[0].name
    opened.write_bytes(DEMOS[0].read_bytes())
    began = time.monotonic()
    running = subprocess.Popen([BUILT, opened], env=env, stderr=subprocess.PIPE)
    try:
        while opened.stem not in _titles(display):
            if running.poll() is not None or time.monotonic() > began + WITHIN:
                raise Fell(f"No window has come: {running.stderr.read().decode() if running.stderr else ''}")
            time.sleep(0.01)
        took, worked = time.monotonic() - began, _processor_seconds(running.pid)
        if picture is not None:
            time.sleep(1.0)
            _photograph(display, picture)
            _look_at(picture)
    finally:
        running.terminate()
        running.wait()
    return took, worked


def _titles(display: str) -> str:
    """The titles of all windows on a screen."""
    command = ["xwininfo", "-display", display, "-root", "-tree"]
    return subprocess.run(command, capture_output=True, text=True, check=False).stdout


def _processor_seconds(pid: int) -> float:
    # proc(5): time in the program is the 14th entry, in the kernel the 15th; the name may hold blanks
    after_name = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()
    return (int(after_name[11]) + int(after_name[12])) / os.sysconf("SC_CLK_TCK")


def _photograph(display: str, picture: Path) -> None:
    code = (
        "import sys; from PySide6.QtGui import QGuiApplication as Q; a = Q([]); "
        "sys.exit(not Q.primaryScreen().grabWindow(0).save(sys.argv[1]))"
    )
    env = {**os.environ, "DISPLAY": display, "QT_QPA_PLATFORM": "xcb"}
    subprocess.run([sys.executable, "-c", code, str(picture)], env=env, check=True, stderr=subprocess.DEVNULL)


def _look_at(picture: Path) -> None:
    """A window that has been drawn has paper, ink and some hundred shades between them."""
    from PIL import Image

    with Image.open(picture) as image:
        colours = image.convert("RGB").getcolors(1 << 24) or []
    blank = max((count for count, _ in colours), default=0) / max(1, sum(count for count, _ in colours))
    if len(colours) < 100 or blank > 0.9:
        raise Fell(f"The window is blank: {len(colours)} colours, {blank:.0%} of it in one of them.")


def main() -> int:
    """0 when all of it holds; otherwise 1 after one line."""
    picture = Path(sys.argv[1]) if len(sys.argv) > 1 else None
    with TemporaryDirectory() as folder:
        home = Path(folder)
        try:
            asked([BUILT, "--version"], home)
            tried = same_as_source(home)
            seeks_a_lay(home)
            with screen() as display:
                window_comes(display, home, picture or home / "window.png")
                times = [window_comes(display, home) for _ in range(STARTS)]
        except Fell as fell:
            print(f"built program: {' '.join(str(fell).split())}", file=sys.stderr)
            return 1
    clock, worked = zip(*times, strict=True)
    print(f"{tried} outputs the same as from source, to the byte; a lay is sought; the window is drawn")
    print(f"start to window, s: {_spread(clock)}; processor time, s: {_spread(worked)}; of {STARTS}")
    return 0


def _spread(figures: tuple[float, ...]) -> str:
    return f"least {min(figures):.2f}, median {statistics.median(figures):.2f}"


if __name__ == "__main__":
    sys.exit(main())
