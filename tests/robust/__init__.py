"""What the program takes without falling over: damaged files, long days, full disks, hostile words.

Part of the tests at a size that takes minutes; ``python -m tests.robust --times 10`` does ten
times as much and prints, as every run does, what was tried and what fell.
"""

from __future__ import annotations

import os

TIMES = float(os.environ.get("ROBUST_TIMES", "1"))
"""How many times the usual size."""
SEED = int(os.environ.get("ROBUST_SEED", "20310520"))
"""Of all dice: the same one tries the same again."""
_LEAST = {"edits": 1000}
"""A day shorter than that shows nothing."""
_USUAL = {"files": 1000, "others": 200, "walks": 200, "prints": 100, "edits": 2000}


def how_many(what: str) -> int:
    """How many times to try in this run."""
    return max(round(_USUAL[what] * TIMES), _LEAST.get(what, 1))
