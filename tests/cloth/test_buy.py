"""What to ask for at the counter."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from math import nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.cloth.cutting_table import CORNERED, ONE, YARD
from workbench.cloth import BuyStep, Cloth, LayError, to_buy

CLOTH = Cloth("Satin", ONE, price=Decimal("24.00"))
STEPS: dict[BuyStep, float] = {
    "eighth_yard": YARD / 8,
    "quarter_yard": YARD / 4,
    "half_yard": YARD / 2,
    "ten_cm": 100.0,
}


@pytest.mark.parametrize(
    ("step", "words", "cost"),
    [
        ("eighth_yard", "1⅝ yd", "39.00"),
        ("quarter_yard", "1¾ yd", "42.00"),
        ("half_yard", "2 yd", "48.00"),
        ("ten_cm", "1.5 m", "36.00"),
    ],
)
def test_a_plan_of_1450_mm(step: BuyStep, words: str, cost: str) -> None:
    """1,450 mm = 1.586 yd: 13 eighths, 7 quarters, 4 halves; 15 times 10 cm. 24 a yard or a metre."""
    buy = to_buy(1450.0, replace(CLOTH, step=step))
    assert (buy.words, buy.cost) == (words, Decimal(cost))
    assert buy.fits is None
    assert buy.note == ""


def test_a_plan_of_just_a_step_is_that_step() -> None:
    assert to_buy(YARD, CLOTH).words == "1 yd"
    assert to_buy(YARD + 0.2, CLOTH).words == "1⅛ yd"
    assert to_buy(0.0, CLOTH).words == "none"


def test_more_is_bought_of_what_shrinks() -> None:
    """5 % of a yard and 1/8 is lost: 1.125 × 0.95 = 1.069 yd is left, so a yard fits and 1.1 yd does not."""
    shrinks = replace(CLOTH, shrinkage_percent=5.0)
    assert to_buy(YARD, shrinks).words == "1⅛ yd"
    assert to_buy(1.1 * YARD, shrinks).words == "1¼ yd"
    assert to_buy(YARD, shrinks).needed_mm == pytest.approx(YARD / 0.95)


def test_what_she_has_is_enough() -> None:
    buy = to_buy(YARD - 25.4, replace(CLOTH, at_hand_mm=YARD))
    assert (buy.length_mm, buy.cost, buy.fits) == (0.0, Decimal(0), True)
    assert buy.note == "Fits in what you have, 1 in to spare."


def test_a_cost_that_is_not_known_is_not_nothing() -> None:
    unpriced = replace(CLOTH, price=Decimal(0))
    assert to_buy(YARD, unpriced).cost is None
    assert to_buy(YARD, replace(unpriced, at_hand_mm=2 * YARD)).cost == 0
    assert to_buy(0.0, unpriced).cost == 0


def test_what_she_has_is_too_short() -> None:
    buy = to_buy(YARD + 50.8, replace(CLOTH, at_hand_mm=YARD))
    assert buy.words == "1⅛ yd"
    assert buy.short_mm == pytest.approx(50.8)
    assert buy.note == "What you have is 2 in too short."
    assert to_buy(1060.0, replace(CLOTH, at_hand_mm=1000.0, step="ten_cm")).note == (
        "What you have is 6.0 cm too short."
    )


def test_a_remnant_takes_it_or_does_not() -> None:
    scrap = replace(CLOTH, remnant=CORNERED)
    assert to_buy(800.0, scrap).note == "Fits on the remnant."
    assert to_buy(800.0, scrap, left_over=2).note == "2 pieces find no room on the remnant."
    assert to_buy(800.0, scrap, left_over=1).fits is False


@pytest.mark.parametrize("length", [-1.0, nan])
def test_a_length_that_is_none_is_refused(length: float) -> None:
    with pytest.raises(LayError, match="length of the plan of Satin"):
        to_buy(length, CLOTH)


def test_a_negative_price_is_refused() -> None:
    with pytest.raises(LayError, match="price of Satin"):
        to_buy(500.0, replace(CLOTH, price=Decimal(-3)))


@given(st.floats(0, 1e5), st.sampled_from(sorted(STEPS)), st.floats(0, 50))
def test_it_is_enough_and_not_a_step_more(length: float, step: BuyStep, shrinkage: float) -> None:
    buy = to_buy(length, replace(CLOTH, step=step, shrinkage_percent=shrinkage))
    left = buy.length_mm * (1 - shrinkage / 100)
    assert left >= length - 0.06
    assert (buy.length_mm - STEPS[step]) * (1 - shrinkage / 100) < length
    assert buy.length_mm / STEPS[step] == pytest.approx(round(buy.length_mm / STEPS[step]))
