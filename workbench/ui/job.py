"""Work that takes longer than a blink, done beside the window on a frozen value."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, QThread


class Job(QThread):
    """Runs one function; when it has ``finished``, either ``result`` or ``error`` is there."""

    def __init__(self, work: Callable[[], object], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._work = work
        self.result: object = None
        self.error: Exception | None = None

    def run(self) -> None:
        """Do the work; what it raises is kept for whoever waits."""
        try:
            self.result = self._work()
        except Exception as error:
            self.error = error
