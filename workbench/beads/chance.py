"""Chance that can be asked for again: numbers that follow from a seed and a place, not from an order.

What is drawn for one place never depends on what is drawn elsewhere, so that an edit of the
panel changes the beads where it changes the panel. The mixing is that of SplitMix64 (Steele,
Lea, Flood, OOPSLA 2014; from memory).
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from workbench.beads.result import Array, Ints

_GOLDEN, _FIRST, _SECOND = 0x9E3779B97F4A7C15, 0xBF58476D1CE4E5B9, 0x94D049BB133111EB
"""Of SplitMix64; from memory."""
_WORD = 0xFFFFFFFFFFFFFFFF
"""Sixty-four bits (derived)."""

Words = NDArray[np.uint64]


def draws(seed: int, panel: int, columns: Ints, rows: Ints, tries: int, wanted: int) -> Array:
    """(wanted, n, tries) numbers from 0 up to 1 for each cell (n,), evenly spread."""
    start = np.uint64(_mixed_whole(_mixed_whole(seed + 1) ^ (panel + 1)))
    cells = _mixed(_mixed(columns.astype(np.int64).view(np.uint64) ^ start) ^ _as_words(rows))
    numbers = np.arange(1, wanted * tries + 1, dtype=np.uint64).reshape(wanted, 1, tries)
    words = _mixed(cells[:, None] + numbers * np.uint64(_GOLDEN))
    return np.asarray((words >> np.uint64(11)) * 2.0**-53, dtype=np.float64)


def _as_words(numbers: Ints) -> Words:
    return numbers.astype(np.int64).view(np.uint64)


def _mixed(words: Words) -> Words:
    words = (words ^ (words >> np.uint64(30))) * np.uint64(_FIRST)
    words = (words ^ (words >> np.uint64(27))) * np.uint64(_SECOND)
    return words ^ (words >> np.uint64(31))


def _mixed_whole(word: int) -> int:
    word = (word * _GOLDEN) & _WORD
    word = ((word ^ (word >> 30)) * _FIRST) & _WORD
    word = ((word ^ (word >> 27)) * _SECOND) & _WORD
    return word ^ (word >> 31)
