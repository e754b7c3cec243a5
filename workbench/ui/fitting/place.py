"""The fittings place: the form at the left, before and after in the middle, the differences at the right."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QHBoxLayout, QWidget

from workbench.document import Picture
from workbench.draft import Finding
from workbench.ui.desk import Desk
from workbench.ui.fitting.bench import Compared, FittingBench
from workbench.ui.fitting.changes_list import WIDTH, DifferenceList
from workbench.ui.fitting.form import FittingForm
from workbench.ui.fitting.overlay import Overlay
from workbench.ui.fitting.words import findings_of
from workbench.ui.place import PlacePage
from workbench.ui.sentence import Foot


class FittingPlace(PlacePage):
    """Answers at a glance: what changed, and what did it do to the rest?

    Nothing is worked out while it is out of sight.
    """

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.bench = FittingBench(desk, self)
        self.form = FittingForm(desk, self.bench)
        self.overlay = Overlay(desk, self.bench)
        self.list = DifferenceList(desk, self.bench)
        self.foot = Foot(desk, findings_of=self._findings)
        self._assemble()
        self.bench.worked_out.connect(self.show_compared)

    def _assemble(self) -> None:
        middle = QHBoxLayout()
        middle.setSpacing(0)
        middle.addWidget(self.overlay, 1)
        middle.addWidget(self.list)
        self.list.setFixedWidth(WIDTH)
        self.arrange(self.form, middle, self.foot)
        self.begin_at(self.overlay)

    def has(self, field: str) -> bool:
        """Whether a field, as findings name it, is one of this place's."""
        return any(section.has(field) for section in self.form.sections)

    def fit(self) -> None:
        """Show all of the panels."""
        self.overlay.fit()

    def show_picture(self, picture: Picture) -> None:
        """Follow a draft, as the desk says it."""
        self.bench.show_picture(picture)

    def show_compared(self, compared: Compared) -> None:
        """Say in the foot what the fitting comes to."""
        self.foot.show_picture(compared.picture)

    def _findings(self, picture: Picture) -> Sequence[Finding]:
        return findings_of(picture, self.bench.latest)

    def set_in_sight(self, in_sight: bool) -> None:
        """Work out what is looked at, and light up what led here before there was anything to show it."""
        self.bench.set_in_sight(in_sight)
        if in_sight:
            self.form.show_selected(self._desk.selection)
