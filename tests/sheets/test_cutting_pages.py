"""The sheets for the cutting table: what they say, and that all of it is there and legible."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pypdfium2  # type: ignore[import-untyped]
import pytest

from tests.sheets.conftest import CutJob, Job, cut_job
from tests.sheets.readback import collisions, inked_letters, text_of
from tests.sheets.test_first_page import LONG, PAPERS, plain, squeezed
from workbench.body import say_length, say_with_unit
from workbench.draft import Finding
from workbench.pieces import Boning, Cutting, LayerChoice, Making, Opening, WalkRow
from workbench.sheets import Heading, PrintChoice, placements, print_pdf, sheet_map
from workbench.sheets.layer_sheet import allowances_of
from workbench.sheets.notion_list import by_the_yard
from workbench.sheets.walk_judged import differing
from workbench.sheets.walk_sheet import alike


def front_texts(cut: CutJob, **choice: object) -> list[str]:
    """What the pages before the sheets at true size say."""
    count = len(sheet_map(cut.job.outcome, PrintChoice(**choice), cut.cutting).tiles)  # type: ignore[arg-type]
    return [plain(text) for text in text_of(cut.pdf(**choice))[:-count]]


def page_with(cut: CutJob, words: str) -> str:
    return " ".join(text for text in front_texts(cut) if words in text)


def test_every_layer_has_a_cutting_sheet_that_says_what_it_is_for_and_how_many_are_cut(
    either_cut: CutJob,
) -> None:
    for layer in either_cut.cutting.layers:
        page = page_with(either_cut, f"{layer.label} cutting sheet")
        assert squeezed(layer.purpose) in squeezed(page)
        assert f"{sum(piece.count for piece in layer.pieces)} to cut" in page
        for piece in layer.pieces:
            assert piece.name in page
            assert squeezed(piece.cut_words) in squeezed(page)


def test_allowances_are_said_by_kind_of_edge_and_one_that_differs_by_name(gown: Job) -> None:
    # defaults: half an inch at joining seams, an inch at the side (common practice, no source)
    cutting = cut_job(gown, Making()).cutting
    layer = cutting.layers[0]
    said = dict(allowances_of(layer, Heading()))
    assert said["joining seams"] == "½ in"
    assert said["side seam"] == said["centre back"] == "1 in"
    assert said["neckline"] == said["hem"] == "none"
    assert "centre front" not in said
    first, second = layer.pieces[:2]
    wider = tuple(replace(edge, allowance=19.05) if edge.name == "left" else edge for edge in second.edges)
    own = replace(layer, pieces=(first, replace(second, edges=wider), *layer.pieces[2:]))
    assert dict(allowances_of(own, Heading()))["joining seams"] == "½ in; ¾ in at Front 2"


def test_bones_stand_in_the_list_with_their_lengths_and_what_is_bought(either_cut: CutJob) -> None:
    heading = either_cut.job.heading
    page = page_with(either_cut, "Bones and notions")
    for number, bone in enumerate(either_cut.cutting.bones, 1):
        cut = say_length(bone.cut_length, heading.unit, heading.fraction)
        assert f"{number} {bone.where} {bone.count} " in page
        assert cut in page[page.index(f"{number} {bone.where}") :]
        assert f"× {bone.stock}, {cut}" in page


def test_the_opening_is_listed_from_the_top_with_every_distance(either_cut: CutJob) -> None:
    heading, opening = either_cut.job.heading, either_cut.cutting.opening
    assert opening is not None
    page = page_with(either_cut, "Back opening")
    assert f"{len(opening.walks)} loops on each side" in page
    for number, walk in enumerate(opening.walks[::-1], 1):
        side = "above" if walk > 0 else "below"
        assert f"{number} {say_length(abs(walk), heading.unit, heading.fraction)} {side}" in page


def test_every_notion_is_there_with_how_it_was_worked_out(either_cut: CutJob) -> None:
    heading = either_cut.job.heading
    pages = squeezed(" ".join(front_texts(either_cut)))
    for notion in either_cut.cutting.notions:
        lengths = {
            name: say_with_unit(mm, heading.unit, heading.fraction) for name, mm in notion.lengths.items()
        }
        assert squeezed(notion.name) in pages
        assert squeezed(notion.how.format(**lengths)) in pages


@pytest.mark.parametrize(
    ("mm", "unit", "words"),
    [
        # a yard is 36 in of 25.4 mm exactly (international yard and pound agreement of 1959, from memory)
        (914.4, "in", []),
        (914.5, "in", ["buy 1⅛ yd"]),
        (36 * 25.4 * 1.125, "in", ["buy 1⅛ yd"]),
        (2 * 914.4, "in", ["buy 2 yd"]),
        (1000.0, "cm", []),
        (1001.0, "cm", ["buy 1.1 m"]),
        (2000.0, "cm", ["buy 2 m"]),
    ],
)
def test_long_lengths_are_bought_rounded_up(mm: float, unit: str, words: list[str]) -> None:
    assert by_the_yard(mm, unit) == words  # type: ignore[arg-type]


def test_the_walk_check_names_every_seam_and_says_that_it_holds(folded: CutJob) -> None:
    good = replace(
        folded.cutting,
        walks=tuple(row._replace(holds=True) for row in folded.cutting.walks),
        angles=tuple(replace(row, holds=True) for row in folded.cutting.angles),
    )
    texts = front_texts(_with(folded, good))
    first = next(number for number, text in enumerate(texts) if "Walk check" in text)
    page = " ".join(texts[first:])
    assert "Everything holds" in page
    assert "does not hold" not in page
    assert "Each layer against the fashion cloth" in page
    for row in good.walks:
        assert squeezed(row.name[1:]) in squeezed(page), row
        if not row.part.startswith(("against", "whole")):
            assert squeezed(row.part) in squeezed(page), row
    for angle in good.angles:
        assert f"{angle.degrees:.1f}°" in page


def test_a_seam_that_does_not_hold_is_named_at_the_top_and_marked_in_its_row(folded: CutJob) -> None:
    rows = list(folded.cutting.walks)
    number = next(n for n, row in enumerate(rows) if row.layer == "lining" and row.seam == 3)
    rows[number] = rows[number]._replace(right=rows[number].left - 1.25, holds=False)
    page = page_with(_with(folded, replace(folded.cutting, walks=tuple(rows))), "Walk check")
    assert "do not hold. Do not cut yet." in page
    assert f"{rows[number].name[1:]}, {rows[number].part} (lining)" in page
    assert "1.25" in page
    assert "does not hold" in page


def _with(cut: CutJob, cutting: Cutting) -> CutJob:
    return type(cut)(cut.job, cutting, cut.making)


def test_layers_are_set_together_only_while_every_figure_is_the_same() -> None:
    shell = WalkRow("fashion", 1, "front seam 1", "whole seam", 300.0, 300.0, True)
    same, other = shell._replace(layer="strength"), shell._replace(layer="lining", left=300.2)
    against = shell._replace(layer="lining", part="against the fashion cloth")
    found = alike((shell, same, other, against))
    assert [names for names, _ in found] == [["fashion", "strength"], ["lining"]]
    assert [len(rows) for _, rows in found] == [1, 1]


@pytest.mark.parametrize(
    ("mm", "words"), [(0.0, "0.00"), (-0.004, "0.00"), (1.256, "+1.26"), (-1.25, "−1.25")]
)
def test_differences_are_said_to_a_hundredth_of_a_millimetre(mm: float, words: str) -> None:
    assert differing(mm) == words


def test_findings_about_the_pieces_are_on_the_first_page(busked: CutJob) -> None:
    finding = Finding("attend", "p1", "Bone for front seam 1: it ends too near the edge.")
    page = front_texts(_with(busked, replace(busked.cutting, findings=(finding,))))[0]
    assert finding.sentence in page


def test_the_cutting_pages_can_be_left_out(busked: CutJob) -> None:
    texts = front_texts(busked, cutting_pages=False)
    assert not any("cutting sheet" in text or "Walk check" in text for text in texts)


@pytest.mark.parametrize("paper", PAPERS)
def test_pages_are_counted_through_and_no_figure_is_called_harmless(busked: CutJob, paper: str) -> None:
    texts = [plain(text) for text in text_of(busked.pdf(name=paper))]
    for number, text in enumerate(texts, 1):
        assert f"page {number} of {len(texts)}" in text
        assert "100 %" in text
        assert "safe" not in text.lower()


def crowded(job: Job) -> CutJob:
    """A very long name, many bones, a close pitch, every layer."""
    named = replace(job.heading, client=LONG, wish="Sing, sit and dance. " * 20)
    making = Making(
        layers=tuple(LayerChoice(choice.layer, True) for choice in Making().layers),
        boning=Boning(places=("seams", "mid_panel", "beside_opening", "centre_front")),
        opening=Opening(pitch_mm=9.0, waist_pitch_mm=7.0),
    )
    return cut_job(type(job)(job.outcome, job.comfort, named), making)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("case", ["folded", "busked", "crowded"])
def test_no_line_of_text_runs_into_another_or_off_the_page(
    paper: str, case: str, request: pytest.FixtureRequest
) -> None:
    cut = crowded(request.getfixturevalue("gown")) if case == "crowded" else request.getfixturevalue(case)
    choice = PrintChoice(paper)
    document = pypdfium2.PdfDocument(
        print_pdf(cut.job.outcome, cut.job.comfort, cut.job.heading, choice, cut.cutting)
    )
    sheets = sheet_map(cut.job.outcome, choice, cut.cutting)
    for number in range(len(document) - len(sheets.tiles)):
        page = document[number]
        width, height = page.get_size()
        boxes = inked_letters(page)
        assert min(box[0] for box in boxes) > 28, number
        assert max(box[2] for box in boxes) < width - 28, number
        assert min(box[1] for box in boxes) > 20, number
        assert max(box[3] for box in boxes) < height - 20, number
        text = page.get_textpage().get_text_bounded()
        assert not collisions(boxes), (number, text[:60])
    document.close()


def test_panels_laid_apart_keep_the_distance_that_was_asked_for(gown: Job) -> None:
    draft = gown.outcome.draft
    assert draft is not None
    shown = [
        placement.put(panel.outline)[:, 0]
        for placement, panel in zip(placements(gown.outcome, "apart", 80.0), draft.panels, strict=True)
    ]
    gaps = [float(after.min() - before.max()) for before, after in pairwise(shown)]
    assert gaps == pytest.approx([80.0] * 7, abs=1e-9)
