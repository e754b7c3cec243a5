"""The silhouette: one page with her as she will look, from four sides, and her girths before and after."""

from __future__ import annotations

from workbench.body import LEVEL_LABEL, WEARER_CAUTIONS, say_length
from workbench.draft import Outcome
from workbench.pieces import Cutting
from workbench.sheets.block import SMALL, Block, paragraph, space, stack
from workbench.sheets.client_head import client_head
from workbench.sheets.garment_picture import garment_picture
from workbench.sheets.heading import Heading
from workbench.sheets.page_file import pdf_of
from workbench.sheets.paper import PAPERS, PrintError
from workbench.sheets.pen import SOFT
from workbench.sheets.quote_sheet import checked_paper
from workbench.sheets.sections import cautions
from workbench.sheets.setter import FOOT, SIDE, TOP, Page
from workbench.sheets.table import Cell, Column, table
from workbench.sheets.worn_view import worn_for, worn_view
from workbench.worn import BACK, FRONT, THREE_QUARTER, Torso
from workbench.worn import SIDE as FROM_SIDE

TITLE_OF_SILHOUETTE = "As worn"
ASSUMED = (
    "Drawn from the girths and walks that were taken; depth for breadth is as usual unless it was set. "
    "Above the upper chest nothing is measured. Dashed: the outline before."
)
_TALL = 92.0
_ROWS = (((FRONT, "Front"), (THREE_QUARTER, "Three-quarter")), ((FROM_SIDE, "Side"), (BACK, "Back")))


def print_silhouette(
    outcome: Outcome, torso: Torso, words: Heading, paper: str = "A4", cutting: Cutting | None = None
) -> bytes:
    """A PDF of one page: the same input gives the same bytes.

    Bones and lacing are drawn where there is a cutting. PrintError, in one sentence, where there
    is no draft, and for a paper that is none of A4 and Letter.
    """
    size = PAPERS[checked_paper(paper, "The silhouette")]
    worn = worn_for(outcome, torso, cutting)
    if worn is None:
        raise PrintError("There is no draft yet, so there is no silhouette to print.")
    width, room = size[0] - 2 * SIDE, size[1] - TOP - FOOT
    foot = cautions(width, WEARER_CAUTIONS)
    head, figures = client_head(TITLE_OF_SILHOUETTE, words, width), _figures(outcome, words, width)
    note = paragraph(ASSUMED, width, SMALL, colour=SOFT)
    left = room - head.height - figures.height - note.height - foot.height - 12.0
    tall = min(_TALL, 0.5 * left)
    rows = [
        garment_picture([worn_view(worn, name, degrees) for degrees, name in row], width, tall)
        for row in _ROWS
    ]
    page = Page(*size)
    body = stack([head, space(3.0), rows[0], space(2.0), rows[1], space(3.0), figures, space(1.5), note])
    page.put(SIDE, size[1] - TOP, body)
    page.put(SIDE, FOOT + foot.height, foot)
    return pdf_of([page], TITLE_OF_SILHOUETTE)


def _figures(outcome: Outcome, words: Heading, width: float) -> Block:
    """Every level: her girth, the garment's, and what is between them."""
    columns = (
        Column(0.28 * width, "Round the body at", "words"),
        Column(0.18 * width, f"Before, {words.unit}"),
        Column(0.18 * width, f"As worn, {words.unit}"),
        Column(0.18 * width, f"Drawn in, {words.unit}"),
        Column(0.18 * width, "Of the girth"),
    )
    rows = []
    for level in reversed(outcome.levels):
        lengths = (level.body, level.finished, level.reduction)
        said = [say_length(mm, words.unit, words.fraction) for mm in lengths]
        percent = f"{level.percent:.1f} %".replace("-", "−")
        rows.append([Cell(LEVEL_LABEL[level.name]), *(Cell(text) for text in said), Cell(percent)])
    return table(columns, rows)
