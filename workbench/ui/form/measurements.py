"""The measurements, made from the table: taken, estimated, or still needed."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QPushButton, QWidget

from workbench.body import BY_KEY, LEVEL_GIRTH, MEASUREMENTS, Body, Measurement, say_length
from workbench.document import Picture, Session
from workbench.draft import Place
from workbench.ui.desk import Desk
from workbench.ui.form.field import FigureRow
from workbench.ui.form.figures import Taken
from workbench.ui.form.row import Row, found_about
from workbench.ui.form.section import Heading, Section
from workbench.ui.look import GRID
from workbench.ui.marks import Mark

_LEVEL_OF = {key: level for level, key in LEVEL_GIRTH.items()}
MORE = "More, if you can take them"
FEWER = "Fewer"


class MeasurementRow(FigureRow):
    """One measurement; it says when it is an estimate, and what looks wrong about it."""

    pointed = Signal(str)
    """The key of the measurement whose field has the focus."""

    def __init__(self, desk: Desk, measurement: Measurement) -> None:
        taken = Taken(measurement.key)
        super().__init__(desk, taken, place=Place(field=taken.name, level=_LEVEL_OF.get(measurement.key)))
        self.measurement = measurement
        self.words = f"{measurement.label} {measurement.kind} {measurement.group} {measurement.how}".lower()
        self._known: tuple[object, ...] = ()

    def show_picture(self, picture: Picture) -> None:
        """Show it, unless nothing that it shows has changed: there are many of these rows.

        A field that holds something typed is looked at in any case: the same length may have
        been written in another way.
        """
        project, body = picture.project, picture.body
        estimate = _estimate(self.measurement, picture)
        # What is said about it follows from the other measurements too.
        known = (project.measurements, project.unit, project.fraction, estimate, body is None)
        if known == self._known and not self.trouble and not self.field.pending:
            return
        self._known = known
        self.field.show_project(picture, estimate)
        if not self.trouble:
            self.say(*self.remark(picture))

    def forget(self) -> None:
        """Hold on to nothing that was typed."""
        super().forget()
        self._known = ()

    def remark(self, picture: Picture) -> tuple[str, Mark | None]:
        """Why it cannot be drafted, or what to check, with both numbers."""
        if self.name not in _stored(picture) and picture.body is None and not picture.project.measurements:
            return "", None  # an empty form is no mistake; the field says that it is needed
        words, mark = found_about(self.name, picture)
        if words:
            return words, mark
        project = picture.project
        checks = picture.body.checks if picture.body else ()
        mine = [check for check in checks if check.key == self.measurement.key]
        said = "\n".join(check.text(project.unit, project.fraction) for check in mine)
        return said, "attend" if mine else None

    def on_field_focused(self) -> None:
        """Have it shown where the tape goes."""
        self.pointed.emit(self.measurement.key)


def _stored(picture: Picture) -> set[str]:
    return {f"measurements.{key}" for key in picture.project.measurements}


def _estimate(measurement: Measurement, picture: Picture) -> str:
    """What stands in the empty field, in italics."""
    project, body = picture.project, picture.body
    if measurement.key in project.measurements:
        return ""
    if body is not None and measurement.key in body.estimated:
        mm = body.value(measurement.key)
        return f"{say_length(mm, project.unit, project.fraction)} estimated"
    return "needed" if measurement.needed and body is None else ""


class FoldRow(Row):
    """A button that brings the optional measurements out, and puts them away."""

    turned = Signal()

    def __init__(self) -> None:
        super().__init__("", "")
        self.label.hide()
        self.button = QPushButton(MORE, self)
        self.button.setObjectName("quiet")
        self.button.setFlat(True)
        self.button.setCursor(Qt.CursorShape.PointingHandCursor)
        self.line.addWidget(self.button, 0, Qt.AlignmentFlag.AlignLeft)
        self.column.setContentsMargins(GRID, GRID, GRID, GRID)
        self.button.clicked.connect(self.turned)

    def is_called(self, wanted: str) -> bool:
        """It is no field."""
        return False

    def target(self) -> QWidget | None:
        """The button."""
        return self.button


class Measurements(Section):
    """The second section; the optional measurements are folded away until one of them is taken."""

    title = "Measurements"
    pointed = Signal(str)
    """The key of the measurement whose field has the focus."""

    def fill(self) -> None:
        """The table's rows under their headings, in the table's order."""
        self._optional: list[Row] = []
        self._folded = True
        self._session: Session | None = None
        self._add_rows(optional=False)
        self._fold = self.add(FoldRow())
        self._add_rows(optional=True)
        self._fold.turned.connect(self.on_turned)
        self.show_folded(True)

    def _add_rows(self, optional: bool) -> None:
        group = ""
        for measurement in MEASUREMENTS:
            if measurement.optional is not optional:
                continue
            made: list[Row] = []
            if measurement.group != group:
                group = measurement.group
                made.append(self.add(Heading(group)))
            row = self.add(MeasurementRow(self.desk, measurement))
            row.pointed.connect(self.pointed)
            made.append(row)
            if optional:
                self._optional += made

    def on_turned(self) -> None:
        """Fold or unfold."""
        self.show_folded(not self._folded)

    def show_folded(self, folded: bool) -> None:
        """Put the optional rows away, or bring them out."""
        self._folded = folded
        for row in self._optional:
            row.show_folded(folded)
        self._fold.button.setText(MORE if folded else FEWER)

    def show_rows(self, picture: Picture) -> None:
        """Bring the optional ones out for a project that has some; another may put them away again."""
        some = any(BY_KEY[key].optional for key in picture.project.measurements)
        if some or self._session is not self.desk.session:
            self._session = self.desk.session
            self._fold.show_wanted(not some)
            if self._folded is some:
                self.show_folded(not some)
        super().show_rows(picture)

    def summary(self, picture: Picture) -> str:
        """How many are taken, and how many estimated."""
        count = len(picture.project.measurements)
        taken = f"{count} taken" if count else "none taken yet"
        body: Body | None = picture.body
        return f"{taken}, {len(body.estimated)} estimated" if body and body.estimated else taken

    def has(self, field: str) -> bool:
        """Measurements go by their key, with or without the word before it."""
        return field.startswith("measurements.") or field in BY_KEY

    def row_of(self, field: str, seam: int | None) -> Row | None:
        """The row of a measurement, brought out where it is folded away."""
        key = field.removeprefix("measurements.")
        if key in BY_KEY and BY_KEY[key].optional:
            self.show_folded(False)
        return super().row_of(f"measurements.{key}", seam)
