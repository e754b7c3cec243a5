"""Cloth and quote as places of the window: keys, tools, what findings lead to, and printing."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path
from typing import Any

import pypdfium2  # type: ignore[import-untyped]  # it comes without types
import pytest
from PySide6.QtCore import Qt, QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from tests.ui.cloth_scene import Script, shorter
from tests.ui.conftest import bodice
from tests.ui.places import cloth_of, quote_of
from workbench.document import Session, new_project, set_allowance_of
from workbench.draft import Place
from workbench.ui.settings import Settings
from workbench.ui.window import Window

CTRL = Qt.KeyboardModifier.ControlModifier


def let_go(window: Window) -> None:
    """A test may leave unsaved work behind."""
    window.desk.session.mark_saved(Path("nowhere.bodice"))


@pytest.fixture
def window(qtbot: QtBot, dressed: None, settings: Settings, answers: Any) -> Window:
    window = Window(settings, answers)
    qtbot.addWidget(window, before_close_func=let_go)
    window.resize(1280, 720)
    window.files.put(bodice(), None)
    window.show()
    return window


@pytest.fixture
def opened(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The files that were opened in whatever the system opens them with."""
    found: list[str] = []

    def take(url: QUrl) -> bool:
        found.append(url.toLocalFile())
        return True

    monkeypatch.setattr(QDesktopServices, "openUrl", take)
    return found


def text_of(path: Path) -> str:
    document = pypdfium2.PdfDocument(BytesIO(path.read_bytes()))
    try:
        return "\n".join(page.get_textpage().get_text_range() for page in document)
    finally:
        document.close()


@pytest.mark.parametrize(("key", "name"), [(Qt.Key.Key_4, "cloth"), (Qt.Key.Key_5, "quote")])
def test_a_key_turns_to_a_place_and_another_back(window: Window, key: Qt.Key, name: str) -> None:
    QTest.keyClick(window, key, CTRL)
    assert window.place == name
    QTest.keyClick(window, Qt.Key.Key_1, CTRL)
    assert window.place == "draft"
    assert window.board.isVisible()


@pytest.mark.parametrize("name", ["pieces", "cloth", "quote"])
def test_so_does_a_click_in_the_corner(window: Window, name: str) -> None:
    QTest.mouseClick(window.places.choice.button(name), Qt.MouseButton.LeftButton)
    assert window.place == name
    assert window.places.choice.value == name


@pytest.mark.parametrize("name", ["cloth", "quote"])
def test_no_tool_is_cut_off_on_a_small_laptop(window: Window, name: str) -> None:
    window.deeds[name].trigger()
    right = max(
        button.mapTo(window, button.rect().topRight()).x()
        for action in window.tools.actions()
        if (button := window.tools.widgetForAction(action)) is not None
    )
    assert right < 1280
    assert window.width() <= 1280
    assert window.places.mapTo(window, window.places.rect().topRight()).x() < 1280


def test_the_form_is_as_wide_in_every_place(window: Window) -> None:
    widths = [window.form.width()]
    for name in ("cloth", "quote", "pieces"):
        window.deeds[name].trigger()
        widths.append(window.turning.page_of(window.place).sizes()[0])
    assert max(widths) - min(widths) <= 2


def test_the_draft_follows_again_after_a_round(window: Window) -> None:
    for name in ("cloth", "quote", "draft"):
        window.deeds[name].trigger()
    window.desk.apply("Seams", set_allowance_of(window.desk.project, "seam", 20.0))
    window.desk.now()
    assert window.board.canvas._picture is window.desk.picture


def test_actions_belong_to_their_place(window: Window) -> None:
    assert not window.deeds["better"].isEnabled()
    window.deeds["cloth"].trigger()
    assert window.deeds["better"].isEnabled()
    assert window.deeds["better"] in window.tools.actions()
    window.deeds["quote"].trigger()
    assert not window.deeds["better"].isEnabled()
    assert window.deeds["print_inside"].isEnabled()


def test_a_better_plan_is_sought_by_key(window: Window) -> None:
    window.deeds["cloth"].trigger()
    script = Script(cloth_of(window))
    QTest.keyClick(window, Qt.Key.Key_B, CTRL)
    assert len(script.begun) == 1
    cloth_of(window).search.stop()


def test_what_a_search_has_found_is_asked_about_before_the_window_closes(
    window: Window, answers: Any
) -> None:
    window.deeds["cloth"].trigger()
    place = cloth_of(window)
    script = Script(place)
    place.seek()
    script.latest.find(shorter(place))
    place.search.on_look()
    window.desk.session.mark_saved(Path("kept.bodice"))
    window.close()
    assert script.latest.cancelled
    assert answers.asked == 1


def test_the_table_can_be_put_away_and_that_is_remembered(
    qtbot: QtBot, window: Window, settings: Settings
) -> None:
    window.deeds["cloth"].trigger()
    window.deeds["compare"].trigger()
    assert cloth_of(window).compare.isHidden()
    let_go(window)
    window.close()
    again = Window(Settings(settings.path))
    qtbot.addWidget(again)
    assert cloth_of(again).compare.isHidden()


def test_a_line_of_cloth_in_the_quote_leads_to_its_price(window: Window) -> None:
    window.deeds["quote"].trigger()
    window.desk.select(Place(field="cloths.1.price"))
    assert window.place == "cloth"
    assert cloth_of(window).bench.number == 1


def test_a_finding_about_prices_leads_to_the_quote(window: Window) -> None:
    window.deeds["cloth"].trigger()
    window.desk.select(Place(field="quoting.rate"))
    assert window.place == "quote"


def test_a_measurement_leads_back_to_the_draft(window: Window) -> None:
    window.deeds["quote"].trigger()
    window.desk.select(Place(field="measurements.waist_girth"))
    assert window.place == "draft"


def test_a_panel_picked_on_the_cloth_is_picked_in_the_draft(window: Window) -> None:
    window.deeds["cloth"].trigger()
    canvas = cloth_of(window).canvas
    assert canvas.spread is not None
    canvas.pick(next(piece for piece in canvas.spread.pieces if piece.copy.panel == 2))
    window.deeds["draft"].trigger()
    assert window.board.canvas._place == Place(panel=2)


# --- printing -------------------------------------------------------------------------------------


def write(window: Window, deed: str) -> None:
    window.deeds[deed].trigger()
    window._errands.writing.wait()
    QTest.qWait(0)


def test_the_lay_plans_are_printed_from_the_cloth_place(
    window: Window, answers: Any, tmp_path: Path, opened: list[str]
) -> None:
    answers.target = tmp_path / "lay.pdf"
    window.deeds["cloth"].trigger()
    write(window, "print")
    assert "Fashion cloth" in text_of(answers.target)
    assert opened == [str(answers.target)]


def test_a_stale_plan_is_not_printed(window: Window, answers: Any, tmp_path: Path, opened: list[str]) -> None:
    answers.target = tmp_path / "lay.pdf"
    window.deeds["cloth"].trigger()
    cloth_of(window).lay_anew()
    window.desk.apply("Seams", set_allowance_of(window.desk.project, "seam", 25.4))
    write(window, "print")
    assert not answers.target.exists()
    assert "stale" in answers.told[0]
    assert opened == []


def test_the_clients_page_is_printed_without_a_cost(
    window: Window, answers: Any, tmp_path: Path, opened: list[str]
) -> None:
    answers.target = tmp_path / "quote.pdf"
    window.deeds["quote"].trigger()
    QTest.mouseClick(quote_of(window).page.print, Qt.MouseButton.LeftButton)
    window._errands.writing.wait()
    QTest.qWait(0)
    text = text_of(answers.target)
    assert "What is included" in text
    assert "Margin" not in text


def test_the_inside_sheet_has_the_costs(
    window: Window, answers: Any, tmp_path: Path, opened: list[str]
) -> None:
    answers.target = tmp_path / "inside.pdf"
    window.deeds["quote"].trigger()
    QTest.mouseClick(quote_of(window).inside.print, Qt.MouseButton.LeftButton)
    window._errands.writing.wait()
    QTest.qWait(0)
    assert "Margin" in text_of(answers.target)


def test_a_folder_that_cannot_be_written_to_is_said(
    window: Window, answers: Any, tmp_path: Path, opened: list[str]
) -> None:
    answers.target = tmp_path / "nowhere" / "quote.pdf"
    window.deeds["quote"].trigger()
    write(window, "print")
    assert "quote.pdf" in answers.told[0]


def test_with_nothing_drafted_there_is_nothing_to_print(window: Window) -> None:
    window.desk.open_session(Session(new_project()))
    window.deeds["quote"].trigger()
    assert not window.deeds["print"].isEnabled()
    assert not quote_of(window).inside.print.isVisible()
