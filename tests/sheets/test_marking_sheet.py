"""The marking guide on paper, read back from the PDF."""

from __future__ import annotations

import time
from dataclasses import replace

import numpy as np
import pypdfium2  # type: ignore[import-untyped]  # it comes without types
import pytest

from tests.sheets.conftest import EVERY_LAYER, HEADING, CutJob
from workbench.draft import Finding
from workbench.marking import ROUNDINGS, Guide, guide_of
from workbench.pieces import Making
from workbench.sheets import PAPERS, PrintError, mark_rows, marking_picture, plain_lines, print_marking
from workbench.sheets.fonts import clean

MAKING = Making(layers=EVERY_LAYER)


def guides(cut: CutJob, rounding: str = "eighth") -> list[Guide]:
    chosen = ROUNDINGS[rounding]  # type: ignore[index]
    return [guide_of(cut.job.outcome, MAKING, layer, chosen) for layer in cut.cutting.layers]


def texts(pdf: bytes) -> list[str]:
    document = pypdfium2.PdfDocument(pdf)
    try:
        return [" ".join(page.get_textpage().get_text_bounded().split()) for page in document]
    finally:
        document.close()


def test_every_piece_has_one_page_with_every_distance_of_its_marks(either_cut: CutJob) -> None:
    made = guides(either_cut)
    pieces = [(guide, piece) for guide in made for piece in guide.pieces]
    pages = texts(print_marking(made, HEADING))[-len(pieces) :]
    for (guide, piece), page in zip(pieces, pages, strict=True):
        assert piece.name in page
        for step in piece.steps:
            for row in mark_rows(step, piece, guide.rounding):
                assert f"{row.first} {row.second}" in page, (piece.name, row.number)


def test_the_rows_and_the_plain_lines_are_all_that_a_step_says(folded: CutJob) -> None:
    for guide in guides(folded):
        for piece in guide.pieces:
            for step in piece.steps:
                rows = list(mark_rows(step, piece, guide.rounding))
                before, after = plain_lines(step)
                assert len(rows) + len(before) + len(after) == len(step.lines)


def test_the_first_page_has_the_sums_and_the_errors(folded: CutJob) -> None:
    made = guides(folded)[0]
    page = texts(print_marking([made], HEADING))[0]
    waist = next(row for row in made.girths if row.level == "waist")
    parts = " + ".join(made.rounding.say(mm).removesuffix(" in") for mm in waist.widths)
    assert f"{parts} = {made.rounding.say(waist.half)}" in page
    assert f"more than {made.rounding.say_error(made.error)} off" in page
    assert "Cautions" in page


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_pages_are_of_the_paper_asked_for_and_the_same_every_time(folded: CutJob, paper: str) -> None:
    made = guides(folded)
    pdf = print_marking(made, HEADING, paper)
    assert pdf == print_marking(made, HEADING, paper)
    document = pypdfium2.PdfDocument(pdf)
    sizes = {tuple(round(side * 25.4 / 72, 1) for side in page.get_size()) for page in document}
    document.close()
    assert sizes == {tuple(round(side, 1) for side in PAPERS[paper])}


def test_a_client_with_a_long_name_and_signs_no_font_has_is_still_printed(folded: CutJob) -> None:
    words = replace(HEADING, client="Ω" * 60 + "\x00 von und zu " * 8)
    assert (
        clean(words.client)[:30] in texts(print_marking(guides(folded)[:1], words))[0].replace(" ", "")[:9999]
    )


def test_what_is_above_a_limit_stands_on_the_first_page(folded: CutJob) -> None:
    over = Finding("over", "waist", "The waist is {more} above the limit you set.", {"more": 25.4})
    page = texts(print_marking(guides(folded)[:1], HEADING, over=(over,)))[0]
    assert "Above the limit you set The waist is 1 in above" in page


def test_other_paper_and_nothing_to_mark_are_refused(folded: CutJob) -> None:
    with pytest.raises(PrintError, match="on A4 or Letter, not on “A0”"):
        print_marking(guides(folded), HEADING, "A0")
    with pytest.raises(PrintError, match="no piece to mark"):
        print_marking([replace(guide, pieces=()) for guide in guides(folded)], HEADING)


def test_the_drawing_grows_step_by_step_into_the_whole(folded: CutJob) -> None:
    piece = guides(folded)[0].pieces[1]
    whole = marking_picture(piece, 5.0)
    assert not whole.now.strokes
    assert not whole.later.strokes
    for step in range(len(piece.steps)):
        part = marking_picture(piece, 5.0, step)
        count = sum(len(drawing.strokes) for drawing in (part.before, part.now, part.later))
        assert count == len(whole.before.strokes)
        assert {label.text for label in part.now.labels} == {str(mark) for mark in piece.steps[step].marks}


def test_numbers_on_the_drawing_do_not_lie_on_each_other(either_cut: CutJob) -> None:
    size = 10.0
    for guide in guides(either_cut):
        for piece in guide.pieces:
            if np.ptp(piece.cut, axis=0).min() < 60:
                continue
            places = np.array([(label.x, label.y) for label in marking_picture(piece, size).before.labels])
            away = np.abs(places[:, None] - places) + np.eye(len(places))[..., None] * 99
            assert not ((away[..., 0] < 0.5 * size) & (away[..., 1] < 0.5 * size)).any(), piece.name


@pytest.mark.bench
def test_the_guide_of_every_layer_takes_no_more_than_twice_its_goal(
    folded: CutJob, capsys: pytest.CaptureFixture[str]
) -> None:
    goal = 0.5
    print_marking(guides(folded)[:1], HEADING)
    start = time.process_time()
    made = guides(folded)
    worked = time.process_time()
    print_marking(made, HEADING)
    took, printing = time.process_time() - start, time.process_time() - worked
    with capsys.disabled():
        print(f"\nmarking guide of {len(made)} layers {1000 * printing:.0f} ms (goal {1000 * goal:.0f})")
    assert printing <= 2 * goal
    assert took <= 3 * goal


def test_what_comes_out_exactly_is_said_so_and_not_to_be_nothing_off(either_cut: CutJob) -> None:
    first = guides(either_cut)[0]
    exact = replace(first, pieces=tuple(replace(piece, error=0.0) for piece in first.pieces))
    read = " ".join(texts(print_marking([exact], HEADING)))
    assert "every outline is the exact one" in read
    assert "the outline is the exact one" in read
    assert "off the exact one" not in read
