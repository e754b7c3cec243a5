"""Where beads go when a quarter comes to have more or fewer panels: they stay where they are on the body."""

from __future__ import annotations

from dataclasses import replace

from workbench.beads import BeadPlan, BeadRun, BeadScatter
from workbench.draft import Design, ShapePoint
from workbench.frozen import dataclass


def beads_with_panels_changed(plan: BeadPlan, old: Design, new: Design) -> BeadPlan:
    """The plan for a design with other panels: lines keep their place across each quarter.

    A run along a seam goes on along the one that lies nearest in its quarter, a scatter over the
    panels whose middle lay within its own.
    """
    change = _Change(old, new)
    runs = tuple(change.run(run) for run in plan.runs)
    return replace(plan, runs=runs, scatters=tuple(change.scatter(scatter) for scatter in plan.scatters))


@dataclass(frozen=True)
class _Change:
    old: Design
    new: Design

    def run(self, run: BeadRun) -> BeadRun:
        """The run on its line or seam."""
        seam = self._seam(run.seam) if run.seam < self.old.panel_count else run.seam
        return replace(run, points=self._line(run.points), seam=seam)

    def scatter(self, scatter: BeadScatter) -> BeadScatter:
        """The scatter over the same cloth, as nearly as panels allow."""
        held = {panel for panel in scatter.panels if panel < self.old.panel_count}
        panels = [n for n in range(self.new.panel_count) if int(self._back(n + 0.5)) in held]
        lost = held - {int(self._back(n + 0.5)) for n in panels}
        # a panel so narrow that it holds the middle of none goes on as the one it lies in
        panels += [int(self._across(panel + 0.5)) for panel in lost]
        return replace(scatter, panels=tuple(sorted(set(panels))), thin_to=self._line(scatter.thin_to))

    def _line(self, points: tuple[ShapePoint, ...]) -> tuple[ShapePoint, ...]:
        return tuple(replace(point, u=self._across(point.u)) for point in points)

    def _seam(self, seam: int) -> int:
        side, new_side = self.old.front.panel_count, self.new.front.panel_count
        if seam == side:
            return new_side
        low, high = (1, new_side - 1) if seam < side else (new_side + 1, self.new.panel_count - 1)
        return min(max(round(self._across(float(seam))), low), high)

    def _across(self, u: float) -> float:
        """A place across the old half, on the new one."""
        return _scaled(u, self.old, self.new)

    def _back(self, u: float) -> float:
        return _scaled(u, self.new, self.old)


def _scaled(u: float, old: Design, new: Design) -> float:
    front, new_front = old.front.panel_count, new.front.panel_count
    if u <= front:
        return u * new_front / front
    return new_front + (u - front) * new.back.panel_count / old.back.panel_count
