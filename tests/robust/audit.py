"""By hand, with a network: known faults of what the program is made with, and of its own code.

``python -m tests.robust.audit`` asks pip-audit about every exact version of pyproject.toml and
bandit about the code, both fetched for the moment. It is no part of the checks, which must
pass without a network; the rules of bandit that ruff knows are among those. Ends with 1 where
something was found, with 2 where nobody could be asked.
"""

from __future__ import annotations

import json
import subprocess
import sys
import tomllib
from collections.abc import Sequence
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

ROOT = Path(__file__).parents[2]
_PIP_AUDIT, _BANDIT = "pip-audit==2.10.1", "bandit==1.9.4"
_SKIPPED = "B101,B102,B107,B311,B404,B603"
"""As in pyproject.toml: assert, dice, programs started without a shell, and what ``test_source`` holds
more closely: one exec of the program's own fields. An empty word is taken for a password (B107)."""


def _asked(tool: str, *arguments: str) -> Any:
    """What a tool answers in JSON; None where it cannot be had or does not answer."""
    command = ["uv", "tool", "run", "--from", tool, tool.partition("=")[0], *arguments]
    try:
        done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
        return json.loads(done.stdout)
    except (OSError, ValueError):
        return None


def versions(text: str) -> list[str]:
    """The exact versions that a pyproject.toml pins."""
    pinned: list[str] = tomllib.loads(text)["tool"]["uv"]["constraint-dependencies"]
    return pinned


def told(answer: Any) -> tuple[int, list[str], list[str]]:
    """Of an answer of pip-audit: how many could be judged, what was found, and what was not known."""
    found, unknown, judged = [], [], 0
    for each in (answer or {}).get("dependencies", ()):
        if "skip_reason" in each:
            unknown.append(each["name"])
            continue
        judged += 1
        found += [f"{each['name']} {each['version']}: {fault['id']}" for fault in each["vulns"]]
    return judged, found, unknown


def _said(lines: Sequence[str]) -> None:
    print("\n".join(lines), flush=True)


def main() -> int:
    """0 clean, 1 something was found, 2 nobody could be asked about some of it."""
    with TemporaryDirectory() as folder:
        pins = Path(folder) / "pins.txt"
        pins.write_text("\n".join(versions((ROOT / "pyproject.toml").read_text("utf-8"))), encoding="utf-8")
        answer = _asked(
            _PIP_AUDIT,
            "--no-deps",
            "--disable-pip",
            "-r",
            str(pins),
            "-f",
            "json",
            "--progress-spinner",
            "off",
        )
    judged, found, unknown = told(answer)
    _said([f"{judged} packages judged, {len(found)} known faults, {len(unknown)} not known there", *found])
    code = _asked(_BANDIT, "-q", "-r", "workbench", "-s", _SKIPPED, "-f", "json")
    faults = [
        f"{each['filename']}:{each['line_number']}: {each['test_id']} {each['issue_text']}"
        for each in (code or {}).get("results", ())
    ]
    _said([f"bandit: {'could not be asked' if code is None else f'{len(faults)} remarks'}", *faults])
    if found or faults:
        return 1
    return 2 if unknown or not judged or code is None else 0


if __name__ == "__main__":
    sys.exit(main())
