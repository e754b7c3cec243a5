"""The sewing place: the stages and how far they are at the left, the steps beside them."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QScrollArea, QVBoxLayout, QWidget

from workbench.document import Picture
from workbench.ui.chapters import Chapter, Chapters
from workbench.ui.desk import Desk
from workbench.ui.look import GRID, fonts
from workbench.ui.place import PlacePage
from workbench.ui.sentence import Foot
from workbench.ui.sewing.bench import SewingBench
from workbench.ui.sewing.order_pane import OrderPane


class SewingPlace(PlacePage):
    """Answers at a glance: what do I do next, and how much is left?

    Nothing is worked out while it is out of sight.
    """

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = SewingBench(desk, self)
        self.progress = QLabel()
        self.left = QLabel()
        self.chapters = Chapters()
        self.order = OrderPane(desk)
        self.foot = Foot(desk)
        self._assemble()
        self.bench.worked_out.connect(self.show_worked)
        self.order.counted.connect(self.show_counted)
        self.chapters.chosen.connect(self.order.go_to)

    def _assemble(self) -> None:
        self.progress.setFont(fonts().title)
        self.left.setFont(fonts().body)
        self.left.setWordWrap(True)
        contents = QWidget()
        column = QVBoxLayout(contents)
        column.setContentsMargins(0, 4 * GRID, 0, 4 * GRID)
        column.setSpacing(GRID)
        for words in (self.progress, self.left):
            words.setContentsMargins(3 * GRID, 0, 3 * GRID, 0)
            column.addWidget(words)
        column.addSpacing(2 * GRID)
        column.addWidget(self.chapters)
        column.addStretch(1)
        scroll = QScrollArea()
        scroll.setAccessibleName("Steps of the work")
        scroll.setWidget(contents)
        scroll.setWidgetResizable(True)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.arrange(scroll, self.order, self.foot)
        self.begin_at(self.order)

    def has(self, field: str) -> bool:
        """Steps are ticked, not filled in: no field is this place's."""
        return False

    def deeds(self) -> Mapping[str, Callable[[], None]]:
        """Go to what is next."""
        return {"next_step": self.order.reach_next}

    def show_worked(self, picture: Picture) -> None:
        """Show the order, and how much of it is left."""
        self.order.show_picture(picture)
        done, steps = set(picture.project.done), picture.sewing
        left = sum(step.minutes for step in steps if step.key not in done)
        count = sum(step.key in done for step in steps)
        self.progress.setText(f"{count} of {len(steps)} steps done" if steps else "Nothing to sew yet")
        self.left.setText(_left_words(left) if steps else "")

    def show_counted(self, counted: tuple[Chapter, ...]) -> None:
        """Show how far each stage has come."""
        self.chapters.show_chapters(counted)

    def set_in_sight(self, in_sight: bool) -> None:
        """Work out what is looked at, and nothing else."""
        self.bench.set_in_sight(in_sight)


def _left_words(minutes: float) -> str:
    """How long the rest takes, to the half hour; times are common practice, no source."""
    if minutes <= 0:
        return "All of it is done."
    hours = round(2 * minutes / 60) / 2
    if hours < 1:
        return "Less than an hour is left."
    said = f"{hours:g}".replace(".5", "½")
    return f"About {said} hours are left, as such work usually goes."
