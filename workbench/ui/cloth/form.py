"""The form of the cloth place: a section for each cloth, the one on show open."""

from __future__ import annotations

from PySide6.QtWidgets import QPushButton

from workbench.document import Picture, add_cloth
from workbench.draft import Place
from workbench.ui.cloth.bench import ClothBench, OnShow, Worked
from workbench.ui.cloth.section import ClothSection
from workbench.ui.desk import Desk
from workbench.ui.form.row import Row
from workbench.ui.form.section import Section
from workbench.ui.form.sections_form import SectionsForm

_NEW = "New cloth"


class ClothForm(SectionsForm):
    """To open a section is to look at its cloth."""

    def __init__(self, desk: Desk, bench: ClothBench) -> None:
        self._bench = bench
        self.add = QPushButton("Add")
        self.add.setAccessibleName("Add a cloth")
        super().__init__(desk, (), beside=self.add)
        self.add.clicked.connect(self.on_add)
        bench.laid.connect(self.show_laid)
        bench.worked_out.connect(self.show_worked)
        bench.cloth_shown.connect(self.show_cloth)

    # --- what is shown -------------------------------------------------------------------

    def show_laid(self, shown: OnShow) -> None:
        """Show what is stored."""
        self.show_picture(shown.picture)

    def show_worked(self, worked: Worked) -> None:
        """Show what to buy of each."""
        self.show_picture(worked.picture)

    def show_picture(self, picture: Picture) -> None:
        """A section for each cloth there is; one that is over is put away, not thrown away."""
        while len(self.sections) < len(picture.project.cloths):
            number = len(self.sections)
            self.add_section(ClothSection(self._desk, self._bench, number))
            if number == self._bench.number:
                self.sections[number].show_opened(True)
        super().show_picture(picture)

    def show_cloth(self, number: int) -> None:
        """Open the section of the cloth on show, and close the others."""
        if number < len(self.sections) and not self.sections[number].opened:
            super().open(self.sections[number])

    def open(self, section: Section) -> None:
        """Open a section, and put its cloth on show."""
        super().open(section)
        if isinstance(section, ClothSection):
            self._bench.show_cloth(section.number)

    def row_at(self, place: Place | None) -> Row | None:
        """As any form; only while it is in sight, as every cloth has fields of the same names."""
        return super().row_at(place) if self._bench.in_sight else None

    # --- what she does -------------------------------------------------------------------

    def on_add(self) -> None:
        """Add a cloth, and look at it."""
        project = self._desk.project
        taken = {cloth.name.casefold() for cloth in project.cloths}
        names = [_NEW, *(f"{_NEW} {number}" for number in range(2, len(taken) + 2))]
        try:
            changed = add_cloth(project, next(name for name in names if name.casefold() not in taken))
        except ValueError as error:
            self._desk.refuse("cloths", str(error))
            return
        self._desk.apply("Add a cloth", changed)
        self._desk.now()
        self._bench.show_cloth(len(changed.cloths) - 1)
