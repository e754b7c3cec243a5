"""Figures of a cloth: where each one comes from, and the edit that stores it. Money is decimal."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal
from typing import Any, Protocol

from workbench.body import read_length, say_exact
from workbench.cloth import BuyStep, Cloth, read_money
from workbench.document import CLOTH_ROWS, Project, set_cloth
from workbench.ui.form.figures import Stored
from workbench.ui.form.kinds import LengthKind, plain, read_number

PRICED_BY: dict[BuyStep, str] = {
    "eighth_yard": "a yard",
    "quarter_yard": "a yard",
    "half_yard": "a yard",
    "ten_cm": "a metre",
}
NO_PRICE = "no price yet"


def written(figure: Decimal) -> str:
    """A figure without an exponent and without idle noughts: ``2.5``, ``100``."""
    text = f"{figure:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


class Read(Protocol):
    """How an amount is read."""

    def __call__(self, text: str, project: Project) -> Decimal:
        """The amount; ValueError with one sentence."""


@dataclass(frozen=True)
class Amount:
    """A decimal figure: money, hours, a percentage. An emptied field is nothing."""

    name: str
    label: str
    step_name: str
    get: Callable[[Project], Decimal | None]
    put: Callable[[Project, Decimal], Project]
    read: Read
    unit: Callable[[Project], str]
    step: Decimal = Decimal(1)
    blank: bool = False
    """Whether nothing is shown where the figure is nothing, as for a price that is not set yet."""

    def stamp(self, project: Project) -> object:
        """The figure."""
        return self.get(project)

    def text(self, project: Project) -> str:
        """The figure without idle noughts."""
        value = self.get(project)
        return "" if value is None or (self.blank and value == 0) else written(value)

    def suffix(self, project: Project) -> str:
        """What it counts."""
        return self.unit(project)

    def typed(self, project: Project, text: str) -> Project:
        """The project with the figure read; an emptied field is nothing."""
        return self.put(project, self.read(text, project) if text.strip() else Decimal(0))

    def moved(self, project: Project, steps: int) -> Project:
        """The next whole step, never below nothing."""
        value = self.get(project) or Decimal(0)
        return self.put(project, max(value + steps * self.step, Decimal(0)))


def money_reader(name: str) -> Read:
    """Reads money in the currency of the project, and calls the field by its name."""

    def read(text: str, project: Project) -> Decimal:
        return read_money(text, project.quoting.currency, name)

    return read


def number_reader(name: str, sign: str = "") -> Read:
    """Reads a plain decimal number; a sign behind it may be left out."""

    def read(text: str, project: Project) -> Decimal:
        read_number(text.replace(sign, " ") if sign else text)
        typed = (text.replace(sign, " ") if sign else text).strip().replace("−", "-").replace(",", ".")
        return Decimal(typed)

    return read


@dataclass(frozen=True)
class DegreesKind:
    """Degrees, half a one a step."""

    def read(self, text: str, project: Project) -> float:
        """Degrees."""
        return read_number(text.replace("°", " "))

    def say(self, value: float, project: Project) -> str:
        """At most two decimals."""
        return plain(value)

    def suffix(self, project: Project) -> str:
        """The sign."""
        return "°"

    def step(self, project: Project) -> float:
        """Half a degree."""
        return 0.5


@dataclass(frozen=True)
class PercentKind:
    """Hundredths as they are stored."""

    def read(self, text: str, project: Project) -> float:
        """Hundredths."""
        return read_number(text.replace("%", " "))

    def say(self, value: float, project: Project) -> str:
        """At most two decimals."""
        return plain(value)

    def suffix(self, project: Project) -> str:
        """The sign."""
        return "%"

    def step(self, project: Project) -> float:
        """A half."""
        return 0.5


@dataclass(frozen=True)
class OfCloth:
    """Reads and stores one entry of the cloth with a number."""

    number: int
    key: str

    @property
    def name(self) -> str:
        """The path by which the field is known."""
        return f"cloths.{self.number}.{self.key}"

    def cloth(self, project: Project) -> Cloth:
        """The cloth."""
        return project.cloths[self.number]

    def get(self, project: Project) -> Any:
        """What is stored."""
        return getattr(self.cloth(project), self.key)

    def put(self, project: Project, value: Any) -> Project:
        """The project with another."""
        return set_cloth(project, self.cloth(project).name, **{self.key: value})


_KINDS = {"length": LengthKind, "percent": PercentKind, "degrees": DegreesKind}


def cloth_figure(number: int, key: str) -> Stored:
    """One figure of a cloth, called as the table calls it."""
    held, row = OfCloth(number, key), CLOTH_ROWS[key]
    return Stored(held.name, row.label, row.label, _KINDS[row.kind](), held.get, held.put)


def price_figure(number: int) -> Amount:
    """The price of a cloth by the yard or the metre."""
    held = OfCloth(number, "price")

    def unit(project: Project) -> str:
        cloth = held.cloth(project)
        return f"{project.quoting.currency.symbol} {PRICED_BY[cloth.step]}".strip()

    return Amount(
        held.name, "Price of the cloth", "Price of a cloth", held.get, held.put,
        money_reader("The price of the cloth"), unit, blank=True,
    )  # fmt: skip


@dataclass(frozen=True)
class ClothName:
    """The name of a cloth."""

    number: int
    label: str = "Name"
    step_name: str = "Name of a cloth"

    @property
    def name(self) -> str:
        """The path by which the field is known."""
        return OfCloth(self.number, "name").name

    def stamp(self, project: Project) -> object:
        """The name."""
        return self.text(project)

    def text(self, project: Project) -> str:
        """The name."""
        return project.cloths[self.number].name

    def suffix(self, project: Project) -> str:
        """None."""
        return ""

    def typed(self, project: Project, text: str) -> Project:
        """The project with another name."""
        return set_cloth(project, self.text(project), name=text.strip())

    def moved(self, project: Project, steps: int) -> Project:
        """A name has no next one."""
        return project


@dataclass(frozen=True)
class Remnant:
    """The corners of a piece at hand: across and along from one corner of it, apart by semicolons."""

    number: int
    label: str = "Remnant"
    step_name: str = "Remnant"

    @property
    def name(self) -> str:
        """The path by which the field is known."""
        return OfCloth(self.number, "remnant").name

    def stamp(self, project: Project) -> object:
        """The corners."""
        return project.cloths[self.number].remnant

    def text(self, project: Project) -> str:
        """``0 0; 20 0; 20 30``: each corner across, then along."""
        corners = project.cloths[self.number].remnant or ()
        return "; ".join(f"{say_exact(x, project.unit)}, {say_exact(y, project.unit)}" for x, y in corners)

    def suffix(self, project: Project) -> str:
        """Inches or centimetres."""
        return project.unit

    def typed(self, project: Project, text: str) -> Project:
        """The project with the corners read; nothing typed is no remnant."""
        cloth = project.cloths[self.number]
        corners = [_corner(part, project) for part in text.split(";") if part.strip()]
        return set_cloth(project, cloth.name, remnant=tuple(corners) or None)

    def moved(self, project: Project, steps: int) -> Project:
        """Corners have no next ones."""
        return project


def _corner(text: str, project: Project) -> tuple[float, float]:
    parts = text.split(",")
    if len(parts) != 2:
        raise ValueError(
            f"Each corner is two lengths, across and along, apart by a comma: “{text.strip()[:24]}”."
        )
    across, along = (read_length(part, project.unit, signed=True).mm for part in parts)
    return across, along
