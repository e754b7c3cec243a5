"""The bench of the cloth place: which cloth is on show, and when its plan is worked out.

Nothing is worked out while another place is in sight. In sight, what is known already follows
every edit at once; what has to be cut or laid anew waits until the hand rests.
"""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QObject, Signal

from workbench.cloth import Cloth
from workbench.document import Picture
from workbench.pieces import Cutting
from workbench.ui.bench import PlaceBench
from workbench.ui.cloth.lays import Lay, lay_of, quickly
from workbench.ui.desk import Desk


@dataclass(frozen=True)
class OnShow:
    """The cloth on show, of one picture; None where the project has no cloth."""

    picture: Picture
    lay: Lay | None
    behind: bool = False
    """Whether the plan is of the picture before: the hand has not rested yet."""


@dataclass(frozen=True)
class Worked:
    """Every cloth, of one picture."""

    picture: Picture
    cutting: Cutting | None
    lays: tuple[Lay, ...]


class ClothBench(PlaceBench):
    """Holds which cloth is on show; says when a plan is there.

    ``worked_out`` brings a :class:`Worked`.
    """

    laid = Signal(object)
    """An :class:`OnShow`, after every draft in sight and every change of cloth."""
    cloth_shown = Signal(int)
    """The number of the cloth that is on show from now on."""

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(desk, parent)
        self._number = 0
        self._shown: OnShow | None = None
        self._worked: Worked | None = None

    @property
    def number(self) -> int:
        """Which cloth of the project is on show, counted from 0."""
        return max(min(self._number, len(self._desk.project.cloths) - 1), 0)

    @property
    def cloth(self) -> Cloth | None:
        """The cloth on show; None where the project has none."""
        cloths = self._desk.project.cloths
        return cloths[self.number] if cloths else None

    @property
    def shown(self) -> OnShow | None:
        """What is on show; None before anything was."""
        return self._shown

    @property
    def worked(self) -> Worked | None:
        """The latest that was worked out; None before anything was."""
        return self._worked

    @property
    def known(self) -> Picture | None:
        """The picture of which every cloth is worked out."""
        return self._worked.picture if self._worked else None

    def begin(self, picture: Picture) -> None:
        """Nothing: every cloth is worked out at once for whoever begins to look."""

    def follow(self, picture: Picture) -> None:
        """Show what is known of the cloth on show."""
        self._show(picture)

    def show_cloth(self, number: int) -> None:
        """Put another cloth on show."""
        if number == self._number:
            return
        self._number = number
        self.cloth_shown.emit(number)
        if self._in_sight:
            self._show(self._desk.picture, at_once=True)

    def work(self, picture: Picture) -> None:
        """Lay every cloth."""
        self._show(picture, at_once=True)
        lays = tuple(lay_of(picture, cloth) for cloth in picture.project.cloths)
        self._worked = Worked(picture, picture.cutting if picture.current else None, lays)
        self.worked_out.emit(self._worked)

    def _show(self, picture: Picture, *, at_once: bool = False) -> None:
        cloth = self.cloth
        if cloth is None:
            self._shown = OnShow(picture, None)
        elif at_once or quickly(picture, self.known, cloth):
            self._shown = OnShow(picture, lay_of(picture, cloth))
        else:
            before = self._shown.lay if self._shown is not None else None
            self._shown = OnShow(picture, before, behind=True)
        self.laid.emit(self._shown)
