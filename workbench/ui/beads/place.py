"""The beads place: the plan at the left, the map in the middle, what it comes to at the right."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.document import Picture
from workbench.draft import Finding
from workbench.ui.beads.bead_map import BeadMap
from workbench.ui.beads.bench import BeadsBench, Worked
from workbench.ui.beads.form import BeadsForm
from workbench.ui.beads.legend import Legend
from workbench.ui.beads.lists import WIDTH, BeadList
from workbench.ui.beads.words import findings_on_beads
from workbench.ui.desk import Desk
from workbench.ui.place import PlacePage
from workbench.ui.sentence import Foot


class BeadsPlace(PlacePage):
    """Answers at a glance: where do beads lie, how many do I buy, how long do they take?

    Nothing is worked out while it is out of sight.
    """

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.bench = BeadsBench(desk, self)
        self.form = BeadsForm(desk, self.bench)
        self.map = BeadMap(desk, self.bench)
        self.legend = Legend(self.bench)
        self.list = BeadList(desk, self.bench)
        self.foot = Foot(desk, findings_of=self._findings)
        self._assemble()
        self.bench.worked_out.connect(self.show_worked)

    def _assemble(self) -> None:
        middle = QVBoxLayout()
        middle.setSpacing(0)
        middle.addWidget(self.map, 1)
        middle.addWidget(self.legend)
        beside = QHBoxLayout()
        beside.setSpacing(0)
        beside.addLayout(middle, 1)
        beside.addWidget(self.list)
        self.list.setFixedWidth(WIDTH)
        self.arrange(self.form, beside, self.foot)
        self.begin_at(self.map)

    def has(self, field: str) -> bool:
        """Whether a field, as findings name it, is one of this place's."""
        return field == "beads" or field.startswith("beads.")

    def fit(self) -> None:
        """Show all panels."""
        self.map.fit()

    def switches(self) -> Mapping[str, Callable[[bool], None]]:
        """The list."""
        return {"lists": self.list.setVisible}

    def show_picture(self, picture: Picture) -> None:
        """Follow a draft, while in sight."""
        self.bench.show_picture(picture)

    def show_worked(self, worked: Worked) -> None:
        """Say in the foot what the plan comes to."""
        self.foot.show_picture(worked.picture)

    def _findings(self, picture: Picture) -> Sequence[Finding]:
        return findings_on_beads(picture, self.bench.worked)

    def set_in_sight(self, in_sight: bool) -> None:
        """Work out what is looked at, and light up what led here before there was anything to show it."""
        self.bench.set_in_sight(in_sight)
        if in_sight:
            self.form.show_selected(self._desk.selection)
