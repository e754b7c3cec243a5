"""Lengths as they are shown: real fractions, tenths of a centimetre, and what was typed as it was typed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.body import (
    Fraction,
    Length,
    LengthUnit,
    Unit,
    read_length,
    round_down,
    say_at_most,
    say_closely,
    say_exact,
    say_length,
    say_with_unit,
    shown,
    snap,
    step_mm,
)

INCH = 25.4
"""mm, exactly: ISO 31-1 and the international yard and pound agreement of 1959 (from memory)."""

lengths = st.floats(-5000, 5000)
units = st.sampled_from(["in", "cm"])
fractions = st.sampled_from([8, 16])


@pytest.mark.parametrize(
    ("inches", "fraction", "said"),
    [
        (26.75, 8, "26¾"),
        (0, 8, "0"),
        (0.5, 8, "½"),
        (-0.375, 8, "−⅜"),
        (-2.25, 16, "−2¼"),
        (9.1875, 16, "9 ³⁄₁₆"),
        (0.9375, 16, "¹⁵⁄₁₆"),
        (9.1875, 8, "9¼"),
        (9.1874, 8, "9⅛"),
        (2.0625, 8, "2⅛"),
        (-0.05, 8, "0"),
        (15.99, 8, "16"),
    ],
)
def test_inches_are_said_to_the_nearest_fraction(inches: float, fraction: Fraction, said: str) -> None:
    assert say_length(inches * INCH, "in", fraction) == said


@pytest.mark.parametrize("eighth", range(1, 8))
def test_every_eighth_has_its_own_sign(eighth: int) -> None:
    assert say_length(eighth / 8 * INCH, "in") == "⅛¼⅜½⅝¾⅞"[eighth - 1]


@pytest.mark.parametrize("sixteenth", range(1, 800, 2))
def test_a_figure_halfway_between_two_eighths_goes_up(sixteenth: int) -> None:
    above = (sixteenth + 1) / 16 * INCH
    assert say_length(sixteenth / 16 * INCH, "in") == say_length(above, "in")
    assert say_length(-sixteenth / 16 * INCH, "in") == say_length(-above, "in")


@pytest.mark.parametrize(
    ("mm", "said"), [(679.45, "67.9"), (679.5, "68.0"), (240, "24.0"), (-35, "−3.5"), (0.4, "0"), (-0.4, "0")]
)
def test_centimetres_are_said_to_a_tenth(mm: float, said: str) -> None:
    assert say_length(mm, "cm") == said


def test_the_unit_stands_behind() -> None:
    assert (say_with_unit(679.45, "in"), say_with_unit(679.45, "cm")) == ("26¾ in", "67.9 cm")


@pytest.mark.parametrize("value", [float("nan"), float("inf"), float("-inf")])
@pytest.mark.parametrize("unit", ["in", "cm"])
def test_what_is_no_number_is_said_as_a_dash(value: float, unit: Unit) -> None:
    assert say_length(value, unit) == say_exact(value, unit) == "—"


@pytest.mark.parametrize(
    ("mm", "unit", "said"),
    [
        (2.375 * INCH, "in", "2⅜"),
        (2.41 * INCH, "in", "2.41"),
        (2.015625 * INCH, "in", "2 ¹⁄₆₄"),
        (-1.0625 * INCH, "in", "−1 ¹⁄₁₆"),
        (-2.41 * INCH, "in", "−2.41"),
        (100, "in", "3.937"),
        (0, "in", "0"),
        (241, "cm", "24.1"),
        (240, "cm", "24"),
        (241.26, "cm", "24.13"),
        (-35, "cm", "−3.5"),
        (-0.01, "cm", "0"),
    ],
)
def test_a_stored_length_is_said_as_finely_as_it_needs(mm: float, unit: Unit, said: str) -> None:
    assert say_exact(mm, unit) == said


@given(lengths, units, fractions)
def test_what_is_said_reads_back_to_half_a_step(mm: float, unit: Unit, fraction: Fraction) -> None:
    half = INCH / fraction / 2 if unit == "in" else 0.5
    assert read_length(say_length(mm, unit, fraction), unit, signed=True).mm == pytest.approx(
        mm, abs=half + 1e-6
    )


@given(lengths, units)
def test_what_a_field_shows_reads_back_to_a_hair(mm: float, unit: Unit) -> None:
    hair = 0.0005 * INCH if unit == "in" else 0.05
    assert read_length(say_exact(mm, unit), unit, signed=True).mm == pytest.approx(mm, abs=hair + 1e-6)


@given(st.integers(-200 * 64, 200 * 64))
def test_a_sixty_fourth_in_a_field_reads_back_exactly(parts: int) -> None:
    mm = read_length(f"{parts}/64", "in", signed=True).mm
    assert read_length(say_exact(mm, "in"), "in", signed=True).mm == mm


def test_what_was_typed_comes_back_as_typed() -> None:
    assert shown(read_length("37 3/8", "in"), "in", 8) == "37 3/8"


def test_what_was_typed_in_another_unit_is_converted() -> None:
    typed = [read_length("37 3/8", "in"), read_length("241 mm", "cm"), read_length("9 3/16 in", "cm")]
    assert [shown(typed[0], "cm", 8), shown(typed[1], "cm", 8), shown(typed[2], "cm", 8)] == [
        "94.9",
        "24.1",
        "23.3",
    ]


@given(
    figure=st.integers(0, 500),
    typed_in=st.sampled_from(["in", "cm", "mm"]),
    switches=st.lists(st.tuples(units, fractions), max_size=6),
)
def test_switching_units_changes_no_stored_value(
    figure: int, typed_in: LengthUnit, switches: list[tuple[Unit, Fraction]]
) -> None:
    length = read_length(f"{figure / 8 if typed_in == 'in' else figure} {typed_in}", "in")
    before = (length.mm, length.typed, length.unit)
    said = [shown(length, unit, fraction) for unit, fraction in switches]
    assert (length.mm, length.typed, length.unit) == before
    assert [shown(length, unit, fraction) for unit, fraction in switches] == said
    for (unit, _), text in zip(switches, said, strict=True):
        assert text == length.typed or unit != typed_in


def test_a_length_cannot_be_changed_in_place() -> None:
    with pytest.raises(AttributeError):
        Length(1.0, "1", "mm").mm = 2.0  # type: ignore[misc]


@pytest.mark.parametrize(
    ("unit", "fraction", "step"), [("in", 8, 3.175), ("in", 16, 1.5875), ("cm", 8, 2.0), ("cm", 16, 2.0)]
)
def test_one_step_of_a_field(unit: Unit, fraction: Fraction, step: float) -> None:
    assert step_mm(unit, fraction) == step


@pytest.mark.parametrize(
    ("mm", "unit", "fraction", "snapped"),
    [
        (4.7, "in", 8, 3.175),
        (4.8, "in", 8, 6.35),
        (2.3, "in", 16, 1.5875),
        (4.5, "cm", 8, 5.0),
        (-4.6, "cm", 8, -5.0),
    ],
)
def test_snapping_goes_to_the_nearest_mark(mm: float, unit: Unit, fraction: Fraction, snapped: float) -> None:
    assert snap(mm, unit, fraction) == pytest.approx(snapped, abs=1e-12)


@given(lengths, units, fractions)
def test_a_snapped_length_stays_where_it_is(mm: float, unit: Unit, fraction: Fraction) -> None:
    once = snap(mm, unit, fraction)
    mark = INCH / fraction if unit == "in" else 1.0
    assert snap(once, unit, fraction) == once
    assert abs(once - mm) <= mark / 2 + 1e-6
    assert str(once) != "-0.0"


@pytest.mark.parametrize(
    ("inches", "said"), [(4.125 / 4, "1 ¹⁄₃₂ in"), (0.625, "⅝ in"), (0.6, "⅝ in"), (-1 / 32, "−¹⁄₃₂ in")]
)
def test_a_quarter_of_an_eighth_is_said_as_it_is(inches: float, said: str) -> None:
    assert say_closely(inches * 25.4, "in") == said


@pytest.mark.parametrize(
    ("inches", "unit", "fraction", "said"),
    [
        (2.95, "in", 8, "2⅞ in"),  # the nearest eighth is 3
        (2.95, "in", 16, "2 ¹⁵⁄₁₆ in"),
        (2.875 / 4, "in", 8, "²³⁄₃₂ in"),  # four times ¾ would be 3
        (-1.1, "in", 8, "−1⅛ in"),  # more ease, not less
        (7.49 / 2.54, "cm", 8, "7.4 cm"),
        (0.0, "in", 8, "0 in"),
    ],
)
def test_a_limit_is_never_rounded_up(inches: float, unit: Unit, fraction: Fraction, said: str) -> None:
    assert say_at_most(inches * INCH, unit, fraction) == said


@given(lengths, units, fractions)
def test_what_is_said_of_a_limit_keeps_it(mm: float, unit: Unit, fraction: Fraction) -> None:
    down = round_down(mm, unit, fraction)
    assert down <= mm + 1e-4
    assert mm - down <= (INCH / fraction if unit == "in" else 1.0)
