"""The search beside the program. Times and validity are tested, never places: a search is not repeatable."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from time import perf_counter

import pytest

from tests.cloth.cutting_table import CORNERED, ONE, THREE, block, copies, judged
from workbench.cloth import Cloth, Copy, Placed, Solve, bottom_left
from workbench.cloth.child import _now_and_then
from workbench.cloth.wire import Job, job_line, read_job
from workbench.pieces import LayerName

LONG = 30.0


@contextmanager
def search(cloth: Cloth, seconds: float = 1.0, **other: object) -> Iterator[Solve]:
    solve = Solve(copies(cloth), cloth, seconds=seconds, **other)  # type: ignore[arg-type]
    try:
        yield solve
    finally:
        solve.cancel()


def first_plan(solve: Solve) -> None:
    """Until a plan has come, or the search is over."""
    end = perf_counter() + LONG
    while solve.running and not solve.poll() and perf_counter() < end:
        worker = solve._worker
        assert worker is not None
        worker.wait(0.02)


def test_the_library_packs_closer_and_every_plan_it_gives_can_be_cut() -> None:
    """With a tilt, and a tape whose grain runs along it."""
    layers: tuple[LayerName, ...] = ("fashion", "strength", "waist_tape")
    cloth = Cloth("Satin", layers, tilt_degrees=1.0)
    laid_out = copies(cloth)
    with search(cloth, 2.0) as solve:
        plain, seen = solve.best, []
        while solve.running:
            seen += solve.poll()
        assert solve.findings == ()
    assert seen
    assert [judged(plan, laid_out, cloth) for plan in seen] == [[]] * len(seen)
    lengths = [plan.length_mm for plan in (plain, *seen)]
    assert lengths == sorted(lengths, reverse=True)
    assert solve.best is seen[-1]
    assert solve.best.length_mm < plain.length_mm


@pytest.mark.parametrize(
    "cloth",
    [
        Cloth("Folded", THREE, laid="folded"),
        Cloth("Print", ONE, repeat_mm=64.0),
        Cloth("Scrap", THREE, remnant=CORNERED),
    ],
    ids=lambda cloth: cloth.name,
)
def test_what_the_library_cannot_do_is_laid_in_many_orders(cloth: Cloth) -> None:
    with search(cloth) as solve:
        plain = solve.best
        best = solve.wait()
        assert solve.findings == ()
    assert judged(best, copies(cloth), cloth) == []
    assert best.length_mm <= plain.length_mm
    assert best is plain or "The best of" in best.how


def test_plans_that_come_thick_and_fast_are_told_now_and_then_and_the_last_in_any_case() -> None:
    plan = bottom_left(copies(Cloth("Satin", ONE)), Cloth("Satin", ONE))
    found = [replace(plan, length_mm=plan.length_mm - number) for number in range(50)]
    between = [each for plan in found for each in (plan, None)]
    told = list(_now_and_then(iter(between)))
    assert told[0] is found[0]
    assert told[-1] is found[-1]
    assert len(told) < 10


def test_pinned_pieces_stay_where_they_are() -> None:
    cloth = Cloth("Satin", THREE)
    pinned = (Placed("fashion/Back 1", 1, 500.0, 300.0, 180.0, pinned=True),)
    with search(cloth, pinned=pinned) as solve:
        best = solve.wait()
    assert pinned[0] in best.placed
    assert judged(best, copies(cloth), cloth) == []


def test_a_search_is_ended_within_a_fifth_of_a_second_and_its_plan_stays() -> None:
    with search(Cloth("Satin", THREE), LONG) as solve:
        first_plan(solve)
        best, worker = solve.best, solve._worker
        assert worker is not None
        start = perf_counter()
        solve.cancel()
        took = perf_counter() - start
        assert worker.process.returncode is not None
    assert took < 0.2
    assert not solve.running
    assert solve.best is best
    assert best.sound
    assert solve.findings == ()
    assert solve.poll() == []


def test_a_worker_killed_from_outside_leaves_the_last_plan_and_a_word() -> None:
    with search(Cloth("Satin", THREE), LONG) as solve:
        first_plan(solve)
        best = solve.best
        worker = solve._worker
        assert worker is not None
        worker.process.kill()
        assert solve.wait(LONG).better_than(best) or solve.best is best
    assert judged(solve.best, solve.copies, solve.cloth) == []
    (finding,) = solve.findings
    assert finding.text("in").startswith("The search for a shorter plan of Satin was ended from outside")


def test_a_worker_that_cannot_start_its_work_leaves_the_plain_plan() -> None:
    cloth = Cloth("Satin", ONE)
    with search(cloth, command=[sys.executable, "-c", "raise SystemExit(3)"]) as solve:
        assert solve.wait(LONG) == bottom_left(copies(cloth), cloth)
        assert [finding.words["code"] for finding in solve.findings] == ["3"]


def test_a_failure_of_the_library_is_said_in_words() -> None:
    said = r"import sys; sys.stdin.readline(); print('{\"kind\":\"failed\",\"why\":\"PanicException\"}')"
    with search(Cloth("Satin", ONE), command=[sys.executable, "-c", said]) as solve:
        plain = solve.best
        assert solve.wait(LONG) is plain
        assert [finding.text("in") for finding in solve.findings] == [
            "The search for a shorter plan of Satin failed (PanicException); the last plan stays."
        ]


def test_a_plan_that_does_not_hold_is_not_given_out() -> None:
    """All pieces on one heap."""
    cloth = Cloth("Satin", ONE)
    heap = [
        {"piece": c.piece, "copy": c.number, "x": 500.0, "y": 400.0, "mirrored": c.mirrored}
        for c in copies(cloth)
    ]
    message = json.dumps({"kind": "plan", "how": "", "placed": heap})
    said = f"import sys; sys.stdin.readline(); print({message!r})"
    with search(cloth, command=[sys.executable, "-c", said]) as solve:
        plain = solve.best
        assert solve.wait(LONG) is plain


def test_a_piece_just_as_wide_as_the_cloth_does_not_upset_the_library() -> None:
    cloth = Cloth("Satin", ONE, width_mm=1000.0, selvedge_mm=10.0, gap_mm=0.0)
    laid_out = [block("A", 980.0, 100.0), block("B", 400.0, 300.0), block("C", 500.0, 200.0)]
    solve = Solve(laid_out, cloth, seconds=1)
    assert judged(solve.wait(LONG), laid_out, cloth) == []
    assert solve.findings == ()


def test_seeking_on_never_loses_what_was_found() -> None:
    with search(Cloth("Satin", ONE), LONG) as solve:
        first_plan(solve)
        best = solve.best
        solve.improve(LONG)
        assert solve.running
        assert solve.best is best


def test_nothing_to_lay_needs_no_search() -> None:
    assert not Solve((), Cloth("Satin", ())).running


def test_a_job_comes_through_whole() -> None:
    cloth = Cloth("Crêpe “rose”", THREE, remnant=CORNERED, laid="single", repeat_mm=12.5)
    pinned = (Placed("fashion/Back 1", 1, 500.25, 300.0, 180.0, mirrored=True, pinned=True),)
    job = Job(copies(cloth), cloth, pinned, 3.0, 7, 2)
    line = job_line(job)
    assert line.count(b"\n") == 1
    again = read_job(line)
    assert (again.cloth, again.pinned, again.seconds, again.seed) == (cloth, pinned, 3.0, 7)
    for own, other in zip(job.copies, again.copies, strict=True):
        assert without_outline(own) == without_outline(other)
        assert abs(own.outline - other.outline).max() < 1e-5


def without_outline(copy: Copy) -> dict[str, object]:
    return {name: value for name, value in vars(replace(copy)).items() if name != "outline"}
