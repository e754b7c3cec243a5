"""The bench: what is on show in the pieces place, and when its cutting is worked out.

Nothing of a cutting is worked out while another place is in sight. In sight, the pieces of all
layers follow every draft at once, so that the layer on show is one of them; what is written of
them (lists, cards, findings) waits until the hand rests.
"""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QObject, Signal

from workbench.document import Picture
from workbench.pieces import Bone, Cutting, Layer, LayerName
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
        """Say what the whole cutting is."""
        self._worked = Worked(picture, _cutting(picture))
        self.light(())
        self.worked_out.emit(self._worked)

    def follow(self, picture: Picture) -> None:
        """Lay the pieces of the layer on show."""
        self.laid.emit(Laid(picture, self._layer, self._cut(picture)))

    def _cut(self, picture: Picture) -> Layer | None:
        """The layer on show, out of the whole cutting; None where a finding stops the draft."""
        cutting = _cutting(picture)
        if cutting is None:
            return None
        made = (layer for layer in cutting.layers if layer.name == self._layer)
        return next(made, None) or picture.layer(self._layer)


def _cutting(picture: Picture) -> Cutting | None:
    """All of it; None where a finding stops the draft, and so the shears."""
    return picture.cutting if picture.current else None
