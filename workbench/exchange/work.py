"""From a draft and its pieces to the bytes of a file that other programs read."""

from __future__ import annotations

from collections.abc import Sequence

from workbench.draft import Finding, Outcome
from workbench.exchange.choice import ExportChoice, Format, checked
from workbench.exchange.page import LargePage, fitted_page, smallest_page
from workbench.exchange.said import note_of
from workbench.exchange.things import in_rows, things_of
from workbench.pieces import Cutting
from workbench.sheets import Heading, clean

_ROW = 1600.0
"""mm of things side by side in a file without a page, at the scale of the file."""
_ROUND_PROJECTED = 60.0
"""Left round the pieces on a projector sheet, mm."""


def export(
    outcome: Outcome,
    cutting: Cutting | None,
    words: Heading,
    kind: Format,
    choice: ExportChoice,
    over: Sequence[Finding] = (),
) -> bytes:
    """The file: lines as they are drafted, to a hundredth of a millimetre at worst.

    ``over`` is what is above a limit that was set; a sheet of paper says so. The same input gives the
    same bytes. ExportError, in one sentence, where there is no draft, nothing in the layers that were
    chosen, or a choice that makes no sense.
    """
    page, title = laid_out(outcome, cutting, words, kind, choice), clean(words.client) or "Pieces"
    if kind == "pdf":
        from workbench.exchange.pdf import pdf_bytes

        return pdf_bytes(page, choice, words, title, over)
    if kind == "svg":
        from workbench.exchange.svg import svg_bytes

        return svg_bytes(page, title, note_of(choice, words))
    from workbench.exchange.dxf import dxf_bytes

    return dxf_bytes(page, choice.dxf, note_of(choice, words))


def laid_out(
    outcome: Outcome, cutting: Cutting | None, words: Heading, kind: Format, choice: ExportChoice
) -> LargePage:
    """Where everything lies in the file, mm at its scale; ExportError as for the file itself."""
    checked(choice, kind)
    things = things_of(outcome, cutting, choice, words)
    if kind != "pdf":
        placed, width, height = in_rows(things, _ROW)
        return LargePage("", width, height, placed)
    return smallest_page(things) if choice.projector is None else fitted_page(things, _ROUND_PROJECTED)
