"""What is assumed of her torso, to be set where it was measured."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QLabel, QPushButton, QScrollArea, QVBoxLayout, QWidget

from workbench.document import TORSO_TABLE, Picture, Project, TorsoRow, set_torso, usual_torso
from workbench.ui.desk import Desk
from workbench.ui.form.field import FigureRow
from workbench.ui.form.figures import Stored
from workbench.ui.form.kinds import PartKind, plain
from workbench.ui.form.row import EDGE
from workbench.ui.look import GRID
from workbench.ui.marks import Mark
from workbench.worn import Torso

_ABOUT = (
    "A tape says how far it is round her, not how deep she is for her breadth. These figures shape the "
    "torso she is drawn with; no panel hangs on them.\n\n"
    "Depth: from front to back, in hundredths of what it is from side to side. Fuller: how far an ellipse "
    "as broad and as deep falls short of the tape.\n\n"
    "Heights are her walks, less what the body runs outwards on the way. Bust and seat stand out by a "
    "fixed part of the girth. What is above the upper chest is only drawn to make it a torso."
)


@dataclass(frozen=True)
class _Part:
    """Reads and stores one figure of the torso."""

    key: str

    def get(self, project: Project) -> float:
        """The figure as it is stored."""
        return float(getattr(project.torso, self.key))

    def put(self, project: Project, value: float) -> Project:
        """The project with another."""
        return set_torso(project, self.key, value)


class TorsoFigureRow(FigureRow):
    """One figure of the torso; where its usual value comes from stands below it."""

    def __init__(self, desk: Desk, row: TorsoRow) -> None:
        stored, kind = _Part(row.key), PartKind(100.0 if row.percent else 1.0)
        figure = Stored(f"torso.{row.key}", row.label, f"Torso: {row.label}", kind, stored.get, stored.put)
        super().__init__(desk, figure, width=23 * GRID)
        self.torso_row, self.kind = row, kind
        self.column.setContentsMargins(EDGE, GRID, EDGE, 2 * GRID)

    def remark(self, picture: Picture) -> tuple[str, Mark | None]:
        """The usual value and its source; nothing is marked."""
        row = self.torso_row
        usual = plain(100 * getattr(Torso(), row.key) / self.kind.whole)
        return f"Usual: {usual} %. Source: {row.source}.", None


class TorsoForm(QScrollArea):
    """Every figure of the torso, and a way back to the usual ones."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.rows = [TorsoFigureRow(desk, row) for row in TORSO_TABLE]
        self.usual = QPushButton("The usual torso again")
        self.usual.clicked.connect(self.on_usual)
        about = QLabel(_ABOUT)
        about.setWordWrap(True)
        about.setContentsMargins(EDGE, GRID, EDGE, 2 * GRID)
        inside = QWidget()
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, GRID, 0, 3 * GRID)
        column.setSpacing(GRID)
        column.addWidget(about)
        for row in self.rows:
            column.addWidget(row)
        back = QVBoxLayout()
        back.setContentsMargins(EDGE, GRID, EDGE, 0)
        back.addWidget(self.usual, 0, Qt.AlignmentFlag.AlignLeft)
        column.addLayout(back)
        column.addStretch(1)
        self.setWidget(inside)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName("Her torso")

    def show_picture(self, picture: Picture) -> None:
        """Show what is stored."""
        for row in self.rows:
            row.show_picture(picture)
        self.usual.setEnabled(picture.project.torso != Torso())

    def on_usual(self) -> None:
        """Back to the usual figures, in one step."""
        self._desk.apply("The usual torso", usual_torso(self._desk.project))
