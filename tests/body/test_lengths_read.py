"""Lengths as a dressmaker types or pastes them, and what is refused."""

from __future__ import annotations

from fractions import Fraction as Rational

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.body import LONGEST_MM, Length, LengthError, LengthUnit, Unit, read_length

INCH = 25.4
"""mm, exactly: ISO 31-1 and the international yard and pound agreement of 1959 (from memory)."""


def refusal(text: str, unit: LengthUnit = "in", *, signed: bool = False, low: float = 0.0) -> str:
    with pytest.raises(LengthError) as caught:
        read_length(text, unit, signed=signed, low=low)
    return str(caught.value)


def test_an_inch_is_25_4_mm_exactly() -> None:
    assert read_length("1", "in").mm == INCH


@pytest.mark.parametrize(
    ("text", "mm", "typed", "unit"),
    [
        ("9 1/2", 241.3, "9 1/2", "in"),
        ("9½", 241.3, "9½", "in"),
        ("9 ½", 241.3, "9 ½", "in"),
        ("9-1/2", 241.3, "9-1/2", "in"),
        ("9–1/2", 241.3, "9–1/2", "in"),
        ("9-½", 241.3, "9-½", "in"),
        ("9.5", 241.3, "9.5", "in"),
        ("19/2", 241.3, "19/2", "in"),
        ("  9 1/2\u00a0", 241.3, "9 1/2", "in"),
        ("9\u202f1/2", 241.3, "9\u202f1/2", "in"),
        ("+9.5", 241.3, "+9.5", "in"),
        ('37 3/8"', 949.325, "37 3/8", "in"),
        ("37 3/8 in", 949.325, "37 3/8", "in"),
        ("37 3/8 in.", 949.325, "37 3/8", "in"),
        ("37⅜″", 949.325, "37⅜", "in"),
        ("37⅜”", 949.325, "37⅜", "in"),
        ("37 3/8''", 949.325, "37 3/8", "in"),
        ("37 3/8 ’’", 949.325, "37 3/8", "in"),
        ("37 3/8 Inches", 949.325, "37 3/8", "in"),
        ("37.375inch", 949.325, "37.375", "in"),
        ("3/8", 9.525, "3/8", "in"),
        ("3⁄8", 9.525, "3⁄8", "in"),
        ("3 / 8", 9.525, "3 / 8", "in"),
        ("³⁄₁₆", 4.7625, "³⁄₁₆", "in"),
        ("9 ³⁄₁₆", 233.3625, "9 ³⁄₁₆", "in"),
        ("9³⁄₁₆", 233.3625, "9³⁄₁₆", "in"),
        (".5", 12.7, ".5", "in"),
        ("24.1 cm", 241.0, "24.1", "cm"),
        ("24,1cm", 241.0, "24,1", "cm"),
        ("24.1 centimetres", 241.0, "24.1", "cm"),
        ("24 ½ CM", 245.0, "24 ½", "cm"),
        ("241 mm", 241.0, "241", "mm"),
        ("241,5 millimetres", 241.5, "241,5", "mm"),
        ("0", 0.0, "0", "in"),
    ],
)
def test_spelling_is_read(text: str, mm: float, typed: str, unit: LengthUnit) -> None:
    assert read_length(text, "in") == Length(mm, typed, unit)


def test_a_decimal_comma_reads_in_the_display_unit() -> None:
    assert read_length("24,1", "cm") == Length(241.0, "24,1", "cm")


@pytest.mark.parametrize(
    ("glyph", "value"),
    [
        ("½", 1 / 2),
        ("¼", 1 / 4),
        ("¾", 3 / 4),
        ("⅛", 1 / 8),
        ("⅜", 3 / 8),
        ("⅝", 5 / 8),
        ("⅞", 7 / 8),
        ("⅓", 1 / 3),
        ("⅔", 2 / 3),
    ],
)
def test_every_fraction_sign_is_read(glyph: str, value: float) -> None:
    assert read_length(f"2{glyph}", "in").mm == pytest.approx((2 + value) * INCH, abs=1e-9)


@pytest.mark.parametrize("text", ["−9 1/2", "-9½", "–9.5", "- 9 1/2", "-9-1/2", '−9½"'])
def test_a_minus_is_read_where_it_is_allowed(text: str) -> None:
    assert read_length(text, "in", signed=True).mm == -241.3


def test_a_minus_is_refused_where_it_is_not_allowed() -> None:
    assert refusal("−2") == "A length cannot be negative here: −2."


def test_nothing_is_never_negative() -> None:
    assert str(read_length("-0", "in", signed=True).mm) == "0.0"


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", "Nothing was typed."),
        (" \t\u00a0 ", "Nothing was typed."),
        ("cm", "There is a unit but no figure before it."),
        ("nan", "“nan” is not a length: write it like 9 1/2, 9.5 or 24.1 cm."),
        ("inf", "“inf” is not a length: write it like 9 1/2, 9.5 or 24.1 cm."),
        ("-inf", "“-inf” is not a length: write it like 9 1/2, 9.5 or 24.1 cm."),
        ("1e9", "“1e9” is not a length: write it like 9 1/2, 9.5 or 24.1 cm."),
        ("about nine", "“about nine” is not a length: write it like 9 1/2, 9.5 or 24.1 cm."),
        ("9 1/0", "A fraction cannot have 0 below its line: 9 1/0."),
        ("0/0", "A fraction cannot have 0 below its line: 0/0."),
        ("24,1,3", "There is more than one decimal sign in 24,1,3."),
        ("1.234,5", "There is more than one decimal sign in 1.234,5."),
        ("24 in cm", "There are two units: in and cm."),
        ('24" mm', 'There are two units: " and mm.'),
        ("9 5/4", "5/4 is 1 or more, so it cannot follow 9: 9 5/4."),
        ("9999", "9999 in is not between 0 and 200 in."),
        ("1,250 mm", "1,250 mm can be read in two ways: write it without the comma, or with a point."),
    ],
)
def test_what_is_no_length_is_refused_in_one_sentence(text: str, sentence: str) -> None:
    assert refusal(text) == sentence


@pytest.mark.parametrize(
    "text",
    [
        "9²",
        "12½5",
        "½½",
        "1 2",
        "9 1/2 1/4",
        "--9",
        "+-9",
        "5'",
        "5' 3\"",
        "5 ft",
        "9/",
        "/8",
        "1/2/3",
        "٣",
        "0x10",
        "1_000",
        "9 -1/2 -",
        "in 9",
        ".",
        ",",
        "1.5/2",
        "9;5",
        "$9",
    ],
)
def test_what_only_resembles_a_length_is_refused(text: str) -> None:
    assert "is not a length" in refusal(text, signed=True)


def test_a_page_pasted_by_mistake_is_cut_short_in_the_sentence() -> None:
    assert len(refusal("9" * 100_000)) < 100


def test_the_range_is_said_in_the_users_unit() -> None:
    assert refusal("300 in", "cm") == "762 cm is not between 0 and 508 cm."


def test_nothing_is_refused_where_there_must_be_something() -> None:
    assert refusal("0", low=INCH) == "0 in is not between 1 and 200 in."


def test_a_signed_length_has_a_range_on_both_sides() -> None:
    assert refusal("-201", signed=True) == "−201 in is not between −200 and 200 in."


def test_a_signed_length_keeps_its_own_lower_bound() -> None:
    assert refusal("-3", signed=True, low=-2 * INCH) == "−3 in is not between −2 and 200 in."


@given(
    whole=st.integers(0, 199),
    below=st.sampled_from([2, 3, 4, 8, 16, 32, 64]),
    data=st.data(),
    sign=st.sampled_from(["", "-", "−"]),
)
def test_any_mixed_fraction_is_read_to_the_nearest_float(
    whole: int, below: int, data: st.DataObject, sign: str
) -> None:
    above = data.draw(st.integers(0, below - 1))
    exact = (whole + Rational(above, below)) * Rational(254, 10) * (-1 if sign else 1)
    assert read_length(f"{sign}{whole} {above}/{below}", "in", signed=True).mm == float(exact)


@given(
    st.text(max_size=60) | st.text("0123456789 ½⅜/⁄.,-−+'\"″incm", max_size=20), st.sampled_from(["in", "cm"])
)
def test_any_text_is_read_within_the_range_or_refused(text: str, unit: Unit) -> None:
    length = read_or_none(text, unit)
    if length is not None:
        assert -LONGEST_MM <= length.mm <= LONGEST_MM
        assert length.typed in text
        assert read_or_none(length.typed, length.unit) == length


def read_or_none(text: str, unit: LengthUnit) -> Length | None:
    try:
        return read_length(text, unit, signed=True)
    except LengthError:
        return None
