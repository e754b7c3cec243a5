"""Figures behind a quote: where each one comes from, and the edit that stores it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from decimal import Decimal

from workbench.cloth import NO_PRICE, PriceRow
from workbench.document import Project, set_currency, set_hours, set_price_row, set_quoting
from workbench.ui.cloth.figures import Amount, money_reader, number_reader

_HALF, _QUARTER = Decimal("0.5"), Decimal("0.25")
Find = Callable[[str], PriceRow | None]


def percent_figure(key: str, label: str) -> Amount:
    """A percentage of the quote."""

    def get(project: Project) -> Decimal:
        found: Decimal = getattr(project.quoting, key)
        return found

    def put(project: Project, value: Decimal) -> Project:
        return set_quoting(project, **{key: value})

    return Amount(
        f"quoting.{key}", label, label, get, put, number_reader(label, "%"), lambda _: "%", step=_HALF
    )


def rate_figure() -> Amount:
    """What an hour of her time costs."""

    def put(project: Project, value: Decimal) -> Project:
        return set_quoting(project, rate=value)

    return Amount(
        "quoting.rate",
        "Rate",
        "Rate for an hour",
        lambda project: project.quoting.rate,
        put,
        money_reader("The rate for an hour"),
        lambda project: f"{project.quoting.currency.symbol} an hour".strip(),
        blank=True,
    )


def rounding_figure() -> Amount:
    """The step that the price is rounded up to."""

    def put(project: Project, value: Decimal) -> Project:
        return set_quoting(project, round_to=value)

    return Amount(
        "quoting.round_to",
        "Round the price up to",
        "Rounding of the price",
        lambda project: project.quoting.round_to,
        put,
        money_reader("The step the price is rounded up to"),
        lambda project: project.quoting.currency.symbol,
    )


def hours_figure(step: str) -> Amount:
    """The hours of one step of the work; none at all takes the step away."""

    def get(project: Project) -> Decimal | None:
        return next((row.hours for row in project.quoting.hours if row.step == step), None)

    def put(project: Project, value: Decimal) -> Project:
        return set_hours(project, step, value or None)

    label = f"Hours: {step}"
    return Amount(
        f"quoting.hours.{step}", step, label, get, put, number_reader(step, "h"), lambda _: "h", _QUARTER
    )


@dataclass(frozen=True)
class Priced:
    """One line of the price list, found by its key; a line she has not changed yet is a usual one."""

    key: str
    find: Find

    @property
    def name(self) -> str:
        """The path by which the field is known."""
        return f"quoting.prices.{self.key}"

    def row(self) -> PriceRow | None:
        """The line."""
        return self.find(self.key)

    def figure(self, label: str) -> Amount:
        """Its price."""
        return Amount(
            self.name,
            label,
            f"Price: {label}",
            self._get,
            self._put,
            money_reader(f"The price of “{label}”"),
            lambda project: project.quoting.currency.symbol,
            blank=True,
        )

    def _get(self, _project: Project) -> Decimal:
        row = self.row()
        return row.price if row is not None else NO_PRICE

    def _put(self, project: Project, price: Decimal) -> Project:
        row = self.row()
        if row is None:
            raise ValueError("There is no such line in the price list any more.")
        return set_price_row(project, replace(row, price=price))


@dataclass(frozen=True)
class QuoteText:
    """A line or a few of text on the client's page, as a figure that is typed and never stepped."""

    key: str
    label: str

    @property
    def name(self) -> str:
        """The path by which the field is known."""
        return f"quoting.{self.key}"

    @property
    def step_name(self) -> str:
        """What undo calls it."""
        return self.label

    def stamp(self, project: Project) -> object:
        """The text."""
        return self.text(project)

    def text(self, project: Project) -> str:
        """The text as it is stored."""
        text: str = getattr(project.quoting, self.key)
        return text

    def suffix(self, project: Project) -> str:
        """None."""
        return ""

    def typed(self, project: Project, text: str) -> Project:
        """The project with another text, without the blanks at either end."""
        return set_quoting(project, **{self.key: text.strip()})

    def moved(self, project: Project, steps: int) -> Project:
        """A text has no next one."""
        return project


@dataclass(frozen=True)
class Symbol:
    """The symbol of the currency."""

    name: str = "quoting.currency.symbol"
    label: str = "Symbol"
    step_name: str = "Symbol of the currency"

    def stamp(self, project: Project) -> object:
        """The symbol."""
        return self.text(project)

    def text(self, project: Project) -> str:
        """The symbol."""
        return project.quoting.currency.symbol

    def suffix(self, project: Project) -> str:
        """None."""
        return ""

    def typed(self, project: Project, text: str) -> Project:
        """The project with another symbol; no amount changes."""
        return set_currency(project, symbol=text.strip())

    def moved(self, project: Project, steps: int) -> Project:
        """A symbol has no next one."""
        return project
