"""The form of the quote place, in the order in which a price comes about."""

from __future__ import annotations

from workbench.document import Picture
from workbench.ui.desk import Desk
from workbench.ui.form.sections_form import OneOrAllForm
from workbench.ui.quote.bench import QuoteBench, Reckoned
from workbench.ui.quote.hours import Hours
from workbench.ui.quote.price_book import PriceBook
from workbench.ui.quote.prices import Prices
from workbench.ui.quote.sections import Money, OnTop, Words


class QuoteForm(OneOrAllForm):
    """Prices, hours, what comes on top, money, words."""

    def __init__(self, desk: Desk, bench: QuoteBench, book: PriceBook) -> None:
        prices = Prices(desk, bench, book)
        sections = (prices, Hours(desk), OnTop(desk), Money(desk), Words(desk, bench))
        super().__init__(desk, sections, prices)
        bench.shown.connect(self.show_shown)
        bench.worked_out.connect(self.show_reckoned)

    def show_shown(self, picture: Picture) -> None:
        """Show what is stored."""
        self.show_picture(picture)

    def show_reckoned(self, reckoned: Reckoned) -> None:
        """Show what follows from it too: what is bought, how many lines have no price."""
        self.show_picture(reckoned.picture)
