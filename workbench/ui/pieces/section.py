"""A section of the making: as those of the draft, with an eye on the bench."""

from __future__ import annotations

from workbench.ui.desk import Desk
from workbench.ui.form.section import Section
from workbench.ui.pieces.bench import Bench
from workbench.ui.pieces.figures import making_figure
from workbench.ui.pieces.rows import MakingRow, Remark


class MakingSection(Section):
    """Knows the bench, and makes rows for figures of one record of the making."""

    group = ""
    """The record of the making that most of its figures are in."""

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self.bench = bench
        super().__init__(desk)

    def figure(self, key: str, label: str, remark: Remark | None = None) -> MakingRow:
        """Add a row for one figure of the record."""
        return self.add(MakingRow(self.desk, making_figure(self.group, key), label, remark))

    def has(self, field: str) -> bool:
        """Everything in its record."""
        return bool(self.group) and field.startswith(f"{self.group}.")
