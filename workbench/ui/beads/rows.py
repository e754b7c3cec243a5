"""Rows that only the bead plan has: buttons for kinds, one of a few, panels, weights."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QPushButton, QSizePolicy, QWidget

from workbench.beads import BeadKind, BeadMark, BeadWeight
from workbench.document import Picture, Project, set_run, set_scatter
from workbench.draft import panel_name
from workbench.ui.beads.figures import WEIGHT, Blank, run_of, scatter_of
from workbench.ui.beads.sprites import MARK_WORDS, MARKS, draw_bead
from workbench.ui.desk import Desk
from workbench.ui.form.choice import Choice, Segment
from workbench.ui.form.field import FigureRow
from workbench.ui.form.figures import Figure, Stored
from workbench.ui.form.row import EDGE, Row, found_about
from workbench.ui.look import GRID
from workbench.ui.marks import Mark, mark_of
from workbench.ui.plain import plain_tip

FIELD = 27 * GRID
NAME_FIELD = 44 * GRID
_BEAD = 12.0


def told_about(name: str, picture: Picture) -> tuple[str, Mark | None]:
    """What the plan has to say about a field, else what the draft has."""
    beading = vars(picture).get("beading")  # only where it is worked out: a row places no beads
    for finding in beading.findings if beading is not None else ():
        if finding.severity != "note" and finding.place.field == name:
            return finding.text(picture.project.unit, picture.project.fraction), mark_of(finding)
    return found_about(name, picture)


class BeadRow(FigureRow):
    """One figure of the plan, with what is to be known about it where nothing is amiss."""

    def __init__(self, desk: Desk, figure: Figure, remark: str = "", width: int = FIELD) -> None:
        super().__init__(desk, figure, width=width)
        self._remark = remark

    def remark(self, picture: Picture) -> tuple[str, Mark | None]:
        """What is amiss with it, else what is always true of it."""
        words, mark = told_about(self.name, picture)
        return (words, mark) if words else (self._remark, None)


class BlankRow(BeadRow):
    """A figure that may be left empty: what it follows from stands softly in it."""

    def __init__(self, desk: Desk, figure: Blank, remark: str = "") -> None:
        super().__init__(desk, figure, remark)
        self._blank = figure

    def show_picture(self, picture: Picture) -> None:
        """Show it, or what it is worked out to be."""
        self.field.show_project(picture, self._blank.estimate(picture.project))
        if not self.trouble:
            self.say(*self.remark(picture))


class PickRow(Row):
    """One of a few, the buttons under the label."""

    def __init__(
        self,
        desk: Desk,
        name: str,
        label: str,
        options: Sequence[tuple[object, str]],
        get: Callable[[Project], object],
        put: Callable[[Project, object], Project],
        remark: str = "",
    ) -> None:
        super().__init__(name, label)
        self.desk, self._get, self._put, self._remark = desk, get, put, remark
        self.words = " ".join((label, *(text for _, text in options))).lower()
        self.choice = Choice(label, options, self)
        self.column.addWidget(self.choice)
        self.column.setContentsMargins(EDGE, GRID, EDGE, GRID)
        self.choice.chosen.connect(self.on_chosen)

    def show_picture(self, picture: Picture) -> None:
        """Show which it is, and what is amiss with it."""
        self.choice.show_value(self._get(picture.project))
        words, mark = told_about(self.name, picture)
        self.say(*((words, mark) if words else (self._remark, None)))

    def on_chosen(self, value: object) -> None:
        """Store it."""
        try:
            project = self._put(self.desk.project, value)
        except ValueError as error:
            self.desk.refuse(self.name, str(error))
            return
        self.desk.apply(self.label.text(), project)

    def target(self) -> QWidget | None:
        """The button that is in."""
        return self.choice.button(self.choice.value) if self.choice.value is not None else None


class BeadButton(Segment):
    """A button with a bead on it; a long name is cut short, and the tip says all of it."""

    def __init__(self) -> None:
        super().__init__("", "")
        self._mark: BeadMark = "disc"
        self._kind = ""
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)

    def show_bead(self, kind: BeadKind, name: str, words: str = "") -> None:
        """Another kind; ``name`` is what a screen reader says, ``words`` stands instead of its name."""
        self._mark, self._kind = kind.mark, words or kind.name
        self.setToolTip(plain_tip(kind.name))
        self.setAccessibleName(name)
        self._cut_short()
        self.update()

    def _cut_short(self) -> None:
        room = max(self.width() - 9 * GRID, 2 * GRID)
        text = self.fontMetrics().elidedText(self._kind, Qt.TextElideMode.ElideRight, room)
        # blanks keep the text clear of the bead
        self.setText(f"     {text}")

    def resizeEvent(self, event: QResizeEvent) -> None:
        """As much of the name as there is room for."""
        super().resizeEvent(event)
        self._cut_short()

    def paintEvent(self, event: QPaintEvent) -> None:
        """The slip of paper, and the bead before its name."""
        super().paintEvent(event)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        left = 0.5 * (self.width() - self.fontMetrics().horizontalAdvance(self.text()))
        draw_bead(painter, self._mark, QPointF(max(left, 4.0) + 6.0, 0.5 * self.height()), _BEAD)
        painter.end()


class KindButtons(QWidget):
    """A button for every kind of the plan, two in a line."""

    pressed = Signal(int)
    """The number of the kind."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.buttons: list[BeadButton] = []
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(2)

    def show_kinds(self, kinds: Sequence[BeadKind], deed: str) -> None:
        """Show the kinds; ``deed`` says what pressing one does, with ``{}`` for its name."""
        while len(self.buttons) < len(kinds):
            button = BeadButton()
            number = len(self.buttons)
            self.buttons.append(button)
            button.clicked.connect(self.on_clicked)
            self._grid.addWidget(button, number // 2, number % 2)
        for number, button in enumerate(self.buttons):
            button.setVisible(number < len(kinds))
            if number < len(kinds):
                button.show_bead(kinds[number], deed.format(kinds[number].name))

    def show_checked(self, numbers: Sequence[int]) -> None:
        """Show which are in."""
        for number, button in enumerate(self.buttons):
            button.setChecked(number in numbers)

    def on_clicked(self) -> None:
        """Say which it was."""
        sender = self.sender()
        if isinstance(sender, BeadButton):
            self.pressed.emit(self.buttons.index(sender))


class MarkRow(Row):
    """The marks a kind can be shown by, each drawn on its button."""

    def __init__(self, get: Callable[[Project], BeadMark], chosen: Callable[[BeadMark], None]) -> None:
        super().__init__("beads.kinds.mark", "Shown as")
        self._get, self._chosen = get, chosen
        self.words = " ".join(("shown as mark", *MARK_WORDS.values())).lower()
        self.buttons: dict[BeadMark, BeadButton] = {}
        grid = QGridLayout()
        grid.setSpacing(2)
        for place, mark in enumerate(MARKS):
            button = self.buttons[mark] = BeadButton()
            button.show_bead(BeadKind(MARK_WORDS[mark], 1.0, mark=mark), f"Shown as: {MARK_WORDS[mark]}")
            button.clicked.connect(self.on_clicked)
            grid.addWidget(button, place // 2, place % 2)
        self.column.addLayout(grid)
        self.column.setContentsMargins(EDGE, GRID, EDGE, GRID)

    def show_picture(self, picture: Picture) -> None:
        """Show which it is."""
        for mark, button in self.buttons.items():
            button.setChecked(mark == self._get(picture.project))

    def on_clicked(self) -> None:
        """Show it so."""
        sender = self.sender()
        self._chosen(next(mark for mark, button in self.buttons.items() if button is sender))

    def target(self) -> QWidget | None:
        """The first mark."""
        return next(iter(self.buttons.values()))


class PatternRow(Row):
    """The kinds of a run one after the other: press kinds to add them, take out the first or the last."""

    def __init__(self, desk: Desk, number: int) -> None:
        super().__init__(f"beads.runs.{number}.pattern", "Beads in turn")
        self.desk, self._number = desk, number
        self.words = "beads in turn kinds pattern sizes"
        self.kinds = KindButtons(self)
        self.front = QPushButton("Take out the first", self)
        self.back = QPushButton("Take out the last", self)
        self.column.addWidget(self.kinds)
        beside = QHBoxLayout()
        for button in (self.front, self.back):
            button.setObjectName("quiet")
            beside.addWidget(button)
        beside.addStretch(1)
        self.column.addLayout(beside)
        self.column.setContentsMargins(EDGE, GRID, EDGE, GRID)
        self.kinds.pressed.connect(self.on_kind)
        self.front.clicked.connect(self.on_front)
        self.back.clicked.connect(self.on_back)

    def show_picture(self, picture: Picture) -> None:
        """Show the kinds to press, and how they follow each other."""
        run = run_of(picture.project, self._number)
        self.kinds.show_kinds(picture.project.beads.kinds, "Add {} to the pattern")
        kinds = [kind.name for kind in picture.project.beads.kinds]
        self.kinds.show_checked([kinds.index(name) for name in run.pattern])
        for button in (self.front, self.back):
            button.setEnabled(len(run.pattern) > 1)
        again = ", then from the first again" if len(run.pattern) > 1 else ""
        words, mark = told_about(self.name, picture)
        self.say(*((words, mark) if words else (f"{', '.join(run.pattern)}{again}.", None)))

    def on_kind(self, kind: int) -> None:
        """One more of this kind at the end."""
        project = self.desk.project
        name = project.beads.kinds[kind].name
        self._store((*run_of(project, self._number).pattern, name))

    def on_front(self) -> None:
        """Without the first one."""
        self._store(run_of(self.desk.project, self._number).pattern[1:])

    def on_back(self) -> None:
        """Without the last one."""
        self._store(run_of(self.desk.project, self._number).pattern[:-1])

    def _store(self, pattern: tuple[str, ...]) -> None:
        try:
            project = set_run(self.desk.project, self._number, pattern=pattern)
        except ValueError as error:
            self.desk.refuse(self.name, str(error))
            return
        self.desk.apply("Beads in turn", project)
        self.desk.now()

    def target(self) -> QWidget | None:
        """The first kind."""
        return self.kinds.buttons[0] if self.kinds.buttons else None


class PanelsRow(Row):
    """The panels that a scatter goes over: a button each."""

    def __init__(self, desk: Desk, number: int) -> None:
        super().__init__(f"beads.scatters.{number}.panels", "Over the panels")
        self.desk, self._number = desk, number
        self.buttons: list[Segment] = []
        self._grid = QGridLayout()
        self._grid.setSpacing(2)
        self.column.addLayout(self._grid)
        self.column.setContentsMargins(EDGE, GRID, EDGE, GRID)

    def show_picture(self, picture: Picture) -> None:
        """Every panel of the half; those in are strewn with beads."""
        design, panels = picture.project.design, scatter_of(picture.project, self._number).panels
        count = max(design.panel_count, *(panel + 1 for panel in panels), 0)
        while len(self.buttons) < count:
            button = Segment("", "")
            button.clicked.connect(self.on_clicked)
            self._grid.addWidget(button, len(self.buttons) // 3, len(self.buttons) % 3)
            self.buttons.append(button)
        for number, button in enumerate(self.buttons):
            there = number < design.panel_count
            name = panel_name(number, design) if there else f"No. {number + 1}"
            button.setText(name)
            button.setAccessibleName(f"{name} strewn with beads")
            button.setVisible(number < count)
            button.setChecked(number in panels)
        self.say(*told_about(self.name, picture))

    def on_clicked(self) -> None:
        """Strew these."""
        panels = tuple(number for number, button in enumerate(self.buttons) if button.isChecked())
        project = set_scatter(self.desk.project, self._number, panels=panels)
        self.desk.apply("Panels of a scatter", project)

    def target(self) -> QWidget | None:
        """The first panel."""
        return self.buttons[0] if self.buttons else None


class MixRow(Row):
    """How often each kind comes in a scatter: a weight beside each, nothing for one that does not."""

    def __init__(self, desk: Desk, number: int) -> None:
        super().__init__(f"beads.scatters.{number}.mix", "Kinds, and how often")
        self.desk, self._number = desk, number
        self.words = "kinds mix how often weight"
        self.kinds = KindButtons(self)
        self.column.addWidget(self.kinds)
        self.column.setContentsMargins(EDGE, GRID, EDGE, GRID)
        self.kinds.pressed.connect(self.on_kind)

    def show_picture(self, picture: Picture) -> None:
        """Which are in it, and their shares in words."""
        plan, mix = picture.project.beads, scatter_of(picture.project, self._number).mix
        self.kinds.show_kinds(plan.kinds, "{} in the mix")
        kinds = [kind.name for kind in plan.kinds]
        self.kinds.show_checked([kinds.index(part.kind) for part in mix])
        words, mark = told_about(self.name, picture)
        total = sum(part.weight for part in mix)
        shares = ", ".join(f"{100 * part.weight / total:.0f} % {part.kind}" for part in mix) if total else ""
        self.say(*((words, mark) if words else (shares, None)))

    def on_kind(self, kind: int) -> None:
        """Put a kind into the mix, or take it out unless it is the only one."""
        project = self.desk.project
        name = project.beads.kinds[kind].name
        mix = scatter_of(project, self._number).mix
        others = tuple(part for part in mix if part.kind != name)
        new = others if len(others) < len(mix) else (*mix, BeadWeight(name))
        if new:
            self.desk.apply("Mix of a scatter", set_scatter(project, self._number, mix=new))
        self.desk.now()

    def target(self) -> QWidget | None:
        """The first kind."""
        return self.kinds.buttons[0] if self.kinds.buttons else None


class WeightRow(BeadRow):
    """How often one kind of the mix comes, against the others; there only for a kind that is in it."""

    def __init__(self, desk: Desk, number: int, part: int) -> None:
        self._number, self._part = number, part
        figure = Stored(
            f"beads.scatters.{number}.mix.{part}", "How often", "Mix of a scatter", WEIGHT,
            lambda project: scatter_of(project, number).mix[part].weight, self._put,
        )  # fmt: skip
        super().__init__(desk, figure)

    def _put(self, project: Project, weight: float) -> Project:
        mix = scatter_of(project, self._number).mix
        new = replace(mix[self._part], weight=weight)
        return set_scatter(project, self._number, mix=(*mix[: self._part], new, *mix[self._part + 1 :]))

    def show_picture(self, picture: Picture) -> None:
        """Show it where the mix has so many kinds."""
        mix = scatter_of(picture.project, self._number).mix
        there = len(mix) > 1 and self._part < len(mix)
        self.show_wanted(there)
        if there:
            self.show_label(f"{mix[self._part].kind}, parts")
            self.field.setAccessibleName(f"{mix[self._part].kind}, parts in the mix")
            super().show_picture(picture)


class RemoveRow(Row):
    """Takes the run, the scatter or the kind out of the plan."""

    def __init__(self, text: str) -> None:
        super().__init__("", "")
        self.label.hide()
        self.words = text.lower()
        self.button = QPushButton(text, self)
        self.button.setObjectName("quiet")
        self.line.addWidget(self.button)
        self.line.addStretch(1)
        self.column.setContentsMargins(EDGE - 2 * GRID, 2 * GRID, EDGE, GRID)

    def target(self) -> QWidget | None:
        """The button."""
        return self.button
