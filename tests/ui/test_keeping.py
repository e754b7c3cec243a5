"""Work outlives a crash, a second window and a file changed behind her back; what is asked loses nothing."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

import pytest

from workbench.document import (
    Project,
    Session,
    new_project,
    read_project,
    set_client,
    set_reduction,
    write_project,
)
from workbench.document.keeping import AUTOSAVE_SECONDS, Autosave, Holder, digest_of, left_over, versions_of
from workbench.document.keeping.lock import lock_file
from workbench.ui.desk import Desk
from workbench.ui.files import Files
from workbench.ui.keeping import Keeping
from workbench.ui.keeping_questions import Changed, Held, KeepingQuestions, Left, said_when
from workbench.ui.left_over import TAKEN_UP, LeftOver
from workbench.ui.settings import Settings


class Scripted(KeepingQuestions):
    """Gives the answers it was told to give, and keeps what it was asked."""

    def __init__(self) -> None:
        super().__init__()
        self.held_answer: Held = "leave"
        self.changed_answer: Changed = "stay"
        self.left_answer: Left = "later"
        self.is_sure = True
        self.asked: list[str] = []
        self.lines: list[tuple[str, ...]] = []

    def held(self, path: Path, holder: Holder, to_save: bool) -> Held:
        self.asked.append(f"held on {holder.machine}")
        return self.held_answer

    def changed(self, path: Path) -> Changed:
        self.asked.append("changed")
        return self.changed_answer

    def left(self, name: str, when: str, lines: Sequence[str], more: int) -> Left:
        self.asked.append(f"left {name}, {more} more")
        self.lines.append(tuple(lines))
        return self.left_answer

    def sure(self, name: str) -> bool:
        return self.is_sure


@pytest.fixture
def questions(qapp: object) -> Scripted:
    return Scripted()


@pytest.fixture
def data(tmp_path: Path) -> Path:
    return tmp_path / "data"


@pytest.fixture
def keeping(desk: Desk, data: Path, answers: Any, questions: Scripted) -> Iterator[Keeping]:
    keeping = Keeping(desk, data, answers, questions)
    yield keeping
    keeping.end()


@pytest.fixture
def files(desk: Desk, settings: Settings, answers: Any, keeping: Keeping) -> Files:
    return Files(desk, settings, answers, keeping=keeping)


@pytest.fixture
def path(desk: Desk, files: Files, tmp_path: Path) -> Path:
    """A saved project, open."""
    path = tmp_path / "clients" / "anna.bodice"
    path.parent.mkdir()
    write_project(desk.project, path)
    assert files.open_path(path)
    return path


def edit(desk: Desk, mm: float = 33.0) -> None:
    desk.apply("Waist reduction", set_reduction(desk.project, "waist", mm))
    desk.now()


def kept(data: Path) -> list[Path]:
    return list(data.glob("unsaved/*.unsaved"))


# --- unsaved work --------------------------------------------------------------------------


def test_an_edit_is_kept_well_within_ten_seconds(desk: Desk, keeping: Keeping) -> None:
    edit(desk)
    assert keeping.soon.isActive()
    assert keeping.soon.interval() <= 1000 * AUTOSAVE_SECONDS < 10_000


def test_going_on_does_not_put_it_off(desk: Desk, keeping: Keeping) -> None:
    edit(desk)
    keeping.soon.setInterval(60_000)
    keeping.soon.start()
    before = keeping.soon.remainingTime()
    edit(desk, 34.0)
    assert keeping.soon.remainingTime() <= before


def test_what_is_kept_is_the_work_and_how_it_came_about(
    desk: Desk, keeping: Keeping, path: Path, data: Path
) -> None:
    edit(desk)
    edit(desk, 35.0)
    assert keeping.keep_now()
    [file] = kept(data)
    tree = json.loads(file.read_bytes())
    assert tree["path"] == str(path)
    assert tree["digest"] == digest_of(path.read_bytes())
    assert tree["steps"] == ["Waist reduction"] * 2
    assert json.loads(tree["project"])["design"]["reductions"]["waist"] == 35.0


def test_a_gesture_under_way_is_not_taken_for_work(desk: Desk, keeping: Keeping, data: Path) -> None:
    edit(desk)
    desk.begin("Waist reduction")
    desk.preview(set_reduction(desk.project, "waist", 50.0))
    keeping.keep_now()
    [file] = kept(data)
    assert json.loads(json.loads(file.read_bytes())["project"])["design"]["reductions"]["waist"] == 33.0
    desk.cancel()


def test_saved_it_is_not_kept_any_longer(
    desk: Desk, keeping: Keeping, files: Files, path: Path, data: Path
) -> None:
    edit(desk)
    keeping.keep_now()
    assert files.save()
    desk.now()
    assert kept(data) == []
    assert not keeping.soon.isActive()


def test_undone_to_what_is_saved_it_is_not_kept(desk: Desk, keeping: Keeping, path: Path, data: Path) -> None:
    edit(desk)
    keeping.keep_now()
    desk.undo()
    desk.now()
    assert kept(data) == []


def test_thrown_away_by_her_word_it_goes_with_the_project(
    desk: Desk, keeping: Keeping, files: Files, answers: Any, data: Path
) -> None:
    edit(desk)
    keeping.keep_now()
    answers.keep = "discard"
    assert files.new("over_bust")
    assert kept(data) == []


def test_a_disk_that_takes_nothing_is_said_once(desk: Desk, answers: Any, questions: Scripted) -> None:
    keeping = Keeping(desk, Path("/proc/nowhere"), answers, questions)
    edit(desk)
    assert not keeping.keep_now()
    assert not keeping.keep_now()
    assert len(answers.told) == 1
    assert "until you save it" in answers.told[0]
    assert keeping.soon.isActive()
    keeping.end()


# --- after a crash -------------------------------------------------------------------------


def crashed(data: Path, project: Project, path: Path | None, digest: str = "") -> Path:
    """What a program leaves behind when the power goes."""
    autosave = Autosave(data)
    autosave.keep(project, path, digest, ["Waist reduction", "Client"])
    tree = json.loads(autosave.file.read_bytes())
    tree["holder"] |= {"boot": "another start"}
    autosave.file.write_text(json.dumps(tree), encoding="ascii")
    return autosave.file


@pytest.fixture
def left(desk: Desk, files: Files, keeping: Keeping) -> LeftOver:
    return LeftOver(desk, files, keeping)


def test_it_is_offered_with_what_differs(
    desk: Desk, path: Path, data: Path, left: LeftOver, questions: Scripted
) -> None:
    work = set_client(set_reduction(desk.project, "waist", 63.5), name="Anna (invented)")
    crashed(data, work, path, digest_of(path.read_bytes()))
    left.offer()
    assert questions.asked == ["left Anna (invented), 0 more"]
    assert questions.lines == [
        (
            "2 steps not saved",
            "Reduction, waist: 2½ in, was 2 in",
            "Client, name: “Anna (invented)”, was nothing",
        )
    ]


def test_taken_up_it_is_one_step_over_the_file(
    desk: Desk, path: Path, data: Path, left: LeftOver, questions: Scripted
) -> None:
    saved = desk.project
    work = set_client(saved, name="Anna")
    file = crashed(data, work, path)
    questions.left_answer = "take"
    left.offer()
    assert (desk.project, desk.path, desk.undo_name) == (work, path, TAKEN_UP)
    assert desk.unsaved
    assert not file.exists()
    assert len(kept(data)) == 1, "it is kept anew before the old copy goes"
    desk.undo()
    assert desk.project == saved


def test_never_saved_it_is_taken_up_as_a_new_project(
    desk: Desk, data: Path, left: LeftOver, questions: Scripted
) -> None:
    work = set_client(new_project("over_bust"), name="Anna")
    crashed(data, work, None)
    questions.left_answer = "take"
    left.offer()
    assert (desk.project, desk.path) == (work, None)
    assert "It was never saved to a file" in questions.lines[0]


def test_not_now_leaves_it_for_the_next_start(data: Path, left: LeftOver, desk: Desk) -> None:
    file = crashed(data, set_client(desk.project, name="Anna"), None)
    left.offer()
    assert file.exists()


def test_it_is_thrown_away_only_when_she_is_sure(
    desk: Desk, data: Path, left: LeftOver, questions: Scripted
) -> None:
    file = crashed(data, set_client(desk.project, name="Anna"), None)
    questions.left_answer, questions.is_sure = "discard", False
    left.offer()
    assert file.exists()
    questions.is_sure = True
    left.offer()
    assert not file.exists()


def test_what_the_file_holds_already_is_not_offered(
    desk: Desk, path: Path, data: Path, left: LeftOver, questions: Scripted
) -> None:
    file = crashed(data, desk.project, path)
    left.offer()
    assert questions.asked == []
    assert not file.exists()


def test_that_the_file_was_saved_since_or_has_gone_is_said(
    desk: Desk, path: Path, data: Path, left: LeftOver, questions: Scripted
) -> None:
    crashed(data, set_client(desk.project, name="Anna"), path, "another digest")
    left.offer()
    assert any("saved since by another program" in line for line in questions.lines[0])
    path.unlink()
    left.offer()
    assert any("no longer there" in line for line in questions.lines[1])


def test_unsaved_work_on_the_desk_is_asked_about_first(
    desk: Desk, data: Path, left: LeftOver, questions: Scripted, answers: Any
) -> None:
    file = crashed(data, set_client(desk.project, name="Anna"), None)
    edit(desk)
    held = desk.project
    questions.left_answer = "take"
    left.offer()
    assert answers.asked == 1
    assert desk.project is held
    assert file.exists()


# --- two programs ----------------------------------------------------------------------------


def elsewhere(path: Path, seen: float = 4e9) -> None:
    """Another machine's lock; its clock is ahead, which proves nothing."""
    holder = Holder("atelier", "b", "another start", "", 4711, "1", seen - 60, seen, "feed")
    lock_file(path).write_text(json.dumps(holder.plain()), encoding="utf-8")


@pytest.fixture
def other_path(tmp_path: Path) -> Path:
    """A project that another machine has open."""
    path = tmp_path / "berta.bodice"
    write_project(set_client(new_project(), name="Berta"), path)
    elsewhere(path)
    return path


def test_what_is_open_is_locked_and_what_is_closed_is_free(files: Files, path: Path) -> None:
    assert lock_file(path).exists()
    files.new("under_bust")
    assert not lock_file(path).exists()


def test_left_to_the_other_nothing_is_opened(
    files: Files, desk: Desk, other_path: Path, questions: Scripted
) -> None:
    held = desk.project
    assert not files.open_path(other_path)
    assert questions.asked == ["held on atelier"]
    assert desk.project is held


def test_a_copy_has_no_file_yet(files: Files, desk: Desk, other_path: Path, questions: Scripted) -> None:
    questions.held_answer = "copy"
    assert files.open_path(other_path)
    assert desk.path is None
    assert desk.project.client.name == "Berta"
    assert "feed" in lock_file(other_path).read_text(encoding="utf-8")


def test_opened_all_the_same_the_lock_is_taken_over(
    files: Files, desk: Desk, other_path: Path, questions: Scripted
) -> None:
    questions.held_answer = "take"
    assert files.open_path(other_path)
    assert desk.path == other_path
    assert "feed" not in lock_file(other_path).read_text(encoding="utf-8")


def test_whose_project_was_taken_over_hears_it_once(keeping: Keeping, path: Path, answers: Any) -> None:
    elsewhere(path)
    keeping.on_sign()
    keeping.on_sign()
    assert len(answers.told) == 1
    assert "atelier" in answers.told[0]


def test_saving_over_a_project_that_is_open_elsewhere_asks(
    files: Files, desk: Desk, path: Path, other_path: Path, questions: Scripted, answers: Any
) -> None:
    before = other_path.read_bytes()
    answers.target = other_path
    assert not files.save_as()
    assert other_path.read_bytes() == before
    assert desk.path == path
    questions.held_answer = "take"
    assert files.save_as()
    assert lock_file(other_path).exists()
    assert not lock_file(path).exists()


def test_a_file_that_could_not_be_written_is_free_again(
    files: Files, desk: Desk, path: Path, answers: Any, tmp_path: Path
) -> None:
    answers.target = tmp_path / "folder.bodice"
    answers.target.mkdir()
    edit(desk)
    assert not files.save_as()
    assert not lock_file(answers.target).exists()
    assert lock_file(path).exists()


# --- a file changed on disk ------------------------------------------------------------------


@pytest.fixture
def theirs(desk: Desk, path: Path) -> Project:
    """What somebody else has written meanwhile, while she has made an edit."""
    theirs = set_client(desk.project, name="Theirs")
    write_project(theirs, path)
    edit(desk)
    return theirs


def named(data: Path, path: Path) -> set[str]:
    return {version.read().client.name for version in versions_of(data, path)}


def test_not_now_writes_nothing(
    files: Files, desk: Desk, path: Path, theirs: Project, questions: Scripted
) -> None:
    assert not files.save()
    assert questions.asked == ["changed"]
    assert read_project(path) == theirs
    assert desk.unsaved


def test_mine_is_kept_and_theirs_stays_among_the_versions(
    files: Files, desk: Desk, path: Path, theirs: Project, questions: Scripted, data: Path
) -> None:
    questions.changed_answer = "mine"
    assert files.save()
    assert read_project(path) == desk.project
    assert named(data, path) == {"Theirs", ""}


def test_theirs_is_opened_and_mine_stays_among_the_versions(
    files: Files, desk: Desk, path: Path, theirs: Project, questions: Scripted, data: Path
) -> None:
    mine = desk.project
    questions.changed_answer = "theirs"
    assert not files.save()
    assert desk.project == theirs
    assert not desk.unsaved
    assert mine in [version.read() for version in versions_of(data, path)]


def test_mine_is_saved_under_another_name(
    files: Files, desk: Desk, path: Path, theirs: Project, questions: Scripted, answers: Any, tmp_path: Path
) -> None:
    questions.changed_answer, answers.target = "save_as", tmp_path / "mine.bodice"
    assert files.save()
    assert read_project(path) == theirs
    assert read_project(tmp_path / "mine.bodice") == desk.project


def test_with_no_room_for_the_other_state_neither_is_let_go(
    files: Files, desk: Desk, path: Path, theirs: Project, questions: Scripted, data: Path, answers: Any
) -> None:
    data.mkdir(exist_ok=True)
    (data / "versions").write_bytes(b"in the way")
    for questions.changed_answer in ("mine", "theirs"):
        assert not files.save()
        assert read_project(path) == theirs
        assert desk.unsaved
        assert "Save under another name" in answers.told[-1]


def test_a_file_touched_but_not_changed_is_nothing_new(
    files: Files, desk: Desk, path: Path, questions: Scripted
) -> None:
    path.write_bytes(path.read_bytes())
    edit(desk)
    assert files.save()
    assert files.save()
    assert questions.asked == []


def test_a_file_that_was_removed_is_written_again(
    files: Files, desk: Desk, path: Path, questions: Scripted
) -> None:
    path.unlink()
    edit(desk)
    assert files.save()
    assert questions.asked == []


def test_a_file_that_cannot_be_compared_is_not_written_over(
    files: Files, desk: Desk, path: Path, answers: Any
) -> None:
    path.write_bytes(bytes(7_000_000))
    edit(desk)
    assert not files.save()
    assert "Save under another name" in answers.told[0]
    assert path.stat().st_size == 7_000_000


def test_the_state_before_the_first_save_is_a_version_too(
    files: Files, desk: Desk, path: Path, keeping: Keeping
) -> None:
    opened = desk.project
    edit(desk)
    files.save()
    assert [version.read() for version in keeping.versions()] == [desk.project, opened]


def test_versions_that_cannot_be_kept_do_not_stop_a_save(
    files: Files, desk: Desk, path: Path, data: Path, answers: Any
) -> None:
    data.mkdir(exist_ok=True)
    (data / "versions").write_bytes(b"in the way")
    edit(desk)
    assert files.save()
    assert len(answers.told) == 1


def test_any_moment_can_be_said() -> None:
    assert said_when(0.0)[:4] in ("1969", "1970")
    for odd in (1e300, float("nan"), float("inf")):
        assert "did not know" in said_when(odd)


def test_work_left_over_is_that_of_others_only(desk: Desk, keeping: Keeping, data: Path) -> None:
    edit(desk)
    keeping.keep_now()
    assert left_over(data) == ()
    desk.open_session(Session(desk.project))
