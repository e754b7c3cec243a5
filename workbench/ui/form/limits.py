"""The limits that she sets for this client, each with the source of its usual value."""

from __future__ import annotations

from workbench.body import LIMIT_TABLE, LimitRow
from workbench.document import Picture, Project, set_limit
from workbench.frozen import dataclass
from workbench.ui.desk import Desk
from workbench.ui.form.field import FigureRow
from workbench.ui.form.figures import Stored
from workbench.ui.form.kinds import Kind, LengthKind, PartKind, plain
from workbench.ui.form.section import Section
from workbench.ui.look import GRID
from workbench.ui.marks import Mark


@dataclass(frozen=True)
class _Limit:
    """Reads and stores one limit."""

    key: str

    def get(self, project: Project) -> float:
        """The limit as it is stored."""
        return float(getattr(project.limits, self.key))

    def put(self, project: Project, value: float) -> Project:
        """The project with another."""
        return set_limit(project, self.key, value)


def kind_of(row: LimitRow) -> Kind:
    """How a limit is written."""
    if row.unit_kind == "length":
        return LengthKind(signed=row.low < 0)
    return PartKind(100.0 if row.unit_kind == "percent" else 1.0)


class LimitFigureRow(FigureRow):
    """One limit; what it means and where its usual value comes from stand below it."""

    def __init__(self, desk: Desk, limit: LimitRow) -> None:
        stored = _Limit(limit.key)
        kind = kind_of(limit)
        figure = Stored(
            f"limits.{limit.key}", limit.label, f"Limit: {limit.label}", kind, stored.get, stored.put
        )
        super().__init__(desk, figure, width=23 * GRID)
        self.limit, self.kind = limit, kind
        self.words = f"limit {limit.label} {limit.how}".lower()
        self.column.setContentsMargins(*(3 * GRID, GRID, 3 * GRID, 2 * GRID))

    def remark(self, picture: Picture) -> tuple[str, Mark | None]:
        """Meaning and source; nothing is marked, as every limit is hers to set."""
        project = picture.project
        usual = f"{self.kind.say(self.limit.default, project)} {self.kind.suffix(project)}"
        return f"{self.limit.how}\nUsual: {usual}. Source: {self.limit.source}.", None


class LimitsSection(Section):
    """The last section."""

    title = "Limits"

    def fill(self) -> None:
        """One row for each limit of the table."""
        for limit in LIMIT_TABLE:
            self.add(LimitFigureRow(self.desk, limit))

    def summary(self, picture: Picture) -> str:
        """The two that are looked at most."""
        limits = picture.project.limits
        return f"waist {plain(limits.waist_percent)} %, breath {plain(100 * limits.breathing_share)} %"

    def has(self, field: str) -> bool:
        """Limits of this client."""
        return field.startswith("limits.")
