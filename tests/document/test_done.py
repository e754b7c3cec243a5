"""Steps ticked off: once each, and undone again as if nothing had been."""

from __future__ import annotations

import pytest

from workbench.document import new_project, to_bytes
from workbench.document.done_edits import MOST_DONE, done_problems, set_done


def test_a_tick_taken_back_leaves_the_same_bytes() -> None:
    before = set_done(new_project(), "sewing.busk", True)
    after = set_done(set_done(before, "sewing.seam.1", True), "sewing.seam.1", False)
    assert to_bytes(after) == to_bytes(before)


def test_a_step_is_ticked_off_once() -> None:
    project = set_done(new_project(), "sewing.busk", True)
    assert set_done(project, "sewing.busk", True) is project
    assert project.done == ("sewing.busk",)


def test_taking_back_what_was_not_ticked_is_no_edit() -> None:
    project = new_project()
    assert set_done(project, "sewing.busk", False) is project


@pytest.mark.parametrize(
    ("done", "reason"),
    [
        (("a", "b", "a"), "names the step a twice"),
        (("x" * 121,), "is longer than 120 characters"),
        (tuple(map(str, range(MOST_DONE + 1))), f"names {MOST_DONE + 1} steps"),
    ],
)
def test_what_cannot_be_kept_is_named(done: tuple[str, ...], reason: str) -> None:
    assert any(reason in said for _, said in done_problems(done))
