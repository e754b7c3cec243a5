"""A line on the error stream that tells how far the work is, while somebody watches it."""

from __future__ import annotations

import sys
import time

_CLEAR = "\r\N{ESCAPE}[K"
"""Back to the start of a terminal's line, and nothing left on it."""


class Progress:
    """One line, written over again and again; nothing at all where the stream is no terminal."""

    def __init__(self, every: float = 0.0) -> None:
        """``every`` so many seconds at most is a text replaced by the next."""
        self._every = every
        self._shown = False
        self._told = 0.0

    def tell(self, text: str) -> None:
        """Show the text, unless another that is still there was shown a moment ago."""
        now = time.monotonic()
        if sys.stderr.isatty() and not (self._shown and now - self._told < self._every):
            print(f"{_CLEAR}{text}", end="", file=sys.stderr, flush=True)
            self._shown, self._told = True, now

    def make_way(self) -> None:
        """Take the text away where the output goes to the same terminal, so that it can be written there."""
        if sys.stdout.isatty():
            self.clear()

    def clear(self) -> None:
        """Take the text away."""
        if self._shown:
            print(_CLEAR, end="", file=sys.stderr, flush=True)
            self._shown = False
