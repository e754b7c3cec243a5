"""The pieces place: how it is made at the left, the table in the middle, the lists at the right."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from PySide6.QtWidgets import QHBoxLayout, QWidget

from workbench.document import Picture
from workbench.draft import Finding
from workbench.ui.desk import Desk
from workbench.ui.pieces.bench import Bench, Worked
from workbench.ui.pieces.cards import LayerCards
from workbench.ui.pieces.findings import findings_on_table
from workbench.ui.pieces.lists import WIDTH, Lists
from workbench.ui.pieces.making_form import MakingForm
from workbench.ui.pieces.table import Table
from workbench.ui.place import PlacePage
from workbench.ui.sentence import Foot


class PiecesPlace(PlacePage):
    """Answers at a glance: have I every piece of every layer, the right way round?

    Nothing is worked out while it is out of sight.
    """

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = Bench(desk, self)
        self.form = MakingForm(desk, self.bench)
        self.cards = LayerCards(self.bench)
        self.table = Table(desk, self.bench)
        self.lists = Lists(desk, self.bench)
        self.foot = Foot(desk, findings_of=self._findings)
        self._assemble()
        self.bench.worked_out.connect(self.show_worked)

    def _assemble(self) -> None:
        middle = QHBoxLayout()
        middle.setSpacing(0)
        middle.addWidget(self.table, 1)
        middle.addWidget(self.lists)
        self.lists.setFixedWidth(WIDTH)
        self.arrange(self.form, self.cards, middle, self.foot)
        self.begin_at(self.table)

    def has(self, field: str) -> bool:
        """Whether a field, as findings name it, is one of this place's."""
        return any(section.has(field) for section in self.form.sections)

    def fit(self) -> None:
        """Show all of the pieces on the table."""
        self.table.fit()

    def switches(self) -> Mapping[str, Callable[[bool], None]]:
        """The other half, turned over, and the lists."""
        return {"halves": self.table.set_halves, "lists": self.lists.setVisible}

    def show_worked(self, worked: Worked) -> None:
        """Say in the foot what follows from the whole cutting."""
        self.foot.show_picture(worked.picture)

    def _findings(self, picture: Picture) -> Sequence[Finding]:
        return findings_on_table(picture, self.bench.cutting)

    def set_in_sight(self, in_sight: bool) -> None:
        """Work out what is looked at, and nothing else."""
        self.bench.set_in_sight(in_sight)
