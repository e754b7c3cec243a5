"""The bead plan of a project on paper."""

from __future__ import annotations

from workbench import sheets
from workbench.beads import bands_of
from workbench.document.paper import choice_of, heading_of
from workbench.document.picture import Picture
from workbench.document.project import Paper
from workbench.document.report_data import cut_out, worked_out


def printed_beads(picture: Picture, paper: Paper) -> bytes:
    """The PDF of the bead plan, its panels at true size on some paper.

    NoDraftError where the project cannot be drafted; ValueError in one sentence where nothing is
    beaded, or the paper cannot be used.
    """
    body, outcome, _, _ = worked_out(picture)
    project, cutting = picture.project, cut_out(picture)
    if picture.beading is None:
        raise ValueError("Nothing is beaded yet: add a run or a scatter first.")
    bands = bands_of(outcome, project.making, cutting.bones, project.beads)
    choice = choice_of(paper, project.making)
    return sheets.print_beads(outcome, picture.beading, bands, heading_of(project, body), choice)
