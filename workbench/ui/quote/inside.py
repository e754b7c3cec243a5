"""The inside sheet as lines: every cost, how it was worked out, and what it comes to."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from workbench.cloth import CostLine, Quote, say_money
from workbench.document import Project
from workbench.draft import Place

CostKinds = tuple[str, ...]
_GROUPS: tuple[tuple[str, CostKinds, str], ...] = (
    ("Cloth", ("cloth",), ""),
    ("Notions", ("notion",), ""),
    ("Hours", ("hours",), ""),
    ("On top", ("overhead", "margin", "rounding", "tax"), ""),
)
_BEADS = "beads/"
"""What the lines of beads are known by, before the name of their kind."""
_FIELDS = {
    "overhead": "quoting.overhead_percent",
    "margin": "quoting.margin_percent",
    "rounding": "quoting.round_to",
    "tax": "quoting.tax_percent",
}


@dataclass(frozen=True)
class Line:
    """One row of the table."""

    name: str
    words: str = ""
    amount: str = ""
    heading: bool = False
    total: bool = False
    missing: bool = False
    """Whether its price is not known, which counts as nothing and is marked."""
    place: Place | None = None
    """The field that is behind it."""

    @property
    def spoken(self) -> str:
        """All of it in one breath."""
        return ". ".join(part for part in (self.name, self.words, self.amount) if part)


def inside_lines(quote: Quote, project: Project) -> tuple[Line, ...]:
    """Groups with their sums, then costs, price and how it is paid."""
    return (*_groups(quote, project), *_ends(quote))


def _groups(quote: Quote, project: Project) -> Iterator[Line]:
    for title, kinds, _ in _GROUPS:
        lines = [line for line in quote.inside if line.kind in kinds]
        if lines:
            amount = say_money(quote.total_of(*{line.kind for line in lines}), quote.currency)
            yield Line(title, amount=amount, heading=True)
            yield from (_line(line, quote, project) for line in lines)


def _line(line: CostLine, quote: Quote, project: Project) -> Line:
    missing = line.amount is None
    amount = "not known" if line.amount is None else say_money(line.amount, quote.currency)
    return Line(line.name, line.words, amount, missing=missing, place=_place(line, project))


def field_of_price(key: str, project: Project) -> str:
    """The field that holds the price of something bought; that of a bead is where its kind is."""
    for number, kind in enumerate(project.beads.kinds):
        own = {row.key for row in project.quoting.prices}
        if key == f"{_BEADS}{kind.name}" and key not in own:
            return f"beads.kinds.{number}.price"
    return f"quoting.prices.{key}"


def _place(line: CostLine, project: Project) -> Place:
    if line.kind == "cloth":
        number = next((n for n, cloth in enumerate(project.cloths) if cloth.name == line.key), 0)
        return Place(field=f"cloths.{number}.price")
    if line.kind == "notion":
        return Place(field=field_of_price(line.key, project))
    if line.kind == "hours":
        return Place(field=f"quoting.hours.{line.name}")
    return Place(field=_FIELDS[line.kind])


def _ends(quote: Quote) -> Iterator[Line]:
    def said(name: str) -> str:
        return say_money(getattr(quote.sums, name), quote.currency)

    missing = "" if quote.complete else "too low: not everything has a price"
    yield Line("Price asked", missing, said("price"), total=True, missing=not quote.complete)
    yield Line("Deposit", "before the work begins", said("deposit"))
    yield Line("Balance", "when it is handed over", said("balance"))


def inside_text(lines: tuple[Line, ...]) -> str:
    """The lines as text, columns apart by tabs."""
    return "".join(f"{line.name}\t{line.words}\t{line.amount}\n" for line in lines)


def answer_words(quote: Quote) -> tuple[str, str]:
    """``You ask $560.00``, and what it costs her in one sentence."""
    sums = quote.sums
    costs = sums.costs + sums.overhead
    hours = quote.total_of("hours")
    left = sums.before_tax - costs
    said = [f"It costs you {say_money(costs, quote.currency)}"]
    if hours > 0:
        said.append(f"of it {say_money(hours, quote.currency)} for your own time")
    said.append(f"and leaves {say_money(left, quote.currency)}")
    words = f"{', '.join(said)}."
    if sums.tax > 0:
        words += f" {say_money(sums.tax, quote.currency)} of the price is tax."
    return f"You ask {say_money(sums.price, quote.currency)}", words
