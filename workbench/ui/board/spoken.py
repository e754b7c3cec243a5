"""What is chosen on the canvas in words, for those who hear the screen and do not see it."""

from __future__ import annotations

from workbench.body import LEVEL_LABEL
from workbench.draft import seam_name
from workbench.ui.board.figures import Figure
from workbench.ui.board.handles import Handle
from workbench.ui.board.measures import measures_of
from workbench.ui.board.scene import Scene


def spoken_handle(scene: Scene, handle: Handle) -> str:
    """The point, whether it is smooth, and its distances."""
    kind = "smooth" if handle.point.smooth else "corner"
    measures = measures_of(scene, handle)
    told = ", ".join(measures.lines) if measures else ""
    return f"{handle.key.line.capitalize()} point {handle.key.number + 1}, {kind}: {told}"


def spoken_figure(scene: Scene, figure: Figure) -> str:
    """The seam, the level, the side, and the amount."""
    seam = seam_name(figure.key.seam, scene.outcome.design)
    level = LEVEL_LABEL[figure.key.level].lower()
    pinned = ", pinned" if figure.pinned else ""
    return f"Intake of the {seam} at the {level}, {figure.key.side} side: {figure.words} {scene.unit}{pinned}"
