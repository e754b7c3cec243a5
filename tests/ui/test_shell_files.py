"""New, open, save: nothing unsaved is lost, nothing damaged is opened, a demo stays a demo."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from workbench.document import Session, read_project, set_client, set_reduction, write_project
from workbench.ui.desk import Desk
from workbench.ui.files import Files, plain_name
from workbench.ui.settings import KEPT_FILES, Settings


@pytest.fixture
def files(desk: Desk, settings: Settings, answers: Any) -> Files:
    return Files(desk, settings, answers)


def edit(desk: Desk) -> None:
    desk.apply("Waist reduction", set_reduction(desk.project, "waist", 33.0))


def test_saving_a_new_project_asks_where(files: Files, desk: Desk, answers: Any, tmp_path: Path) -> None:
    edit(desk)
    answers.target = tmp_path / "anna.bodice"
    assert files.save()
    assert read_project(answers.target) == desk.project
    assert not desk.unsaved


def test_saving_again_asks_nothing(files: Files, desk: Desk, answers: Any, tmp_path: Path) -> None:
    answers.target = tmp_path / "anna.bodice"
    files.save()
    answers.target = None
    edit(desk)
    assert files.save()
    assert read_project(tmp_path / "anna.bodice").design.reductions.waist == 33.0


def test_no_place_to_save_to_leaves_it_unsaved(files: Files, desk: Desk) -> None:
    edit(desk)
    assert not files.save()
    assert desk.unsaved


def test_a_save_that_fails_loses_nothing(files: Files, desk: Desk, answers: Any, tmp_path: Path) -> None:
    edit(desk)
    held = desk.project
    answers.target = tmp_path / "no such folder" / "anna.bodice"
    assert not files.save()
    assert desk.project is held
    assert desk.unsaved
    assert "no such folder" in answers.told[0]


def test_new_keeps_unsaved_work_until_she_says_so(files: Files, desk: Desk, answers: Any) -> None:
    edit(desk)
    held = desk.project
    assert not files.new("over_bust")
    assert desk.project is held
    answers.keep = "discard"
    assert files.new("over_bust")
    assert desk.project.design.style == "over_bust"
    assert dict(desk.project.measurements) == {}


def test_saving_first_when_asked(files: Files, desk: Desk, answers: Any, tmp_path: Path) -> None:
    edit(desk)
    answers.keep, answers.target = "save", tmp_path / "kept.bodice"
    assert files.new("under_bust")
    assert read_project(tmp_path / "kept.bodice").design.reductions.waist == 33.0


def test_a_save_that_fails_keeps_the_project_on_the_desk(files: Files, desk: Desk, answers: Any) -> None:
    edit(desk)
    held = desk.project
    answers.keep, answers.target = "save", Path("/proc/version/kept.bodice")
    assert not files.new("under_bust")
    assert desk.project is held


def test_nothing_unsaved_nothing_asked(files: Files, answers: Any) -> None:
    assert files.new("over_bust")
    assert answers.asked == 0


def test_opening_a_file(files: Files, desk: Desk, answers: Any, settings: Settings, tmp_path: Path) -> None:
    path = tmp_path / "berta.bodice"
    project = set_client(desk.project, name="Berta (invented)")
    write_project(project, path)
    answers.file = path
    assert files.open()
    assert desk.project == project
    assert desk.path == path
    assert settings.recent() == (path,)


def test_a_damaged_file_is_refused_and_the_open_project_stays(
    files: Files, desk: Desk, answers: Any, settings: Settings, tmp_path: Path
) -> None:
    path = tmp_path / "torn.bodice"
    path.write_text('{"format": "bodice", "version"', encoding="utf-8")
    settings.remember(path)
    held = desk.project
    assert not files.open_path(path)
    assert desk.project is held
    assert "torn.bodice" in answers.told[0]
    assert settings.recent() == ()


def test_a_demo_opens_as_a_copy(
    files: Files, desk: Desk, answers: Any, settings: Settings, tmp_path: Path
) -> None:
    demo = tmp_path / "demo.bodice"
    write_project(desk.project, demo)
    before = demo.read_bytes()
    assert files.open_demo(demo)
    edit(desk)
    assert not files.save()
    assert demo.read_bytes() == before
    assert settings.recent() == ()


def test_recent_files_are_few_and_each_is_there_once(settings: Settings, tmp_path: Path) -> None:
    for number in range(12):
        settings.remember(tmp_path / f"{number}.bodice")
    settings.remember(tmp_path / "11.bodice")
    settings.remember(tmp_path / "9.bodice")
    kept = settings.recent()
    assert len(kept) == KEPT_FILES
    assert [path.stem for path in kept[:3]] == ["9", "11", "10"]


def test_recent_files_last(settings: Settings, tmp_path: Path) -> None:
    settings.remember(tmp_path / "one, with a comma.bodice")
    settings.sync()
    assert Settings(settings.path).recent() == (tmp_path / "one, with a comma.bodice",)


def test_a_new_project_starts_in_the_unit_used_last(files: Files, desk: Desk, settings: Settings) -> None:
    settings.unit = "cm"
    files.new("under_bust")
    assert desk.project.unit == "cm"


@pytest.mark.parametrize(
    ("title", "name"),
    [
        ("Anna / second fitting", "Anna second fitting"),
        ("..", "bodice"),
        ("", "bodice"),
        ('a"b<c>|d:e*?', "a b c d e"),
        ("x" * 300, "x" * 80),
    ],
)
def test_a_title_becomes_a_file_name(title: str, name: str) -> None:
    assert plain_name(title) == name


def test_the_project_is_called_after_its_client(files: Files, desk: Desk, tmp_path: Path) -> None:
    assert files.name == "Under-bust bodice"
    desk.open_session(Session(desk.project, tmp_path / "berta.bodice"))
    assert files.name == "berta"
    desk.apply("Client", set_client(desk.project, name="Berta (invented)"))
    assert files.name == "Berta (invented)"
