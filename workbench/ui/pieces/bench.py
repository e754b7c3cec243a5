"""The bench: what is on show in the pieces place, and when its cutting is worked out.

The pieces place is the only one that wants a cutting. Nothing of it is worked out while
another place is in sight; in sight, the layer on show follows every draft at once, and all
the rest (lists, cards, findings) waits until the hand rests.
"""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QObject, Signal

from workbench.document import Picture, Project
from workbench.draft import Outcome
from workbench.pieces import Bone, Cutting, Layer, LayerName, bones_of, layer_of
from workbench.ui.bench import PlaceBench
from workbench.ui.desk import Desk


@dataclass(frozen=True)
class Laid:
    """The layer on show, of one picture; None where there is no draft to cut from."""

    picture: Picture
    name: LayerName
    layer: Layer | None


@dataclass(frozen=True)
class Worked:
    """Everything that is cut, of one picture; None where there is no draft to cut from."""

    picture: Picture
    cutting: Cutting | None


class Bench(PlaceBench):
    """Holds which layer is on show and which bones are lit; says when pieces are there.

    ``worked_out`` brings a :class:`Worked`.
    """

    laid = Signal(object)
    """A :class:`Laid`, after every draft in sight and every change of layer."""
    layer_shown = Signal(str)
    """The layer that is on show from now on."""
    lit = Signal(object)
    """The bones that are lit, a tuple."""

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(desk, parent)
        self._layer: LayerName = "fashion"
        self._bones: tuple[Bone, ...] = ()
        self._drawn: tuple[Bone, ...] = ()
        self._hung_on: tuple[object, ...] = ()
        self._worked: Worked | None = None

    @property
    def layer(self) -> LayerName:
        """The layer on show."""
        return self._layer

    @property
    def known(self) -> Picture | None:
        """The picture of the latest cutting."""
        return self._worked.picture if self._worked else None

    @property
    def cutting(self) -> Cutting | None:
        """The latest cutting that was worked out; None before there is one."""
        return self._worked.cutting if self._worked else None

    @property
    def bones(self) -> tuple[Bone, ...]:
        """The bones that are lit."""
        return self._bones

    def show_layer(self, name: LayerName) -> None:
        """Put another layer on show."""
        if name == self._layer:
            return
        self._layer = name
        self.layer_shown.emit(name)
        if self._in_sight:
            self.follow(self._desk.picture)

    def light(self, bones: tuple[Bone, ...]) -> None:
        """Light up bones on the pieces, or none."""
        if bones is not self._bones and (bones or self._bones):
            self._bones = bones
            self.lit.emit(bones)

    def work(self, picture: Picture) -> None:
        """Work out the whole cutting."""
        self._worked = Worked(picture, _cutting(picture))
        self.light(())
        self.worked_out.emit(self._worked)

    def follow(self, picture: Picture) -> None:
        """Lay the pieces of the layer on show."""
        self.laid.emit(Laid(picture, self._layer, self._cut(picture)))

    def _cut(self, picture: Picture) -> Layer | None:
        """The layer on show with the bones that are drawn on it; None where a finding stops the draft."""
        outcome, making = picture.outcome, picture.project.making
        if outcome is None or not picture.current:
            return None
        carrier = "strength" if making.layer("strength").made else "fashion"
        if self._layer != carrier:
            return picture.layer(self._layer)
        return layer_of(outcome, making, self._layer, self._bones_drawn(outcome, picture.project))

    def _bones_drawn(self, outcome: Outcome, project: Project) -> tuple[Bone, ...]:
        """The bones, worked out anew only where something has changed that they hang on."""
        making = project.making
        hung_on = (
            *(project.measurements, project.design),
            *(making.boning, making.opening, making.front, making.busk_mm),
        )
        if hung_on != self._hung_on:
            self._hung_on = hung_on
            self._drawn = bones_of(outcome, making)[0]
        return self._drawn


def _cutting(picture: Picture) -> Cutting | None:
    """All of it; None where a finding stops the draft, and so the shears."""
    return picture.cutting if picture.current else None
