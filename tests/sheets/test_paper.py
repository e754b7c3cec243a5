"""Paper sizes against the standards that fix them, and choices that cannot be printed."""

from __future__ import annotations

import pytest

from tests.sheets.conftest import Job, job
from tests.sheets.readback import page_sizes
from workbench.sheets import PAPERS, PrintChoice, PrintError, sheet_map
from workbench.sheets.sheetmap import row_letters


def iso_216(number: int) -> tuple[int, int]:
    """ISO 216: A0 is 841 x 1189 mm; each next size halves the longer side."""
    width, height = 841, 1189
    for _ in range(number):
        width, height = height // 2, width
    return width, height


@pytest.mark.parametrize(("name", "number"), [("A0", 0), ("A3", 3), ("A4", 4)])
def test_a_sizes_are_those_of_iso_216(name: str, number: int) -> None:
    assert PAPERS[name] == iso_216(number)


def test_letter_is_eight_and_a_half_by_eleven_inches() -> None:
    # ANSI Y14.1, size A: 8.5 x 11 in; the inch is 25.4 mm (ISO 31-1, from memory)
    assert PAPERS["Letter"] == pytest.approx((215.9, 279.4), abs=1e-9)


@pytest.mark.parametrize("name", ["A4", "Letter", "A3", "A0"])
def test_every_sheet_page_has_the_size_of_its_paper(gown: Job, name: str) -> None:
    sheets = sheet_map(gown.outcome, PrintChoice(name=name))
    tiles = page_sizes(gown.pdf(name=name))[-len(sheets.tiles) :]
    assert all(sorted(size) == pytest.approx(sorted(PAPERS[name]), abs=1e-3) for size in tiles)


def test_a_roll_is_as_wide_as_it_was_said_and_as_long_as_needed(gown: Job) -> None:
    width, height = page_sizes(gown.pdf(name="roll", roll_width_mm=609.6))[-1]
    assert width == pytest.approx(609.6, abs=1e-3)
    lowest = min(panel.outline[:, 1].min() for panel in _roll(gown, 609.6).panels)
    assert -lowest + 20 - 1e-3 <= height <= 5080  # ISO 32000: at most 14,400 units a side


def _roll(job: Job, width: float):  # type: ignore[no-untyped-def]
    return sheet_map(job.outcome, PrintChoice(name="roll", roll_width_mm=width))


@pytest.mark.parametrize(
    ("choice", "words"),
    [
        ({"name": "A7"}, "no paper called “A7”"),
        ({"margin_mm": 105.0}, "leave nothing of A4"),
        ({"margin_mm": 400.0}, "leave nothing of A4"),
        ({"overlap_mm": 190.0}, "overlap of 190 mm"),
        ({"margin_mm": -1.0}, "margin of the paper must be zero or more"),
        ({"overlap_mm": float("nan")}, "overlap of the paper must be zero or more"),
        ({"margin_mm": float("inf")}, "margin of the paper must be zero or more"),
        ({"name": "roll", "roll_width_mm": 0.0}, "roll must be more than zero"),
        ({"name": "roll", "roll_width_mm": 5081.0}, "wider than a page can be"),
        ({"name": "roll", "roll_width_mm": 20.0}, "leave nothing of the roll"),
        ({"margin_mm": 104.0, "overlap_mm": 0.0}, "more than 500 sheets"),
        ({"margin_mm": 95.0, "overlap_mm": 19.5}, "more than 500 sheets"),
    ],
)
def test_a_choice_that_cannot_be_printed_is_refused_in_one_sentence(
    gown: Job, choice: dict[str, object], words: str
) -> None:
    with pytest.raises(PrintError, match=words) as caught:
        sheet_map(gown.outcome, PrintChoice(**choice))  # type: ignore[arg-type]
    assert str(caught.value).endswith(".")
    assert "\n" not in str(caught.value)


def test_a_roll_narrower_than_a_panel_names_the_panel() -> None:
    two = job("under_bust", 2, 2, 20.0)
    with pytest.raises(PrintError, match="Front 1 is"):
        sheet_map(two.outcome, PrintChoice(name="roll", roll_width_mm=124.0))


def test_a_roll_longer_than_a_page_can_be_is_refused(gown: Job, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("workbench.sheets.sheetmap.LONGEST_SIDE", 500.0)
    with pytest.raises(PrintError, match="one page can be 500 mm long at most"):
        sheet_map(gown.outcome, PrintChoice(name="roll", roll_width_mm=400.0))


def test_without_a_draft_there_is_nothing_to_print(gown: Job) -> None:
    from dataclasses import replace

    with pytest.raises(PrintError, match="no panels to print yet"):
        sheet_map(replace(gown.outcome, draft=None), PrintChoice())


def test_rows_go_on_after_z() -> None:
    assert [row_letters(row) for row in (0, 1, 25, 26, 27, 51, 52)] == ["A", "B", "Z", "AA", "AB", "AZ", "BA"]
