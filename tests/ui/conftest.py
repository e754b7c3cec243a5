"""What the tests of the window share: a desk with a bodice on it, settings of their own, scripted answers."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import pytest
from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication

from workbench.document import Project, Session, new_project, set_measurement
from workbench.ui.asking import Answer, Asking
from workbench.ui.desk import Desk
from workbench.ui.look import look
from workbench.ui.settings import PLACE, Settings
from workbench.ui.style import dress


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


class Answers(Asking):
    """Gives the answers it was told to give, and keeps what it was told."""

    def __init__(self) -> None:
        super().__init__()
        self.file: Path | None = None
        self.target: Path | None = None
        self.keep: Answer = "stay"
        self.told: list[str] = []
        self.asked = 0

    def which_file(self, folder: Path) -> Path | None:
        return self.file

    def where_to_save(self, suggested: Path) -> Path | None:
        return self.target

    def where_to_print(self, suggested: Path) -> Path | None:
        return self.target

    def keep_changes(self, name: str) -> Answer:
        self.asked += 1
        return self.keep

    def tell(self, title: str, sentence: str) -> None:
        self.told.append(sentence)


@pytest.fixture
def answers() -> Answers:
    return Answers()
