"""What a screen reader finds on the canvases: names, values, what can be done, and what it is told."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QAccessible, QAccessibleActionInterface, QAccessibleInterface
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from tests.beads.garments import RICH
from tests.ui.conftest import bodice, in_hand, on_screen
from tests.ui.test_fitting_place import FIRST
from workbench.document import Session, set_reduction
from workbench.draft import Place
from workbench.ui import access
from workbench.ui.access.canvases import known_reader
from workbench.ui.access.readers import CanvasReader
from workbench.ui.beads import BeadsPlace
from workbench.ui.board import Board
from workbench.ui.cloth import ClothPlace
from workbench.ui.desk import Desk
from workbench.ui.fitting import FittingPlace
from workbench.ui.pieces import PiecesPlace
from workbench.ui.sentence import Foot
from workbench.ui.worn import WornPane

_Name, _Value = QAccessible.Text.Name, QAccessible.Text.Value
PRESS = QAccessibleActionInterface.pressAction()
MORE = QAccessibleActionInterface.increaseAction()


@pytest.fixture(autouse=True)
def _heard(qapp: object) -> None:
    access.install()


@pytest.fixture
def board(qtbot: QtBot, desk: Desk) -> Board:
    return in_hand(qtbot, Board(desk), 1280, 640)


def heard(canvas: QWidget) -> CanvasReader:
    reader = QAccessible.queryAccessibleInterface(canvas)
    assert isinstance(reader, CanvasReader)
    return reader


@pytest.fixture
def listening() -> Iterator[None]:
    """As while a screen reader runs."""
    QAccessible.setActive(True)
    yield
    QAccessible.setActive(False)


def children(reader: QAccessibleInterface) -> Iterator[QAccessibleInterface]:
    return (reader.child(number) for number in range(reader.childCount()))


def named(canvas: QWidget, name: str) -> QAccessibleInterface:
    found = [child for child in children(heard(canvas)) if child.text(_Name).startswith(name)]
    assert found, sorted(child.text(_Name) for child in children(heard(canvas)))
    return found[0]


def do(thing: QAccessibleInterface, word: str) -> None:
    deeds = thing.actionInterface()
    assert word in deeds.actionNames()
    deeds.doAction(word)


# --- the board -----------------------------------------------------------------------------


def test_every_shape_point_and_figure_is_there_once_with_a_name(board: Board) -> None:
    scene = board.canvas.scene
    assert scene is not None
    names = [child.text(_Name) for child in children(heard(board.canvas))]
    wanted = {handle.key for handle in scene.handles} | {figure.key for figure in scene.figures}
    items = [name for name in names if " point " in name or name.startswith("Intake of")]
    assert len(items) == len(set(items)) == len(wanted)


def test_a_shape_point_says_where_it_lies(board: Board) -> None:
    point = named(board.canvas, "Neckline point 2")
    assert point.role() == QAccessible.Role.Slider
    assert "above the waist" in point.text(_Value)


def test_a_shape_point_is_moved_by_its_value_in_one_step(board: Board, desk: Desk) -> None:
    value = named(board.canvas, "Neckline point 2").valueInterface()
    before = float(value.currentValue())
    value.setCurrentValue(before + 0.5)
    assert desk.undo_name == "Move neckline point"
    assert float(value.currentValue()) == pytest.approx(before + 0.5, abs=1e-3)
    desk.undo()
    desk.now()
    assert float(value.currentValue()) == pytest.approx(before, abs=1e-9)


def test_a_shape_point_is_picked_and_made_a_corner(board: Board, desk: Desk) -> None:
    point = named(board.canvas, "Neckline point 2, smooth")
    do(point, PRESS)
    assert desk.selection == Place(line="neckline", point=1)
    do(point, "Smooth or corner")
    desk.now()
    assert named(board.canvas, "Neckline point 2").text(_Name) == "Neckline point 2, corner"


def test_an_intake_is_set_and_freed(board: Board, desk: Desk) -> None:
    figure = named(board.canvas, "Intake of")
    figure.valueInterface().setCurrentValue(0.5)
    assert figure.text(_Value) == "½ in, pinned"
    do(figure, "Unpin")
    desk.now()
    assert "pinned" not in figure.text(_Value)


def test_items_lie_on_the_screen_where_they_are_painted(board: Board) -> None:
    reader, canvas = heard(board.canvas), board.canvas
    assert canvas.scene is not None
    handle = canvas.scene.handles[1]
    point = canvas.mapToGlobal(handle.pixel(canvas.sight.view).toPoint())
    assert reader.childAt(point.x(), point.y()).text(_Name).startswith("Neckline point")


def test_children_know_their_canvas_and_their_number(board: Board) -> None:
    reader = heard(board.canvas)
    for number, child in enumerate(children(reader)):
        assert reader.indexOfChild(child) == number
        assert child.parent() is reader
        assert child.isValid()
        assert child.childCount() == 0


def test_a_thing_that_is_gone_says_so(board: Board, desk: Desk) -> None:
    scene = board.canvas.scene
    assert scene is not None
    last = max(handle.key.number for handle in scene.handles if handle.key.line == "neckline")
    do(named(board.canvas, "Neckline point 2"), "Remove")
    point = heard(board.canvas).reader(("handle", "neckline", last))
    desk.now()
    assert not point.isValid()
    assert point.text(_Name) == ""


def test_what_has_no_figure_says_so_without_falling(board: Board) -> None:
    panel = named(board.canvas, "Front 1")
    assert panel.valueInterface() is None
    assert panel.textInterface() is None
    assert panel.tableCellInterface() is None


# --- the other canvases --------------------------------------------------------------------


def test_bars_are_read_top_to_bottom_and_drawn_in(board: Board, desk: Desk) -> None:
    names = [child.text(_Name) for child in children(heard(board.strip))]
    assert names[-2:] == ["Waist, finished girth", "Top hip, finished girth"]
    waist = named(board.strip, "Waist")
    assert "28 in on the body" in waist.text(_Value)
    waist.valueInterface().setCurrentValue(26.0)
    assert desk.project.design.reductions.waist == pytest.approx(2 * 25.4)
    do(waist, MORE)
    assert desk.project.design.reductions.waist == pytest.approx(1.875 * 25.4)


def test_pieces_edges_and_bones_are_on_the_table(place: PiecesPlace) -> None:
    kinds = {child.role() for child in children(heard(place.table))}
    assert {QAccessible.Role.ListItem, QAccessible.Role.SpinBox} <= kinds
    edge = named(place.table, "Allowance of Front 2, left edge")
    edge.valueInterface().setCurrentValue(1.0)
    assert edge.text(_Value) == "1 in, of its own"
    do(edge, "As its kind")
    place.table.desk.now()
    assert "own" not in edge.text(_Value)


def test_bone_lines_are_read_with_their_length(place: PiecesPlace) -> None:
    place.bench.show_layer("strength")
    bones = [c for c in children(heard(place.table)) if c.text(_Name).startswith("Bone line")]
    assert bones
    assert all(bone.text(_Value).endswith("in long") for bone in bones)


def test_pieces_on_the_cloth_are_moved_and_pinned(qtbot: QtBot, desk: Desk) -> None:
    place = on_screen(qtbot, ClothPlace(desk), 1280, 640)
    piece = next(children(heard(place.canvas)))
    assert "from the cut end" in piece.text(_Value)
    do(piece, "Pin or free")
    assert "pinned" in piece.text(_Value)
    before = float(piece.valueInterface().currentValue())
    piece.valueInterface().setCurrentValue(before + 2.0)
    assert float(piece.valueInterface().currentValue()) > before


def test_runs_points_and_panels_are_on_the_bead_map(qtbot: QtBot, dressed: None) -> None:
    desk = Desk(Session(replace(bodice(), beads=RICH)))
    place = on_screen(qtbot, BeadsPlace(desk), 1280, 640)
    desk.now()
    place.bench.work_out()
    names = [child.text(_Name) for child in children(heard(place.map))]
    assert {name.split()[0] for name in names} >= {"Run", "Scatter", "Front", "Back"}
    drawn = next(number for number, run in enumerate(RICH.runs) if run.along == "drawn")
    do(named(place.map, f"Run {RICH.runs[drawn].name}"), PRESS)
    point = named(place.map, "Point 1 of")
    before = float(point.valueInterface().currentValue())
    point.valueInterface().setCurrentValue(before + 0.5)
    assert float(point.valueInterface().currentValue()) == pytest.approx(before + 0.5)


def test_panels_before_and_after_are_read(qtbot: QtBot, dressed: None) -> None:
    desk = Desk(Session(replace(bodice(), fittings=(FIRST,))))
    place = on_screen(qtbot, FittingPlace(desk), 1280, 640)
    place.bench.work_out()
    panel = named(place.overlay, "Front 2")
    assert "widths differ" in panel.text(_Value)
    do(panel, PRESS)
    assert desk.selection == Place(panel=1)


def test_points_and_girths_of_the_worn_view_are_read(qtbot: QtBot, desk: Desk) -> None:
    pane = on_screen(qtbot, WornPane(desk), 420, 640)
    point = named(pane.view, "Neckline point")
    assert "above the waist" in point.text(_Value)
    before = float(point.valueInterface().currentValue())
    do(point, MORE)
    assert float(named(pane.view, "Neckline point").valueInterface().currentValue()) > before
    assert named(pane.view, "Waist").text(_Value).startswith("28")


# --- what is told --------------------------------------------------------------------------


class Said:
    """Keeps what screen readers are told."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.events: list[tuple[str, str]] = []
        monkeypatch.setattr(QAccessible, "updateAccessibility", self.take, raising=True)

    def take(self, event: object) -> None:
        thing = event.accessibleInterface()  # type: ignore[attr-defined]
        words = event.message() if hasattr(event, "message") else thing.text(_Name)
        self.events.append((type(event).__name__, words))


@pytest.fixture
def said(monkeypatch: pytest.MonkeyPatch) -> Said:
    return Said(monkeypatch)


def test_keys_on_the_canvas_are_told(board: Board, said: Said) -> None:
    heard(board.canvas)
    board.canvas.setFocus()
    QTest.keyClick(board.canvas, Qt.Key.Key_H)
    QTest.keyClick(board.canvas, Qt.Key.Key_H)
    assert said.events[-1] == ("QAccessibleEvent", "Neckline point 2, smooth")
    QTest.keyClick(board.canvas, Qt.Key.Key_Up)
    assert said.events[-1] == ("QAccessibleValueChangeEvent", "Neckline point 2, smooth")
    QTest.keyClick(board.canvas, Qt.Key.Key_Right)
    kind, words = said.events[-1]
    assert kind == "QAccessibleAnnouncementEvent"
    assert "waist" in words


def test_keys_on_the_strip_are_told(board: Board, said: Said) -> None:
    heard(board.strip)
    board.strip.setFocus()
    QTest.keyClick(board.strip, Qt.Key.Key_Up)
    QTest.keyClick(board.strip, Qt.Key.Key_Left)
    assert [kind for kind, _ in said.events[-2:]] == ["QAccessibleEvent", "QAccessibleValueChangeEvent"]


def test_a_limit_that_is_passed_is_spoken_once(qtbot: QtBot, desk: Desk, said: Said, listening: None) -> None:
    foot = on_screen(qtbot, Foot(desk), 900, 60)
    said.events.clear()
    for inches in (6, 7):
        desk.apply("Reduction", set_reduction(desk.project, "waist", inches * 25.4))
        desk.now()
    spoken = [words for kind, words in said.events if kind == "QAccessibleAnnouncementEvent"]
    assert len(spoken) == 1
    assert spoken[0].startswith("Over the limit")
    desk.refuse("waist", "Twelve is too much.")
    assert said.events[-1] == ("QAccessibleAnnouncementEvent", "Not read. Twelve is too much.")
    assert foot.row.word == "Not read"


def test_nothing_is_told_of_a_canvas_nobody_has_asked_after(board: Board, said: Said) -> None:
    board.canvas.setFocus()
    QTest.keyClick(board.canvas, Qt.Key.Key_H)
    assert said.events == []


def test_a_canvas_that_is_gone_takes_its_reader_along(qtbot: QtBot, desk: Desk) -> None:
    board = Board(desk)
    reader = heard(board.canvas)
    point = named(board.canvas, "Neckline point 2")
    assert reader.isValid()
    board.deleteLater()
    qtbot.wait(10)
    assert not point.isValid()
    assert point.text(_Name) == ""


def test_canvases_come_and_go_while_somebody_listens(qtbot: QtBot, desk: Desk, listening: None) -> None:
    """A reader that Qt was handed twice, it deletes twice: the program was gone."""
    for _ in range(5):
        board = Board(desk)
        board.show()
        assert named(board.canvas, "Neckline point 1").isValid()
        board.close()
        board.deleteLater()
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
    assert known_reader(board.canvas) is None


_WHOLE = """
import sys
from pathlib import Path
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QApplication
from workbench.ui import access
from workbench.ui.actions import PLACES, SIDES
from workbench.ui.app import demo_files
from workbench.ui.settings import Settings
from workbench.ui.window import Window

application = QApplication(sys.argv)
access.install()
QAccessible.setActive(True)
window = Window(Settings(Path(sys.argv[1])), demos=demo_files())
window.show()
window.files.open_demo(demo_files()[0])
for place in PLACES:
    window.turning.show_place(place)
    application.processEvents()
for side in SIDES:
    window.deeds[side].setChecked(True)
    application.processEvents()


def heard(thing, depth=0):
    return 1 + sum(heard(thing.child(n), depth + 1) for n in range(thing.childCount()) if depth < 30)


print(heard(QAccessible.queryAccessibleInterface(window)))
window.desk.session.mark_saved(Path("nowhere.bodice"))
window.close()
"""


def test_the_whole_program_ends_well_after_it_was_listened_to(tmp_path: Path) -> None:
    command = [sys.executable, "-c", _WHOLE, str(tmp_path / "window.ini")]
    done = subprocess.run(command, capture_output=True, text=True, timeout=60)
    assert done.returncode == 0, done.stderr
    assert int(done.stdout) > 300
