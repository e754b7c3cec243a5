"""Figures: where each one in the form comes from, and the edit that stores it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Protocol

from workbench.body import BY_KEY, Measurement, say_length, shown, step_mm
from workbench.document import Project, set_measurement
from workbench.frozen import dataclass
from workbench.ui.form.kinds import Kind, next_step


class Figure(Protocol):
    """One figure of a project that can be typed and stepped."""

    @property
    def name(self) -> str:
        """The path that findings use for the field."""

    @property
    def label(self) -> str:
        """What the field is called, in a sentence about it too."""

    @property
    def step_name(self) -> str:
        """What undo calls an edit of it."""

    def stamp(self, project: Project) -> object:
        """The stored value, to tell whether it has changed."""

    def text(self, project: Project) -> str:
        """What the field shows."""

    def suffix(self, project: Project) -> str:
        """The unit behind it."""

    def typed(self, project: Project, text: str) -> Project:
        """The project with what was typed; ValueError with one sentence where it cannot be read."""

    def moved(self, project: Project, steps: int) -> Project:
        """The project with the figure so many steps further on."""


@dataclass(frozen=True)
class Stored:
    """A figure that the project stores as a number."""

    name: str
    label: str
    step_name: str
    kind: Kind
    get: Callable[[Project], float]
    put: Callable[[Project, float], Project]

    def stamp(self, project: Project) -> object:
        """The number."""
        return self.get(project)

    def text(self, project: Project) -> str:
        """The number as its kind is written."""
        return self.kind.say(self.get(project), project)

    def suffix(self, project: Project) -> str:
        """The unit of its kind."""
        return self.kind.suffix(project)

    def typed(self, project: Project, text: str) -> Project:
        """The project with the number read."""
        return self.put(project, self.kind.read(text, project))

    def moved(self, project: Project, steps: int) -> Project:
        """The project with the next number on the ruler of its kind."""
        return self.put(project, next_step(self.get(project), steps, self.kind.step(project)))


@dataclass(frozen=True)
class Taken:
    """A measurement: stored as it was typed, and empty where it was not taken."""

    key: str

    @property
    def measurement(self) -> Measurement:
        """Its row in the table."""
        return BY_KEY[self.key]

    @property
    def name(self) -> str:
        """As findings name it."""
        return f"measurements.{self.key}"

    @property
    def label(self) -> str:
        """As the table names it."""
        return self.measurement.label

    @property
    def step_name(self) -> str:
        """What undo calls it."""
        return f"{self.label} measurement"

    def stamp(self, project: Project) -> object:
        """The length, or None."""
        return project.measurements.get(self.key)

    def text(self, project: Project) -> str:
        """As typed where it was typed in the unit on show."""
        length = project.measurements.get(self.key)
        return "" if length is None else shown(length, project.unit, project.fraction)

    def suffix(self, project: Project) -> str:
        """Inches or centimetres."""
        return project.unit

    def typed(self, project: Project, text: str) -> Project:
        """The project with it taken; blank means that it was not."""
        return set_measurement(project, self.key, text)

    def moved(self, project: Project, steps: int) -> Project:
        """The next mark on the tape. An estimate is no measurement and does not step."""
        length = project.measurements.get(self.key)
        if length is None:
            return project
        mm = next_step(length.mm, steps, step_mm(project.unit, project.fraction))
        return set_measurement(project, self.key, say_length(mm, project.unit, project.fraction))
