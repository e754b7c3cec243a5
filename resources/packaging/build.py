"""Builds the program for people who have no Python: ``dist/corset-workbench/``, one folder to copy.

Run it with the Python of the project's environment; it fetches nothing. What it builds
runs on machines of this kind and this age of system or younger.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path
from time import perf_counter

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[1]
BUILT = ROOT / "dist" / "corset-workbench"
WORK = ROOT / "build"


def main() -> int:
    """0 once the folder is there; says how large it is and how long that took."""
    began = perf_counter()
    sys.path[:0] = [str(HERE), str(ROOT)]
    build()
    if sys.platform == "linux":
        strip()
        add_desktop_files()
    add_licences()
    files = [path for path in BUILT.rglob("*") if path.is_file() and not path.is_symlink()]
    size = sum(path.stat().st_size for path in files) / 1e6
    print(f"{BUILT.relative_to(ROOT)}: {size:.0f} MB in {len(files)} files, {perf_counter() - began:.0f} s")
    return 0


def build() -> None:
    """Collect everything into the folder."""
    command = [sys.executable, "-m", "PyInstaller", "--noconfirm"]
    places = ["--distpath", str(BUILT.parent), "--workpath", str(WORK)]
    env = {**os.environ, "PYI_LOG_LEVEL": "ERROR"}
    subprocess.run([*command, *places, str(HERE / "workbench.spec")], cwd=ROOT, env=env, check=True)


def strip() -> None:
    """Take out what only a debugger reads.

    Only from Python and from wheels that are compiled plainly: libraries that were bound into
    a wheel afterwards do not always outlive it, and Qt has nothing left to take.
    """
    program = shutil.which("strip")
    if program is None:
        return
    inside = BUILT / "_internal"
    folders = ("python3*/lib-dynload", "lib-dynload", "ezdxf", "fontTools")
    libraries = [path for folder in folders for path in inside.glob(f"{folder}/**/*.so")]
    libraries += [path for path in inside.glob("libpython3*.so*") if not path.is_symlink()]
    subprocess.run([program, "--strip-debug", *map(str, libraries)], check=True)


def add_desktop_files() -> None:
    """Beside the program: its entry for the menu, its kind of file, icons, and what puts them in place."""
    from icons import write_pngs

    share = BUILT / "share"
    share.mkdir(exist_ok=True)
    for name in ("corset-workbench.desktop", "corset-workbench.xml"):
        shutil.copy(HERE / "linux" / name, share)
    write_pngs(share / "icons")
    shutil.copy(HERE / "linux" / "install.sh", BUILT)


def add_licences() -> None:
    """The licences of all that was collected."""
    import json

    from licences import parts_of, write

    write(parts_of(json.loads((WORK / "workbench" / "inside.json").read_text())), BUILT / "licences")


if __name__ == "__main__":
    sys.exit(main())
