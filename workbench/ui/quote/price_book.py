"""Her own price list: a small file beside her other data, the same for every client."""

from __future__ import annotations

from pathlib import Path

from workbench.cloth import Quoting, read_price_list, write_price_list
from workbench.document import write_whole
from workbench.ui.settings import data_folder

_NAME = "prices.json"


class PriceBook:
    """Knows where the file lies; makes its folder when something is first kept."""

    def __init__(self, path: Path | None = None) -> None:
        self._path = path

    @property
    def path(self) -> Path:
        """Where the list is kept."""
        return self._path or data_folder() / _NAME

    def read(self) -> Quoting | None:
        """What is kept; None where nothing is yet. MoneyError or FileTrouble in one sentence."""
        return read_price_list(self.path)

    def write(self, quoting: Quoting) -> None:
        """Keep the prices of a quote. MoneyError or FileTrouble in one sentence, and the old list stays."""
        self.path.parent.mkdir(parents=True, exist_ok=True)
        write_price_list(self.path, quoting, write_whole)
