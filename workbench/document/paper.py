"""From a project to paper: the words and choices that a print needs beside the draft."""

from __future__ import annotations

from collections.abc import Sequence

from workbench import sheets
from workbench.body import Body
from workbench.document.lays import Lay
from workbench.document.picture import Picture
from workbench.document.project import Paper, Project
from workbench.document.report_data import cut_out, worked_out
from workbench.document.words import STYLE_WORDS, limit_words, measurement_words
from workbench.pieces import Making
from workbench.sheets import Heading, PrintChoice


def printed(picture: Picture, paper: Paper) -> bytes:
    """The PDF of a picture on some paper; ValueError in one sentence where that cannot be."""
    body, outcome, comfort, _ = worked_out(picture)
    heading, choice = heading_of(picture.project, body), choice_of(paper, picture.project.making)
    cutting = picture.cutting if paper.with_allowance else None
    return sheets.print_pdf(outcome, comfort, heading, choice, cutting)


def printed_lays(picture: Picture, lays: Sequence[Lay]) -> bytes:
    """The PDF of lay plans, to scale; ValueError in one sentence where that cannot be.

    On the paper of the project, or on A4 where that is one for panels at true size alone.
    """
    body, *_ = worked_out(picture)
    name = picture.project.paper.name
    cutting = cut_out(picture)
    plans = [(lay.cloth, lay.plan, cutting) for lay in lays if lay.plan is not None and lay.copies]
    paper = name if name in sheets.LAY_PAPERS else sheets.LAY_PAPERS[0]
    return sheets.print_lay(plans, heading_of(picture.project, body), paper)


def printed_card(picture: Picture) -> bytes:
    """The PDF of the client's card, on A4 or Letter; NoDraftError where it cannot be drafted."""
    body, outcome, comfort, _ = worked_out(picture)
    project = picture.project
    card = sheets.Card(outcome, comfort, cut_out(picture), project.making, project.client.next_fitting)
    return sheets.print_client_card(card, heading_of(project, body), office_paper(project))


def printed_order(picture: Picture) -> bytes:
    """The PDF of the sewing order with its ticks, on A4 or Letter; NoDraftError as above."""
    body, *_ = worked_out(picture)
    project = picture.project
    heading = heading_of(project, body)
    return sheets.print_sewing_order(picture.sewing, project.done, heading, office_paper(project))


def office_paper(project: Project) -> str:
    """The paper of the project where it is one for words, else the one that goes with its unit."""
    if project.paper.name in sheets.QUOTE_PAPERS:
        return project.paper.name
    return "Letter" if project.unit == "in" else "A4"


def heading_of(project: Project, body: Body) -> Heading:
    """What the first page says about client and figures."""
    client = project.client
    return Heading(
        client=client.name,
        style=STYLE_WORDS[project.design.style],
        date=client.date,
        wish=client.wish,
        measured_by=client.measured_by,
        invented=client.invented,
        unit=project.unit,
        fraction=project.fraction,
        measurements=tuple(
            (label, said, bool(estimate)) for label, said, estimate in measurement_words(project, body)
        ),
        limits=tuple(limit_words(project)),
    )


def choice_of(paper: Paper, making: Making) -> PrintChoice:
    """The paper of a project as the printing code takes it; a layer that is not made is not printed."""
    made = tuple(name for name in paper.layers if making.layer(name).made)
    return PrintChoice(
        name=paper.name,
        margin_mm=paper.margin_mm,
        overlap_mm=paper.overlap_mm,
        roll_width_mm=paper.roll_width_mm,
        with_allowance=paper.with_allowance,
        layers=made or ("fashion",),
        cutting_pages=paper.cutting_pages,
        marks=making.marks,
    )
