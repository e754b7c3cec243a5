"""What is assumed of the client's torso for the worn view: what may be set, and the edits of it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, replace

from workbench.document.changing import refuse
from workbench.document.problem import Problem, Problems
from workbench.document.project import Project
from workbench.document.schema_parts import Schema
from workbench.frozen import dataclass
from workbench.worn import LEAST_DEPTH, LEAST_SHORT, MOST_DEPTH, MOST_SHORT, Torso


@dataclass(frozen=True)
class TorsoRow:
    """One figure of a torso, for a form."""

    key: str
    label: str
    how: str
    source: str
    """Where its usual value comes from."""
    low: float
    high: float

    @property
    def percent(self) -> bool:
        """Whether it is kept in hundredths already, not as a part of 1."""
        return self.key.startswith("short_")


_ASSUMED = "assumption, no source"
_DEPTHS: Mapping[str, tuple[str, str]] = {
    "top_hip": ("Top hip, depth", "from memory of ANSUR II (hip and waist), no figure read"),
    "waist": ("Waist, depth", "median of the women of ANSUR II, 2012"),
    "underbust": ("Underbust, depth", _ASSUMED),
    "bust": ("Bust, depth", _ASSUMED),
    "upper_chest": ("Upper chest, depth", _ASSUMED),
}
_SHORTS: Mapping[str, str] = {"short_at_waist": "Waist, fuller", "short_at_hip": "Hip, fuller"}

TORSO_TABLE: tuple[TorsoRow, ...] = (
    *(
        TorsoRow(
            key,
            label,
            "From front to back for each inch from side to side, in hundredths.",
            source,
            LEAST_DEPTH,
            MOST_DEPTH,
        )
        for key, (label, source) in _DEPTHS.items()
    ),
    *(
        TorsoRow(
            key,
            label,
            "How far an ellipse as broad and as deep falls short of the tape.",
            "ANSUR II, 2012, derived",
            LEAST_SHORT,
            MOST_SHORT,
        )
        for key, label in _SHORTS.items()
    ),
)
"""Every figure of a torso, in the order of a form."""


def set_torso(project: Project, key: str, value: float) -> Project:
    """The project with another figure of its torso; ValueError where it cannot be that."""
    if key not in {field.name for field in fields(Torso)}:
        raise ValueError(f"A torso has nothing called “{key}”.")
    torso = replace(project.torso, **{key: float(value)})
    refuse(torso_problems(torso))
    return replace(project, torso=torso)


def usual_torso(project: Project) -> Project:
    """The project with the torso there is as long as nothing is known of hers."""
    return replace(project, torso=Torso())


def torso_problems(torso: Torso) -> Problems:
    """Figures of which no section can be drawn."""
    return _problems(torso)


def _problems(torso: Torso) -> Iterator[Problem]:
    for row in TORSO_TABLE:
        if not row.low <= getattr(torso, row.key) <= row.high:
            part = 1.0 if row.percent else 0.01
            yield ("torso", row.key), f"must be {row.low / part:g} % to {row.high / part:g} %"


def bound_torso(schema: Schema) -> None:
    """The same in the schema of project files."""
    for row in TORSO_TABLE:
        schema["$defs"]["Torso"]["properties"][row.key].update(minimum=row.low, maximum=row.high)
