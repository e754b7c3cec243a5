"""The chooser of shapes: what it shows of each, and what becomes of the project on the desk."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from tests.ui.conftest import in_hand
from workbench.document import Project, Session, new_project, set_reduction
from workbench.styles import drawn_shapes, own_shapes, save_shape
from workbench.ui.desk import Desk
from workbench.ui.styles import SaveShape, ShapeQuestions, StyleChooser


class Answers(ShapeQuestions):
    """Gives the answer it was told to give, and keeps what was asked."""

    def __init__(self, answer: bool = True) -> None:
        self.answer, self.asked, self.told = answer, [], []  # type: tuple[bool, list[str], list[str]]

    def replace(self, name: str, parent: QWidget) -> bool:
        self.asked.append(name)
        return self.answer

    def remove(self, name: str, parent: QWidget) -> bool:
        self.asked.append(name)
        return self.answer

    def tell(self, title: str, sentence: str, parent: QWidget) -> None:
        self.told.append(sentence)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "shapes"


@pytest.fixture
def chooser(qtbot: QtBot, desk: Desk, folder: Path) -> StyleChooser:
    return in_hand(qtbot, StyleChooser(desk, folder, questions=Answers()), 1080, 640)


def pick(chooser: StyleChooser, name: str) -> None:
    items = chooser.cards.findItems(name, Qt.MatchFlag.MatchExactly)
    assert len(items) == 1
    chooser.cards.setCurrentItem(items[0])


def names(chooser: StyleChooser) -> list[str]:
    return [chooser.cards.item(row).text() for row in range(chooser.cards.count())]


def test_all_of_the_program_are_there(chooser: StyleChooser) -> None:
    assert names(chooser) == [shape.name for shape in drawn_shapes()]


def test_each_is_drawn_from_the_draft_on_her(chooser: StyleChooser) -> None:
    for row in range(chooser.cards.count()):
        card = chooser.cards.card(row)
        assert card.tried.on_her
        assert len(card.sides) == 2
        assert len(card.sides[0].fills) == 2 * card.tried.shape.panels[0]


def test_only_what_comes_into_sight_is_drafted(qtbot: QtBot, desk: Desk) -> None:
    chooser = in_hand(qtbot, StyleChooser(desk), 1080, 400)
    assert 0 < len(chooser.cards._cards) < chooser.cards.count()


def test_a_card_is_spoken(chooser: StyleChooser) -> None:
    said = chooser.cards.item(0).data(Qt.ItemDataRole.AccessibleTextRole)
    assert said.startswith("Waist belt. Short and quick")
    assert "2 panels in the front half" in said


def test_used_it_is_one_step(chooser: StyleChooser, desk: Desk) -> None:
    pick(chooser, "Plunge")
    chooser.use.click()
    assert desk.project.style_name == "Plunge"
    assert desk.project.design.style == "over_bust"
    assert desk.undo_name == "Use the shape “Plunge”"


def test_taken_back_the_project_is_as_it_was(chooser: StyleChooser, desk: Desk) -> None:
    before = desk.project
    pick(chooser, "Plunge")
    chooser.use.click()
    desk.undo()
    assert desk.project == before


def test_arrow_keys_go_from_card_to_card(chooser: StyleChooser) -> None:
    chooser.cards.setFocus()
    QTest.keyClick(chooser.cards, Qt.Key.Key_Right)
    assert chooser.tried is not None
    assert chooser.tried.shape.name == names(chooser)[1]
    assert chooser.detail.name.text() == names(chooser)[1]


def test_enter_on_a_card_uses_it(chooser: StyleChooser, desk: Desk) -> None:
    pick(chooser, "Basque")
    QTest.keyClick(chooser.cards, Qt.Key.Key_Return)
    assert desk.project.style_name == "Basque"


def test_what_has_to_give_is_listed(chooser: StyleChooser) -> None:
    pick(chooser, "Under-bust with a busk")
    assert "The centre front opens with a busk now." in chooser.detail.findings.text()


def test_one_that_cannot_be_drafted_says_why_and_cannot_be_used(qtbot: QtBot, desk: Desk) -> None:
    desk.open_session(Session(set_reduction(desk.project, "waist", 620.0)))
    chooser = in_hand(qtbot, StyleChooser(desk), 1080, 640)
    assert not chooser.use.isEnabled()
    assert chooser.new.isEnabled()
    assert "It cannot be drafted on her: Waist:" in chooser.detail.findings.text()
    chooser.on_activated()
    assert desk.undo_name is None


def test_with_nothing_measured_it_says_whose_body_it_is(qtbot: QtBot, desk: Desk) -> None:
    desk.open_session(Session(new_project()))
    chooser = in_hand(qtbot, StyleChooser(desk), 1080, 640)
    assert "invented body" in chooser.body.text()
    assert "Waist is missing" in chooser.detail.whose.text()
    assert chooser.cards.card(0).sides


def test_a_new_project_is_handed_on(chooser: StyleChooser, desk: Desk) -> None:
    before, wanted = desk.project, []  # type: tuple[Project, list[Project]]
    chooser.new_wanted.connect(wanted.append)
    pick(chooser, "Longline")
    chooser.new.click()
    assert [project.style_name for project in wanted] == ["Longline"]
    assert dict(wanted[0].measurements) == {}
    assert desk.project is before


def test_without_a_project_on_the_desk_only_a_new_one_is_offered(qtbot: QtBot, desk: Desk) -> None:
    chooser = in_hand(qtbot, StyleChooser(desk, at_work=False), 1080, 640)
    wanted: list[Project] = []
    chooser.new_wanted.connect(wanted.append)
    assert chooser.use.isHidden()
    assert chooser.keep.isHidden()
    chooser.on_activated()
    assert len(wanted) == 1


@pytest.mark.parametrize(("kind", "style"), [("under_bust", "under_bust"), ("over_bust", "over_bust")])
def test_one_kind_alone(chooser: StyleChooser, kind: str, style: str) -> None:
    chooser.kinds.button(kind).click()
    wanted = [shape.name for shape in drawn_shapes() if shape.project.design.style == style]
    assert names(chooser) == wanted


def test_with_none_of_hers_it_says_how_to_keep_one(chooser: StyleChooser) -> None:
    chooser.kinds.button("hers").click()
    assert "kept no shape yet" in chooser.empty.text()
    assert not chooser.use.isEnabled()


def test_hers_stand_beside_the_others(qtbot: QtBot, desk: Desk, folder: Path) -> None:
    save_shape(desk.project, "Mine", "For a choir", folder)
    chooser = in_hand(qtbot, StyleChooser(desk, folder), 1080, 640)
    assert names(chooser)[0] == "Mine"
    assert not chooser.remove.isHidden()
    pick(chooser, "Plunge")
    assert chooser.remove.isHidden()


def test_a_file_that_is_no_shape_is_named(qtbot: QtBot, desk: Desk, folder: Path) -> None:
    folder.mkdir()
    (folder / "broken.bodice").write_text("{")
    chooser = in_hand(qtbot, StyleChooser(desk, folder), 1080, 640)
    assert "broken.bodice" in chooser.trouble.text()
    assert chooser.cards.count() == len(drawn_shapes())


@pytest.mark.parametrize("answer", [True, False])
def test_hers_is_removed_when_she_says_so(qtbot: QtBot, desk: Desk, folder: Path, answer: bool) -> None:
    save_shape(desk.project, "Mine", "", folder)
    asking = Answers(answer)
    chooser = in_hand(qtbot, StyleChooser(desk, folder, questions=asking), 1080, 640)
    chooser.remove.click()
    assert asking.asked == ["Mine"]
    assert bool(own_shapes(folder).shapes) is not answer


@pytest.fixture
def save(qtbot: QtBot, desk: Desk, folder: Path) -> SaveShape:
    return in_hand(qtbot, SaveShape(desk, folder, questions=Answers()), 480, 300)


def test_a_shape_is_kept_under_its_name(save: SaveShape, folder: Path) -> None:
    save.name.setText("  For the choir ")
    save.purpose.setText("Long evenings")
    save.keep.click()
    shapes = own_shapes(folder).shapes
    assert [(shape.name, shape.purpose) for shape in shapes] == [("For the choir", "Long evenings")]
    assert save.kept == shapes[0]


def test_without_a_name_nothing_can_be_kept(save: SaveShape) -> None:
    save.name.setText("  ")
    assert not save.keep.isEnabled()


@pytest.mark.parametrize("answer", [True, False])
def test_one_of_that_name_is_replaced_when_she_says_so(
    qtbot: QtBot, desk: Desk, folder: Path, answer: bool
) -> None:
    save_shape(desk.project, "Mine", "before", folder)
    save = in_hand(qtbot, SaveShape(desk, folder, questions=Answers(answer)), 480, 300)
    save.name.setText("Mine")
    save.purpose.setText("after")
    save.keep.click()
    assert [shape.purpose for shape in own_shapes(folder).shapes] == ["after" if answer else "before"]
    assert save.isVisible() is not answer


def test_a_folder_that_cannot_be_written_is_said_under_the_fields(save: SaveShape, folder: Path) -> None:
    folder.write_text("")
    save.name.setText("Mine")
    save.keep.click()
    assert "shapes" in save.trouble.text()
    assert save.isVisible()


def test_kept_from_the_chooser_it_is_shown_there(
    chooser: StyleChooser, monkeypatch: pytest.MonkeyPatch
) -> None:
    def run(dialog: SaveShape) -> int:
        dialog.name.setText("Mine")
        dialog.on_keep()
        return dialog.result()

    monkeypatch.setattr(SaveShape, "exec", run)
    chooser.keep.click()
    assert names(chooser) == ["Mine"]
    assert chooser.tried is not None
    assert chooser.tried.shape.name == "Mine"
