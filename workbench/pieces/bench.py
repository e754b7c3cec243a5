"""The bench: one draft and one way of making, on which the pieces of all layers are cut at once.

A layer first says what it is made of, as blanks; then every blank of every layer is given its
allowances, looked over and notched together. Layers that are cut alike share their blanks.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from workbench.draft import Draft, Finding, Outcome, Panel
from workbench.frozen import dataclass
from workbench.pieces.cutline import CutShape, Widths, cut_shapes
from workbench.pieces.kinds import Edging
from workbench.pieces.making import Making
from workbench.pieces.marks import Grain, fold_mark, grain_of, level_marks
from workbench.pieces.notches import Side, Stops, notches_on, stops_of
from workbench.pieces.outline import Outline, outline_of
from workbench.pieces.result import Bone, MarkLine, Notch, Piece
from workbench.pieces.verify import look_over


@dataclass(frozen=True, eq=False)
class Blank:
    """One piece before it has its allowances and notches."""

    outline: Outline
    widths: Widths
    name: str
    sides: tuple[Side, ...]
    """Those that are notched."""
    finish: Callable[[CutShape, tuple[Notch, ...]], Piece]
    """Makes the piece of its cut shape and its notches. A panel's does not hold the bench, which keeps the
    blank: neither would be let go before memory is swept."""
    panel: int | None = None
    """The panel it is cut from; None for what is no panel."""


@dataclass(frozen=True)
class Ground:
    """What the pieces of one panel have in common, whatever their allowances."""

    outline: Outline
    marks: tuple[MarkLine, ...]
    grain: Grain


class Bench:
    """One draft and one way of making, with what its layers have in common worked out once."""

    def __init__(self, outcome: Outcome, draft: Draft, making: Making, bones: tuple[Bone, ...] = ()) -> None:
        self.outcome, self.draft, self.making, self.bones = outcome, draft, making, bones
        self.edging = Edging(outcome.design, making)
        self.stops: tuple[Stops, ...] = stops_of(outcome, draft, making)
        self.findings: list[Finding] = []
        """What was found while the pieces were made."""
        self.blanks: dict[tuple[int, float, Widths], Blank] = {}
        """Those of the panels: which panel, turn of cloth and allowances."""
        self._grounds: dict[tuple[int, float], Ground] = {}

    @property
    def front(self) -> int:
        """The number of the side seam."""
        return self.outcome.design.front.panel_count

    def lows(self, panel: int) -> tuple[float, float]:
        """Walks at which the left and the right side of a panel begin."""
        walks = self.draft.hem.seam_walks
        return walks[panel], walks[panel + 1]

    def ground(self, panel: Panel, turn: float) -> Ground:
        """What all pieces of a panel with one turn of cloth share."""
        key = panel.index, turn
        if key not in self._grounds:
            turns = self.edging.turns(panel.index, turn)
            outline = outline_of(panel, *turns)
            folded = "fold" in self.edging.panel(panel.index)
            marks = (*level_marks(panel, *turns), *((fold_mark(outline),) if folded else ()))
            self._grounds[key] = Ground(outline, marks, grain_of(outline))
        return self._grounds[key]

    def cut(self, blanks: Sequence[Blank]) -> list[CutShape]:
        """The cut shape of each, mended where it crosses itself; a finding where one does not come out."""
        outlines, widths = [blank.outline for blank in blanks], [blank.widths for blank in blanks]
        shapes, findings = look_over(
            cut_shapes(outlines, widths, self.making.corner_limit),
            [blank.name for blank in blanks],
            [blank.panel for blank in blanks],
        )
        self.findings += _once(findings, self.findings)
        return shapes

    def finished(self, blanks: Sequence[Blank]) -> dict[Blank, Piece]:
        """The piece of each blank, all of them cut, looked over and notched together."""
        new = list(dict.fromkeys(blanks))
        if not new:
            return {}
        shapes = self.cut(new)
        notches = notches_on(shapes, [blank.sides for blank in new], self.front)
        return {
            blank: blank.finish(shape, own) for blank, shape, own in zip(new, shapes, notches, strict=True)
        }


def _once(findings: Sequence[Finding], known: Sequence[Finding]) -> list[Finding]:
    """What is not known yet: layers that are cut alike say the same."""
    new: list[Finding] = []
    for finding in findings:
        if finding not in known and finding not in new:
            new.append(finding)
    return new
