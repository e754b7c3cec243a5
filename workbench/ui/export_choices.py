"""The controls of an export: what kind of file, what goes in, and how it is drawn."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Literal

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QGridLayout, QLabel, QWidget

from workbench.document import Project
from workbench.exchange import (
    COARSEST_GRID,
    DXF_VERSIONS,
    FINEST_GRID,
    THICKEST,
    THINNEST,
    DxfVersion,
    ExportChoice,
    Format,
    Projector,
)
from workbench.marking import ROUNDINGS, Rounding, rounding_of
from workbench.pieces import LayerName
from workbench.ui.look import GRID
from workbench.ui.print_layers import LayerBoxes
from workbench.ui.print_lengths import LengthRow

Kind = Literal["sheet", "projector", "guide", "svg", "dxf"]

KINDS: tuple[tuple[Kind, str], ...] = (
    ("sheet", "One large sheet for a copy shop (PDF)"),
    ("projector", "Sheet for a projector (PDF)"),
    ("guide", "Guide for marking by hand (PDF)"),
    ("svg", "Drawing for other programs (SVG)"),
    ("dxf", "Drawing for machines that cut (DXF)"),
)
_SCALES = (
    (1.0, "True to size"),
    (0.5, "Half scale, for trying in paper"),
    (0.25, "Quarter scale, for trying"),
)
_CONTRASTS = ((1.0, "Full"), (0.8, "80 %"), (0.6, "60 %"), (0.4, "40 %"))


class ExportChoices(QWidget):
    """Shows and hides what goes with the kind of file."""

    changed = Signal()

    def __init__(self, project: Project, kind: Kind = "sheet", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._project = project
        self.kind = _combo("Kind of file", KINDS)
        self.what = _combo("What goes in", (("pieces", "Pieces"), ("panels", "Panels, stitch lines alone")))
        self.layers = LayerBoxes()
        self.scale = _combo("Scale", _SCALES)
        self.dxf = _combo("Version of DXF", [(version, version) for version in DXF_VERSIONS])
        self.rounding = _combo("Distances rounded", [(name, one.label) for name, one in ROUNDINGS.items()])
        self.line = LengthRow("Width of the lines", low=THINNEST, high=THICKEST, in_mm=True)
        self.grid = LengthRow("Squares of the grid", low=FINEST_GRID, high=COARSEST_GRID)
        self.ground = _combo("Ground", (("light", "Light, dark lines"), ("dark", "Dark, light lines")))
        self.contrast = _combo("Contrast", _CONTRASTS)
        self._labels: dict[QComboBox, QLabel] = {}
        self._arrange()
        self._begin(kind)
        self._connect()

    def _arrange(self) -> None:
        rows = QGridLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setVerticalSpacing(2 * GRID)
        rows.setHorizontalSpacing(3 * GRID)
        rows.setColumnStretch(1, 1)
        order: Sequence[QWidget] = (
            *(self.kind, self.what, self.layers, self.scale, self.dxf, self.rounding),
            *(self.line, self.ground, self.contrast, self.grid),
        )
        for number, widget in enumerate(order):
            if isinstance(widget, QComboBox):
                self._labels[widget] = QLabel(widget.accessibleName())
                rows.addWidget(self._labels[widget], number, 0)
                rows.addWidget(widget, number, 1)
            else:
                rows.addWidget(widget, number, 0, 1, 2)

    def _begin(self, kind: Kind) -> None:
        """What is usual."""
        project, usual = self._project, Projector()
        self.kind.setCurrentIndex(self.kind.findData(kind))
        self.layers.show_layers(replace(project.paper, layers=("fashion",)), project.making)
        self.rounding.setCurrentIndex(
            self.rounding.findData(rounding_of(project.unit, project.fraction).name)
        )
        self.line.show_length(usual.line_mm, project.unit, project.fraction)
        grid = usual.grid_mm if project.unit == "in" else 50.0
        self.grid.show_length(grid, project.unit, project.fraction)
        self.show_fitting()

    def _connect(self) -> None:
        for combo in self._labels:
            combo.activated.connect(self.on_picked)
        self.layers.changed.connect(self.on_picked)
        for row in (self.line, self.grid):
            row.changed.connect(self.on_picked)

    # --- what is chosen --------------------------------------------------------------------

    @property
    def picked(self) -> Kind:
        """The kind of file."""
        found: Kind = self.kind.currentData()
        return found

    @property
    def format(self) -> Format:
        """What it is written as."""
        kind = self.picked
        return kind if kind in ("svg", "dxf") else "pdf"

    @property
    def chosen_rounding(self) -> Rounding:
        """How finely a guide is rounded."""
        return next(one for name, one in ROUNDINGS.items() if name == self.rounding.currentData())

    @property
    def chosen_layers(self) -> tuple[LayerName, ...]:
        """Whose pieces."""
        return self.layers.ticked()

    def choice(self) -> ExportChoice:
        """All of it, as the export takes it."""
        version: DxfVersion = self.dxf.currentData()
        return ExportChoice(
            what=self.what.currentData(),
            layers=self.chosen_layers,
            scale=float(self.scale.currentData()),
            dxf=version,
            projector=self._projector() if self.picked == "projector" else None,
        )

    def _projector(self) -> Projector:
        return Projector(
            self.line.mm, self.ground.currentData(), float(self.contrast.currentData()), self.grid.mm
        )

    # --- what is shown ---------------------------------------------------------------------

    def show_fitting(self) -> None:
        """Only what goes with the kind of file."""
        kind = self.picked
        guide, projector = kind == "guide", kind == "projector"
        for combo, on in (
            (self.what, not guide),
            (self.scale, not guide),
            (self.dxf, kind == "dxf"),
            (self.rounding, guide),
            (self.ground, projector),
            (self.contrast, projector),
        ):
            combo.setVisible(on)
            self._labels[combo].setVisible(on)
        self.layers.setVisible(guide or self.what.currentData() == "pieces")
        self.line.setVisible(projector)
        self.grid.setVisible(projector)

    def on_picked(self) -> None:
        """Something was chosen."""
        self.show_fitting()
        self.changed.emit()


def _combo(name: str, rows: Sequence[tuple[object, str]]) -> QComboBox:
    combo = QComboBox()
    combo.setAccessibleName(name)
    for data, words in rows:
        combo.addItem(words, data)
    return combo
