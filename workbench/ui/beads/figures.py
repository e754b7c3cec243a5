"""Figures of the bead plan: where each one comes from, and the edit that stores it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from workbench.beads import BeadKind, BeadRun, BeadScatter
from workbench.document import Project, set_bands, set_beading, set_kind, set_run, set_scatter
from workbench.ui.cloth.figures import Amount, PercentKind, money_reader
from workbench.ui.form.figures import Stored
from workbench.ui.form.kinds import Kind, LengthKind, PartKind, next_step, plain, read_number
from workbench.ui.form.prose import Written

SQUARE_CM, CM = 6.4516, 2.54


@dataclass(frozen=True)
class NumberKind:
    """A plain number, stored by the inch where it is a density; ``in_cm`` is how many cm that is."""

    unit: str = ""
    one: float = 1.0
    in_cm: float = 1.0
    unit_cm: str = ""

    def read(self, text: str, project: Project) -> float:
        """The stored number."""
        return read_number(text) * (self.in_cm if project.unit == "cm" else 1.0)

    def say(self, value: float, project: Project) -> str:
        """At most two decimals."""
        return plain(value / (self.in_cm if project.unit == "cm" else 1.0))

    def suffix(self, project: Project) -> str:
        """What it counts by."""
        return self.unit_cm if project.unit == "cm" and self.unit_cm else self.unit

    def step(self, project: Project) -> float:
        """One step, as stored."""
        return self.one * (self.in_cm if project.unit == "cm" else 1.0)


@dataclass(frozen=True)
class CountKind:
    """A whole number."""

    def read(self, text: str, project: Project) -> float:
        """The number; ValueError for parts of one."""
        value = read_number(text)
        if value != int(value):
            raise ValueError("This is counted in whole ones.")
        return value

    def say(self, value: float, project: Project) -> str:
        """Without decimals."""
        return plain(value)

    def suffix(self, project: Project) -> str:
        """None."""
        return ""

    def step(self, project: Project) -> float:
        """One."""
        return 1.0


PER_SQUARE = NumberKind("/in²", 1.0, SQUARE_CM, "/cm²")
PER_LENGTH = NumberKind("/in", 0.5, CM, "/cm")
PER_MINUTE = NumberKind("/min", 0.5)
WEIGHT = NumberKind("", 1.0)
MILLIMETRES = NumberKind("mm", 0.5)
"""Beads are sold by their size in millimetres whatever the unit of the cloth."""


@dataclass(frozen=True)
class Blank:
    """A figure that may be left empty, and then follows from others."""

    name: str
    label: str
    step_name: str
    kind: Kind
    get: Callable[[Project], float | None]
    put: Callable[[Project, float | None], Project]
    follows: Callable[[Project], float]
    """What it is while it is empty."""

    def stamp(self, project: Project) -> object:
        """The number or None."""
        return self.get(project)

    def text(self, project: Project) -> str:
        """Nothing where it is empty."""
        value = self.get(project)
        return "" if value is None else self.kind.say(value, project)

    def estimate(self, project: Project) -> str:
        """What stands softly in the empty field."""
        return self.kind.say(self.follows(project), project)

    def suffix(self, project: Project) -> str:
        """The unit of its kind."""
        return self.kind.suffix(project)

    def typed(self, project: Project, text: str) -> Project:
        """An emptied field follows again."""
        return self.put(project, self.kind.read(text, project) if text.strip() else None)

    def moved(self, project: Project, steps: int) -> Project:
        """From what it is, or from what it follows."""
        value = self.get(project)
        start = self.follows(project) if value is None else value
        return self.put(project, next_step(start, steps, self.kind.step(project)))


def run_of(project: Project, number: int) -> BeadRun:
    """One run of the plan."""
    return project.beads.runs[number]


def scatter_of(project: Project, number: int) -> BeadScatter:
    """One scatter of the plan."""
    return project.beads.scatters[number]


def kind_of(project: Project, number: int) -> BeadKind:
    """One kind of the plan."""
    return project.beads.kinds[number]


def run_figure(number: int, key: str, label: str, kind: Kind) -> Stored:
    """A figure of a run."""

    def put(project: Project, value: float) -> Project:
        return set_run(project, number, **{key: _as_stored(run_of(project, number), key, value)})

    return Stored(
        f"beads.runs.{number}.{key}", label, f"{label} of a run", kind,
        lambda project: float(getattr(run_of(project, number), key)), put,
    )  # fmt: skip


def scatter_figure(number: int, key: str, label: str, kind: Kind) -> Stored:
    """A figure of a scatter."""

    def put(project: Project, value: float) -> Project:
        return set_scatter(project, number, **{key: _as_stored(scatter_of(project, number), key, value)})

    return Stored(
        f"beads.scatters.{number}.{key}", label, f"{label} of a scatter", kind,
        lambda project: float(getattr(scatter_of(project, number), key)), put,
    )  # fmt: skip


def run_name(number: int) -> Written:
    """What a run is called."""
    return Written(
        f"beads.runs.{number}.name", "Name", "Name of a run",
        lambda project: run_of(project, number).name,
        lambda project, text: set_run(project, number, name=text),
    )  # fmt: skip


def scatter_name(number: int) -> Written:
    """What a scatter is called."""
    return Written(
        f"beads.scatters.{number}.name", "Name", "Name of a scatter",
        lambda project: scatter_of(project, number).name,
        lambda project, text: set_scatter(project, number, name=text),
    )  # fmt: skip


def band_figure(key: str, label: str) -> Stored:
    """The width of a band."""
    return Stored(
        f"beads.bands.{key}", label, label, LengthKind(),
        lambda project: float(getattr(project.beads.bands, key)),
        lambda project, value: set_bands(project, **{key: value}),
    )  # fmt: skip


def plan_figure(key: str, label: str, kind: Kind) -> Stored:
    """A figure of the plan itself."""
    return Stored(
        f"beads.{key}", label, label, kind,
        lambda project: float(getattr(project.beads, key)),
        lambda project, value: set_beading(project, **{key: value}),
    )  # fmt: skip


RESERVE = plan_figure("reserve_percent", "Reserve", PercentKind())
RATE = plan_figure("per_minute", "Beads sewn on", PER_MINUTE)
SPACINGS = (("spacing_mm", "Bead to bead"), ("inset_mm", "In from the edge"), ("row_mm", "Row to row"))
ENDS = (("start", "Begins at"), ("end", "Ends at"))
LENGTH, COUNT, PART = LengthKind(), CountKind(), PartKind()


def price_figure(which: Callable[[], int]) -> Amount:
    """The price of a strand of the picked kind."""
    return Amount(
        "beads.kinds.price", "Price of a strand", "Price of a strand",
        lambda project: kind_of(project, which()).price,
        lambda project, price: set_kind(project, which(), price=price),
        money_reader("The price of a strand"),
        lambda project: project.quoting.currency.symbol,
        blank=True,
    )  # fmt: skip


def _as_stored(record: Any, key: str, value: float) -> float | int:
    """A whole number where the record holds one."""
    return int(value) if isinstance(getattr(record, key), int) else value
