"""What is timed on the real window with a real demo, beside the same scene painted with nothing computed."""

from __future__ import annotations

import os
import random
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from tests.bench.clock import Act, Timing, timed
from tests.bench.works import TWELVE_PANELS
from workbench.document import (
    Project,
    add_point,
    move_point,
    picture_of,
    read_project,
    set_pin,
    set_reduction,
)
from workbench.draft import Place
from workbench.ui.app import settle_memory
from workbench.ui.beads import BeadsPlace
from workbench.ui.form.entry import Entry
from workbench.ui.pieces import PiecesPlace
from workbench.ui.settings import Settings
from workbench.ui.style import dress
from workbench.ui.window import Window
from workbench.ui.worn.pane import WornPane
from workbench.worn import Eye

SIZE = (1600, 1000)
EDITS = 240


@contextmanager
def window_on(path: Path) -> Iterator[Window]:
    """The window on a project, shown at 1600x1000 with allowances, ledger and comfort in sight."""
    app = QApplication.instance() or QApplication([])
    assert isinstance(app, QApplication)
    app.setStyle("fusion")
    dress("light")
    with TemporaryDirectory() as folder:
        window = Window(Settings(Path(folder) / "window.ini"))
        window.files.put(read_project(path), path)
        window.resize(*SIZE)
        window.deeds["comfort"].setChecked(True)
        window.show()
        for _ in range(20):
            app.processEvents()
        settle_memory()
        try:
            yield window
        finally:
            window.desk.session.mark_saved(path)
            window.close()
            window.deleteLater()
            app.processEvents()


def painted(window: Window) -> None:
    """Everything that is due has been redrafted, shown and painted."""
    del window
    QApplication.processEvents()


def spin_steps() -> Timing:
    """A step of the waist reduction in its field, until it is painted."""
    with window_on(TWELVE_PANELS) as window:
        field = waist_field(window)
        keys = ([Qt.Key.Key_Up] * 6 + [Qt.Key.Key_Down] * 6) * (EDITS // 12)
        field.setFocus()

        def step(key: Qt.Key) -> Act:
            def act() -> None:
                QTest.keyClick(field, key)
                painted(window)

            return act

        middle, high = timed([step(key) for key in keys])
        return Timing("spin step to painted", middle, high, goal=8.3, floor=repaint_floor(window))


def edit_at_pieces() -> Timing:
    """A step of the waist reduction at the pieces place: draft, comfort and the pieces of all layers worked
    out, until the layer on show is painted. Lists, cards and foot follow when the hand rests.
    """
    with window_on(TWELVE_PANELS) as window:
        window.turning.show_place("pieces")
        painted(window)
        place = window.turning.page("pieces")
        assert isinstance(place, PiecesPlace)

        def edit(number: int) -> None:
            window.desk.apply("Edit", set_reduction(window.desk.project, "waist", 40.0 + 0.7 * (number % 24)))
            painted(window)

        def again() -> None:
            place.table.update()
            painted(window)

        middle, high = timed([partial(edit, number) for number in range(EDITS)])
        floor = timed([again] * 60)[0]
        return Timing("edit of all layers’ pieces to painted", middle, high, 8.3, floor)


def edit_at_beads() -> Timing:
    """A millimetre of the waist reduction at the beads place, until it is painted.

    Placing beads waits until the hand rests, and has a row of its own.
    """
    with window_on(TWELVE_PANELS) as window:
        window.turning.show_place("beads")
        painted(window)
        place = window.turning.page("beads")
        assert isinstance(place, BeadsPlace)
        place.bench.work_out()

        def edit(number: int) -> None:
            window.desk.apply("Edit", set_reduction(window.desk.project, "waist", 40.0 + number % 12))
            painted(window)

        def again() -> None:
            place.map.update()
            painted(window)

        def edited() -> Iterator[Act]:
            for number in range(60):
                edit(number)  # not counted: the floor is the same scene once more
                yield again

        middle, high = timed([partial(edit, number) for number in range(EDITS)])
        return Timing("edit at the beads place to painted", middle, high, 8.3, timed(edited())[0])


def turned_as_worn() -> Timing:
    """She is turned by a degree in the worn pane, until it is painted."""
    with window_on(TWELVE_PANELS) as window:
        holder = QWidget()
        pane = WornPane(window.desk, parent=holder)
        for widget in (holder, pane):
            widget.resize(420, 800)
        holder.show()
        pane.show_picture(window.desk.picture)
        painted(window)

        def turn(number: int) -> Act:
            def act() -> None:
                pane.view.turn_to(Eye(float(number % 90), 0.0))
                painted(window)

            return act

        def again() -> None:
            pane.view.update()
            painted(window)

        middle, high = timed([turn(number) for number in range(EDITS)])
        floor = timed([again] * 60)[0]
        holder.close()
        holder.deleteLater()
        return Timing("turned by a degree as worn to painted", middle, high, 8.3, floor)


def waist_field(window: Window) -> Entry:
    """The field for the waist reduction round the body."""
    window.desk.select(Place(field="reductions.waist"))
    fields = window.form.findChildren(Entry)
    return next(f for f in fields if f.accessibleName() == "Waist reduction, round the body")


def handle_drag() -> Timing:
    """Every move of a neckline handle under the mouse, until it is painted."""
    with window_on(TWELVE_PANELS) as window:
        canvas = window.board.canvas
        assert canvas.scene is not None
        handle = next(h for h in canvas.scene.handles if h.key.line == "neckline" and h.key.number == 1)
        start = handle.pixel(window.board.sight.view).toPoint()
        QTest.mousePress(canvas, Qt.MouseButton.LeftButton, pos=start)

        def move(number: int) -> Act:
            offset = QPoint(number % 9 - 4, 2 * (number % 17 - 8))

            def act() -> None:
                QTest.mouseMove(canvas, start + offset)
                painted(window)

            return act

        middle, high = timed([move(number) for number in range(EDITS)])
        QTest.mouseRelease(canvas, Qt.MouseButton.LeftButton, pos=start)
        return Timing(
            "move of a neckline handle to painted", middle, high, goal=8.3, floor=repaint_floor(window)
        )


def repaint_floor(window: Window) -> float:
    """Painting canvas and strip again with nothing computed, ms."""

    def act() -> None:
        window.board.canvas.update()
        window.board.strip.update()
        painted(window)

    return timed([act] * 60)[0]


def memory_over_edits(edits: int = 2000) -> Timing:
    """Growth of the process between the end of the first third of random edits and the last, MB.

    The floor is the growth over as many repaints with nothing edited.
    """
    chance = random.Random(7)
    with window_on(TWELVE_PANELS) as window:
        after_a_third = 0.0
        for number in range(edits):
            window.desk.apply("Edit", random_edit(window.desk.project, chance))
            painted(window)
            if chance.random() < 0.2:
                window.desk.undo()
            if number == edits // 3:
                after_a_third = resident()
        grown, whole = resident() - after_a_third, resident()
        before = resident()
        for _ in range(edits):
            window.board.canvas.update()
            painted(window)
        return Timing(f"memory over {edits} edits", grown, whole, 4.0, resident() - before, "MB")


def random_edit(project: Project, chance: random.Random) -> Project:
    """Some edit of a kind that she makes all day."""
    picture = picture_of(project)
    kinds: list[Callable[[], Project]] = [
        lambda: set_reduction(project, "waist", chance.uniform(0, 70)),
        lambda: set_pin(project, "front", 1, "waist", chance.choice([None, 12.7, 15.875])),
    ]
    if picture.good is not None and picture.good.draft is not None:
        points = picture.good.draft.neckline.points
        u, t = points[1].u, points[1].t + chance.uniform(-3, 3)
        kinds.append(lambda: move_point(project, "neckline", 1, u, t, points))
        if len(points) < 6:
            kinds.append(
                lambda: add_point(project, "neckline", chance.uniform(3.2, 5.8), points[-1].t, points)
            )
    return chance.choice(kinds)()


def resident() -> float:
    """Resident memory of this process, MB."""
    with open("/proc/self/statm") as file:
        return int(file.read().split()[1]) * os.sysconf("SC_PAGE_SIZE") / 1e6


ALL = (spin_steps, handle_drag, edit_at_pieces, edit_at_beads, turned_as_worn, memory_over_edits)
