"""One shape to begin from: a design without a client."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from workbench.document import Project, Shape, shape_of


@dataclass(frozen=True)
class KeptShape:
    """A shape under its name. ``project`` holds it on the invented body."""

    name: str
    purpose: str
    """What it is for, empty where nobody wrote that down."""
    project: Project
    path: Path | None = None
    """Of the file that holds it; None for a shape that comes with the program."""

    @cached_property
    def worked_out(self) -> Shape:
        """What it comes to on the invented body, worked out once."""
        return shape_of(self.project)

    @property
    def panels(self) -> tuple[int, int]:
        """How many panels there are in the front and in the back half, of each side."""
        design = self.project.design
        return design.front.panel_count, design.back.panel_count
