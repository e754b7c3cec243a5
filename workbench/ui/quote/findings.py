"""What the foot says in the quote place."""

from __future__ import annotations

from dataclasses import replace

from workbench.cloth import Quote
from workbench.document import Picture
from workbench.draft import Finding, Place
from workbench.ui.quote.bench import Reckoned
from workbench.ui.quote.inside import answer_words, field_of_price

_HEAVY = ("stop", "over")


def findings_on_quote(picture: Picture, reckoned: Reckoned | None) -> tuple[Finding, ...]:
    """Limits that are passed, then what is missing from the price, the plans, the rest of the draft."""
    heavy = tuple(finding for finding in picture.findings if finding.severity in _HEAVY)
    light = tuple(finding for finding in picture.findings if finding.severity not in _HEAVY)
    quote = reckoned.quote if reckoned is not None else None
    if reckoned is None or quote is None:
        return heavy + light
    weighty = tuple(_led(finding, quote, picture) for finding in quote.findings if finding.severity != "note")
    notes = tuple(finding for finding in quote.findings if finding.severity == "note")
    of_cloth = reckoned.picture.cloth_findings
    first = weighty + of_cloth
    if first:
        return (*heavy, *first, *notes, *light)
    head, words = answer_words(quote)
    told = Finding("note", "quote_told", "{head}. {words}", words={"head": head, "words": words})
    return (*heavy, told, *notes, *light)


def _led(finding: Finding, quote: Quote, picture: Picture) -> Finding:
    """The finding, leading to the price of a bead where nothing but beads is without one."""
    if finding.code != "no_price":
        return finding
    without = [line for line in quote.inside if line.amount is None and line.kind != "hours"]
    fields = [field_of_price(line.key, picture.project) for line in without if line.kind == "notion"]
    if len(fields) < len(without) or not all(field.startswith("beads.") for field in fields):
        return finding
    return replace(finding, place=Place(field=fields[0]), remedy="Enter what a strand costs.")
