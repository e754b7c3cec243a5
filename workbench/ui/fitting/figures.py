"""Figures and texts of the fitting on show: which they are follows what is chosen."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from workbench.body import read_length, say_exact, step_mm
from workbench.document import Project, set_fitting, set_gap, set_pinned
from workbench.fitting import Change, Fitting
from workbench.ui.form.figures import Stored
from workbench.ui.form.kinds import LengthKind, PartKind, next_step
from workbench.ui.form.prose import Written

TextName = Literal["date", "cloth", "notes"]
GapName = Literal["top", "waist", "hem"]
NumberOf = Callable[[], int]
"""The number of the fitting on show."""


def shown_fitting(project: Project, number_of: NumberOf) -> Fitting | None:
    """The fitting on show, in some project; None where there is none."""
    number = number_of()
    return project.fittings[number] if 0 <= number < len(project.fittings) else None


def fitting_text(name: TextName, label: str, number_of: NumberOf) -> Written:
    """A line of text about the fitting on show."""

    def get(project: Project) -> str:
        fitting = shown_fitting(project, number_of)
        return str(getattr(fitting, name)) if fitting is not None else ""

    def put(project: Project, text: str) -> Project:
        return set_fitting(project, number_of(), **{name: text})

    return Written(f"fitting.{name}", label, f"{label} of a fitting", get, put)


@dataclass(frozen=True)
class Gap:
    """One gap of the opening as it was measured; empty where it was not."""

    where: GapName
    label: str
    number_of: NumberOf

    @property
    def name(self) -> str:
        """The path by which the field is known."""
        return f"fitting.gaps.{self.where}"

    @property
    def step_name(self) -> str:
        """What undo calls it."""
        return f"Opening at the {self.where}"

    def stamp(self, project: Project) -> object:
        """The gap and whose it is."""
        return self.number_of(), self._mm(project)

    def text(self, project: Project) -> str:
        """As a fraction where it is one."""
        mm = self._mm(project)
        return "" if mm is None else say_exact(mm, project.unit)

    def suffix(self, project: Project) -> str:
        """Inches or centimetres."""
        return project.unit

    def typed(self, project: Project, text: str) -> Project:
        """The project with it measured; blank means that it was not."""
        mm = read_length(text, project.unit).mm if text.strip() else None
        return set_gap(project, self.number_of(), self.where, mm)

    def moved(self, project: Project, steps: int) -> Project:
        """The next mark on the tape; what was not measured does not step."""
        mm = self._mm(project)
        if mm is None:
            return project
        moved = next_step(mm, steps, step_mm(project.unit, project.fraction))
        return set_gap(project, self.number_of(), self.where, max(moved, 0.0))

    def _mm(self, project: Project) -> float | None:
        fitting = shown_fitting(project, self.number_of)
        return getattr(fitting.gaps, self.where) if fitting is not None else None


@dataclass(frozen=True)
class OfChange:
    """One line of the fitting on show."""

    which: int
    number_of: NumberOf

    def get(self, project: Project) -> Change | None:
        """The line; None where there are not so many."""
        fitting = shown_fitting(project, self.number_of)
        known = fitting is not None and self.which < len(fitting.changes)
        return fitting.changes[self.which] if fitting is not None and known else None

    def put(self, project: Project, **entries: str | bool | float | int | None) -> Project:
        """The project with other entries of it."""
        return set_pinned(project, self.number_of(), self.which, **entries)


def amount_figure(line: OfChange) -> Stored:
    """How much; whether it is taken in or let out is said beside it."""

    def get(project: Project) -> float:
        change = line.get(project)
        return abs(change.amount_mm) if change is not None else 0.0

    def put(project: Project, mm: float) -> Project:
        change = line.get(project)
        less = change is not None and change.amount_mm < 0
        return line.put(project, amount_mm=-mm if less else mm)

    name = f"fitting.changes.{line.which}"
    return Stored(name, f"Line {line.which + 1}", "Amount pinned", LengthKind(signed=True), get, put)


def across_figure(line: OfChange) -> Stored:
    """How far across its panel a place lies; at a seam nought of the panel behind it."""

    def get(project: Project) -> float:
        change = line.get(project)
        return (change.u or 0.0) % 1 if change is not None else 0.0

    def put(project: Project, part: float) -> Project:
        change = line.get(project)
        panel = int(change.u or 0.0) if change is not None else 0
        if not 0 <= part <= 1:
            raise ValueError("The place across the panel must lie between 0 and 100 %.")
        return line.put(project, u=panel + part)

    name = f"fitting.changes.{line.which}.u"
    return Stored(name, f"Line {line.which + 1}, across", "Place pinned", PartKind(), get, put)


def change_note(line: OfChange) -> Written:
    """What is remarked about a line."""

    def get(project: Project) -> str:
        change = line.get(project)
        return change.note if change is not None else ""

    def put(project: Project, text: str) -> Project:
        return line.put(project, note=text)

    label = f"Line {line.which + 1}, note"
    return Written(f"fitting.changes.{line.which}.note", label, "Note of a line", get, put)
