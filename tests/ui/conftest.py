"""What the tests of the window share: a desk with a bodice on it, settings of their own, scripted answers."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from workbench.document import Project, Session, new_project, set_measurement
from workbench.ui.asking import Answer, Asking
from workbench.ui.desk import Desk
from workbench.ui.look import look
from workbench.ui.pieces import PiecesPlace
from workbench.ui.settings import PLACE, Settings
from workbench.ui.style import dress

if TYPE_CHECKING:
    from workbench.ui.window import Window

AnyWidget = TypeVar("AnyWidget", bound=QWidget)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """A Qt warning fails a test; that there is no real screen is none of the window's doing."""
    for item in items:
        if Path(__file__).parent in item.path.parents:
            item.add_marker(pytest.mark.qt_log_ignore("This plugin does not support", extend=True))


def bodice(style: str = "under_bust") -> Project:
    """A project that drafts: invented figures, waist 28 and bust 38 in."""
    project = new_project("over_bust" if style == "over_bust" else "under_bust")
    for key, text in {"bust_girth": "38", "underbust_girth": "31 1/2", "waist_girth": "28"}.items():
        project = set_measurement(project, key, text)
    return project


def on_screen(qtbot: QtBot, widget: AnyWidget, width: int, height: int) -> AnyWidget:
    """The widget, on the screen as large as said."""
    qtbot.addWidget(widget)
    widget.resize(width, height)
    with qtbot.waitExposed(widget):
        widget.show()
    return widget


def in_hand(qtbot: QtBot, widget: AnyWidget, width: int, height: int) -> AnyWidget:
    """The same, and the keys go to it."""
    on_screen(qtbot, widget, width, height).activateWindow()
    qtbot.waitUntil(widget.isActiveWindow)
    return widget


def turn_wheel(
    widget: QWidget, at: QPointF, turned: int, modifier: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier
) -> None:
    """Turn the wheel over a pixel; one notch is 120."""
    event = QWheelEvent(
        at,
        widget.mapToGlobal(at),
        QPoint(),
        QPoint(0, turned),
        Qt.MouseButton.NoButton,
        modifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(widget, event)


def let_go(window: Window) -> None:
    """A test may leave unsaved work behind."""
    window.desk.session.mark_saved(Path("nowhere.bodice"))


@pytest.fixture(autouse=True)
def _own_settings(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(PLACE, str(tmp_path / "window.ini"))


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    return Settings(tmp_path / "window.ini")


@pytest.fixture(autouse=True)
def _swept(qapp: QApplication) -> Iterator[None]:
    """Really delete what a test has let go, or every later change of look dresses it once more."""
    yield
    qapp.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)


@pytest.fixture
def dressed(qapp: QApplication) -> None:
    """Light, whatever the test before has left."""
    if look().dark or not qapp.styleSheet():
        dress("light")


@pytest.fixture
def desk(dressed: None) -> Desk:
    """A desk with an under-bust bodice that drafts."""
    return Desk(Session(bodice()))


@pytest.fixture
def place(qtbot: QtBot, desk: Desk) -> PiecesPlace:
    """The pieces place as large as on a small laptop, with an under-bust bodice on the table."""
    return on_screen(qtbot, PiecesPlace(desk), 1280, 640)


class Answers(Asking):
    """Gives the answers it was told to give, and keeps what it was told."""

    def __init__(self) -> None:
        super().__init__()
        self.file: Path | None = None
        self.target: Path | None = None
        self.suggested: Path | None = None
        self.keep: Answer = "stay"
        self.told: list[str] = []
        self.asked = 0

    def which_file(self, folder: Path) -> Path | None:
        return self.file

    def where_to_save(self, suggested: Path) -> Path | None:
        return self.target

    def where_to_print(self, suggested: Path) -> Path | None:
        return self.target

    def where_to_export(self, suggested: Path) -> Path | None:
        self.suggested = suggested
        return self.target

    def keep_changes(self, name: str) -> Answer:
        self.asked += 1
        return self.keep

    def tell(self, title: str, sentence: str) -> None:
        self.told.append(sentence)


@pytest.fixture
def answers() -> Answers:
    return Answers()
