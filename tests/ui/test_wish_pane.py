"""The pane of pictures: taken in, looked at, noted, and laid behind the panels."""

from __future__ import annotations

import base64
import io
from pathlib import Path

import pytest
from PIL import Image
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QColor, QDropEvent, QGuiApplication, QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from tests.document.wish_values import picture
from tests.ui.conftest import in_hand, turn_wheel
from workbench.document import Behind, Session, add_wish, lay_behind, set_wish_note
from workbench.ui.board.tracing import tracing_of
from workbench.ui.desk import Desk
from workbench.ui.wish import WishPane

NONE = Qt.KeyboardModifier.NoModifier


@pytest.fixture
def asked() -> list[Path]:
    """The files she picks."""
    return []


@pytest.fixture
def pane(qtbot: QtBot, desk: Desk, asked: list[Path]) -> WishPane:
    def asking(_parent: QWidget) -> list[Path]:
        return asked

    return in_hand(qtbot, WishPane(desk, asking=asking), 330, 640)


@pytest.fixture
def full(pane: WishPane, desk: Desk) -> WishPane:
    """With two pictures of 600 × 400 pixels, the first of them behind the panels."""
    project = add_wish(desk.project, picture("front", 600, 400))
    project = set_wish_note(add_wish(project, picture("back", 600, 400)), "back", "this lacing")
    desk.open_session(Session(lay_behind(project, "front")))
    return pane


def file_of(folder: Path, name: str = "wish.png", colour: str = "red") -> Path:
    path = folder / name
    Image.new("RGB", (60, 40), colour).save(path)
    return path


def took(qtbot: QtBot, pane: WishPane) -> None:
    qtbot.waitUntil(lambda: not pane.taking.busy)
    pane._desk.now()


def names(desk: Desk) -> list[str]:
    return [each.name for each in desk.project.pictures]


def lies(desk: Desk) -> Behind:
    assert desk.project.behind is not None
    return desk.project.behind


def test_with_none_it_says_what_to_do(pane: WishPane) -> None:
    assert pane.none.isVisible()
    assert not pane.view.isVisible()


def test_files_are_taken_in_as_one_step(
    qtbot: QtBot, pane: WishPane, desk: Desk, asked: list[Path], tmp_path: Path
) -> None:
    asked += [file_of(tmp_path, "one.png"), file_of(tmp_path, "two.jpg")]
    pane.add.click()
    took(qtbot, pane)
    assert names(desk) == ["one", "two"]
    assert desk.undo_name == "Add 2 pictures"
    assert pane.chosen is not None
    assert pane.chosen.name == "two"


def test_what_is_no_picture_is_said_and_the_others_are_taken_in(
    qtbot: QtBot, pane: WishPane, desk: Desk, asked: list[Path], tmp_path: Path
) -> None:
    (tmp_path / "hat.jpg").write_text("no picture")
    asked += [tmp_path / "hat.jpg", file_of(tmp_path)]
    pane.add.click()
    took(qtbot, pane)
    assert names(desk) == ["wish"]
    assert pane.trouble.text().startswith("hat.jpg: this is no picture")


def test_no_more_are_read_than_there_is_room_for(
    qtbot: QtBot, pane: WishPane, desk: Desk, asked: list[Path], tmp_path: Path
) -> None:
    asked += [file_of(tmp_path, f"{number}.png") for number in range(8)]
    pane.add.click()
    took(qtbot, pane)
    assert len(names(desk)) == 6
    assert "2 were left out" in pane.trouble.text()
    assert not pane.add.isEnabled()
    assert not pane.paste.isEnabled()


def test_nothing_picked_changes_nothing(pane: WishPane, desk: Desk) -> None:
    pane.add.click()
    assert desk.undo_name is None


def test_a_dropped_file_is_taken_in(qtbot: QtBot, pane: WishPane, desk: Desk, tmp_path: Path) -> None:
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(file_of(tmp_path)))])
    at, copy = QPointF(50, 50), Qt.DropAction.CopyAction
    pane.dropEvent(QDropEvent(at, copy, mime, Qt.MouseButton.LeftButton, NONE))
    took(qtbot, pane)
    assert names(desk) == ["wish"]


def test_dropped_words_are_said_to_be_no_picture(pane: WishPane, desk: Desk) -> None:
    mime = QMimeData()
    mime.setText("a neckline")
    at, copy = QPointF(50, 50), Qt.DropAction.CopyAction
    pane.dropEvent(QDropEvent(at, copy, mime, Qt.MouseButton.LeftButton, NONE))
    assert "no picture" in pane.trouble.text()
    assert names(desk) == []


@pytest.mark.parametrize("kind", [QImage.Format.Format_RGB32, QImage.Format.Format_ARGB32])
def test_a_copied_picture_is_pasted(qtbot: QtBot, pane: WishPane, desk: Desk, kind: QImage.Format) -> None:
    image = QImage(50, 30, kind)
    image.fill(QColor("red"))
    QGuiApplication.clipboard().setImage(image)
    QTest.keyClick(pane.add, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    took(qtbot, pane)
    assert names(desk) == ["Pasted picture"]
    kept = desk.project.pictures[0]
    shown = Image.open(io.BytesIO(base64.b64decode(kept.jpeg))).getpixel((25, 15))
    assert isinstance(shown, tuple)
    assert shown[0] > 240
    assert max(shown[1:]) < 15
    assert (kept.width, kept.height) == (50, 30)


def test_copied_words_are_pasted_into_the_note_not_taken_for_a_picture(full: WishPane, desk: Desk) -> None:
    QGuiApplication.clipboard().setText("silk")
    full.note.prose.setFocus()
    QTest.keyClick(full.note.prose, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert full.note.prose.toPlainText() == "silk"
    assert full.trouble.text() == ""


def test_with_nothing_copied_it_says_so(pane: WishPane) -> None:
    QGuiApplication.clipboard().clear()
    pane.paste.click()
    assert "no picture among" in pane.trouble.text()


def test_read_for_a_project_that_has_left_the_desk_it_is_dropped(
    qtbot: QtBot, pane: WishPane, desk: Desk, asked: list[Path], tmp_path: Path
) -> None:
    asked.append(file_of(tmp_path))
    pane.add.click()
    desk.open_session(Session(desk.project))
    took(qtbot, pane)
    assert names(desk) == []


def test_a_removed_picture_comes_back_with_undo(full: WishPane, desk: Desk) -> None:
    full.remove.click()
    desk.now()
    assert names(desk) == ["back"]
    assert desk.project.behind is None
    desk.undo()
    assert names(desk) == ["front", "back"]


def test_another_one_is_picked_with_its_note(full: WishPane) -> None:
    full.thumbs.setCurrentRow(1)
    assert full.note.prose.toPlainText() == "this lacing"
    assert not full.behind.box.isChecked()
    assert full.view.accessibleName() == "Picture: back"


def test_a_note_is_handed_in_when_it_is_left(full: WishPane, desk: Desk) -> None:
    full.note.prose.setFocus()
    full.note.prose.setPlainText("higher at the side")
    full.view.setFocus()
    assert desk.project.pictures[0].note == "higher at the side"
    assert desk.undo_name == "Note of a picture"


def test_a_note_goes_to_the_picture_it_was_written_for(full: WishPane, desk: Desk) -> None:
    full.note.prose.setFocus()
    full.note.prose.setPlainText("mine")
    QTest.mouseClick(
        full.thumbs.viewport(),
        Qt.MouseButton.LeftButton,
        NONE,
        full.thumbs.visualItemRect(full.thumbs.item(1)).center(),
    )
    assert [each.note for each in desk.project.pictures] == ["mine", "this lacing"]


def test_laid_behind_and_taken_away(full: WishPane, desk: Desk) -> None:
    full.thumbs.setCurrentRow(1)
    full.behind.box.click()
    assert lies(desk).picture == "back"
    desk.now()
    full.behind.box.click()
    assert desk.project.behind is None


def test_a_slider_drag_is_one_step(full: WishPane, desk: Desk) -> None:
    slider = full.behind.strength
    slider.setSliderDown(True)
    for value in (20, 90, 200):
        slider.setValue(value)
    slider.setSliderDown(False)
    assert lies(desk).opacity == pytest.approx(1.0)
    assert desk.undo_name == "Strength of the picture"
    desk.undo()
    assert lies(desk).opacity == Behind.opacity


def test_a_key_on_a_slider_is_a_step(full: WishPane, desk: Desk) -> None:
    before = lies(desk).mm_per_pixel
    QTest.keyClick(full.behind.extent, Qt.Key.Key_Right)
    assert lies(desk).mm_per_pixel > before


def test_showing_a_project_edits_nothing(full: WishPane, desk: Desk) -> None:
    before = desk.project
    desk.now()
    full.thumbs.setCurrentRow(1)
    full.thumbs.setCurrentRow(0)
    assert desk.project is before
    assert desk.undo_name is None


def test_the_wheel_over_a_slider_without_the_focus_does_nothing(full: WishPane, desk: Desk) -> None:
    before = desk.project
    turn_wheel(full.behind.extent, QPointF(10, 5), 120)
    assert desk.project is before


def click(full: WishPane, spot: tuple[float, float]) -> None:
    pixel = full.view.lens.at(spot).toPoint()
    QTest.mouseClick(full.view, Qt.MouseButton.LeftButton, NONE, pixel)


def test_two_points_and_their_distance_set_the_scale(full: WishPane, desk: Desk) -> None:
    """254 mm are 10 in (international yard and pound agreement of 1959, from memory)."""
    full.behind.measure.click()
    click(full, (100, 200))
    click(full, (500, 200))
    QTest.keyClicks(full.behind.length, "10")
    QTest.keyClick(full.behind.length, Qt.Key.Key_Return)
    assert lies(desk).mm_per_pixel == pytest.approx(254 / 400, rel=0.01)
    assert desk.undo_name == "Size of the picture"
    assert not full.behind.measure.isChecked()


def test_two_points_by_keyboard(full: WishPane, desk: Desk) -> None:
    full.behind.measure.click()
    QTest.keyClick(full.view, Qt.Key.Key_Return)
    for _ in range(5):
        QTest.keyClick(full.view, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    QTest.keyClick(full.view, Qt.Key.Key_Return)
    one, other = full.view.points
    assert (one[0], one[1]) == (300, 200)
    assert (other[0] - one[0]) * full.view.lens.scale == pytest.approx(40)
    assert full.behind.length.hasFocus()


@pytest.mark.parametrize(("typed", "said"), [("ten", "not a length"), ("150", "too large")])
def test_a_distance_that_cannot_be_is_said(full: WishPane, desk: Desk, typed: str, said: str) -> None:
    before = desk.project
    full.behind.measure.click()
    click(full, (300, 200))
    click(full, (305, 205))
    QTest.keyClicks(full.behind.length, typed)
    QTest.keyClick(full.behind.length, Qt.Key.Key_Return)
    assert said in full.behind.note.text()
    assert desk.project is before


def test_escape_leaves_the_points(full: WishPane) -> None:
    full.behind.measure.click()
    QTest.keyClick(full.view, Qt.Key.Key_Escape)
    assert not full.behind.measure.isChecked()


def test_taken_in_the_hand_and_let_go(full: WishPane, desk: Desk) -> None:
    full.behind.move_it.click()
    assert tracing_of(desk).moving
    assert "Escape lets it go" in full.behind.note.text()
    tracing_of(desk).set_moving(False)
    assert not full.behind.move_it.isChecked()


def test_a_hidden_pane_leaves_nothing_in_the_hand(full: WishPane, desk: Desk) -> None:
    full.behind.move_it.click()
    full.hide()
    assert not tracing_of(desk).moving


def test_the_picture_grows_under_the_pointer(full: WishPane) -> None:
    pixel = QPointF(120, 90)
    before = full.view.lens.spot(pixel)
    turn_wheel(full.view, pixel, 240)
    assert full.view.lens.spot(pixel) == pytest.approx(before)
    scale = full.view.lens.scale
    QTest.keyClick(full.view, Qt.Key.Key_0)
    assert full.view.lens.scale < scale


def test_the_picture_follows_the_hand(full: WishPane) -> None:
    before = full.view.lens
    QTest.mousePress(full.view, Qt.MouseButton.LeftButton, NONE, QPoint(100, 80))
    QTest.mouseMove(full.view, QPoint(130, 60))
    QTest.mouseRelease(full.view, Qt.MouseButton.LeftButton, NONE, QPoint(130, 60))
    assert (full.view.lens.left - before.left, full.view.lens.top - before.top) == pytest.approx((30, -20))


def test_everything_has_a_name(full: WishPane) -> None:
    behind = full.behind
    parts: list[QWidget] = [full.thumbs, full.view, full.add, full.paste, full.remove, full.note.prose]
    parts += [behind.strength, behind.extent, behind.length, behind.move_it, behind.measure]
    assert all(part.accessibleName() for part in parts)
    assert full.thumbs.item(1).data(Qt.ItemDataRole.AccessibleTextRole) == "back. this lacing"


def test_a_hidden_pane_decodes_nothing(qtbot: QtBot, desk: Desk) -> None:
    pane = WishPane(desk)
    qtbot.addWidget(pane)
    desk.apply("x", add_wish(desk.project, picture("front", 60, 40)))
    desk.now()
    assert pane.thumbs.count() == 0
