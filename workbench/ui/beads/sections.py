"""Sections of the form: one for each run and each scatter, the open one lit up on the map."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from workbench.beads import Beaded
from workbench.document import (
    Picture,
    Project,
    remove_run,
    remove_scatter,
    set_run,
    set_scatter,
)
from workbench.draft import seam_name
from workbench.ui.beads.bench import BeadsBench
from workbench.ui.beads.figures import (
    COUNT,
    ENDS,
    LENGTH,
    PART,
    PER_SQUARE,
    SPACINGS,
    run_figure,
    run_name,
    run_of,
    scatter_figure,
    scatter_name,
    scatter_of,
)
from workbench.ui.beads.rows import (
    NAME_FIELD,
    BeadRow,
    MixRow,
    PanelsRow,
    PatternRow,
    PickRow,
    RemoveRow,
    WeightRow,
)
from workbench.ui.beads.spread import Owner
from workbench.ui.desk import Desk
from workbench.ui.form.row import Row
from workbench.ui.form.section import Remark, Section

_ALONG = (("neckline", "Neckline"), ("hem", "Hem"), ("seam", "Seam"), ("drawn", "Drawn"))
_TOWARDS = (("front", "Front side"), ("back", "Back side"), ("both", "Both"))
_THIN = (("none", "Even"), ("neckline", "From the neckline"), ("hem", "From the hem"))
_DRAWN = "Drag its points on the map; a double click there adds one or turns one, Delete takes one out."
_LONGEST = 26
_MOST_WEIGHTS = 12


class EntrySection(Section):
    """A run or a scatter by its number; one that the plan has not is put away."""

    def __init__(self, desk: Desk, bench: BeadsBench, owner: Owner) -> None:
        self.owner, self._bench = owner, bench
        self.title = self._called(desk.project)
        super().__init__(desk)

    def there(self, project: Project) -> bool:
        """Whether the plan has it."""
        entries = project.beads.runs if self.owner.what == "runs" else project.beads.scatters
        return self.owner.number < len(entries)

    def _called(self, project: Project) -> str:
        if not self.there(project):
            return ""
        entries = project.beads.runs if self.owner.what == "runs" else project.beads.scatters
        name = entries[self.owner.number].name
        return name if len(name) <= _LONGEST else f"{name[: _LONGEST - 1].rstrip()}…"

    def show_picture(self, picture: Picture) -> None:
        """Show it, or nothing."""
        there = self.there(picture.project)
        self.setVisible(there)
        if not there:
            return
        name = self._called(picture.project)
        if name != self.header.text():
            self.title = name
            self.header.setText(name)
            self.header.show_summary("")
        super().show_picture(picture)

    def search(self, wanted: str) -> bool:
        """As any section; one that is not there is never found."""
        if not self.there(self.desk.project):
            self.setVisible(False)
            return False
        return super().search(wanted)

    def summary(self, picture: Picture) -> str:
        """How many beads it comes to."""
        each = self._beaded()
        return f"{each.total:,} beads" if each is not None else ""

    def _beaded(self) -> Beaded | None:
        worked = self._bench.worked
        if worked is None or worked.beading is None:
            return None
        runs = len(worked.beading.plan.runs)
        number = self.owner.number + (runs if self.owner.what == "scatters" else 0)
        return worked.beading.beaded[number] if number < len(worked.beading.beaded) else None

    def has(self, field: str) -> bool:
        """Its own fields."""
        own = field.startswith(f"beads.{self.owner.what}.{self.owner.number}.")
        return own and self.there(self.desk.project)

    def row_of(self, field: str, seam: int | None) -> Row | None:
        """The row of a field; its name for a field without a row."""
        return super().row_of(field, seam) or super().row_of(self.owner.field, seam)


class RunSection(EntrySection):
    """Everything that is decided about one run."""

    def fill(self) -> None:
        """What it goes along, then its beads, then where it lies."""
        desk, number = self.desk, self.owner.number
        self.add(BeadRow(desk, run_name(number), width=NAME_FIELD))
        self.add(self._pick("along", "Along", _ALONG))
        self._seam = self.add(BeadRow(desk, run_figure(number, "seam", "Seam, from the front", COUNT)))
        self._towards = self.add(self._pick("towards", "On which side of it", _TOWARDS))
        self._drawn = self.add(Remark(_DRAWN))
        self.add(PatternRow(desk, number))
        (self._spacing, self._inset, self._row_gap) = (
            self.add(BeadRow(desk, run_figure(number, key, label, LENGTH))) for key, label in SPACINGS
        )
        self._rows = self.add(BeadRow(desk, run_figure(number, "rows", "Rows", COUNT)))
        for key, label in ENDS:
            self.add(BeadRow(desk, run_figure(number, key, label, PART)))
        self._remove = self.add(RemoveRow("Remove this run"))
        self._remove.button.clicked.connect(self.on_remove)

    def _pick(self, key: str, label: str, options: tuple[tuple[str, str], ...]) -> PickRow:
        number = self.owner.number
        return PickRow(
            self.desk, f"beads.runs.{number}.{key}", label, options,
            lambda project: getattr(run_of(project, number), key),
            lambda project, value: set_run(project, number, **{key: str(value)}),
        )  # fmt: skip

    def show_rows(self, picture: Picture) -> None:
        """Only what this kind of run has use for."""
        run = run_of(picture.project, self.owner.number)
        self._seam.show_wanted(run.along == "seam")
        self._towards.show_wanted(run.along == "seam")
        self._drawn.show_wanted(run.along == "drawn")
        self._inset.show_wanted(run.along != "drawn")
        self._row_gap.show_wanted(run.rows > 1)
        super().show_rows(picture)
        if run.along == "seam" and run.seam < picture.project.design.panel_count:
            self._seam.say(f"The {seam_name(run.seam, picture.project.design)}.")

    def on_remove(self) -> None:
        """Remove it; undo brings it back."""
        self.desk.apply("Remove a run", remove_run(self.desk.project, self.owner.number))
        self.desk.select(None)

    def target(self) -> QWidget | None:
        """The header."""
        return self.header


class ScatterSection(EntrySection):
    """Everything that is decided about one scatter."""

    def fill(self) -> None:
        """Where, what, how thick, and where it ends."""
        desk, number = self.desk, self.owner.number
        self.add(BeadRow(desk, scatter_name(number), width=NAME_FIELD))
        self.add(PanelsRow(desk, number))
        self.add(MixRow(desk, number))
        for part in range(_MOST_WEIGHTS):
            self.add(WeightRow(desk, number, part))
        self.add(
            BeadRow(desk, scatter_figure(number, "per_square_inch", "Beads, where thickest", PER_SQUARE))
        )
        self.add(
            PickRow(
                desk,
                f"beads.scatters.{number}.thin_from",
                "Thinning out",
                _THIN,
                lambda project: scatter_of(project, number).thin_from,
                lambda project, value: set_scatter(project, number, thin_from=str(value)),
            )
        )
        self._drawn = self.add(Remark(f"None are left at the drawn line. {_DRAWN}"))
        again = "Another number strews them otherwise; the same one strews the same again."
        self.add(BeadRow(desk, scatter_figure(number, "seed", "Strewing no.", COUNT), again))
        self._remove = self.add(RemoveRow("Remove this scatter"))
        self._remove.button.clicked.connect(self.on_remove)

    def show_rows(self, picture: Picture) -> None:
        """The line only where it thins out."""
        self._drawn.show_wanted(scatter_of(picture.project, self.owner.number).thin_from != "none")
        super().show_rows(picture)

    def on_remove(self) -> None:
        """Remove it; undo brings it back."""
        self.desk.apply("Remove a scatter", remove_scatter(self.desk.project, self.owner.number))
        self.desk.select(None)
