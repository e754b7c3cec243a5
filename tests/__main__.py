"""Every check of the project, one after the other: ``python -m tests``.

Style, types and import directions first, since they answer within seconds; then the
tests, which open no window on a screen. Stops at the first check that fails.
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]
CHECKS = (
    ("style", ("ruff", "check", "workbench", "tests")),
    ("layout of the code", ("ruff", "format", "--check", "workbench", "tests")),
    ("types", ("mypy",)),
    ("import directions", ("lint-imports",)),
    ("tests", (sys.executable, "-m", "pytest")),
)


def main() -> int:
    """0 when every check passes, else the exit code of the first that does not."""
    beside = str(Path(sys.executable).parent)
    env = {**os.environ, "PATH": beside + os.pathsep + os.environ.get("PATH", "")}
    env.setdefault("QT_QPA_PLATFORM", "offscreen")
    for name, command in CHECKS:
        print(f"== {name}", flush=True)
        code = subprocess.run(command, cwd=ROOT, env=env, check=False).returncode
        if code:
            print(f"== {name}: failed", flush=True)
            return code
    return 0


if __name__ == "__main__":
    sys.exit(main())
