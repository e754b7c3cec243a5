"""When the program goes wrong: the work is rescued, it is said once, the log knows no client."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QObject, Signal

from workbench.document import Session, read_project, set_client, write_project
from workbench.ui.desk import Desk
from workbench.ui.trouble import Trouble


class Told:
    def __init__(self) -> None:
        self.sentences: list[str] = []

    def __call__(self, _title: str, sentence: str) -> None:
        self.sentences.append(sentence)


@pytest.fixture
def told() -> Told:
    return Told()


@pytest.fixture
def trouble(desk: Desk, tmp_path: Path, told: Told, monkeypatch: pytest.MonkeyPatch) -> Iterator[Trouble]:
    monkeypatch.setattr(sys, "excepthook", lambda *_: None)
    desk.apply("Client", set_client(desk.project, name="Berta"))
    trouble = Trouble(desk, tmp_path / "data", told)
    trouble.install()
    yield trouble
    trouble.uninstall()


def go_wrong(message: str) -> None:
    try:
        raise ValueError(message)
    except ValueError as error:
        sys.excepthook(ValueError, error, error.__traceback__)


def test_a_project_never_saved_is_rescued_too(trouble: Trouble, desk: Desk, tmp_path: Path) -> None:
    go_wrong("x")
    assert read_project(tmp_path / "data" / "rescued.bodice") == desk.project


def test_a_saved_one_is_rescued_beside_its_file(trouble: Trouble, desk: Desk, tmp_path: Path) -> None:
    path = tmp_path / "berta.bodice"
    write_project(desk.project, path)
    desk.open_session(Session(desk.project, path))
    desk.apply("Client", set_client(desk.project, name="Clara"))
    go_wrong("x")
    assert read_project(path).client.name == "Berta"
    assert read_project(tmp_path / "berta-rescued.bodice").client.name == "Clara"


def test_an_earlier_rescue_is_never_written_over(
    trouble: Trouble, desk: Desk, told: Told, tmp_path: Path
) -> None:
    go_wrong("x")
    desk.apply("Client", set_client(desk.project, name="Clara"))
    try:
        int("y")
    except ValueError as error:
        sys.excepthook(ValueError, error, error.__traceback__)
    assert read_project(tmp_path / "data" / "rescued.bodice").client.name == "Berta"
    assert read_project(tmp_path / "data" / "rescued-2.bodice").client.name == "Clara"


def test_it_names_the_copy(trouble: Trouble, told: Told, tmp_path: Path) -> None:
    go_wrong("x")
    assert str(tmp_path / "data" / "rescued.bodice") in told.sentences[0]


def test_the_same_fault_is_told_once_noted_always(trouble: Trouble, told: Told, tmp_path: Path) -> None:
    for _ in range(3):
        go_wrong("x")
    assert len(told.sentences) == 1
    assert (tmp_path / "data" / "trouble.log").read_text(encoding="utf-8").count("ValueError") == 3


def test_the_log_says_where_and_nothing_of_the_client(trouble: Trouble, tmp_path: Path) -> None:
    go_wrong("no waist girth for Berta")
    log = (tmp_path / "data" / "trouble.log").read_text(encoding="utf-8")
    assert "test_shell_trouble.py" in log
    assert "go_wrong" in log
    assert "Berta" not in log
    assert "waist" not in log


def test_with_no_place_to_write_it_says_so(desk: Desk, told: Told, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "excepthook", lambda *_: None)
    trouble = Trouble(desk, Path("/proc/nowhere"), told)
    trouble.install()
    go_wrong("x")
    trouble.uninstall()
    assert "no copy could be written" in told.sentences[0]


def test_being_interrupted_is_no_trouble(trouble: Trouble, told: Told) -> None:
    sys.excepthook(KeyboardInterrupt, KeyboardInterrupt(), None)
    assert told.sentences == []


class Bell(QObject):
    rung = Signal()


@pytest.mark.qt_no_exception_capture
def test_an_exception_in_a_slot_arrives(trouble: Trouble, told: Told) -> None:
    bell = Bell()
    bell.rung.connect(lambda: go_wrong_plainly())
    bell.rung.emit()
    assert len(told.sentences) == 1


def go_wrong_plainly() -> None:
    raise KeyError("waist")
