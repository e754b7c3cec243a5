"""Fields tied to figures of the project, and the rows that hold them."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from workbench.document import Picture
from workbench.draft import Place
from workbench.ui.desk import Desk
from workbench.ui.form.entry import HEIGHT, Entry
from workbench.ui.form.figures import Figure
from workbench.ui.form.row import Row, found_about
from workbench.ui.look import GRID
from workbench.ui.marks import Mark

FIELD_WIDTH = 31 * GRID


class Field(Entry):
    """An entry tied to one figure of the project on the desk."""

    def __init__(self, desk: Desk, figure: Figure, row: FigureRow, width: int = FIELD_WIDTH) -> None:
        super().__init__(figure.label, row)
        self._desk, self.figure, self._row = desk, figure, row
        self._moving = False
        self.setFixedSize(width, HEIGHT)
        self.entered.connect(self.on_entered)
        self.stepped.connect(self.on_stepped)
        self.rested.connect(self.on_rested)
        self.restored.connect(self.on_restored)
        self.focused.connect(self.on_focused)

    def show_project(self, picture: Picture, estimate: str = "") -> None:
        """Show what is stored."""
        project = picture.project
        self.show_suffix(self.figure.suffix(project))
        self.show_value(self.figure.stamp(project), self.figure.text(project), estimate)
        if not self.pending:
            self._calm()

    def on_entered(self, text: str) -> None:
        """Read what was typed and store it, or say why it cannot be read and leave it standing."""
        try:
            project = self.figure.typed(self._desk.project, text)
        except ValueError as error:
            self._refuse(str(error))
            return
        self._calm()
        self.forget()
        self._desk.apply(self.figure.step_name, project)
        self._row.show_picture(self._desk.picture)

    def on_stepped(self, steps: int) -> None:
        """The next mark on the ruler; steps of one key held down are one step to undo."""
        if self._desk.gesturing and not self._moving:
            return
        try:
            project = self.figure.moved(self._desk.project, steps)
        except ValueError as error:
            self._row.say(str(error), "attend")
            return
        if not self._moving:
            self._moving = True
            self._desk.begin(self.figure.step_name)
        self._desk.preview(project)

    def on_rested(self) -> None:
        """The run of steps is over."""
        if self._moving:
            self._moving = False
            self._desk.commit()

    def on_restored(self) -> None:
        """Take back what was said about it."""
        self._row.trouble = ""
        self._desk.now()

    def on_focused(self) -> None:
        """Light up, everywhere, what the field is about."""
        self._desk.select(self._row.place)
        self._row.on_field_focused()

    def _refuse(self, sentence: str) -> None:
        self._row.trouble = sentence
        self._row.say(sentence, "attend")
        self.show_trouble(True)
        self.setAccessibleDescription(sentence)
        label = self.figure.label
        said = sentence if sentence.startswith(label) else f"{label}: {sentence}"
        self._desk.refuse(self.figure.name, said)

    def _calm(self) -> None:
        """Nothing is wrong with what it holds."""
        if self.show_trouble(False):
            self._row.trouble = ""
            self.setAccessibleDescription(self.placeholderText())


class FigureRow(Row):
    """One figure, or the same figure said in several ways side by side."""

    def __init__(
        self,
        desk: Desk,
        *figures: Figure,
        label: str = "",
        width: int = FIELD_WIDTH,
        place: Place | None = None,
    ) -> None:
        super().__init__(figures[0].name, label or figures[0].label)
        self.desk = desk
        self.place = place or Place(field=figures[0].name)
        self.trouble = ""
        """Why what was typed could not be read."""
        self.fields = [Field(desk, figure, self, width) for figure in figures]
        for field in self.fields:
            self.line.addWidget(field)
        self.label.setBuddy(self.fields[0])

    @property
    def field(self) -> Field:
        """The first of its fields."""
        return self.fields[0]

    def forget(self) -> None:
        """Hold on to nothing that was typed."""
        self.trouble = ""
        for field in self.fields:
            field.forget()

    def show_picture(self, picture: Picture) -> None:
        """Show what is stored, and what is to be said about it; what she has to put right comes first."""
        for field in self.fields:
            field.show_project(picture)
        if not self.trouble:
            self.say(*self.remark(picture))

    def remark(self, picture: Picture) -> tuple[str, Mark | None]:
        """What the draft has to say about this field."""
        return found_about(self.name, picture)

    def target(self) -> QWidget | None:
        """Its first field."""
        return self.fields[0]

    def on_field_focused(self) -> None:
        """For a row that does something more while it has the focus."""
