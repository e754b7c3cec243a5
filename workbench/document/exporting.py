"""From a project to files other programs read, and to the guide for marking by hand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from workbench import exchange, sheets
from workbench.document.paper import heading_of
from workbench.document.picture import Picture
from workbench.document.report_data import cut_out, worked_out
from workbench.draft import Finding
from workbench.exchange import ExportChoice, Format, LargePage
from workbench.marking import Guide, Rounding, guide_of, rounding_of
from workbench.pieces import LayerName


def exported(picture: Picture, kind: Format, choice: ExportChoice) -> bytes:
    """The bytes of a file; ValueError in one sentence where that cannot be."""
    body, outcome, *_ = worked_out(picture)
    cutting = cut_out(picture) if choice.what == "pieces" else None
    choice = replace(choice, marks=picture.project.making.marks)
    return exchange.export(outcome, cutting, heading_of(picture.project, body), kind, choice, _over(picture))


def export_page(picture: Picture, kind: Format, choice: ExportChoice) -> LargePage:
    """Where everything lies in the file; ValueError in one sentence where that cannot be."""
    body, outcome, *_ = worked_out(picture)
    cutting = cut_out(picture) if choice.what == "pieces" else None
    choice = replace(choice, marks=picture.project.making.marks)
    return exchange.laid_out(outcome, cutting, heading_of(picture.project, body), kind, choice)


def marking_guides(
    picture: Picture, rounding: Rounding | None = None, layers: Sequence[LayerName] | None = None
) -> tuple[Guide, ...]:
    """How the pieces of each layer are marked by hand, of all layers unless some are named.

    Rounded as is usual for the project's unit unless said. ValueError in one sentence where
    nothing can be drafted.
    """
    _, outcome, *_ = worked_out(picture)
    project = picture.project
    chosen = rounding or rounding_of(project.unit, project.fraction)
    return tuple(
        guide_of(outcome, project.making, layer, chosen)
        for layer in cut_out(picture).layers
        if layers is None or layer.name in layers
    )


def printed_marking(picture: Picture, guides: Sequence[Guide]) -> bytes:
    """The PDF of marking guides, on Letter or A4; ValueError in one sentence where that cannot be."""
    body, *_ = worked_out(picture)
    paper = "Letter" if picture.project.paper.name == "Letter" else "A4"
    return sheets.print_marking(guides, heading_of(picture.project, body), paper, _over(picture))


def _over(picture: Picture) -> tuple[Finding, ...]:
    """What is above a limit that was set: paper is never silent about it."""
    return tuple(finding for finding in picture.findings if finding.severity == "over")
