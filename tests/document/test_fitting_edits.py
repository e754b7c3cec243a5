"""Edits of fittings: each says what was asked, leaves the rest alone, and refuses what no fitting holds."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import replace

import pytest

from tests.document import example
from tests.document.fitting_values import FITTED
from workbench.document import Project, to_bytes
from workbench.document.file import project_from
from workbench.document.fitting_checks import MOST_CHANGES, MOST_FITTINGS
from workbench.document.fitting_edits import (
    FROM_OPENING,
    add_fitting,
    add_pinned,
    remove_fitting,
    remove_pinned,
    set_fitting,
    set_gap,
    set_pinned,
    take_proposal,
)
from workbench.fitting import Change, Fitting, Gaps

FIRST = replace(example(), fittings=FITTED)


def test_a_fitting_begins_with_the_panels_of_today_and_the_cloth_of_the_last() -> None:
    begun = add_fitting(example(), "2031-05-20")
    assert begun.fittings == (Fitting("2031-05-20", "", (3, 3)),)
    again = add_fitting(set_fitting(begun, 0, cloth="calico"), "2031-06-03")
    assert again.fittings[1] == Fitting("2031-06-03", "calico", (3, 3))


def test_what_is_told_is_kept_and_opens_again() -> None:
    project = set_fitting(
        FIRST, 0, date="2031-05-21", cloth="sheeting", notes="She sang.", picture="back", applied=False
    )
    project = set_gap(set_gap(project, 0, "top", None), 0, "hem", 44.5)
    told = project.fittings[0]
    assert (told.date, told.cloth, told.notes, told.picture) == (
        "2031-05-21", "sheeting", "She sang.", "back",
    )  # fmt: skip
    assert (told.applied, told.gaps) == (False, Gaps(None, 50.8, 44.5))
    assert told.changes == FITTED[0].changes
    assert project_from(to_bytes(project)) == project


def test_a_change_of_another_kind_begins_where_such_changes_are_pinned() -> None:
    project = set_pinned(FIRST, 0, 0, kind="neckline")
    assert project.fittings[0].changes[0] == Change("neckline", 6.35, u=0.0)
    project = set_pinned(project, 0, 0, kind="seam", level="bust", seam=2)
    assert project.fittings[0].changes[0] == Change("seam", 6.35, "bust", 2)


def test_lines_are_added_and_removed() -> None:
    project = add_pinned(FIRST, 0, "hem")
    assert project.fittings[0].changes[3:] == (Change("hem", 0.0, u=0.0),)
    project = remove_pinned(remove_pinned(project, 0, 0), 0, 0)
    assert [change.kind for change in project.fittings[0].changes] == ["neckline", "hem"]
    assert remove_fitting(project, 0) == example()


def test_a_proposal_taken_twice_stands_there_once() -> None:
    proposed = (Change("seam", -3.0, "waist", 1), Change("seam", -3.0, "waist", 3))
    once = take_proposal(FIRST, 0, proposed)
    assert [change.note for change in once.fittings[0].changes] == [
        "", "", "for the brooch", FROM_OPENING, FROM_OPENING,
    ]  # fmt: skip
    assert take_proposal(once, 0, proposed) == once


@pytest.mark.parametrize(
    ("edit", "said"),
    [
        (lambda p: set_fitting(p, 1, cloth="x"), "no fitting number 2"),
        (lambda p: set_fitting(p, 0, colour="red"), "nothing called “colour”"),
        (lambda p: set_fitting(p, 0, date="20 May"), "year-month-day"),
        (lambda p: set_fitting(p, 0, cloth="x" * 81), "longer than 80"),
        (lambda p: set_gap(p, 0, "top", -1.0), "between 0 and 40 in"),
        (lambda p: set_gap(p, 0, "side", 1.0), "nothing called “side”"),
        (lambda p: set_pinned(p, 0, 9, amount_mm=1.0), "no line 10"),
        (lambda p: set_pinned(p, 0, 0, amount_mm=201.0), "at most 8 in"),
        (lambda p: set_pinned(p, 0, 0, amount_mm=float("nan")), "amount"),
        (lambda p: set_pinned(p, 0, 0, seam=6), "must be 1 to 5"),
        (lambda p: set_pinned(p, 0, 0, level=None), "is missing of this kind|missing"),
        (lambda p: set_pinned(p, 0, 2, u=6.5), "between 0 and 6"),
        (lambda p: set_pinned(p, 0, 2, level="waist"), "not for a change of this kind"),
        (lambda p: set_pinned(p, 0, 0, kind="sleeve"), "seam, length, neckline or hem"),
        (lambda p: take_proposal(p, 0, [Change("seam", 1.0, "waist", 1)] * MOST_CHANGES), "at most 80 lines"),
    ],
)
def test_what_no_fitting_can_hold_is_refused(edit: Callable[[Project], Project], said: str) -> None:
    with pytest.raises(ValueError, match=said):
        edit(FIRST)


def test_no_more_fittings_than_are_kept() -> None:
    project = example()
    for _ in range(MOST_FITTINGS):
        project = add_fitting(project)
    with pytest.raises(ValueError, match="40 fittings"):
        add_fitting(project)


@pytest.mark.parametrize(
    ("place", "value", "said"),
    [
        (("gaps", "top"), 1001, "gaps › top"),
        (("panels",), [3, 5], "panels › no. 2"),
        (("panels",), [3], "panels"),
        (("date",), "2031-5-2", "date"),
        (("changes", 0, "seam"), None, "seam is missing"),
        (("changes", 0, "amount_mm"), "wide", "amount_mm"),
        (("changes", 1, "u"), 1.0, "u is not for a change"),
        (("changes", 2, "note"), "x" * 401, "note"),
    ],
)
def test_a_file_with_such_a_fitting_is_refused_by_place(
    place: tuple[str | int, ...], value: object, said: str
) -> None:
    tree = json.loads(to_bytes(FIRST))
    inner = tree["fittings"][0]
    for step in place[:-1]:
        inner = inner[step]
    inner[place[-1]] = value
    with pytest.raises(ValueError, match=f"fittings › no. 1 › .*{said.split(' › ')[0]}"):
        project_from(json.dumps(tree).encode())
