"""The quote place: prices and hours at the left, the inside sheet, and the client's page at the right."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from PySide6.QtWidgets import QHBoxLayout, QWidget

from workbench.document import Picture
from workbench.draft import Finding
from workbench.ui.desk import Desk
from workbench.ui.place import PlacePage, hairline
from workbench.ui.quote.bench import QuoteBench, Reckoned
from workbench.ui.quote.client_page import ClientPage
from workbench.ui.quote.findings import findings_on_quote
from workbench.ui.quote.form import QuoteForm
from workbench.ui.quote.inside_table import InsidePane
from workbench.ui.quote.price_book import PriceBook
from workbench.ui.sentence import Foot


class QuotePlace(PlacePage):
    """Answers at a glance: what does it cost me, what do I ask?

    Nothing is worked out while it is out of sight.
    """

    def __init__(self, desk: Desk, book: PriceBook | None = None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.bench = QuoteBench(desk, self)
        self.form = QuoteForm(desk, self.bench, book or PriceBook())
        self.inside = InsidePane(desk, self.bench)
        self.page = ClientPage(self.bench)
        self.foot = Foot(desk, findings_of=self._findings)
        self._assemble()
        self.bench.worked_out.connect(self.show_reckoned)

    def _assemble(self) -> None:
        self._edge = hairline(upright=True)
        beside = QHBoxLayout()
        beside.setSpacing(0)
        beside.addWidget(self.inside, 11)
        beside.addWidget(self._edge)
        beside.addWidget(self.page, 9)
        self.arrange(self.form, beside, self.foot)
        self.begin_at(self.inside.sheet)

    def has(self, field: str) -> bool:
        """Whether a field, as findings name it, is one of this place's."""
        return any(section.has(field) for section in self.form.sections)

    def switches(self) -> Mapping[str, Callable[[bool], None]]:
        """The client's page."""
        return {"client_page": self.set_page_shown}

    def set_page_shown(self, on: bool) -> None:
        """Show or hide the client's page."""
        self.page.setVisible(on)
        self._edge.setVisible(on)

    def show_reckoned(self, reckoned: Reckoned) -> None:
        """Say in the foot what follows from the quote."""
        self.begin_at(self.inside.sheet if reckoned.quote is not None else self.inside)
        self.foot.show_picture(reckoned.picture)

    def _findings(self, picture: Picture) -> Sequence[Finding]:
        return findings_on_quote(picture, self.bench.latest)

    def set_in_sight(self, in_sight: bool) -> None:
        """Work out what is looked at, and light up what led here before there was anything to show it."""
        self.bench.set_in_sight(in_sight)
        if in_sight:
            self.form.show_selected(self._desk.selection)
