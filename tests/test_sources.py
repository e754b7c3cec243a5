"""Every figure says where it comes from, and the page of sources says what the code says."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path
from textwrap import dedent

import pytest

from workbench.sources import STATUSES, Entry, Section, as_markdown, sources_page
from workbench.sources.__main__ import with_page
from workbench.sources.collect import FOLDERS, PACKAGE, collected
from workbench.sources.found import nameless_in, numbers_in
from workbench.sources.page import as_file
from workbench.sources.values import name_said, value_said
from workbench.sources.words import said_for_all, statuses_in

ROOT = Path(__file__).parents[1]
AGAIN = "make the page again: python -m workbench.sources"


@pytest.fixture(scope="module")
def sections() -> tuple[Section, ...]:
    return collected()


@pytest.fixture(scope="module")
def entries(sections: tuple[Section, ...]) -> list[Entry]:
    return [entry for section in sections for entry in section.entries]


def test_no_figure_is_without_a_source_or_a_status(entries: list[Entry]) -> None:
    lacking = [f"{entry.place}: {entry.name} = {entry.value}" for entry in entries if not entry.statuses]
    assert not lacking, "say beside each what it is and where it comes from"


def test_the_page_that_comes_with_the_program_is_that_of_the_code(sections: tuple[Section, ...]) -> None:
    assert (ROOT / "resources" / "sources.json").read_text(encoding="utf-8") == as_file(sections), AGAIN
    assert sources_page() == sections


def test_the_readme_holds_the_page(sections: tuple[Section, ...]) -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    assert with_page(readme, sections) == readme, AGAIN


@pytest.mark.parametrize("folder", ["body", "draft", "fitting", "pieces", "beads", "marking", "sewing"])
def test_no_figure_hides_in_the_middle_of_a_formula(folder: str) -> None:
    files = {path: nameless_in(path.read_text("utf-8")) for path in (PACKAGE / folder).rglob("*.py")}
    hidden = [f"{path.name}: {figure:g}" for path, found in files.items() for figure in found]
    assert not hidden, "give each a name, and say below it where it comes from"


def test_a_figure_in_the_middle_of_a_formula_is_found_out() -> None:
    text = """
    def act(x):
        limit = 0.35 * x + 0.5 * min(x, 1e-9)
        return limit if x < 450 else 12 * 180.0
    """
    assert nameless_in(dedent(text)) == [0.35, 450]


def test_every_folder_that_reckons_is_on_it(sections: tuple[Section, ...]) -> None:
    assert [section.title for section in sections] == list(FOLDERS.values())
    assert all(section.entries for section in sections)
    shown = {"book", "cli", "sources", "ui"}
    folders = {path.parent.name for path in PACKAGE.glob("*/__init__.py")}
    assert folders == {*FOLDERS, *shown}, "a folder is neither on the page nor known to reckon nothing"


@pytest.mark.parametrize(
    ("place", "name", "value", "status"),
    [
        ("body/limits", "Waist reduction", "10 (0 to 50) %", "abstract"),
        ("body/units", "mm per inch", "25.4", "memory"),
        ("body/table", "Bust", "650 to 1600 mm", "read"),
        ("body/estimate", "underbust of bust", "0.86", "derived"),
        ("pieces/making", "Opening: pitch, mm", "22.225", "practice"),
        ("pieces/making", "Allowances: side", "25.4", "practice"),
        ("pieces/check", "tolerance", "0.01", "own choice"),
        ("sheets/paper", "longest side", "5080", "read"),
        ("sewing/minutes", "per loop · per eyelet", "2, 3", "practice"),
    ],
)
def test_figures_that_are_known_stand_on_it(
    entries: list[Entry], place: str, name: str, value: str, status: str
) -> None:
    found = [entry for entry in entries if (entry.place, entry.name) == (place, name)]
    assert [(entry.value, status in entry.statuses) for entry in found] == [(value, True)]


def test_a_rule_in_a_docstring_stands_on_it(entries: list[Entry]) -> None:
    rules = [entry for entry in entries if not entry.value]
    assert any(entry.place == "draft/monotone" and "Fritsch and Butland" in entry.words for entry in rules)


def numbers(text: str, of_folder: str = "") -> dict[str, tuple[str, ...]]:
    """Names of a made-up file and the statuses they come to."""
    found = numbers_in(dedent(text), of_folder)
    return {one.name: statuses_in(one.words) or statuses_in(one.inherited) for one in found}


def test_a_number_without_words_is_found_out() -> None:
    assert numbers("DEPTH_MM = 4.5\n") == {"DEPTH_MM": ()}
    assert numbers('DEPTH_MM = 4.5\n"""How deep."""\n') == {"DEPTH_MM": ()}
    assert numbers("FIRST, LAST = 1, 40\n") == {"FIRST, LAST": ()}
    assert numbers("HALF = 0.5 * INCH\n") == {"HALF": ()}
    assert numbers("WHOLE = INCH\n") == {"WHOLE": ()}
    assert numbers("SPANS = {'width': (0.0, 90.0)}\n") == {"SPANS": ()}


def test_a_default_without_words_is_found_out() -> None:
    text = """
    class Cloth:
        width_mm: float = 1143.0
        name: str = "new"
        gap_mm: float = 0.0
    """
    assert numbers(text) == {"Cloth.width_mm": ()}


def test_words_below_a_number_count_before_those_of_its_file_and_folder() -> None:
    text = '''
    """Bones. Figures are common practice, no source, unless said."""

    WIDTH = 7.0
    """Measured (read)."""
    EASE = 2.0
    '''
    assert numbers(text, "own choice, layout") == {"WIDTH": ("read",), "EASE": ("practice",)}
    assert numbers("GAP = 3.0\n", "own choice, layout") == {"GAP": ("own choice",)}


def test_what_measures_nothing_is_passed_over() -> None:
    assert numbers("NAMES = ('in', 'cm')\nlower = 3\nROOT = Path(__file__).parents[1]\nNONE = (0, 0)\n") == {}


@pytest.mark.parametrize(
    ("words", "statuses"),
    [
        ("Half an inch (common practice, no source).", ("practice",)),
        ("ISO 216 (read).", ("read",)),
        ("Sizes 8 and 16: read, mean derived.", ("read", "derived")),
        ("Gau 1998, dissertation, abstract.", ("abstract",)),
        ("Lines that are read from a file.", ()),
        ("JSON, read whole or not at all.", ()),
        ("As was agreed, no source.", ()),
    ],
)
def test_only_the_agreed_phrases_are_a_status(words: str, statuses: tuple[str, ...]) -> None:
    assert statuses_in(words) == statuses


def test_what_is_said_for_all_is_found_over_the_end_of_a_line() -> None:
    assert (
        said_for_all("Words.\n\nFigures are own\nchoice, layout, unless said. More.") == "own choice, layout"
    )
    assert said_for_all("Nothing of the kind.") == ""


def test_values_and_names_are_said() -> None:
    assert value_said(0.1 + 0.2) == "0.3"
    assert [value_said(Fraction(top, 35)) for top in (889, 1)] == ["25.4", "1/35"]
    assert value_said({"a": (1.0, -2.5)}) == "a: 1, −2.5"
    assert value_said(tuple(range(100))) == "100 entries"
    assert name_said("_LEAST_GAP_MM") == "least gap, mm"
    assert name_said("Boning.width_mm") == "Boning: width, mm"


def test_the_page_as_text_has_a_row_for_what_has_a_source_and_a_line_for_the_rest() -> None:
    read = Entry("inch", "25.4", "Exact | agreed, read.", ("read",), "body/units")
    own = Entry("hair", "0.001", "Own choice.", ("own choice",), "body/order")
    text = as_markdown([Section("Measurements", (read, own))])
    assert "| inch | 25.4 | read | Exact \\| agreed, read. | `body/units` |" in text
    assert "- `body/order`: hair 0.001" in text
    assert "There are 2: 1 from outside or derived, 1 of our own choice." in text


def test_every_status_is_explained_on_the_page() -> None:
    text = as_markdown(sources_page())
    assert all(f"- **{status}**: " in text for status in STATUSES)


def test_the_kept_page_has_an_entry_a_line() -> None:
    text = (ROOT / "resources" / "sources.json").read_text(encoding="utf-8")
    tree = json.loads(text)
    assert sum(len(part["entries"]) for part in tree) == text.count('{"name": ')


def test_a_readme_without_the_marks_is_told() -> None:
    with pytest.raises(ValueError, match=r"README\.md has no <!-- sources: begin -->"):
        with_page("# A program\n", [])
