"""The prices of everything that is bought besides cloth, and her own list behind them."""

from __future__ import annotations

from workbench.cloth import (
    MoneyError,
    PriceRow,
    Quoting,
    rows_for,
    with_remembered,
)
from workbench.document import (
    FileTrouble,
    Picture,
    Project,
    set_price_row,
)
from workbench.ui.desk import Desk
from workbench.ui.form.row import Row
from workbench.ui.form.section import Remark, Section
from workbench.ui.quote.bench import QuoteBench
from workbench.ui.quote.figures import (
    Priced,
)
from workbench.ui.quote.price_book import PriceBook
from workbench.ui.quote.price_rows import PriceListRow, of_one_length
from workbench.ui.quote.rows import ButtonsRow

_MOST_AWAY = 12
"""Rows that this bodice has no use for, kept for when it has again (own choice)."""


class Prices(Section):
    """A row for everything that is bought besides cloth, and her own list behind them."""

    title = "Prices"

    def __init__(self, desk: Desk, bench: QuoteBench, book: PriceBook) -> None:
        self._bench, self._book = bench, book
        self._known: dict[str, PriceRow] = {}
        self._of_key: dict[str, PriceListRow] = {}
        super().__init__(desk)

    def fill(self) -> None:
        """What her own list can do; the lines come when it is known what is bought."""
        self.add(
            Remark("Cloth and beads have prices in their places. An empty field has none yet: that is said.")
        )
        self._own = self.add(ButtonsRow("Take from my list", "Keep in my list"))
        take, keep = self._own.buttons
        take.setAccessibleName("Take prices from my own price list")
        keep.setAccessibleName("Keep these prices in my own price list")
        take.clicked.connect(self.on_take)
        keep.clicked.connect(self.on_keep)

    def show_rows(self, picture: Picture) -> None:
        """A row for each line that prices this bodice; the others are put away."""
        cutting = self._bench.latest.cutting if self._bench.latest is not None else None
        project = picture.project
        lines = rows_for(cutting, project.quoting.prices, project.unit) if cutting is not None else ()
        self._known = {row.key: row for row in lines}
        new = [row for row in lines if row.key not in self._of_key]
        for line in new:
            row = PriceListRow(self.desk, Priced(line.key, self._known_row), line.name)
            self._of_key[line.key] = self.add(row)
        if new:
            self._let_go()
            self.chain()
        for key, shown in self._of_key.items():
            known = self._known.get(key)
            shown.show_wanted(known is not None)
            shown.show_folded(known is not None and of_one_length(known))
        super().show_rows(picture)

    def _let_go(self) -> None:
        """Take away the oldest of what was put away: bones have another length in every bodice."""
        away = [key for key in self._of_key if key not in self._known]
        for key in away[:-_MOST_AWAY]:
            row = self._of_key.pop(key)
            self.rows.remove(row)
            row.hide()
            row.deleteLater()

    def _known_row(self, key: str) -> PriceRow | None:
        """The line as it stands now: hers, else the usual one."""
        own = {row.key: row for row in self.desk.project.quoting.prices}
        return own.get(key) or self._known.get(key)

    def summary(self, picture: Picture) -> str:
        """How many have none."""
        latest = self._bench.latest
        quote = latest.quote if latest is not None else None
        if quote is None:
            return ""
        without = sum(line.amount is None for line in quote.inside if line.kind == "notion")
        return f"{without} without a price" if without else "all priced"

    def has(self, field: str) -> bool:
        """Prices of notions."""
        return field.startswith("quoting.prices")

    def row_of(self, field: str, seam: int | None) -> Row | None:
        """The row of a line, or the first that has no price."""
        if field != "quoting.prices":
            return super().row_of(field, seam)
        quote = self._bench.latest.quote if self._bench.latest is not None else None
        keys = [line.key for line in quote.inside if line.amount is None] if quote is not None else []
        return next((self._of_key[key] for key in keys if key in self._of_key), None)

    # --- her own list --------------------------------------------------------------------

    def on_take(self) -> None:
        """Take prices she has kept, where the quote has none yet."""
        try:
            kept = self._book.read()
        except (MoneyError, FileTrouble) as error:
            self._own.say(str(error), "attend")
            return
        if kept is None:
            self._own.say("Your own list is empty yet: keep prices in it first.")
            return
        project = with_prices_of(self.desk.project, kept)
        if project is self.desk.project and kept.currency != project.quoting.currency:
            self._own.say(f"Your own list is in {kept.currency.symbol}, the quote is not.", "attend")
            return
        self.desk.apply("Prices from my list", project)
        self._own.say("Taken where there was no price yet.")

    def on_keep(self) -> None:
        """Keep the prices of this quote for the next one."""
        try:
            self._book.write(self.desk.project.quoting)
        except (MoneyError, FileTrouble) as error:
            self._own.say(str(error), "attend")
            return
        self._own.say("Kept for the next quote.")


def with_prices_of(project: Project, kept: Quoting) -> Project:
    """The project with what is kept where it has no price yet."""
    for row in with_remembered(project.quoting, kept).prices:
        if row not in project.quoting.prices:
            project = set_price_row(project, row)
    return project
