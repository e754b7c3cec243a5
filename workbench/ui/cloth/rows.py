"""Rows that only cloths have: widths to pick from, layers to tick, one of a few."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QGridLayout, QWidget

from workbench.body import Unit
from workbench.document import Picture, Project, set_cloth_layers
from workbench.pieces import LAYERS, LayerName, label_of
from workbench.ui.cloth.figures import NO_PRICE, OfCloth, cloth_figure, price_figure
from workbench.ui.desk import Desk
from workbench.ui.form.choice import Choice, Segment
from workbench.ui.form.field import FigureRow
from workbench.ui.form.figures import Figure
from workbench.ui.form.row import EDGE, Row
from workbench.ui.look import GRID
from workbench.ui.marks import Mark

FIELD = 27 * GRID
INCH = 25.4
WIDTHS: dict[Unit, tuple[tuple[float, str], ...]] = {
    "in": tuple((INCH * wide, str(wide)) for wide in (36, 45, 54, 60)),
    "cm": tuple((10.0 * wide, str(wide)) for wide in (90, 110, 140, 150)),
}
_HAIR = 0.05
Remark = Callable[[Picture], str]


class ClothRow(FigureRow):
    """One figure of a cloth under a short label, with what is to be known about it."""

    def __init__(self, desk: Desk, figure: Figure, label: str, remark: str = "", width: int = FIELD) -> None:
        super().__init__(desk, figure, label=label, width=width)
        self.words = f"{label} {figure.label}".lower()
        self._remark = remark

    def remark(self, picture: Picture) -> tuple[str, Mark | None]:
        """What is always true of it."""
        return self._remark, None


class WidthRow(ClothRow):
    """The width, and buttons for those that are usual."""

    def __init__(self, desk: Desk, number: int) -> None:
        super().__init__(desk, cloth_figure(number, "width_mm"), "Width")
        self._held = OfCloth(number, "width_mm")
        self._unit: Unit | None = None
        self._choices: dict[Unit, Choice] = {}
        for unit, widths in WIDTHS.items():
            choice = self._choices[unit] = Choice(f"Usual widths in {unit}", widths, self)
            choice.chosen.connect(self.on_chosen)
            self.column.insertWidget(1, choice)
            for mm, _ in widths:
                choice.button(mm).setCheckable(False)

    def show_picture(self, picture: Picture) -> None:
        """Show the width, and the usual ones of the unit."""
        super().show_picture(picture)
        for unit, choice in self._choices.items():
            choice.setVisible(unit == picture.project.unit)

    def on_chosen(self, mm: object) -> None:
        """Take a usual width."""
        if isinstance(mm, float):
            self.desk.apply("Width of the cloth", self._held.put(self.desk.project, mm))


class PriceRow(FigureRow):
    """A price; while there is none, that is said where the figure would stand."""

    def __init__(self, desk: Desk, number: int) -> None:
        super().__init__(desk, price_figure(number), label="Price", width=36 * GRID)

    def show_picture(self, picture: Picture) -> None:
        """Show it, or that there is none yet."""
        self.field.show_project(picture, NO_PRICE)
        if not self.trouble:
            self.say("")


class PickRow(Row):
    """One of a few, the buttons under the label."""

    def __init__(
        self, desk: Desk, held: OfCloth, label: str, options: Sequence[tuple[object, str]], remark: str = ""
    ) -> None:
        super().__init__(held.name, label)
        self.desk, self.held, self._remark = desk, held, remark
        self.words = " ".join((label, *(text for _, text in options))).lower()
        self.choice = Choice(label, options, self)
        self.column.addWidget(self.choice)
        self.column.setContentsMargins(EDGE, GRID, EDGE, GRID)
        self.choice.chosen.connect(self.on_chosen)

    def show_picture(self, picture: Picture) -> None:
        """Show which it is."""
        self.choice.show_value(self.held.get(picture.project))
        self.say(self._remark)

    def on_chosen(self, value: object) -> None:
        """Store it."""
        self.desk.apply(self.label.text(), self.held.put(self.desk.project, value))

    def target(self) -> QWidget | None:
        """The button that is in."""
        return self.choice.button(self.choice.value) if self.choice.value is not None else None


class LayersRow(Row):
    """The layers that are cut from a cloth: a button each, those in are cut from it."""

    def __init__(self, desk: Desk, number: int) -> None:
        held = OfCloth(number, "layers")
        super().__init__(held.name, "Layers cut from it")
        self.desk, self.held = desk, held
        self.words = "layers cut from it"
        self.buttons: dict[LayerName, Segment] = {}
        grid = QGridLayout()
        grid.setSpacing(2)
        for place, layer in enumerate(LAYERS):
            label = label_of(layer, desk.project.making)
            button = self.buttons[layer] = Segment(label, f"{label} cut from this cloth")
            button.clicked.connect(self.on_clicked)
            grid.addWidget(button, place // 2, place % 2)
        self.column.addLayout(grid)
        self.column.setContentsMargins(EDGE, GRID, EDGE, GRID)

    def show_picture(self, picture: Picture) -> None:
        """Those that are in; one that is not made is offered all the same, softly."""
        layers, making = self.held.get(picture.project), picture.project.making
        for layer, button in self.buttons.items():
            with QSignalBlocker(button):
                button.setChecked(layer in layers)
                button.setVisible(making.layer(layer).made or layer in layers)

    def on_clicked(self) -> None:
        """Cut these layers from it, and from no other cloth."""
        project = self.desk.project
        layers = [layer for layer, button in self.buttons.items() if button.isChecked()]
        self.desk.apply("Layers of a cloth", set_cloth_layers(project, self.held.cloth(project).name, layers))

    def target(self) -> QWidget | None:
        """The first button."""
        return next(iter(self.buttons.values()))


def named(project: Project, number: int) -> str:
    """The name of a cloth by its number; nothing where there is none."""
    return project.cloths[number].name if number < len(project.cloths) else ""
