"""Choices and figures of a project in words, the same on screen, in a report and on paper."""

from __future__ import annotations

from collections.abc import Mapping

from workbench.body import LIMIT_TABLE, MEASUREMENTS, Body, say_with_unit, shown
from workbench.document.project import Project
from workbench.draft import Rule, Style
from workbench.pieces import Notion

STYLE_WORDS: Mapping[Style, str] = {"under_bust": "Under-bust", "over_bust": "Over-bust"}
RULE_WORDS: Mapping[Rule, str] = {
    "one_figure": "One figure for waist and underbust",
    "own_figure": "Waist and underbust on their own figures",
}


def measurement_words(project: Project, body: Body) -> list[tuple[str, str, str]]:
    """Label, length with its unit, and ``estimate`` or nothing, for each measurement that is known."""
    rows = []
    for measurement in MEASUREMENTS:
        mm = body.values.get(measurement.key)
        if mm is not None:
            said = _length(project, measurement.key, mm)
            rows.append((measurement.label, said, "estimate" if measurement.key in body.estimated else ""))
    return rows


def _length(project: Project, key: str, mm: float) -> str:
    """As she typed it where that was in the unit on show."""
    taken = project.measurements.get(key)
    if taken is None:
        return say_with_unit(mm, project.unit, project.fraction)
    return f"{shown(taken, project.unit, project.fraction)} {project.unit}"


def limit_words(project: Project) -> list[tuple[str, str]]:
    """Label and value of each limit that was set for the client."""
    rows = []
    for row in LIMIT_TABLE:
        value = float(getattr(project.limits, row.key))
        if row.unit_kind == "percent":
            said = f"{value:g} %"
        elif row.unit_kind == "share":
            said = f"{100 * value:g} %"
        else:
            said = say_with_unit(value, project.unit, project.fraction)
        rows.append((row.label, said))
    return rows


def notion_words(notion: Notion, project: Project) -> str:
    """How a line of the shopping list was worked out, lengths in the unit on show."""
    return notion.worked_out(project.unit, project.fraction)
