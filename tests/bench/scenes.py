"""The acts that are timed, on the real window and the real demos."""

from __future__ import annotations

import os
import random
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from tests.bench.clock import Act, Timing, timed
from workbench.body import complete
from workbench.document import (
    Project,
    add_point,
    move_point,
    picture_of,
    printed,
    read_project,
    set_pin,
    set_reduction,
)
from workbench.draft import Place, work_out
from workbench.pieces import LAYERS, cutting_of
from workbench.ui.app import settle_memory
from workbench.ui.form.entry import Entry
from workbench.ui.settings import Settings
from workbench.ui.style import dress
from workbench.ui.window import Window

ROOT = Path(__file__).parents[2]
DEMOS = ROOT / "demo_projects"
TWELVE_PANELS = DEMOS / "bride_first_wear.bodice"
LARGEST = DEMOS / "eight_panel_gown.bodice"
SIZE = (1600, 1000)
EDITS = 240


def draft_alone() -> Timing:
    """Body and design to panels, nothing shown."""
    project = read_project(TWELVE_PANELS)
    body = complete(project.taken())
    middle, high = timed([lambda: work_out(body, project.design)] * 400)
    return Timing("draft, 12 panels", middle, high, goal=1.0)


def pieces_alone() -> Timing:
    """A draft to the pieces of all layers, bones, list and walk check, nothing shown."""
    project = read_project(TWELVE_PANELS)
    outcome = work_out(complete(project.taken()), project.design)
    middle, high = timed([lambda: cutting_of(outcome, project.making)] * 200)
    return Timing("pieces of all layers, 12 panels", middle, high, goal=4.0)


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


_FIRST_PAINT = """
import gc, sys, time
gc.disable()  # as the command does before it reads Qt
from PySide6.QtCore import QEvent, QObject, QTimer
from PySide6.QtWidgets import QApplication, QMainWindow
class Watch(QObject):
    def eventFilter(self, target, event):
        if event.type() == QEvent.Type.Paint and not self.seen:
            self.seen = True
            QTimer.singleShot(0, self.tell)
        return False
    seen = False
    def tell(self):
        print(1000 * time.process_time(), flush=True)
        QApplication.exit(0)
watch = Watch()
run_events = QApplication.exec
def watched(*_):
    # not at the application: it would pay for a Python object of whatever is sent anything
    for window in QApplication.topLevelWidgets():
        if isinstance(window, QMainWindow):
            window.installEventFilter(watch)
    return run_events()
QApplication.exec = watched
"""
_WHOLE = _FIRST_PAINT + "from workbench.cli import main; sys.exit(main())"
_BARE = _FIRST_PAINT + "app = QApplication([]); window = QMainWindow(); window.show(); app.exec()"


def first_paint() -> Timing:
    """From the start of the process until the window with a project in it has been painted."""
    with TemporaryDirectory() as folder:
        copy = shutil.copy(TWELVE_PANELS, folder)  # nothing is left beside the demo
        _child(_WHOLE, copy)  # the first start compiles the modules, and no later one does
        whole = sorted(_child(_WHOLE, copy) for _ in range(5))
    bare = sorted(_child(_BARE) for _ in range(5))
    return Timing("start to first paint", whole[2], whole[-1], goal=350, floor=bare[2])


def _child(code: str, *arguments: str) -> float:
    with TemporaryDirectory() as folder:
        env = {
            **os.environ,
            "QT_QPA_PLATFORM": "offscreen",
            "PYTHONDONTWRITEBYTECODE": "",
            "XDG_DATA_HOME": folder,
            "XDG_CONFIG_HOME": folder,
        }
        done = subprocess.run(
            [sys.executable, "-c", code, *arguments],
            cwd=ROOT,
            env=env,
            check=True,
            capture_output=True,
            timeout=60,
        )
    return float(done.stdout.split()[0])


def a4_print() -> Timing:
    """The panels of the largest demo on A4 sheets with the first page, the library already loaded."""
    return _print_of("A4 print of the largest demo, panels", 400, with_allowance=False)


def whole_print() -> Timing:
    """The same with the pieces of every layer and all sheets for the cutting table."""
    return _print_of("A4 print of the largest demo, all sheets", 700, layers=LAYERS)


def _print_of(what: str, goal: float, **paper: Any) -> Timing:
    project = read_project(LARGEST)
    picture, on = picture_of(project), replace(project.paper, name="A4", **paper)
    printed(picture, on)
    middle, high = timed([lambda: printed(picture, on)] * 7)
    return Timing(what, middle, high, goal=goal)


def memory_over_edits(edits: int = 2000) -> Timing:
    """Growth of the process between the end of the first third of random edits and the last, MB."""
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
        return Timing(
            f"memory over {edits} edits", resident() - after_a_third, resident(), goal=4.0, unit="MB"
        )


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


ALL = (
    draft_alone,
    pieces_alone,
    spin_steps,
    handle_drag,
    first_paint,
    a4_print,
    whole_print,
    memory_over_edits,
)
