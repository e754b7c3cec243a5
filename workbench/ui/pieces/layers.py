"""Layers: which are made, and what is particular about the one on show."""

from __future__ import annotations

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QButtonGroup, QWidget

from workbench.document import Picture, Project, set_layer_made, set_layer_panel, set_net, set_turn
from workbench.draft import MOST_PANELS, QuarterName
from workbench.pieces import LAYERS, LayerName, label_of, purpose_of
from workbench.ui.desk import Desk
from workbench.ui.form.choice import Segment
from workbench.ui.form.field import FigureRow
from workbench.ui.form.figures import Stored
from workbench.ui.form.row import EDGE, Row
from workbench.ui.form.section import Heading
from workbench.ui.look import GRID
from workbench.ui.marks import Mark
from workbench.ui.pieces.bench import Bench
from workbench.ui.pieces.figures import HairKind
from workbench.ui.pieces.rows import FIELD, CheckRow
from workbench.ui.pieces.section import MakingSection

FROM_PANELS: tuple[LayerName, ...] = ("fashion", "strength", "interfacing", "lining")
"""Layers with a piece of each panel."""
_OF_PANELS: tuple[LayerName, ...] = (*FROM_PANELS, "top_facing", "hem_facing")
"""Layers that are cut from the panels, whole or in part; the others have figures of their own."""
_QUARTERS: tuple[QuarterName, QuarterName] = ("front", "back")


class LayerRow(CheckRow):
    """One layer: whether it is made, and what it is for. To tick it is also to look at it."""

    def __init__(self, desk: Desk, bench: Bench, layer: LayerName) -> None:
        self._bench, self.layer = bench, layer
        label = label_of(layer, desk.project.making)
        super().__init__(desk, f"layers.{layer}", label, f"Layer: {label}", self._made, self._with)
        self.column.setContentsMargins(EDGE, GRID, EDGE, GRID)

    def show_picture(self, picture: Picture) -> None:
        """Tick or not, and lit where it is the layer on show."""
        super().show_picture(picture)
        label, purpose = (of(self.layer, picture.project.making) for of in (label_of, purpose_of))
        if label != self.box.text():
            self.box.setText(label)
        self.words = f"{label} {purpose}".lower()
        self.say(purpose)
        self.show_lit(self._bench.layer == self.layer)

    def on_clicked(self, checked: bool) -> None:
        """Store it, and put the layer on show."""
        super().on_clicked(checked)
        self._bench.show_layer(self.layer)

    def _made(self, project: Project) -> bool:
        return project.making.layer(self.layer).made

    def _with(self, project: Project, on: bool) -> Project:
        return set_layer_made(project, self.layer, on)


class TurnRow(FigureRow):
    """The hair of the layer on show."""

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._bench = bench
        label = "Hair for the turn of cloth"
        figure = Stored("layer.turn_mm", label, label, HairKind(signed=True), self._stored, self._with)
        super().__init__(desk, figure, label="Turn of cloth", width=FIELD)
        self.words = "turn of cloth hair layer"

    def show_picture(self, picture: Picture) -> None:
        """Show it for layers that are cut from the panels."""
        self.show_wanted(self._bench.layer in _OF_PANELS)
        super().show_picture(picture)

    def remark(self, picture: Picture) -> tuple[str, Mark | None]:
        """Where it goes."""
        return "Added at every joining seam; less than 0 for a layer inside.", None

    def _stored(self, project: Project) -> float:
        return project.making.layer(self._bench.layer).turn_mm

    def _with(self, project: Project, mm: float) -> Project:
        return set_turn(project, self._bench.layer, mm)


class NetRow(CheckRow):
    """Whether the layer on show ends at the stitch line."""

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._bench = bench
        text = "Net: ends at the stitch line"
        super().__init__(desk, "layer.net", text, "Layer cut net", self._stored, self._with)

    def show_picture(self, picture: Picture) -> None:
        """Show it for layers that are cut from the panels."""
        self.show_wanted(self._bench.layer in _OF_PANELS)
        super().show_picture(picture)

    def _stored(self, project: Project) -> bool:
        return project.making.layer(self._bench.layer).net

    def _with(self, project: Project, on: bool) -> Project:
        return set_net(project, self._bench.layer, on)


class PanelsRow(Row):
    """The pieces of one quarter that the layer on show has: each can be left out."""

    def __init__(self, desk: Desk, bench: Bench, quarter: QuarterName) -> None:
        super().__init__(f"layer.left_out.{quarter}", quarter.capitalize())
        self._desk, self._bench, self._quarter = desk, bench, quarter
        self.words = f"pieces of the {quarter} left out of the layer"
        self._group = QButtonGroup(self)
        self._group.setExclusive(False)
        for number in range(MOST_PANELS):
            button = Segment(str(number + 1), f"{quarter.capitalize()} {number + 1} in this layer")
            self._group.addButton(button, number)
            self.line.addWidget(button)
        self._group.idClicked.connect(self.on_clicked)

    def show_picture(self, picture: Picture) -> None:
        """Buttons for as many panels as there are; those left out are not in."""
        self.show_wanted(self._bench.layer in _OF_PANELS)
        design, choice = picture.project.design, picture.project.making.layer(self._bench.layer)
        count = (design.front if self._quarter == "front" else design.back).panel_count
        with QSignalBlocker(self._group):
            for number, button in enumerate(self._group.buttons()):
                button.setVisible(number < count)
                button.setChecked(self._first(picture.project) + number not in choice.left_out)

    def on_clicked(self, number: int) -> None:
        """Put the piece in, or leave it out."""
        project, wanted = self._desk.project, self._group.button(number).isChecked()
        changed = set_layer_panel(project, self._bench.layer, self._first(project) + number, wanted)
        self._desk.apply("Pieces of a layer", changed)

    def target(self) -> QWidget | None:
        """The first button."""
        return self._group.button(0)

    def _first(self, project: Project) -> int:
        return 0 if self._quarter == "front" else project.design.front.panel_count


class Layers(MakingSection):
    """The first section."""

    title = "Layers"

    def fill(self) -> None:
        """A row for each layer, then what is particular about the one on show."""
        for layer in LAYERS:
            self.add(LayerRow(self.desk, self.bench, layer))
        self._shown = self.add(Heading(""))
        self.add(TurnRow(self.desk, self.bench))
        self.add(NetRow(self.desk, self.bench))
        for quarter in _QUARTERS:
            self.add(PanelsRow(self.desk, self.bench, quarter))
        self.bench.layer_shown.connect(self.show_layer)

    def show_rows(self, picture: Picture) -> None:
        """Every row, under the name of the layer on show."""
        layer = self.bench.layer
        self._shown.show_label(label_of(layer, picture.project.making))
        self._shown.show_wanted(layer in _OF_PANELS)
        super().show_rows(picture)

    def show_layer(self, _name: str) -> None:
        """Another layer is on show."""
        if self.seen:
            for row in self.rows:
                if isinstance(row, TurnRow):
                    row.forget()
            self.show_rows(self.desk.picture)

    def summary(self, picture: Picture) -> str:
        """How many are made."""
        made = sum(choice.made for choice in picture.project.making.layers)
        return f"{made} of {len(LAYERS)} made"

    def has(self, field: str) -> bool:
        """Everything about layers."""
        return field.startswith(("layer.", "layers."))
