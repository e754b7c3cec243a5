"""How far she is drawn in: round the body and a quarter, side by side, at every level."""

from __future__ import annotations

from math import floor

from PySide6.QtWidgets import QPushButton, QWidget

from workbench.body import CAUTION_SHORT, LEVEL_LABEL, LEVELS, LevelName, say_exact, say_with_unit, step_mm
from workbench.document import (
    Picture,
    Project,
    set_front_share,
    set_opening,
    set_reduction,
    set_rule,
    take_the_most,
)
from workbench.draft import Judgement, Level, Place, Rule
from workbench.frozen import dataclass
from workbench.ui.desk import Desk
from workbench.ui.form.choice import Choice
from workbench.ui.form.field import FigureRow
from workbench.ui.form.figures import Stored
from workbench.ui.form.kinds import LengthKind, PartKind, in_words, plain
from workbench.ui.form.row import EDGE, Row, found_about
from workbench.ui.form.section import Heading, Remark, Section
from workbench.ui.look import GRID
from workbench.ui.marks import Mark

PAIR_WIDTH = 23 * GRID
QUARTERS = 4.0


@dataclass(frozen=True)
class _Reduction:
    """Reads and stores the reduction at one level, whole or in parts."""

    level: LevelName
    parts: float = 1.0

    def get(self, project: Project) -> float:
        """Millimetres in each part."""
        return project.design.reductions.at(self.level) / self.parts

    def put(self, project: Project, mm: float) -> Project:
        """The project with so much in each part."""
        return set_reduction(project, self.level, mm * self.parts)


def _figures(level: LevelName) -> tuple[Stored, Stored]:
    """The reduction round the body and a quarter: one number, said twice."""
    whole, quarter = _Reduction(level), _Reduction(level, QUARTERS)
    name, label = f"reductions.{level}", LEVEL_LABEL[level]
    step_name, kind = f"{label} reduction", LengthKind(signed=True)
    return (
        Stored(name, f"{label} reduction, round the body", step_name, kind, whole.get, whole.put),
        Stored(name, f"{label} reduction, a quarter", step_name, kind, quarter.get, quarter.put),
    )


class ReductionRow(FigureRow):
    """One level: its reduction said twice, and how that stands to her limit."""

    def __init__(self, desk: Desk, level: LevelName) -> None:
        place = Place(field=f"reductions.{level}", level=level)
        super().__init__(desk, *_figures(level), label=LEVEL_LABEL[level], width=PAIR_WIDTH, place=place)
        self.level = level
        self.words = f"{self.words} reduction ease"

    def show_picture(self, picture: Picture) -> None:
        """Show it where the style has the level and the rule lets it have a figure of its own."""
        design = picture.project.design
        shared = design.rule == "one_figure"
        self.show_wanted(self.level in design.levels and not (shared and self.level == "underbust"))
        if self.level == "waist":
            self.label.setText("Waist and underbust" if shared else "Waist")
        super().show_picture(picture)

    def remark(self, picture: Picture) -> tuple[str, Mark | None]:
        """The percentage, and the limit it is within, near or above."""
        outcome, comfort = picture.outcome, picture.comfort
        if outcome is None or comfort is None or self.level not in outcome.design.levels:
            return "", None
        words, mark = _judged(outcome.level(self.level), comfort.at(self.level), picture.project)
        if self.level == "waist" and outcome.design.rule == "one_figure":
            ribs, ribs_mark = _judged(outcome.level("underbust"), comfort.at("underbust"), picture.project)
            # One note has room for one mark: the weightier of the two.
            heavier = mark if _WEIGHT.index(mark) <= _WEIGHT.index(ribs_mark) else ribs_mark
            return f"Waist: {words}\nUnderbust: {ribs}", heavier
        return words, mark


_WEIGHT: tuple[Mark | None, ...] = ("over", "near", "within", None)


def say_down(mm: float, project: Project) -> str:
    """A largest length, to the step below: rounded up it would name a figure that passes the limit."""
    step = step_mm(project.unit, project.fraction)
    return in_words(floor(mm / step + 1e-9) * step, project)


def _judged(level: Level, judgement: Judgement, project: Project) -> tuple[str, Mark | None]:
    said = in_words(abs(level.reduction), project)
    amount = f"{said} ease" if level.reduction < 0 else f"{said}, {level.percent:.1f} %"
    if judgement.most is None:
        return (amount if level.reduction else ""), None
    most = say_down(judgement.most, project)
    if judgement.status == "over":
        return f"{amount}: above the limit you set, {most} ({judgement.reason}).", "over"
    if judgement.status == "near":
        return f"{amount}: near the limit you set, {most} ({judgement.reason}).", "near"
    if not level.reduction and level.name != "waist":
        return "", None
    return f"{amount}: within {judgement.reason}, at most {most}.", "within"


class RuleRow(Row):
    """Whether waist and underbust share one figure."""

    def __init__(self, desk: Desk) -> None:
        super().__init__("rule", "Waist and underbust")
        self._desk = desk
        self.words = "waist and underbust rule one figure own figure"
        self.choice = Choice(
            "Waist and underbust", (("own_figure", "Own figure each"), ("one_figure", "One figure"))
        )
        self.column.addWidget(self.choice)
        self.choice.chosen.connect(self.on_chosen)

    def on_chosen(self, rule: object) -> None:
        """Store it."""
        wanted: Rule = "one_figure" if rule == "one_figure" else "own_figure"
        self._desk.apply("One figure or own figure", set_rule(self._desk.project, wanted))

    def show_picture(self, picture: Picture) -> None:
        """Show which it is, and what one figure hides."""
        self.choice.show_value(picture.project.design.rule)
        self.say(*found_about(self.name, picture))

    def target(self) -> QWidget | None:
        """The button that is in."""
        return self.choice.button(self.choice.value)


class MostRow(Row):
    """The most that keeps every limit, and a button that takes it."""

    def __init__(self, desk: Desk) -> None:
        super().__init__("most", "")
        self._desk = desk
        self.words = "most that keeps every limit take it"
        self.button = QPushButton("Take it", self)
        self.button.setAccessibleName("Take the most that keeps every limit")
        self.line.addWidget(self.button)
        self.column.setContentsMargins(EDGE, 2 * GRID, EDGE, GRID)
        self.button.clicked.connect(self.on_clicked)

    def show_picture(self, picture: Picture) -> None:
        """Say how much that is."""
        comfort, project = picture.comfort, picture.project
        self.button.setEnabled(comfort is not None and _taken(picture) != project)
        if comfort is None:
            self.label.setText("The most that keeps every limit is known once bust and waist are.")
            return
        self.label.setText(f"The most that keeps every limit: {_most(comfort.largest_reduction, project)}.")

    def on_clicked(self) -> None:
        """Take it."""
        self._desk.apply("Most that keeps every limit", _taken(self._desk.picture))

    def target(self) -> QWidget | None:
        """The button."""
        return self.button


def _most(mm: float, project: Project) -> str:
    """The figure that would be taken, round the waist and a quarter; less than nothing is ease."""
    step = step_mm(project.unit, project.fraction)
    down = floor(mm / step + 1e-9) * step
    if not down:
        return "nothing, at these girths"
    whole = in_words(abs(down), project)
    quarter = say_exact(abs(down) / QUARTERS, project.unit)
    ease = " ease" if down < 0 else ""
    return f"{whole}{ease} round the waist, {quarter} {project.unit} a quarter"


def _taken(picture: Picture) -> Project:
    """The project with the most taken, rounded down to a whole step."""
    project = picture.project
    if picture.comfort is None:
        return project
    return take_the_most(project, picture.comfort, step_mm(project.unit, project.fraction))


class CautionRow(Remark):
    """The usual caution, wherever a reduction is chosen."""

    def __init__(self) -> None:
        super().__init__(CAUTION_SHORT, "attend")
        self.column.setContentsMargins(EDGE, 2 * GRID, EDGE, GRID)

    def is_called(self, wanted: str) -> bool:
        """A search for reductions finds it with them."""
        return "reduction".startswith(wanted.lower())


def _opening(project: Project) -> float:
    return project.design.opening_mm


def _front_share(project: Project) -> float:
    return project.design.front_share


class Reduction(Section):
    """The fourth section."""

    title = "Reduction"

    def fill(self) -> None:
        """The rule, every level from the top down, the most, and what lies beside it."""
        self.add(RuleRow(self.desk))
        self.add(Heading("", "Round the body", "A quarter", width=PAIR_WIDTH))
        for level in reversed(LEVELS):
            self.add(ReductionRow(self.desk, level))
        self.add(MostRow(self.desk))
        self.add(CautionRow())
        opening = Stored("opening_mm", "Opening at the back", "Opening", LengthKind(), _opening, set_opening)
        label = "Front’s share"
        share = Stored("front_share", label, label, PartKind(), _front_share, set_front_share)
        self.add(FigureRow(self.desk, opening, width=PAIR_WIDTH))
        self.add(FigureRow(self.desk, share, width=PAIR_WIDTH))

    def summary(self, picture: Picture) -> str:
        """The waist's, round the body and in hundredths."""
        project = picture.project
        said = say_with_unit(project.design.reductions.waist, project.unit, project.fraction)
        if picture.outcome is None:
            return f"waist {said}"
        return f"waist {said}, {plain(round(picture.outcome.level('waist').percent, 1))} %"

    def row_of(self, field: str, seam: int | None) -> Row | None:
        """One figure for waist and underbust stands in the row of the waist."""
        shared = self.desk.project.design.rule == "one_figure" and field == "reductions.underbust"
        return super().row_of("reductions.waist" if shared else field, seam)

    def has(self, field: str) -> bool:
        """Reductions and what belongs to them."""
        return field.startswith("reductions.") or field in ("opening_mm", "front_share", "rule")
