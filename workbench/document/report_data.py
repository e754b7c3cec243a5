"""Everything that was worked out, as plain data for other programs. Lengths are in millimetres."""

from __future__ import annotations

from typing import Any

import numpy as np

from workbench.body import CAUTIONS, Body
from workbench.document.beading import beads_data
from workbench.document.picture import Picture
from workbench.document.project import Project
from workbench.document.records import plain
from workbench.document.report_cloth import money_data
from workbench.document.report_making import cutting_data
from workbench.draft import Comfort, Draft, Finding, Judgement, LedgerLine, Level, Outcome, Panel, SeamLine
from workbench.pieces import Cutting

Data = dict[str, Any]


class NoDraftError(ValueError):
    """A project that cannot be drafted; the message is the sentence that says why.

    ``field`` is the entry of the project at fault, where one alone is.
    """

    def __init__(self, sentence: str, field: str | None) -> None:
        super().__init__(sentence)
        self.field = field


def worked_out(picture: Picture) -> tuple[Body, Outcome, Comfort, Draft]:
    """Body, outcome, comfort and draft of a picture; NoDraftError with the first reason against it."""
    outcome, body, comfort = picture.outcome, picture.body, picture.comfort
    if outcome is None or body is None or comfort is None or outcome.draft is None:
        project, first = picture.project, picture.findings[0]
        raise NoDraftError(first.text(project.unit, project.fraction), first.place.field)
    return body, outcome, comfort, outcome.draft


def cut_out(picture: Picture) -> Cutting:
    """What is cut and bought for a picture; NoDraftError as for what was worked out."""
    worked_out(picture)
    cutting = picture.cutting
    assert cutting is not None  # there is a draft, or the line above has raised
    return cutting


def report(picture: Picture, name: str) -> Data:
    """The report of a project called ``name``, ready for JSON; NoDraftError where it cannot be drafted."""
    body, outcome, comfort, draft = worked_out(picture)
    cutting, project = cut_out(picture), picture.project
    return {
        "project": name,
        "client": project.client.name,
        "date": project.client.date,
        "invented": project.client.invented,
        "style": project.design.style,
        "rule": project.design.rule,
        "opening_mm": project.design.opening_mm,
        "front_share": project.design.front_share,
        "making": plain(project.making),
        "limits": plain(project.limits),
        "fittings": plain(project.fittings),
        "measurements": _measurements(project, body),
        "levels": [_level(level, comfort.at(level.name)) for level in outcome.levels],
        "intake": {quarter: _intake(outcome, quarter) for quarter in ("front", "back")},
        "panels": [_panel(panel) for panel in draft.panels],
        "seams": [_seam(seam) for seam in draft.seams],
        "tape_girth_mm": dict(draft.tape_girth),
        **cutting_data(cutting, project),
        **beads_data(picture.beading),
        **money_data(picture, lambda finding: finding_data(finding, project)),
        "comfort": {
            "findings": [finding_data(finding, project) for finding in comfort.findings],
            "largest_reduction_mm": comfort.largest_reduction,
        },
        "findings": [finding_data(finding, project) for finding in picture.all_findings],
        "checks": [check.text(project.unit, project.fraction) for check in body.checks],
        "cautions": list(CAUTIONS),
    }


def _measurements(project: Project, body: Body) -> Data:
    return {
        key: {
            "mm": value,
            "estimated": key in body.estimated,
            "typed": project.measurements[key].typed if key in project.measurements else None,
            "unit": project.measurements[key].unit if key in project.measurements else None,
        }
        for key, value in body.values.items()
    }


def _level(level: Level, judgement: Judgement) -> Data:
    return {
        "name": level.name,
        "walk_mm": level.walk,
        "body_girth_mm": level.body,
        "finished_girth_mm": level.finished,
        "fabric_girth_mm": level.fabric,
        "reduction_mm": level.reduction,
        "reduction_per_quarter_mm": 0.25 * level.reduction,
        "reduction_percent": level.percent,
        "fitted_mm": level.fitted,
        "limit": judgement.most,
        "limit_reason": judgement.reason,
        "status": judgement.status,
        "status_laced_shut": judgement.shut_status,
    }


def _intake(outcome: Outcome, quarter: str) -> Data:
    return {line.level: _ledger_line(line) for line in outcome.ledger if line.quarter == quarter}


def _ledger_line(line: LedgerLine) -> Data:
    takings = [
        {"seam": taking.seam, "left_mm": taking.left, "right_mm": taking.right, "pinned": taking.pinned}
        for taking in line.takings
    ]
    return {"needed_mm": line.needed, "placed_mm": line.placed, "takings": takings}


def _panel(panel: Panel) -> Data:
    return {
        "name": panel.name,
        "quarter": panel.quarter,
        "stitch_outline_mm": panel.outline.tolist(),
        "area_mm2": area(panel),
        "width_mm": dict(panel.widths),
    }


def area(panel: Panel) -> float:
    """Square millimetres within the stitch lines of a panel, by the shoelace formula."""
    x, y = panel.outline.T
    return float(0.5 * np.sum(x * np.roll(y, -1) - np.roll(x, -1) * y))


def _seam(seam: SeamLine) -> Data:
    return {
        "name": seam.name,
        "left": seam.left_panel,
        "right": seam.right_panel,
        "left_length_mm": seam.left_length,
        "right_length_mm": seam.right_length,
        "neckline_angle_sum": seam.neckline_angle_sum,
        "hem_angle_sum": seam.hem_angle_sum,
        "neckline_smooth": seam.neckline_smooth,
        "hem_smooth": seam.hem_smooth,
    }


def finding_data(finding: Finding, project: Project) -> Data:
    """One finding: how grave, its sentence in the user's unit, its figures in mm."""
    return {
        "severity": finding.severity,
        "code": finding.code,
        "text": finding.text(project.unit, project.fraction),
        "value": finding.value_mm,
        "limit": finding.limit_mm,
    }
