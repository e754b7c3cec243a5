"""Figures behind a quote: where each one comes from, and the edit that stores it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from decimal import Decimal

from workbench.cloth import NO_PRICE, PriceRow
from workbench.document import Project, set_currency, set_hours, set_price_row, set_quoting
from workbench.ui.cloth.figures import Amount, money_reader, number_reader
from workbench.ui.form.prose import Written

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


def quote_text(key: str, label: str) -> Written:
    """A line or a few of text on the client's page."""

    def get(project: Project) -> str:
        text: str = getattr(project.quoting, key)
        return text

    def put(project: Project, text: str) -> Project:
        return set_quoting(project, **{key: text})

    return Written(f"quoting.{key}", label, label, get, put)


def symbol_text() -> Written:
    """The symbol of the currency; no amount changes with it."""

    def get(project: Project) -> str:
        return project.quoting.currency.symbol

    def put(project: Project, text: str) -> Project:
        return set_currency(project, symbol=text)

    return Written("quoting.currency.symbol", "Symbol", "Symbol of the currency", get, put)
