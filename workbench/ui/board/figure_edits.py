"""What a typed or deleted intake figure does to the project."""

from __future__ import annotations

from workbench.document import Project, quarter_of, set_left_part, set_pin
from workbench.ui.board.figures import Figure


def with_amount(project: Project, figure: Figure, mm: float) -> Project:
    """The project with this side of the seam pinned to ``mm``, the other side of it left as it is.

    What fittings took in of it stays on top.
    """
    seam, level = figure.key.seam, figure.key.level
    if not figure.inner:
        return set_pin(project, figure.quarter, seam, level, mm - figure.fitted)
    whole = mm + figure.other
    pinned = set_pin(project, figure.quarter, seam, level, whole - figure.fitted)
    if whole <= 0:
        return pinned
    left = mm if figure.key.side == "left" else figure.other
    return set_left_part(pinned, figure.quarter, seam, level, min(max(left / whole, 0.0), 1.0))


def unpinned(project: Project, figure: Figure) -> Project:
    """The project with this seam sharing again at this level, split as it usually is."""
    seam, level = figure.key.seam, figure.key.level
    shared = set_pin(project, figure.quarter, seam, level, None)
    if not figure.inner:
        return shared
    first = 1 if figure.quarter == "front" else project.design.front.panel_count + 1
    usual = quarter_of(project.design, figure.quarter).seams[seam - first].left_part
    return set_left_part(shared, figure.quarter, seam, level, usual)
