"""Run this folder alone, and as much of it as asked for: ``python -m tests.robust --times 10``."""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
# what is held there already is not written down twice, only run again
PLACES = (
    "tests/robust",
    "tests/document/keeping/test_killed.py",
    "tests/ui/test_shell_look.py::test_calls_that_return_nothing_keep_the_count_of_nothing",
)


def main() -> int:
    """The exit status of the tests."""
    parser = argparse.ArgumentParser(prog="python -m tests.robust", description=__doc__)
    parser.add_argument("--times", type=float, default=1.0, help="how many times the usual size")
    parser.add_argument("--seed", type=int, help="other dice than usual")
    chosen, more = parser.parse_known_args()
    env = {**os.environ, "ROBUST_TIMES": str(chosen.times)}
    env.setdefault("QT_QPA_PLATFORM", "offscreen")
    if chosen.seed is not None:
        env["ROBUST_SEED"] = str(chosen.seed)
    command = [sys.executable, "-m", "pytest", *PLACES, *more]
    return subprocess.run(command, cwd=ROOT, env=env, check=False).returncode


if __name__ == "__main__":
    sys.exit(main())
