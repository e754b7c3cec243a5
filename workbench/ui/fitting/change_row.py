"""One line of what was pinned: on or off, more or less, how much and where."""

from __future__ import annotations

from itertools import pairwise
from typing import Literal

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QWidget

from workbench.body import LEVEL_LABEL, LevelName, step_mm
from workbench.document import Picture, Project, remove_pinned
from workbench.draft import Place, Style
from workbench.fitting import Change, ChangeKind, comes_to, field_of, place_said, seam_said
from workbench.ui.desk import Desk
from workbench.ui.fitting.bench import FittingBench
from workbench.ui.fitting.figures import OfChange, across_figure, amount_figure, change_note
from workbench.ui.fitting.pick import Pick
from workbench.ui.form.choice import Choice
from workbench.ui.form.field import Field, FigureRow
from workbench.ui.form.row import EDGE
from workbench.ui.look import GRID, fonts
from workbench.ui.marks import Mark, mark_of
from workbench.ui.tick import Tick

_AMOUNT, _ACROSS = 24 * GRID, 18 * GRID
_WAYS: dict[ChangeKind, tuple[str, str]] = {
    "seam": ("Take in", "Let out"),
    "length": ("Lengthen", "Shorten"),
    "neckline": ("Raise", "Lower"),
    "hem": ("Raise", "Lower"),
}
_HEADS: dict[ChangeKind, str] = {
    "seam": "Seam",
    "length": "Length",
    "neckline": "Neckline",
    "hem": "Hem",
}
_LEVELS: dict[Style, tuple[LevelName, ...]] = {
    "under_bust": ("bust", "underbust", "waist", "top_hip"),
    "over_bust": ("upper_chest", "bust", "underbust", "waist", "top_hip"),
}
Way = Literal["more", "less"]


class ChangeRow(FigureRow):
    """Its number and switch, then which way and how much, then where; a note below."""

    def __init__(self, desk: Desk, bench: FittingBench, which: int) -> None:
        self.of = OfChange(which, lambda: bench.number)
        super().__init__(desk, amount_figure(self.of), label="", width=_AMOUNT)
        self._bench = bench
        self.words = "pinned line seam level take in let out lengthen shorten raise lower neckline hem"
        self.box = Tick(parent=self)
        self.box.setFont(fonts().strong)
        self.remove = QPushButton("Remove", self)
        self.ways = {kind: self._way(kind) for kind in ("seam", "length", "neckline")}
        self.seam = Pick(f"Line {which + 1}, seam", self)
        self.level = Pick(f"Line {which + 1}, level", self)
        self.spot = Pick(f"Line {which + 1}, place", self)
        self.across = Field(desk, across_figure(self.of), self, _ACROSS)
        self.note_field = Field(desk, change_note(self.of), self, 40 * GRID)
        self._assemble()
        self._connect()

    def _way(self, kind: ChangeKind) -> Choice:
        more, less = _WAYS[kind]
        return Choice(f"Line {self.of.which + 1}", (("more", more), ("less", less)), self)

    def _assemble(self) -> None:
        self.remove.setObjectName("quiet")
        self.label.hide()
        self.line.insertWidget(0, self.box, 1)
        self.line.removeWidget(self.field)
        self.line.addWidget(self.remove)
        amount = QHBoxLayout()
        amount.setSpacing(2 * GRID)
        for way in self.ways.values():
            amount.addWidget(way, 1)
        amount.addWidget(self.field)
        where = QHBoxLayout()
        where.setSpacing(2 * GRID)
        where.addWidget(self.seam, 5)
        where.addWidget(self.level, 4)
        where.addWidget(self.spot, 5)
        where.addWidget(self.across)
        remark = QHBoxLayout()
        remark.setSpacing(2 * GRID)
        self._note_label = QLabel("Note", self)
        remark.addWidget(self._note_label)
        self.note_field.setMaximumWidth(10_000)
        self.note_field.setMinimumWidth(10 * GRID)
        remark.addWidget(self.note_field, 1)
        for layout in (amount, where, remark):
            self.column.addLayout(layout)
        self.column.setSpacing(GRID)
        self.column.setContentsMargins(EDGE, 2 * GRID, EDGE, 2 * GRID)

    def _connect(self) -> None:
        self.box.clicked.connect(self.on_switched)
        self.remove.clicked.connect(self.on_remove)
        for way in self.ways.values():
            way.chosen.connect(self.on_way)
        self.seam.chosen.connect(self.on_seam)
        self.level.chosen.connect(self.on_level)
        self.spot.chosen.connect(self.on_spot)

    # --- what is shown ---------------------------------------------------------------------

    def show_picture(self, picture: Picture) -> None:
        """Show the line, where there are so many."""
        change, fitting = self.of.get(picture.project), self._bench.fitting
        self.show_wanted(change is not None)
        if change is None or fitting is None:
            return
        self.name = field_of(self._bench.number, self.of.which)
        self.place = self._place(change)
        head = f"{self.of.which + 1}  {_HEADS[change.kind]}"
        self.box.setText(head)
        self.box.setAccessibleName(f"Line {self.of.which + 1}, {_HEADS[change.kind].lower()}, carried in")
        self.remove.setAccessibleName(f"Remove line {self.of.which + 1}")
        with QSignalBlocker(self.box):
            self.box.setChecked(change.on)
        self._show_way(change)
        self._show_where(change, fitting.panels, picture.project.design.style)
        self.across.show_project(picture)
        self.note_field.show_project(picture)
        super().show_picture(picture)

    def _place(self, change: Change) -> Place:
        line = change.kind if change.kind in ("neckline", "hem") else None
        if line == "neckline":
            return Place(field=self.name, line="neckline")
        return Place(field=self.name, level=change.level, seam=change.seam, line="hem" if line else None)

    def _show_way(self, change: Change) -> None:
        kind = "neckline" if change.kind == "hem" else change.kind
        for known, way in self.ways.items():
            way.setVisible(known == kind)
        self.ways[kind].show_value("less" if change.amount_mm < 0 else "more")

    def _show_where(self, change: Change, panels: tuple[int, int], style: Style) -> None:
        on_line = change.u is not None
        self.seam.setVisible(change.kind == "seam")
        self.level.setVisible(not on_line)
        self.spot.setVisible(on_line)
        self.across.setVisible(on_line)
        if change.kind == "seam":
            seams = [(seam, _upper(seam_said(seam, panels))) for seam in range(1, sum(panels))]
            self.seam.show_options(seams, change.seam)
        if not on_line:
            self.level.show_options(_level_options(change, style), change.level)
        else:
            self.spot.show_options(_spot_options(change.u or 0.0, panels), change.u)

    def remark(self, picture: Picture) -> tuple[str, Mark | None]:
        """What the draft has to say about the line, else what it comes to."""
        change = self.of.get(picture.project)
        for finding in picture.findings:
            if finding.place.field == self.name:
                project = picture.project
                return finding.text(project.unit, project.fraction), mark_of(finding)
        if change is None:
            return "", None
        if not change.amount_mm:
            return "Of nothing yet: type how much.", None
        return comes_to(change, picture.project.unit, picture.project.fraction), None

    def forget(self) -> None:
        """Hold on to nothing that was typed."""
        super().forget()
        self.across.forget()
        self.note_field.forget()

    # --- what she does ---------------------------------------------------------------------

    def on_switched(self, on: bool) -> None:
        """Carry the line into the draft, or not."""
        self._store("Switch a line on" if on else "Switch a line off", on=on)

    def on_way(self, way: object) -> None:
        """Turn it round; of nothing yet, it begins with one mark of the ruler."""
        project = self.desk.project
        change = self.of.get(project)
        if change is not None:
            amount = abs(change.amount_mm) or step_mm(project.unit, project.fraction)
            self._store("Turn a line round", amount_mm=-amount if way == "less" else amount)

    def on_seam(self, seam: object) -> None:
        """Pin it on another seam."""
        if isinstance(seam, int):
            self._store("Seam pinned", seam=seam)

    def on_level(self, level: object) -> None:
        """Pin it at another level."""
        self._store("Level pinned", level=str(level))

    def on_spot(self, u: object) -> None:
        """Pin it at another place."""
        if isinstance(u, float):
            self._store("Place pinned", u=u)

    def on_remove(self) -> None:
        """Take the line out."""
        changed = remove_pinned(self.desk.project, self._bench.number, self.of.which)
        self.desk.apply("Remove a line", changed)

    def _store(self, name: str, **entries: str | bool | float | int) -> None:
        try:
            project: Project = self.of.put(self.desk.project, **entries)
        except ValueError as error:
            self.say(str(error), "attend")
            return
        self.desk.apply(name, project)

    def target(self) -> QWidget | None:
        """How much."""
        return self.field


def _level_options(change: Change, style: Style) -> list[tuple[object, str]]:
    """The levels of the style, top down, and the one that is stored whatever it is."""
    levels = _LEVELS[style]
    if change.kind == "length":
        pairs = [
            (low, f"{LEVEL_LABEL[low]} to {LEVEL_LABEL[high].lower()}") for high, low in pairwise(levels)
        ]
        known: list[tuple[object, str]] = [*pairs]
    else:
        known = [(level, LEVEL_LABEL[level]) for level in levels]
    if change.level is not None and change.level not in [level for level, _ in known]:
        known.append((change.level, f"{LEVEL_LABEL[change.level]} (not in this style)"))
    return known


def _spot_options(u: float, panels: tuple[int, int]) -> list[tuple[object, str]]:
    """Seams, centre lines and the middle of every panel, and the place that is stored."""
    places = sorted({0.5 * half for half in range(2 * sum(panels) + 1)} | {u})
    return [(place, _upper(place_said(place, panels).removeprefix("at the "))) for place in places]


def _upper(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}"
