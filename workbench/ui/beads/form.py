"""The form of the beads place: a section for each run and scatter, then kinds, bands, reserve."""

from __future__ import annotations

from PySide6.QtWidgets import QMenu, QPushButton

from workbench.beads import Along
from workbench.document import Picture, Project, add_run, add_scatter
from workbench.draft import Place, ShapePoint
from workbench.ui.beads.bench import BeadsBench, Worked
from workbench.ui.beads.plan_sections import Buying, KeptFree, Kinds
from workbench.ui.beads.sections import EntrySection, RunSection, ScatterSection
from workbench.ui.beads.spread import Owner, owner_of
from workbench.ui.desk import Desk
from workbench.ui.form.row import Row
from workbench.ui.form.section import Section
from workbench.ui.form.sections_form import SectionsForm

_ADDS: tuple[tuple[Along | None, str], ...] = (
    ("neckline", "Run along the neckline"),
    ("hem", "Run along the hem"),
    ("seam", "Run along a seam"),
    ("drawn", "Run along a drawn line"),
    (None, "Scatter over panels"),
)


class BeadsForm(SectionsForm):
    """To open the section of a run or scatter is to light it up on the map."""

    def __init__(self, desk: Desk, bench: BeadsBench) -> None:
        self._bench = bench
        self.add = QPushButton("Add")
        self.add.setAccessibleName("Add a run or a scatter")
        self.menu = QMenu(self.add)
        self.kinds = Kinds(desk)
        super().__init__(desk, (self.kinds, KeptFree(desk), Buying(desk, bench)), beside=self.add)
        for along, text in _ADDS:
            self.menu.addAction(text).setData(along)
        self.menu.triggered.connect(self.on_add)
        self.add.setMenu(self.menu)
        bench.followed.connect(self.show_picture)
        bench.worked_out.connect(self.show_worked)

    @property
    def entries(self) -> tuple[EntrySection, ...]:
        """The sections of runs and scatters."""
        return tuple(section for section in self.sections if isinstance(section, EntrySection))

    # --- what is shown -------------------------------------------------------------------

    def show_worked(self, worked: Worked) -> None:
        """Show how many beads each comes to."""
        self.show_picture(worked.picture)

    def show_picture(self, picture: Picture) -> None:
        """A section for each run and scatter there is; one that is over is put away, not thrown away."""
        plan = picture.project.beads
        runs = sum(section.owner.what == "runs" for section in self.entries)
        for number in range(runs, len(plan.runs)):
            self._insert(RunSection(self._desk, self._bench, Owner("runs", number)), number)
        at = sum(section.owner.what == "runs" for section in self.entries)
        for number in range(len(self.entries) - at, len(plan.scatters)):
            section = ScatterSection(self._desk, self._bench, Owner("scatters", number))
            self._insert(section, at + number)
        super().show_picture(picture)

    def _insert(self, section: EntrySection, at: int) -> None:
        """Runs, then scatters, before what is decided once for all."""
        self._rows.insertWidget(at, section)
        self.sections = (*self.sections[:at], section, *self.sections[at:])
        section.turned.connect(self.on_turned)

    def show_selected(self, place: Place | None) -> None:
        """Open the section of what is picked on the map."""
        owner = owner_of(place.field) if place is not None else None
        for section in self.entries:
            if section.owner == owner and section.there(self._desk.project) and not section.opened:
                super().open(section)
        super().show_selected(place)

    def open(self, section: Section) -> None:
        """Open a section, and light its run or scatter up."""
        super().open(section)
        place = self._desk.selection
        lit = owner_of(place.field) if place is not None else None
        if isinstance(section, EntrySection) and section.owner != lit:
            self._desk.select(Place(field=section.owner.field))

    def row_at(self, place: Place | None) -> Row | None:
        """As any form; only while it is in sight."""
        return super().row_at(place) if self._bench.in_sight else None

    # --- what she does -------------------------------------------------------------------

    def on_add(self, action: object) -> None:
        """Add a run or a scatter, and open it."""
        along = getattr(action, "data", lambda: None)()
        try:
            project, owner = added(self._desk.project, along)
        except ValueError as error:
            self._desk.refuse("beads", str(error))
            return
        self._desk.apply("Add beads", project)
        self._desk.now()
        self._desk.select(Place(field=owner.field))


def added(project: Project, along: Along | None) -> tuple[Project, Owner]:
    """The project with one run or scatter more, and which; a drawn line begins across the first panel."""
    if along is None:
        changed = add_scatter(project, (0,))
        return changed, Owner("scatters", len(changed.beads.scatters) - 1)
    points = (
        (ShapePoint(0.25, 30.0), ShapePoint(0.5, 0.0), ShapePoint(0.75, 30.0)) if along == "drawn" else ()
    )
    changed = add_run(project, along, points=points)
    return changed, Owner("runs", len(changed.beads.runs) - 1)
