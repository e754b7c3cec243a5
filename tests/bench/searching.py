"""Edits while a shorter plan is sought in the process beside the window."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import contextmanager

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from tests.bench.clock import Act, Timing, timed
from tests.bench.scenes import painted, repaint_floor, waist_field, window_on
from tests.bench.works import TWELVE_PANELS
from workbench.ui.cloth import ClothPlace
from workbench.ui.cloth.lays import lay_of
from workbench.ui.cloth.search import LONGER_SECONDS
from workbench.ui.form.entry import Entry
from workbench.ui.window import Window

EDITS = 120
_BETWEEN_MS = 25
"""She types no faster, and meanwhile the search finds plans that have to be shown."""


def cloth_place(window: Window) -> ClothPlace:
    """The cloth place, made if need be."""
    place = window.turning.page("cloth")
    assert isinstance(place, ClothPlace)
    return place


@contextmanager
def window_searching() -> Iterator[Window]:
    """The window at the cloth place, with a search for its first cloth under way."""
    with window_on(TWELVE_PANELS) as window:
        window.turning.show_place("cloth")
        place = cloth_place(window)
        place.keep_improving()
        QTest.qWait(1000)
        assert place.search.running
        try:
            yield window
        finally:
            place.search.stop()


def price_typed() -> Timing:
    """The price of the cloth under search typed and handed in, until it is painted."""
    with window_searching() as window:
        place = cloth_place(window)
        field = next(f for f in place.form.findChildren(Entry) if f.accessibleName() == "Price of the cloth")
        field.setFocus()

        def price(number: int) -> Act:
            def act() -> None:
                field.selectAll()
                QTest.keyClicks(field, str(10 + number % 7))
                QTest.keyClick(field, Qt.Key.Key_Return)
                painted(window)

            return act

        middle, high = timed(_now_and_then(price(number) for number in range(EDITS)))
        assert place.search.running
        return Timing("price typed while a plan is sought", middle, high, 8.3, again(place))


def again(place: ClothPlace) -> float:
    """Painting the form once more with nothing computed, ms: a price changes nothing that is drawn."""

    def act() -> None:
        place.form.update()
        QApplication.processEvents()

    return timed([act] * 60)[0]


def spin_steps() -> Timing:
    """A step of the waist reduction at the draft, with the search going on all the same."""
    with window_on(TWELVE_PANELS) as window:
        search = cloth_place(window).search
        search.start(lay_of(window.desk.picture, window.desk.project.cloths[0]), LONGER_SECONDS)
        QTest.qWait(1000)
        field = waist_field(window)
        field.setFocus()
        keys = ([Qt.Key.Key_Up] * 6 + [Qt.Key.Key_Down] * 6) * (EDITS // 12)

        def step(key: Qt.Key) -> Act:
            def act() -> None:
                QTest.keyClick(field, key)
                painted(window)

            return act

        middle, high = timed(_now_and_then(step(key) for key in keys))
        assert search.running
        search.stop()
        return Timing("spin step while a plan is sought", middle, high, 8.3, repaint_floor(window))


def _now_and_then(acts: Iterable[Act]) -> Iterator[Act]:
    """The acts with time between them that is not counted."""
    for act in acts:
        QTest.qWait(_BETWEEN_MS)
        yield act


ALL = (price_typed, spin_steps)
