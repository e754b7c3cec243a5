"""What the first page says, and that it says all of it however long it gets."""

from __future__ import annotations

import re
import subprocess
import sys
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pikepdf
import pypdfium2  # type: ignore[import-untyped]
import pytest

from tests.sheets.conftest import Job, job
from tests.sheets.readback import collisions, inked_letters, text_of
from workbench.body import CAUTIONS, Limits, say_closely, say_length
from workbench.draft import Comfort, Finding, comfort_of
from workbench.sheets import PrintChoice, print_pdf, sheet_map

PAPERS = ("A4", "Letter", "A3", "A0", "roll")


def plain(text: str) -> str:
    """The text without line breaks, hyphens at their ends included."""
    return re.sub(r"\s+", " ", text.replace("\ufffe", "-"))


def squeezed(text: str) -> str:
    return re.sub(r"\s+", "", text)


def test_the_first_page_names_client_style_date_and_wish(gown: Job) -> None:
    page = plain(text_of(gown.pdf())[0])
    for words in ("Soloist, invented", "Over-bust", "2031-03-01", "Sings standing", "Example workroom"):
        assert words in page


@pytest.mark.parametrize("paper", PAPERS)
def test_the_cautions_are_always_on_the_first_page(gown: Job, paper: str) -> None:
    page = squeezed(text_of(gown.pdf(name=paper))[0])
    assert all(squeezed(caution) in page for caution in CAUTIONS)


def test_what_is_over_a_limit_comes_first_in_those_words(belt: Job) -> None:
    page = plain(text_of(belt.pdf())[0])
    assert "above the limit you set" in page
    assert page.index("Above the limit you set") < page.index("Measurements")
    over = [finding for finding in belt.comfort.findings if finding.severity == "over"]
    assert over
    for finding in over:
        assert squeezed(finding.text("cm")) in squeezed(page)


def test_nothing_is_announced_as_over_when_nothing_is() -> None:
    quiet = job("under_bust", 3, 3, 10.0)
    generous = comfort_of(quiet.outcome, Limits(top_hip_reduction_mm=200.0, waist_percent=50.0))
    findings = tuple(finding for finding in generous.findings if finding.severity != "over")
    pdf = print_pdf(quiet.outcome, replace(generous, findings=findings), quiet.heading, PrintChoice())
    assert "Above the limit you set" not in plain(text_of(pdf)[0])


@pytest.mark.parametrize("paper", PAPERS)
def test_no_figure_is_called_harmless(either: Job, paper: str) -> None:
    assert not re.search(r"\bsafe", " ".join(text_of(either.pdf(name=paper))), re.IGNORECASE)


def test_estimates_are_told_from_what_was_taken(gown: Job) -> None:
    page = plain(text_of(gown.pdf())[0])
    assert re.search(r"Top hip 36 in est\.", page)
    assert "est. = estimated from the others, not taken" in page
    assert not re.search(r"Bust 38 in est\.", page)


def test_the_arithmetic_stands_there_round_the_body_and_a_quarter(gown: Job) -> None:
    # common practice, no source: a quarter of the figure round the body, worn four times over
    page = plain(text_of(gown.pdf())[0])
    assert "Round the body" in page
    assert "A quarter" in page
    for level in gown.outcome.levels:
        for part in (level.body, level.finished, level.fabric):
            assert say_length(part, "in") in page
            assert say_closely(part / 4, "in").removesuffix(" in") in page


def test_what_is_said_of_a_quarter_makes_the_whole_four_times_over() -> None:
    # 2⅞ in round the body is 23/32 a quarter; rounded to ¾ it would be 3 in on the body
    page = plain(text_of(job("under_bust", 2, 2, 2.875 * 25.4).pdf())[0])
    assert "²³⁄₃₂" in page


def test_the_ledger_says_needed_and_placed_of_both_quarters(gown: Job) -> None:
    page = plain(text_of(gown.pdf())[0])
    assert {"Front quarter", "Back quarter", "= needed", "Placed", "closes"} <= _found(
        page, ("Front quarter", "Back quarter", "= needed", "Placed", "closes")
    )


def _found(page: str, words: tuple[str, ...]) -> set[str]:
    return {word for word in words if word in page}


def test_a_ledger_that_does_not_close_says_by_how_much(gown: Job) -> None:
    line = gown.outcome.ledger[2]
    first = line.takings[0]._replace(left=line.takings[0].left - 6.35)
    short = replace(line, takings=(first, *line.takings[1:]))
    ledger = tuple(short if other is line else other for other in gown.outcome.ledger)
    pdf = print_pdf(replace(gown.outcome, ledger=ledger), gown.comfort, gown.heading, PrintChoice())
    assert "short ¼ in" in plain(text_of(pdf)[0])


def test_comfort_is_said_in_words_for_every_limited_level(belt: Job) -> None:
    page = plain(text_of(belt.pdf())[0])
    section = page[page.index("Comfort, against the limits you set") :]
    for judgement in belt.comfort.judgements:
        if judgement.most is not None:
            assert judgement.reason in section
            assert judgement.status in section


@pytest.mark.parametrize("paper", PAPERS)
def test_the_first_page_has_the_sheet_map_or_says_where_it_is(either: Job, paper: str) -> None:
    pages = [plain(text) for text in text_of(either.pdf(name=paper))]
    elsewhere = re.search(r"Sheet map: page (\d+)", pages[0])
    page = pages[int(elsewhere[1]) - 1] if elsewhere else pages[0]
    sheets = sheet_map(either.outcome, PrintChoice(name=paper))
    section = page[page.index("Sheet map") :]
    assert "Print at 100 %" in page
    if len(sheets.tiles) > 1:
        assert f"{len(sheets.tiles)} sheets of {paper}" in page
        assert all(tile.name in section for tile in sheets.tiles)


def test_an_invented_client_is_said_to_be_invented_on_every_sheet(gown: Job) -> None:
    texts = [plain(text) for text in text_of(gown.pdf())]
    assert "Figures invented for demonstration." in texts[0]
    assert all("figures invented for demonstration" in text for text in texts[2:])


@pytest.mark.parametrize("paper", PAPERS)
def test_print_at_full_size_is_said_on_every_page(gown: Job, paper: str) -> None:
    assert all("100 %" in text for text in text_of(gown.pdf(name=paper)))


def test_each_panel_is_named_with_client_date_and_how_often_it_is_cut(gown: Job) -> None:
    assert gown.outcome.draft is not None
    sheet = squeezed(text_of(gown.pdf(name="A0"))[-1])
    for panel in gown.outcome.draft.panels:
        assert squeezed(f"{panel.name}cut 2, left and right mirrored{gown.heading.client}2031-03-01") in sheet
    assert sheet.count("Waistline") == 8


LONG = "Wilhelmina Maria Amalia of Upper and Lower Example, eighty letters long in full x"


def crowded(findings: int) -> tuple[Job, Comfort]:
    base = job("over_bust", 4, 4, 50.8, client=LONG, wish="Sing, sit and dance. " * 20)
    sentences = tuple(
        Finding(
            "over" if number % 3 == 0 else "attend", f"f{number}", f"Sentence number {number} of many, ends."
        )
        for number in range(findings)
    )
    return base, replace(base.comfort, findings=sentences)


@pytest.mark.parametrize("paper", ["A4", "Letter", "A0"])
def test_all_of_twenty_five_findings_and_a_long_name_are_printed(paper: str) -> None:
    base, comfort = crowded(25)
    pages = text_of(print_pdf(base.outcome, comfort, base.heading, PrintChoice(name=paper)))
    words = plain(" ".join(pages))
    assert LONG in plain(pages[0])
    assert all(f"Sentence number {number} of many, ends." in words for number in range(25))
    assert all(squeezed(caution) in squeezed(pages[0]) for caution in CAUTIONS)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("findings", [0, 3, 25])
def test_no_line_of_text_runs_into_another_or_off_the_page(paper: str, findings: int) -> None:
    base, comfort = crowded(findings)
    pdf = print_pdf(base.outcome, comfort, base.heading, PrintChoice(name=paper))
    document = pypdfium2.PdfDocument(pdf)
    sheets = sheet_map(base.outcome, PrintChoice(name=paper))
    for number in range(len(document) - len(sheets.tiles)):
        page = document[number]
        width, height = page.get_size()
        boxes = inked_letters(page)
        assert min(box[0] for box in boxes) > 28
        assert max(box[2] for box in boxes) < width - 28
        assert min(box[1] for box in boxes) > 20
        assert max(box[3] for box in boxes) < height - 20
        assert not collisions(boxes)
    document.close()


def test_control_signs_and_foreign_scripts_in_a_name_do_no_harm() -> None:
    strange = job("under_bust", 2, 2, 25.4, client="A\x00B\nC\u202e\ud800 日本 <b>&amp;</b>", date="\t")
    assert "<b>&amp;</b>" in plain(text_of(strange.pdf())[0])


@pytest.mark.parametrize("paper", PAPERS)
def test_the_same_input_gives_the_same_bytes(either: Job, paper: str) -> None:
    again = print_pdf(either.outcome, either.comfort, either.heading, PrintChoice(name=paper))
    assert again == either.pdf(name=paper)


SCRIPT = """
import hashlib
from tests.sheets.conftest import job
print(hashlib.sha256(job("under_bust", 2, 2, 25.4).pdf()).hexdigest())
"""


def test_another_run_of_the_program_gives_the_same_bytes() -> None:
    def run(seed: str) -> str:
        root = Path(__file__).parents[2]
        done = subprocess.run(
            [sys.executable, "-c", SCRIPT],
            cwd=root,
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": str(root)},
            capture_output=True,
            text=True,
            check=True,
        )
        return done.stdout

    assert run("1") == run("2")


def test_the_file_says_what_it_is_and_not_when_or_where_it_was_made(gown: Job) -> None:
    with pikepdf.open(BytesIO(gown.pdf())) as document:
        info = {key: str(value) for key, value in document.docinfo.items()}
    assert info["/Title"] == "Bodice panels"
    assert "2000" in info.get("/CreationDate", "D:2000")  # the fixed date of an invariant file
    assert str(Path.home()) not in str(info)


def test_every_font_is_embedded(gown: Job) -> None:
    with pikepdf.open(BytesIO(gown.pdf())) as document:
        used = set()
        for page in document.pages:
            for font in page.resources.get("/Font", {}).values():
                used.add(str(font.BaseFont))
                if "/FontDescriptor" in font:
                    assert "/FontFile2" in font.FontDescriptor
        drawn = {name for name in used if "NotoSans" in name}
    assert len(drawn) >= 2


@pytest.mark.parametrize("sign", "½¼¾⅛⅜⅝⅞−×⁄¹³⁵⁷⁹₁₆“”’…•·")
def test_the_font_has_every_sign_a_print_can_need(sign: str) -> None:
    from reportlab.pdfbase.pdfmetrics import getFont

    from workbench.sheets.fonts import font

    for bold in (False, True):
        assert ord(sign) in getFont(font(bold)).face.charToGlyph
