"""Sections of the form for the whole plan: kinds, what is kept free, reserve and hours."""

from __future__ import annotations

from PySide6.QtWidgets import QPushButton, QWidget

from workbench.beads import BeadMark, per_inch_of, per_strand_of
from workbench.document import Picture, Project, add_kind, add_usual_kinds, remove_kind, set_kind
from workbench.ui.beads.bench import BeadsBench
from workbench.ui.beads.figures import (
    COUNT,
    LENGTH,
    MILLIMETRES,
    PER_LENGTH,
    RATE,
    RESERVE,
    Blank,
    band_figure,
    kind_of,
    price_figure,
)
from workbench.ui.beads.rows import NAME_FIELD, BeadRow, BlankRow, KindButtons, MarkRow, RemoveRow
from workbench.ui.desk import Desk
from workbench.ui.form.figures import Stored
from workbench.ui.form.kinds import Kind
from workbench.ui.form.prose import Written
from workbench.ui.form.row import EDGE, Row
from workbench.ui.form.section import Remark, Section
from workbench.ui.look import GRID

_BANDS = (
    ("bone_mm", "Beyond a bone channel"),
    ("seam_mm", "Beside a seam"),
    ("edge_mm", "From neckline and hem"),
    ("opening_mm", "From the opening"),
    ("arm_mm", "Under the arm, either side"),
    ("arm_depth_mm", "Under the arm, down"),
)


class KindsRow(Row):
    """The kinds, of which one is picked to be changed, and buttons that add more."""

    def __init__(self, desk: Desk, section: Kinds) -> None:
        super().__init__("beads.kinds", "")
        self.label.hide()
        self.words = "kinds of bead pearls add"
        self.desk, self._section = desk, section
        self.kinds = KindButtons(self)
        self.new = QPushButton("New kind", self)
        self.usual = QPushButton("Usual kinds", self)
        self.column.insertWidget(0, self.kinds)
        for button in (self.new, self.usual):
            self.line.addWidget(button)
        self.line.addStretch(1)
        self.column.setContentsMargins(EDGE, GRID, EDGE, 2 * GRID)
        self.kinds.pressed.connect(section.pick)
        self.new.clicked.connect(self.on_new)
        self.usual.clicked.connect(self.on_usual)

    def show_picture(self, picture: Picture) -> None:
        """Show them, and which is picked."""
        kinds = picture.project.beads.kinds
        self.kinds.show_kinds(kinds, "Change {}")
        self.kinds.show_checked([self._section.number] if kinds else [])

    def on_new(self) -> None:
        """Add one and pick it."""
        self._add("Add a kind of bead", add_kind)

    def on_usual(self) -> None:
        """Add the usual ones that are not there yet."""
        self._add("Add the usual beads", add_usual_kinds)

    def _add(self, name: str, edit: object) -> None:
        assert callable(edit)
        try:
            project: Project = edit(self.desk.project)
        except ValueError as error:
            self.desk.refuse(self.name, str(error))
            return
        self.desk.apply(name, project)
        self._section.pick(len(project.beads.kinds) - 1)

    def target(self) -> QWidget | None:
        """The button that adds one."""
        return self.new


class Kinds(Section):
    """The kinds of bead there are, and everything about the picked one."""

    title = "Kinds of bead"

    def __init__(self, desk: Desk) -> None:
        self._number = 0
        super().__init__(desk)

    @property
    def number(self) -> int:
        """The picked kind."""
        return max(min(self._number, len(self.desk.project.beads.kinds) - 1), 0)

    def fill(self) -> None:
        """The kinds, then the picked one."""
        self._pick_row = self.add(KindsRow(self.desk, self))
        self._nothing = self.add(Remark("No kinds yet: add the usual ones, or one of your own."))
        self._of_one: list[Row] = [
            self.add(BeadRow(self.desk, self._name(), width=NAME_FIELD)),
            self.add(BeadRow(self.desk, self._size())),
            self.add(
                BlankRow(self.desk, self._blank("per_inch", "Strung, so many", PER_LENGTH, per_inch_of))
            ),
            self.add(BeadRow(self.desk, self._length("strand_mm", "Length of a strand"))),
            self.add(
                BlankRow(self.desk, self._blank("per_strand", "Beads on a strand", COUNT, per_strand_of))
            ),
            self.add(BeadRow(self.desk, price_figure(self._which))),
            self.add(MarkRow(self._which_mark, self._show_as)),
        ]
        self._remove = self.add(RemoveRow("Remove this kind"))
        self._remove.button.clicked.connect(self.on_remove)

    def _which(self) -> int:
        return self.number

    def _which_mark(self, project: Project) -> BeadMark:
        return kind_of(project, self.number).mark

    def _name(self) -> Written:
        return Written(
            "beads.kinds.name", "Name", "Name of a bead",
            lambda project: kind_of(project, self.number).name,
            lambda project, text: set_kind(project, self.number, name=text),
        )  # fmt: skip

    def _size(self) -> Stored:
        return self._length("size_mm", "Size across", MILLIMETRES)

    def _length(self, key: str, label: str, kind: Kind = LENGTH) -> Stored:
        return Stored(
            f"beads.kinds.{key}", label, f"{label} of a bead", kind,
            lambda project: float(getattr(kind_of(project, self.number), key)),
            lambda project, value: set_kind(project, self.number, **{key: value}),
        )  # fmt: skip

    def _blank(self, key: str, label: str, kind: Kind, follows: object) -> Blank:
        assert callable(follows)

        def put(project: Project, value: float | None) -> Project:
            whole = value if value is None or key != "per_strand" else int(value)
            return set_kind(project, self.number, **{key: whole})

        return Blank(
            f"beads.kinds.{key}", label, f"{label} of a bead", kind,
            lambda project: getattr(kind_of(project, self.number), key), put,
            lambda project: float(follows(kind_of(project, self.number))),
        )  # fmt: skip

    def _show_as(self, mark: BeadMark) -> None:
        self.desk.apply("Mark of a bead", set_kind(self.desk.project, self.number, mark=mark))
        self.desk.now()

    def pick(self, number: int) -> None:
        """Show another kind."""
        for row in self.rows:
            row.forget()
        self._number = number
        self.show_rows(self.desk.picture)

    def show_rows(self, picture: Picture) -> None:
        """The picked kind; nothing where there is none."""
        some = bool(picture.project.beads.kinds)
        self._nothing.show_wanted(not some)
        self._pick_row.show_picture(picture)
        for row in (*self._of_one, self._remove):
            row.show_wanted(some)
            if some:
                row.show_picture(picture)

    def summary(self, picture: Picture) -> str:
        """How many."""
        count = len(picture.project.beads.kinds)
        return f"{count} kind{'' if count == 1 else 's'}"

    def row_of(self, field: str, seam: int | None) -> Row | None:
        """The row of a field; of a kind that is named by its number, with that kind picked."""
        parts = field.split(".")
        if len(parts) == 4 and parts[2].isdigit():
            if int(parts[2]) != self.number:
                self.pick(int(parts[2]))
            field = f"beads.kinds.{parts[3]}"
        return super().row_of(field, seam)

    def has(self, field: str) -> bool:
        """Kinds."""
        return field.startswith("beads.kinds")

    def on_remove(self) -> None:
        """Remove the picked kind, or say what still uses it."""
        try:
            project = remove_kind(self.desk.project, self.number)
        except ValueError as error:
            self._remove.say(str(error), "attend")
            self.desk.refuse("beads.kinds", str(error))
            return
        self._remove.say("")
        self.desk.apply("Remove a kind of bead", project)


class KeptFree(Section):
    """How wide the bands are that no bead lies in."""

    title = "Kept free of beads"

    def fill(self) -> None:
        """A width for each."""
        self.add(Remark("A whole bead stays outside each band. The left half mirrors the right."))
        for key, label in _BANDS:
            self.add(BeadRow(self.desk, band_figure(key, label)))

    def has(self, field: str) -> bool:
        """Bands."""
        return field.startswith("beads.bands")


class Buying(Section):
    """What is bought over, and how quickly she sews."""

    title = "Reserve and hours"

    def __init__(self, desk: Desk, bench: BeadsBench) -> None:
        self._bench = bench
        super().__init__(desk)

    def fill(self) -> None:
        """Two figures."""
        self.add(BeadRow(self.desk, RESERVE, "Bought over what is sewn on."))
        self.add(BeadRow(self.desk, RATE, "From it follow the hours in the quote."))

    def summary(self, picture: Picture) -> str:
        """How long it takes."""
        worked = self._bench.worked
        count = worked.beading.count if worked is not None and worked.beading is not None else None
        return f"{count.hours} h" if count is not None and count.hours else ""

    def has(self, field: str) -> bool:
        """The plan's own figures."""
        return field in ("beads.per_minute", "beads.reserve_percent")
