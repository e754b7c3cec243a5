"""Which piece is marked, of which layer, and how finely: at the left of the marking guide."""

from __future__ import annotations

from collections.abc import Collection

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QComboBox, QLabel, QPushButton, QScrollArea, QVBoxLayout, QWidget

from workbench.marking import ROUNDINGS, Guide, Rounding, RoundingName
from workbench.pieces import Cutting, LayerName
from workbench.ui.chapters import Chapter, Chapters
from workbench.ui.look import GRID, fonts, look

WIDTH = 58 * GRID


class PiecePane(QWidget):
    """Layer, rounding, pieces; says what is picked."""

    layer_picked = Signal(str)
    rounding_picked = Signal(str)
    piece_picked = Signal(int)
    export_wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.layer, self.rounding = QComboBox(), QComboBox()
        self.pieces = Chapters()
        self.print = QPushButton("Print the guide…")
        self.layer.setAccessibleName("Layer to mark")
        self.rounding.setAccessibleName("How finely distances are rounded")
        for name, one in ROUNDINGS.items():
            self.rounding.addItem(f"Rounded {one.label}", name)
        self._arrange()
        self.layer.activated.connect(self.on_layer)
        self.rounding.activated.connect(self.on_rounding)
        self.pieces.chosen.connect(self.piece_picked)
        self.print.clicked.connect(self.export_wanted)

    def _arrange(self) -> None:
        head = QVBoxLayout()
        head.setContentsMargins(3 * GRID, 3 * GRID, 3 * GRID, 2 * GRID)
        head.setSpacing(2 * GRID)
        title = QLabel("Mark by hand")
        title.setFont(fonts().heading)
        for widget in (title, self.layer, self.rounding):
            head.addWidget(widget)
        inside = QWidget()
        rows = QVBoxLayout(inside)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(self.pieces)
        rows.addStretch(1)
        area = QScrollArea()
        area.setAccessibleName("Pieces of the layer")
        area.setWidget(inside)
        area.setWidgetResizable(True)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        foot = QVBoxLayout()
        foot.setContentsMargins(3 * GRID, 2 * GRID, 3 * GRID, 3 * GRID)
        foot.addWidget(self.print)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        column.addWidget(area, 1)
        column.addLayout(foot)

    def show_layers(self, cutting: Cutting | None, shown: LayerName) -> None:
        """The layers that have pieces."""
        wanted = [(layer.label, layer.name) for layer in cutting.layers] if cutting is not None else []
        if wanted != [(self.layer.itemText(n), self.layer.itemData(n)) for n in range(self.layer.count())]:
            self.layer.clear()
            for label, name in wanted:
                self.layer.addItem(label, name)
        self.layer.setCurrentIndex(self.layer.findData(shown))
        self.layer.setEnabled(bool(wanted))
        self.print.setEnabled(bool(wanted))

    def show_guide(self, guide: Guide | None, rounding: Rounding, done: Collection[str], shown: int) -> None:
        """The pieces, how far each is, and which of them is on show."""
        self.rounding.setCurrentIndex(self.rounding.findData(rounding.name))
        pieces = guide.pieces if guide is not None else ()
        self.pieces.show_chapters(
            tuple(
                Chapter(piece.name, sum(step.key in done for step in piece.steps), len(piece.steps))
                for piece in pieces
            )
        )

        for number, row in enumerate(self.pieces.rows):
            palette = row.palette()
            palette.setColor(row.backgroundRole(), look().selected_fill)
            row.setPalette(palette)
            row.setAutoFillBackground(number == shown)

    def on_layer(self) -> None:
        """Say which layer was picked."""
        self.layer_picked.emit(str(self.layer.currentData()))

    def on_rounding(self) -> None:
        """Say which rounding was picked."""
        self.rounding_picked.emit(str(self.rounding.currentData()))


def rounding_named(name: str) -> Rounding:
    """The rounding of a name; KeyError where there is none."""
    found: RoundingName = name  # type: ignore[assignment]  # looked up in the next line
    return ROUNDINGS[found]
