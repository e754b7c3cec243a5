"""Figures of the making: where each one comes from, and the edit that stores it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import field
from typing import Any

from workbench.document import (
    MAKING_ROWS,
    MakingRow,
    Project,
    set_allowance_of,
    set_boning,
    set_lacing,
    set_making,
    set_marks,
)
from workbench.frozen import dataclass
from workbench.ui.form.figures import Stored
from workbench.ui.form.kinds import Kind, LengthKind, next_step, plain, read_number

HAIR_IN, HAIR_CM = 25.4 / 32, 0.5
"""One step, mm, of figures that are a hair wide: 1/32 in, half a millimetre."""
_STORES: dict[str, Callable[..., Project]] = {
    "marks": set_marks,
    "opening": set_lacing,
    "boning": set_boning,
    "": set_making,
}


@dataclass(frozen=True)
class HairKind(LengthKind):
    """A length of a few hairs, stepped finely."""

    def step(self, project: Project) -> float:
        """A thirty-second of an inch, or half a millimetre."""
        return HAIR_CM if project.unit == "cm" else HAIR_IN


@dataclass(frozen=True)
class TimesKind:
    """A plain factor."""

    def read(self, text: str, project: Project) -> float:
        """The factor."""
        return read_number(text.replace("×", " "))

    def say(self, value: float, project: Project) -> str:
        """The factor with at most two decimals."""
        return plain(value)

    def suffix(self, project: Project) -> str:
        """The sign for times."""
        return "×"

    def step(self, project: Project) -> float:
        """A tenth."""
        return 0.1


@dataclass(frozen=True)
class Held:
    """Reads and stores one entry of the making, a figure or a choice."""

    group: str
    """The record that holds it; empty for the making itself."""
    key: str

    @property
    def name(self) -> str:
        """The path that findings use for the field."""
        return f"{self.group or 'making'}.{self.key}"

    def get(self, project: Project) -> Any:
        """What is stored."""
        record = getattr(project.making, self.group) if self.group else project.making
        return getattr(record, self.key)

    def put(self, project: Project, value: Any) -> Project:
        """The project with another."""
        if self.group == "allowances":
            return set_allowance_of(project, self.key, value)  # type: ignore[arg-type]  # checked by the edit
        return _STORES[self.group](project, **{self.key: value})


def row_of(group: str, key: str) -> MakingRow:
    """The row of the table for one figure of the making."""
    found: MakingRow = MAKING_ROWS[(group, key)]
    return found


def making_figure(group: str, key: str, kind: Kind | None = None) -> Stored:
    """One figure of the making, called as the table calls it."""
    held, row = Held(group, key), row_of(group, key)
    kind = kind or LengthKind(signed=row.low < 0)
    return Stored(held.name, row.label, row.label, kind, held.get, held.put)


@dataclass(frozen=True)
class Left:
    """A figure that may be left to the program: an empty field, and what is taken then as its estimate."""

    name: str
    label: str
    step_name: str
    get: Callable[[Project], float | None]
    put: Callable[[Project, float | None], Project]
    usual: Callable[[Project], float | None]
    """What is taken while nothing is typed; None where that is not known."""
    kind: Kind = field(default_factory=LengthKind)

    def stamp(self, project: Project) -> object:
        """The figure, or None."""
        return self.get(project)

    def text(self, project: Project) -> str:
        """The figure, or nothing."""
        value = self.get(project)
        return "" if value is None else self.kind.say(value, project)

    def estimate(self, project: Project) -> str:
        """What is taken while nothing is typed."""
        value = self.usual(project)
        return "" if value is None else self.kind.say(value, project)

    def suffix(self, project: Project) -> str:
        """The unit of its kind."""
        return self.kind.suffix(project)

    def typed(self, project: Project, text: str) -> Project:
        """The project with the figure read; with nothing typed, left to the program."""
        return self.put(project, self.kind.read(text, project) if text.strip() else None)

    def moved(self, project: Project, steps: int) -> Project:
        """The next mark on the ruler, beginning at what is taken now."""
        value = self.get(project)
        start = self.usual(project) if value is None else value
        if start is None:
            return project
        return self.put(project, next_step(start, steps, self.kind.step(project)))
