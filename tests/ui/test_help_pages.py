"""What the help says: every page can be read, every link leads somewhere, every finding is explained."""

from __future__ import annotations

import re
from fnmatch import fnmatch

import pytest

from tests.ui.finding_codes import codes
from workbench.body import CAUTIONS, LIMIT_TABLE, MEASUREMENTS
from workbench.body.checks import _SENTENCES as CHECKS
from workbench.resources import resource
from workbench.ui.actions import DEEDS
from workbench.ui.help.html import html_of, inline
from workbench.ui.help.made import made_html, made_names, made_text
from workbench.ui.help.pages import LINK, TERMS, Page, anchor_of, page_of, pages, plain, said_of
from workbench.ui.help.search import passages, search
from workbench.ui.help.whys import page_of_code, why_of, whys

pytestmark = pytest.mark.usefixtures("qapp")
"""The keys of the menus are those of the system, which Qt knows."""
LIMITED, STATUSES = ("waist", "underbust", "top_hip"), ("over", "near", "within")
EDGES = ("hem_lap", "hem_thigh", "neckline_underarm", "neckline_nape")
_BROKEN = re.compile(r"\]\(|\[\[|\{\{|\*\*")


def links(page: Page) -> list[str]:
    return [said_of(found)[1] for block in page.blocks for found in LINK.finditer(block.text)]


@pytest.mark.parametrize("name", pages())
def test_every_link_leads_to_a_heading_that_is_there(name: str) -> None:
    for link in links(pages()[name]):
        target, _, anchor = link.partition("#")
        assert target in pages(), link
        assert not anchor or anchor in {block.name for block in pages()[target].blocks}, link


@pytest.mark.parametrize("name", pages())
def test_a_page_has_no_mark_left_over_and_no_heading_twice(name: str) -> None:
    page = pages()[name]
    headings = [block.name for block in page.blocks if block.kind in ("heading", "small_heading")]
    assert len(headings) == len(set(headings))
    assert not _BROKEN.search(html_of(page))


@pytest.mark.parametrize("name", pages())
def test_the_parts_and_pictures_of_a_page_are_there(name: str) -> None:
    for block in pages()[name].blocks:
        if block.kind == "made":
            assert made_html(block.name)
        if block.kind == "picture":
            assert resource(f"help/pictures/{block.name}.png").stat().st_size > 2000
            assert block.text, "a picture is named in words too"


def test_every_part_and_picture_is_on_a_page() -> None:
    used = {(block.kind, block.name) for page in pages().values() for block in page.blocks}
    assert {name for kind, name in used if kind == "made"} == set(made_names())
    drawn = {path.stem for path in resource("help/pictures").glob("*.png")}
    assert {name for kind, name in used if kind == "picture"} == drawn


def test_all_pictures_together_are_small() -> None:
    assert sum(path.stat().st_size for path in resource("help/pictures").glob("*.png")) < 1_500_000


def test_every_page_of_the_folder_is_in_the_contents() -> None:
    assert {path.stem for path in resource("help/en").glob("*.md")} == set(pages())


def test_no_page_calls_anything_harmless() -> None:
    for passage in passages():
        assert not re.search(
            r"\b(safe|safely|harmless)\b", passage.text.replace("calls no figure harmless", "")
        ), passage


def test_a_text_becomes_blocks() -> None:
    page = page_of(
        "try", "# A title\n\n## One\nFirst\nline.\n- an entry\n  of two lines\n- another\n{{keys}}\n"
    )
    assert page.title == "A title"
    assert [(block.kind, block.text) for block in page.blocks] == [
        ("heading", "One"),
        ("text", "First line."),
        ("item", "an entry of two lines"),
        ("item", "another"),
        ("made", ""),
    ]


def test_a_page_without_a_title_is_named() -> None:
    with pytest.raises(ValueError, match="nameless does not begin with its title"):
        page_of("nameless", "## No title")


def test_links_and_strong_words_read_as_words() -> None:
    text = "See [[Walk]], [[notch|notches]] and [the sums](seams#by-weight), **each** once."
    assert plain(text) == "See Walk, notches and the sums, each once."
    assert '<a href="words#notch">notches</a>' in inline(text)


def test_signs_of_html_stand_as_they_are() -> None:
    assert inline("a < b & c") == "a &lt; b &amp; c"


# --- made from the program -----------------------------------------------------------------


@pytest.mark.parametrize("measurement", MEASUREMENTS, ids=lambda row: row.key)
def test_each_measurement_says_how_it_is_taken(measurement: object) -> None:
    said = made_text("measurements")
    assert getattr(measurement, "how") in said  # noqa: B009  # a row of the table, whatever it is called


def test_limits_cautions_and_keys_come_from_the_program() -> None:
    for row in LIMIT_TABLE:
        assert row.label in made_text("limits")
    for caution in CAUTIONS:
        assert caution in made_text("cautions")
    for deed in DEEDS:
        if deed.keys is not None:
            assert deed.text.replace("&", "").removesuffix("…") in made_text("keys")


# --- findings --------------------------------------------------------------------------------


def test_the_sources_are_really_read() -> None:
    assert {"edges_cross", "ledger_over", "ledger_short", "overlap", "fitting_seam_gone", "*_*"} <= codes()
    assert len(codes()) > 90


@pytest.mark.parametrize("code", sorted(codes()))
def test_every_finding_has_why_and_what_to_do(code: str) -> None:
    told = [known for known in whys() if fnmatch(known, code)]
    assert told, f"no section of the findings names {code}"


@pytest.mark.parametrize("level", LIMITED)
@pytest.mark.parametrize("status", STATUSES)
def test_every_level_with_a_limit_is_explained(level: str, status: str) -> None:
    assert why_of(f"{level}_{status}") is not None


@pytest.mark.parametrize("edge", EDGES)
def test_every_edge_with_a_limit_is_explained(edge: str) -> None:
    assert why_of(edge) is not None


@pytest.mark.parametrize("code", CHECKS)
def test_every_question_about_a_measurement_is_explained(code: str) -> None:
    assert why_of(f"check_{code}") is not None


def test_no_section_explains_what_nobody_says() -> None:
    of_limits = {f"{level}_{status}" for level in LIMITED for status in STATUSES} | set(EDGES)
    said = (codes() - {"*_*"}) | of_limits | {f"check_{code}" for code in CHECKS}
    for known in whys():
        assert any(fnmatch(known, code) for code in said), known


def test_a_code_leads_to_its_section() -> None:
    assert page_of_code("edges_cross") == "findings#two-seams-meet-or-cross"
    assert page_of_code("never heard of") == "findings"


@pytest.mark.parametrize("code", ["waist_over", "underbust_over", "top_hip_over"])
def test_a_limit_that_is_passed_defers_to_a_doctor(code: str) -> None:
    why = why_of(code)
    assert why is not None
    assert "doctor" in why.do


# --- search ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("wanted", "link"),
    [
        ("notch", "words#notch"),
        ("busk", "words#busk"),
        ("GIRTH strip", "words#girth-strip"),
        ("97 %", "printing#before-you-cut"),
        ("print cancel", "printing#while-it-is-written"),
        ("seated lap", "measure#the-table"),
        ("asthma", "cautions"),
        ("ctrl+f", "keys"),
    ],
)
def test_the_search_finds(wanted: str, link: str) -> None:
    found = search(wanted)
    assert link in [one.passage.link for one in found[:6]]
    assert found[0].whole


def test_a_term_comes_first() -> None:
    for block in pages()[TERMS].blocks:
        if block.kind == "heading":
            assert search(block.text)[0].passage.link == f"{TERMS}#{anchor_of(block.text)}"


def test_without_all_the_words_the_nearest_are_found_and_it_is_said() -> None:
    found = search("busk xylophone")
    assert found
    assert not found[0].whole


def test_nothing_is_found_of_nothing() -> None:
    assert search("") == search("  ,") == search("xylophone") == ()
