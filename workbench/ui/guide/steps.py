"""The five steps from a new client to paper: which are done, as the project itself tells."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from typing import Literal

from workbench.body import BY_KEY
from workbench.document import Picture
from workbench.draft import Place, usual_design

StepName = Literal["shape", "measure", "reduce", "lines", "print"]
STEPS: tuple[StepName, ...] = ("shape", "measure", "reduce", "lines", "print")
TITLES: dict[StepName, str] = {
    "shape": "Shape",
    "measure": "Measurements",
    "reduce": "Reduction",
    "lines": "Neckline",
    "print": "Print",
}
_SAID: dict[StepName, str] = {
    "shape": "A plain bodice. Choose another shape, or keep this one: all of it can change later.",
    "measure": "Type her bust and waist as you speak them. The rest is estimated until you type it.",
    "reduce": "Drag the end of the waist bar at the right, or type it. Two inches stand there to begin with.",
    "lines": "Drag the points of the upper and the lower edge, or keep the lines as they are.",
    "print": "Print at true size on the printer you have; measure the square before you cut.",
}
FINISHED = "That is the whole way once. Pieces, cloth and price are in the other places, at the top right."


@dataclass(frozen=True)
class Step:
    """One step as it stands."""

    name: StepName
    number: int
    done: bool
    current: bool

    @property
    def title(self) -> str:
        """In one word."""
        return TITLES[self.name]


def steps_of(picture: Picture, kept: Collection[StepName]) -> tuple[Step, ...]:
    """The steps for a project; ``kept`` are those she went on from without a change.

    The current step is the first that is not done; there is none when all are.
    """
    done = {name: name in kept or _is_done(name, picture) for name in STEPS}
    current = next((name for name in STEPS if not done[name]), None)
    return tuple(
        Step(name, number, done[name], name == current) for number, name in enumerate(STEPS, start=1)
    )


def _is_done(name: StepName, picture: Picture) -> bool:
    project = picture.project
    usual = usual_design(project.design.style)
    if name == "shape":
        seams = (project.design.front, project.design.back) != (usual.front, usual.back)
        return bool(project.style_name or project.measurements) or seams
    if name == "measure":
        return picture.body is not None
    if name == "reduce":
        return project.design.reductions != usual.reductions
    if name == "lines":
        return project.design.neckline is not None or project.design.hem is not None
    return False  # no project knows that it was printed


def sentence_of(step: Step | None, picture: Picture) -> str:
    """What to do next; while measurements are wanting, which."""
    if step is None:
        return FINISHED
    if step.name == "measure" and picture.project.measurements:
        wanting = next((finding for finding in picture.findings if finding.code == "body"), None)
        if wanting is not None:
            return wanting.text(picture.project.unit, picture.project.fraction)
    return _SAID[step.name]


def place_of(name: StepName, picture: Picture) -> Place | None:
    """What lights up when a step is shown; None for a step that is done elsewhere."""
    if name == "measure":
        needed = [key for key, row in BY_KEY.items() if row.needed]
        wanting = next((key for key in needed if key not in picture.project.measurements), needed[0])
        return Place(field=f"measurements.{wanting}")
    if name == "reduce":
        return Place(level="waist", field="reductions.waist")
    if name == "lines":
        return Place(line="neckline", point=1)
    return None
