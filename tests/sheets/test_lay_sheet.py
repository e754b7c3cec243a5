"""Lay sheets: every piece where the plan has it, true to the scale that is said, and all words legible."""

from __future__ import annotations

import re
from dataclasses import replace

import numpy as np
import pypdfium2  # type: ignore[import-untyped]
import pytest
import shapely

from tests.sheets.conftest import CutJob, Job, cut_job
from tests.sheets.lay_cases import CLOTHS, FIGURE, SATIN, LayJob, in_mm, laid, moved
from tests.sheets.readback import collisions, inked_letters, lines_by_pikepdf, page_sizes, text_of
from tests.sheets.test_first_page import LONG, plain
from workbench.body import say_with_unit
from workbench.cloth import Cloth, to_buy
from workbench.pieces import Making
from workbench.sheets import LAY_PAPERS, PrintError, print_lay
from workbench.sheets.lay_corners import corners_of, nearest_corner


@pytest.fixture(scope="module", params=sorted(CLOTHS))
def job(request: pytest.FixtureRequest, folded: CutJob) -> LayJob:
    return laid(folded.cutting, CLOTHS[request.param], folded.job.heading)


@pytest.fixture(scope="module")
def plain_job(folded: CutJob) -> LayJob:
    return laid(folded.cutting, SATIN, folded.job.heading)


def words(job: LayJob, paper: str = "A4") -> str:
    return plain(" ".join(text_of(job.pdf(paper))))


@pytest.mark.parametrize("paper", ["A4", "A3"])
def test_every_piece_is_drawn_to_scale_where_the_plan_has_it_and_the_right_way_up(
    job: LayJob, paper: str
) -> None:
    pdf = job.pdf(paper)
    said = re.search(r"Drawn 1 to ([\d.]+)\.", plain(" ".join(text_of(pdf))))
    assert said
    # along the cloth runs to the right and across it down the page
    shapes = [job.outline(own) * np.array([1.0, -1.0]) / float(said[1]) for own in job.plan.placed]
    lines = [line.points for line in lines_by_pikepdf(pdf)[0] if len(line.points) > 3]
    starts = [line.min(axis=0) - shapes[0].min(axis=0) for line in lines]
    drawn = [shapely.LinearRing(line) for line in lines]
    found = max(sum(_is_drawn(shape + start, drawn) for shape in shapes) for start in starts)
    assert found == len(shapes)


def _is_drawn(shape: np.ndarray, drawn: list[shapely.LinearRing]) -> bool:
    ring = shapely.LinearRing(shape)
    near = [line for line in drawn if np.allclose(line.bounds, ring.bounds, atol=0.15)]
    return any(shapely.hausdorff_distance(line, ring, densify=0.05) < 0.15 for line in near)


def test_the_table_measures_a_corner_of_every_piece_from_the_end_and_from_the_edge(job: LayJob) -> None:
    text, unit = words(job), job.heading.unit
    half_a_mark = 25.4 / 16 if unit == "in" else 0.5
    for own in job.plan.placed:
        outline = job.outline(own)
        name = re.escape(job.copies[own.piece, own.copy].name)
        rows = re.findall(rf"\d+ {name}(?:, [\w ]+?)? (?:\w+ )?{FIGURE} {FIGURE} (?:—|over|round)", text)
        spots = [np.array([in_mm(along, unit), in_mm(across, unit)]) for along, across in rows]
        corners = corners_of(outline)
        nearest = corners[int(np.argmin(corners.sum(axis=1)))]
        assert any(np.abs(nearest - spot).max() <= half_a_mark + 0.01 for spot in spots), own


def test_a_corner_is_where_the_edge_turns_and_the_nearest_has_the_least_way_to_it() -> None:
    # a rectangle leaned by a few degrees has four corners, by its definition; a circle has none
    square = np.array([[0.0, 0.0], [100.0, 5.0], [95.0, 105.0], [-5.0, 100.0]])
    dense = shapely.get_coordinates(shapely.segmentize(shapely.LinearRing(square), 3.0))[:-1]
    found = {tuple(corner) for corner in corners_of(dense).round(6).tolist()}
    assert found == {tuple(corner) for corner in square.tolist()}
    assert nearest_corner(dense + 50.0) == (50.0, 50.0)
    circle = shapely.get_coordinates(shapely.Point(80, 80).buffer(60, quad_segs=32))[:-1]
    assert len(corners_of(circle)) == 0
    assert nearest_corner(circle) == pytest.approx((80.0, 20.0))


def test_what_is_bought_how_long_it_is_how_much_is_used_and_how_it_was_found_are_said(job: LayJob) -> None:
    text, bought = words(job), to_buy(job.plan.length_mm, job.cloth)
    assert say_with_unit(job.plan.length_mm, "in") in text
    assert f"{100 * job.plan.utilisation:.0f} %" in text
    assert job.plan.how in text
    assert f"{len(job.plan.placed)} pieces to lay" in text
    if job.cloth.remnant is None and not bought.fits:
        assert f"buy {bought.words}" in text
    if bought.note:
        assert bought.note.rstrip(".") in text
    assert ("right sides together" in text) == (job.cloth.laid == "folded")
    assert ("all heads this way" in text) == (job.cloth.run == "one_way")
    assert ("4 % is counted" in text) == bool(job.cloth.shrinkage_percent)


def test_pieces_are_numbered_from_the_cut_end(plain_job: LayJob) -> None:
    rows = re.findall(
        rf"(\d+) (?:Front|Back) \d[\w, ]*? {FIGURE} {FIGURE} (?:—|over|round)", words(plain_job)
    )
    assert [int(number) for number, _, _ in rows] == list(range(1, len(plain_job.plan.placed) + 1))
    along = [in_mm(figure, "in") for _, figure, _ in rows]
    assert max(along[: len(along) // 2]) <= max(along[len(along) // 2 :])


def test_a_plan_that_no_longer_fits_its_pieces_is_never_printed(plain_job: LayJob, gown: Job) -> None:
    other = cut_job(gown, Making(front="busk")).cutting
    for cloth, cutting in ((SATIN, other), (replace(SATIN, gap_mm=9.0), plain_job.cutting)):
        with pytest.raises(PrintError, match="plan for Ivory satin is out of date"):
            print_lay(((cloth, plain_job.plan, cutting),), plain_job.heading)


def test_a_plan_with_something_wrong_says_so_above_the_drawing(plain_job: LayJob) -> None:
    first = plain_job.plan.placed[0]
    wrong = moved(plain_job, 1, x=first.x, y=first.y)
    text = words(wrong)
    assert "cannot be cut as it is" in text
    for finding in wrong.plan.findings:
        assert finding.text("in") in text
    assert "cannot be cut" not in words(plain_job)


def test_a_piece_off_the_grain_is_measured_at_two_corners(folded: CutJob) -> None:
    leaning = replace(SATIN, tilt_degrees=6.0)
    job = laid(folded.cutting, leaning, folded.job.heading)
    text = words(moved(job, 0, degrees=job.plan.placed[0].degrees + 3.5, y=600.0))
    assert "3.5° off grain" in text
    assert re.search(rf"its other corner {FIGURE} {FIGURE}", text)


def test_what_cannot_be_printed_is_refused_in_a_sentence(plain_job: LayJob) -> None:
    with pytest.raises(PrintError, match="not on “A0”"):
        plain_job.pdf("A0")
    with pytest.raises(PrintError, match="no lay plan"):
        print_lay((), plain_job.heading)
    with pytest.raises(PrintError, match="Ivory satin"):
        print_lay(((replace(SATIN, width_mm=0.0), plain_job.plan, plain_job.cutting),), plain_job.heading)


@pytest.mark.parametrize("paper", LAY_PAPERS)
def test_the_same_plan_gives_the_same_bytes_on_the_paper_that_was_asked_for(
    plain_job: LayJob, paper: str
) -> None:
    pdf = plain_job.pdf(paper)
    assert pdf == plain_job.pdf(paper)
    # ISO 216 and ANSI Y14.1
    sides = {"A4": (210.0, 297.0), "A3": (297.0, 420.0), "Letter": (215.9, 279.4)}[paper]
    for size in page_sizes(pdf):
        assert sorted(size) == pytest.approx(sides, abs=0.01)


def test_a_plan_of_very_many_pieces_goes_on_over_pages(folded: CutJob) -> None:
    layer = folded.cutting.layers[0]
    many = replace(layer, pieces=tuple(replace(piece, count=22) for piece in layer.pieces[1:]))
    narrow = replace(SATIN, width_mm=500.0)
    job = laid(replace(folded.cutting, layers=(many,)), narrow, folded.job.heading)
    texts = [plain(text) for text in text_of(job.pdf())]
    assert len(texts) > 1
    # so long that its drawing is broken into strips, each with its own part of the selvedge
    assert texts[0].count("selvedge") > 3
    numbers = set(re.findall(r"\d+", texts[0]))
    assert numbers >= {str(number) for number in range(1, len(job.plan.placed) + 1)}
    rows = re.findall(rf"(\d+) (?:Front|Back) \d, (?:left|right) \d+ {FIGURE} {FIGURE} ", " ".join(texts))
    assert [int(row[0]) for row in rows] == list(range(1, len(job.plan.placed) + 1))
    assert all(f"page {number} of {len(texts)}" in text for number, text in enumerate(texts, 1))


def crowded(folded: CutJob) -> LayJob:
    """Long names all round, and something wrong."""
    cloth = Cloth(f"{LONG} {LONG}", ("fashion", "interfacing", "lining"), laid="folded", repeat_mm=90.0)
    return laid(folded.cutting, cloth, replace(folded.job.heading, client=LONG, invented=True))


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("case", [*sorted(CLOTHS), "crowded"])
def test_no_line_of_text_runs_into_another_or_off_the_page(folded: CutJob, case: str, paper: str) -> None:
    made = crowded(folded) if case == "crowded" else laid(folded.cutting, CLOTHS[case], folded.job.heading)
    document = pypdfium2.PdfDocument(made.pdf(paper))
    for page in document:
        width, height = page.get_size()
        boxes = inked_letters(page)
        assert min(box[0] for box in boxes) > 28
        assert max(box[2] for box in boxes) < width - 28
        assert min(box[1] for box in boxes) > 20
        assert max(box[3] for box in boxes) < height - 20
        assert not collisions(boxes), [_around(page, pair) for pair in collisions(boxes)[:3]]
    document.close()


def _around(page: pypdfium2.PdfPage, pair: tuple[int, int]) -> list[str]:
    text = page.get_textpage().get_text_range()
    return [text[max(number - 8, 0) : number + 8] for number in pair]


def test_invented_figures_are_said_to_be_so_and_nothing_is_called_harmless(job: LayJob) -> None:
    text = words(job)
    assert "Figures invented for demonstration." in text
    assert not re.search(r"\bsafe", text, re.IGNORECASE)
