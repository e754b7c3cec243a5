"""What the tests of the cloth place share: the place on a screen, a scripted search, the hand."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from workbench.cloth import Cloth, Copy, Placed, Plan, bottom_left, plan_at
from workbench.draft import Finding
from workbench.ui.cloth import ClothPlace
from workbench.ui.cloth.spread import ClothSpread, LaidCopy
from workbench.ui.desk import Desk

NONE = Qt.KeyboardModifier.NoModifier
LEFT = Qt.MouseButton.LeftButton


def shown(qtbot: QtBot, desk: Desk) -> ClothPlace:
    """The place as large as on a small laptop."""
    place = ClothPlace(desk)
    qtbot.addWidget(place)
    place.resize(1280, 640)
    with qtbot.waitExposed(place):
        place.show()
    return place


def spread(place: ClothPlace) -> ClothSpread:
    assert place.canvas.spread is not None
    return place.canvas.spread


def named(place: ClothPlace, name: str, number: int = 1) -> LaidCopy:
    return next(p for p in spread(place).pieces if (p.copy.name, p.copy.number) == (name, number))


def middle(place: ClothPlace, piece: LaidCopy) -> QPoint:
    return place.canvas.sight.view.at(*piece.middle).toPoint()


def drag(place: ClothPlace, start: QPoint, by: QPoint) -> None:
    canvas = place.canvas
    QTest.mousePress(canvas, LEFT, NONE, start)
    QTest.mouseMove(canvas, start + by / 2)
    QTest.mouseMove(canvas, start + by)
    QTest.mouseRelease(canvas, LEFT, NONE, start + by)


class Scripted:
    """A solver that finds what it is told, when it is asked."""

    def __init__(
        self, copies: Sequence[Copy], cloth: Cloth, pinned: Sequence[Placed], seconds: float
    ) -> None:
        self.copies, self.cloth, self.pinned, self.seconds = tuple(copies), cloth, tuple(pinned), seconds
        self.best = bottom_left(copies, cloth, pinned)
        self.findings: tuple[Finding, ...] = ()
        self.running = True
        self.improved: list[float] = []
        self.cancelled = False
        self._found: list[Plan] = []

    def find(self, plan: Plan, *, last: bool = False) -> None:
        """Have this plan ready for the next look."""
        self._found.append(plan)
        self.running = not last

    def improve(self, seconds: float) -> None:
        self.improved.append(seconds)
        self.running = True

    def poll(self) -> list[Plan]:
        found, self._found = self._found, []
        self.best = found[-1] if found else self.best
        return found

    def cancel(self) -> None:
        self.running = False
        self.cancelled = True


class Script:
    """Stands in for the solver of a place; ``latest`` is what was begun last."""

    def __init__(self, place: ClothPlace) -> None:
        self.begun: list[Scripted] = []
        place.search.begin = self.begin

    def begin(
        self, copies: Sequence[Copy], cloth: Cloth, pinned: Sequence[Placed], seconds: float
    ) -> Scripted:
        self.begun.append(Scripted(copies, cloth, pinned, seconds))
        return self.begun[-1]

    @property
    def latest(self) -> Scripted:
        return self.begun[-1]


def shorter(place: ClothPlace) -> Plan:
    """The plan of the cloth on show with a shorter length said of it: what a search might find."""
    lay = place.bench.shown
    assert lay is not None
    assert lay.lay is not None
    assert lay.lay.valid is not None
    plan = lay.lay.valid
    made = plan_at(plan.placed, lay.lay.copies, lay.lay.cloth, "Found by a script.")
    return replace(made, length_mm=plan.length_mm - 25.4)


Act = Callable[[ClothPlace], None]
