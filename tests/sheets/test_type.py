"""Lines of text fitted into the room they have."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from workbench.resources import resource
from workbench.sheets.fonts import clean, fitted, text_width, wrapped

WORDS = st.text(st.characters(codec="utf-8"), max_size=120)


@given(WORDS, st.floats(8, 80))
def test_wrapped_lines_fit_and_lose_nothing(text: str, room: float) -> None:
    text = clean(text)
    lines = wrapped(text, 2.5, room)
    assert all(text_width(line, 2.5) <= room or len(line) == 1 for line in lines)
    assert "".join("".join(lines).split()) == "".join(text.split())


@given(WORDS, st.floats(8, 80))
def test_a_fitted_line_fits(text: str, room: float) -> None:
    assert text_width(fitted(clean(text), 2.5, room), 2.5) <= room


def test_a_figure_stays_with_its_fraction_and_its_unit() -> None:
    text = "held to 40 ⁹⁄₁₆ in at the top hip, 10 % less"
    room = text_width("held to 40 ⁹⁄₁₆", 2.5)
    assert wrapped(text, 2.5, room)[1].startswith("40 ⁹⁄₁₆ in")
    assert any("10 %" in line for line in wrapped(text, 2.5, room))


def test_digits_are_all_of_one_width_so_that_figures_stand_under_each_other() -> None:
    assert len({round(text_width(digit, 10.0), 9) for digit in "0123456789"}) == 1


def test_the_licence_of_the_font_lies_beside_it() -> None:
    assert "SIL OPEN FONT LICENSE Version 1.1" in resource("fonts/OFL.txt").read_text(encoding="utf-8")
