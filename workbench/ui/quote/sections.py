"""What comes on top of the costs, how money is written, and the words for the client."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from workbench.cloth import (
    included_usual,
)
from workbench.document import (
    Picture,
    set_currency,
)
from workbench.ui.cloth.figures import written
from workbench.ui.desk import Desk
from workbench.ui.form.choice import Choice
from workbench.ui.form.prose import ProseRow
from workbench.ui.form.row import EDGE, Row
from workbench.ui.form.section import Section
from workbench.ui.look import GRID
from workbench.ui.quote.bench import QuoteBench
from workbench.ui.quote.figures import (
    percent_figure,
    quote_text,
    rounding_figure,
    symbol_text,
)
from workbench.ui.quote.rows import QuoteRow

_TEXT = 44 * GRID
_DATES = (("fitting_dates", "Fittings"), ("ready_by", "Ready by"), ("valid_until", "Valid until"))


class OnTop(Section):
    """What comes on top of the costs, and how it is paid."""

    title = "On top of the costs"

    def fill(self) -> None:
        """Overhead, margin, rounding, tax, deposit."""
        self.percent("overhead_percent", "Overhead", "Of cloth, notions and hours.")
        self.percent("margin_percent", "Margin", "Of all costs, overhead among them.")
        self.add(QuoteRow(self.desk, rounding_figure()))
        self.percent("tax_percent", "Tax", "Of the price before tax.")
        self.percent("deposit_percent", "Deposit", "Of the price with tax.")

    def percent(self, key: str, label: str, remark: str) -> None:
        """Add a row for a percentage."""
        self.add(QuoteRow(self.desk, percent_figure(key, label), remark))

    def summary(self, picture: Picture) -> str:
        """Margin and tax."""
        quoting = picture.project.quoting
        parts = [f"margin {written(quoting.margin_percent)} %"]
        if quoting.tax_percent:
            parts.append(f"tax {written(quoting.tax_percent)} %")
        return ", ".join(parts)

    def has(self, field: str) -> bool:
        """Percentages and rounding."""
        return field.endswith("_percent") or field == "quoting.round_to"


class PickedRow(Row):
    """One of a few ways to write money."""

    def __init__(self, desk: Desk, key: str, label: str, options: tuple[tuple[object, str], ...]) -> None:
        super().__init__(f"quoting.currency.{key}", label)
        self._desk, self._key = desk, key
        self.choice = Choice(label, options, self)
        self.column.addWidget(self.choice)
        self.column.setContentsMargins(EDGE, GRID, EDGE, GRID)
        self.choice.chosen.connect(self.on_chosen)
        self._options = [value for value, _ in options]

    def show_picture(self, picture: Picture) -> None:
        """Show which it is, where it is one of them."""
        value = getattr(picture.project.quoting.currency, self._key)
        if value in self._options:
            self.choice.show_value(value)

    def on_chosen(self, value: object) -> None:
        """Store it."""
        if isinstance(value, int):
            self._desk.apply(self.label.text(), set_currency(self._desk.project, **{self._key: value}))

    def target(self) -> QWidget | None:
        """The button that is in."""
        return self.choice.button(self.choice.value) if self.choice.value is not None else None


class Money(Section):
    """How money is written; no amount changes."""

    title = "Money"

    def fill(self) -> None:
        """Symbol, where it stands, decimals."""
        self.add(QuoteRow(self.desk, symbol_text()))
        self.add(PickedRow(self.desk, "before", "The symbol stands", ((True, "before"), (False, "after"))))
        self.add(PickedRow(self.desk, "decimals", "Decimals", ((0, "none"), (2, "two"), (3, "three"))))

    def summary(self, picture: Picture) -> str:
        """The symbol."""
        return picture.project.quoting.currency.symbol

    def has(self, field: str) -> bool:
        """Currency."""
        return field.startswith("quoting.currency")


class IncludedRow(ProseRow):
    """What is included; left empty, what follows from the bodice is written on the page."""

    def __init__(self, desk: Desk, bench: QuoteBench) -> None:
        self._bench = bench
        super().__init__(desk, quote_text("included", "What is included, a line each"))
        self.prose.setFixedHeight(30 * GRID)

    def show_picture(self, picture: Picture) -> None:
        """Show what is stored, or softly what is taken instead."""
        super().show_picture(picture)
        cutting = self._bench.latest.cutting if self._bench.latest is not None else None
        usual = included_usual(cutting) if cutting is not None else ""
        if usual != self.prose.placeholderText():
            self.prose.setPlaceholderText(usual)


class Words(Section):
    """What the client reads besides the price."""

    title = "Words and dates"

    def __init__(self, desk: Desk, bench: QuoteBench) -> None:
        self._bench = bench
        super().__init__(desk)

    def fill(self) -> None:
        """What is included, then the dates."""
        self.add(IncludedRow(self.desk, self._bench))
        for key, label in _DATES:
            self.add(QuoteRow(self.desk, quote_text(key, label), width=_TEXT))

    def summary(self, picture: Picture) -> str:
        """When it is ready."""
        ready = picture.project.quoting.ready_by
        return f"ready by {ready}" if ready else ""

    def has(self, field: str) -> bool:
        """Texts on the client's page."""
        return field in ("quoting.included", *(f"quoting.{key}" for key, _ in _DATES))
