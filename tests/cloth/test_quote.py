"""What a garment costs and what is asked for it: sums worked here by hand, and that they always add up."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from decimal import ROUND_HALF_UP, Context, Decimal, localcontext
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.cloth.garments import KEYS, NOTIONS, cutting_with, notion, usual_cutting
from tests.pieces.figures import outcome
from workbench.cloth.cost_lines import ClothBought, CostLine
from workbench.cloth.hours import hours_of
from workbench.cloth.money import MoneyError, coin_of
from workbench.cloth.money_checks import quoting_problems
from workbench.cloth.purchase import PER_WORDS
from workbench.cloth.quote import Quote, quote_of
from workbench.cloth.records import Currency, HoursRow, PriceRow, Quoting
from workbench.cloth.sums import sums_of
from workbench.pieces import BoneStuff, Boning, Closing, FrontMade, Making, Notion, Opening, cutting_of
from workbench.sewing import Step, sewing_order

D = Decimal
NOTHING = cutting_with()
SATIN = ClothBought("Satin", 1257.3, D("38.50"), "1⅜ yd")
LACED = (
    notion("bone/spiral_steel/190.5", 6, 1143.0),
    notion("bone/spiral_steel/241.3", 2, 482.6),
    notion("tips", 16),
    notion("cord", 1, 6870.0),
)
PRICES = (
    PriceRow("bone/spiral_steel", "Spiral steel, any length", D("0.85")),
    PriceRow("tips", "Bone tips", D("2.40"), "pack", pack_count=10),
    PriceRow("cord", "Lacing cord", D("0.65"), "yard"),
)
WORK = (HoursRow("Cutting out", D("2.5")), HoursRow("Sewing", D("9.25")))
WORKED = Quoting(
    prices=PRICES,
    hours=WORK,
    rate=D("22.50"),
    overhead_percent=D(12),
    margin_percent=D(15),
    tax_percent=D(20),
    deposit_percent=D(40),
    round_to=D(5),
)


def worked(**changed: Any) -> Quote:
    return quote_of(cutting_with(LACED), [SATIN], replace(WORKED, **changed))


def amounts(lines: Iterable[CostLine]) -> dict[str, str]:
    return {line.name: str(line.amount) for line in lines}


def test_a_quote_worked_by_hand() -> None:
    """8 steels 6.80; 2 packs 4.80; 6870 mm is 60.1 eighths of a yard, so 7⅝ yd at 0.65 is 4.956.

    2.5 h 56.25, 9.25 h 208.125. Costs 38.50 + 6.80 + 4.80 + 4.96 + 56.25 + 208.13 = 319.44; overhead
    38.3328; margin 15 % of 357.77 is 53.6655; 411.44 with a fifth of tax is 493.728, up to 495; a
    sixth of that is tax, 82.50, and 412.50 less 411.44 is 1.06.
    """
    assert amounts(worked().inside) == {
        "Satin": "38.50",
        "Spiral steel, any length": "6.80",
        "Bone tips": "4.80",
        "Lacing cord": "4.96",
        "Cutting out": "56.25",
        "Sewing": "208.13",
        "Overhead": "38.33",
        "Margin": "53.67",
        "Rounding": "1.06",
        "Tax": "82.50",
    }
    sums = worked().sums
    assert (sums.costs, sums.before_tax, sums.price) == (D("319.44"), D("412.50"), D("495.00"))
    assert (sums.deposit, sums.balance) == (D("198.00"), D("297.00"))


def test_the_lines_say_how_they_came_about() -> None:
    said = {line.name: line.words.replace("\N{NO-BREAK SPACE}", " ") for line in worked().inside}
    assert said == {
        "Satin": "1⅜ yd",
        "Spiral steel, any length": "8 at $0.85 each",
        "Bone tips": "2 packs of 10 at $2.40 a pack",
        "Lacing cord": "7⅝ yd at $0.65 a yard",
        "Cutting out": "2.5 h at $22.50 an hour",
        "Sewing": "9.25 h at $22.50 an hour",
        "Overhead": "12 % of cloth, notions and hours",
        "Margin": "15 % of all costs",
        "Rounding": "the price up to whole ones of $5.00",
        "Tax": "20 % of the price before tax",
    }


def test_sums_can_be_asked_by_kind() -> None:
    quote = worked()
    assert quote.total_of("cloth") == D("38.50")
    assert quote.total_of("notion") == D("16.56")
    assert quote.total_of("hours") == D("264.38")
    assert quote.total_of("cloth", "notion", "hours") == quote.sums.costs


@pytest.mark.parametrize(("percent", "part"), [(20, 6), (5, 21), (25, 5), (10, 11)])
def test_tax_in_a_price_is_its_usual_fraction(percent: int, part: int) -> None:
    """A price with 20 % in it is a sixth tax, with 5 % a twenty-first (HMRC, VAT fractions; from memory)."""
    quoting = Quoting(tax_percent=D(percent), round_to=D(part))
    sums = sums_of(D("100.00"), quoting)
    assert sums.tax * part == sums.price


def test_the_client_reads_no_cost() -> None:
    quote = worked(included="Made to measure\n\n  15 bones ", fitting_dates="3 May, 17 May", ready_by="June")
    lines = [(line.kind, line.name, line.amount) for line in quote.client]
    assert lines == [
        ("included", "Made to measure", None),
        ("included", "15 bones", None),
        ("price", "Price before tax", D("412.50")),
        ("price", "Tax", D("82.50")),
        ("price", "Price with tax", D("495.00")),
        ("paid", "Deposit", D("198.00")),
        ("paid", "Balance", D("297.00")),
        ("date", "Fittings", None),
        ("date", "Ready by", None),
    ]
    private = {line.name for line in quote.inside} - {"Tax"}
    assert not private & {line.name for line in quote.client}
    assert not any("22.50" in line.words or "15 %" in line.words for line in quote.client)


def test_without_tax_or_deposit_the_client_reads_one_price() -> None:
    quote = worked(tax_percent=D(0), deposit_percent=D(0))
    assert [line.name for line in quote.client if line.amount is not None] == ["Price"]
    assert "Tax" not in amounts(quote.inside)


def test_what_is_included_is_told_from_the_garment_until_she_writes_it_herself() -> None:
    told = [line.name for line in quote_of(usual_cutting(), [], Quoting()).client if line.kind == "included"]
    assert "15 bones" in told
    assert "Layers: fashion cloth, strength layer, interfacing, lining" in told
    assert any(line.startswith("Laced at the back through") for line in told)
    hers = quote_of(usual_cutting(), [], Quoting(included="A bodice")).client
    assert [line.name for line in hers if line.kind == "included"] == ["A bodice"]


def test_a_garment_with_busk_and_zip_says_so_to_the_client() -> None:
    made = Making(front="busk", opening=Opening(closing="side_zip"))
    told = [line.name for line in quote_of(cutting_of(outcome(), made), [], Quoting()).client]
    assert {"Closed with a zip in the side", "Front busk"} <= set(told)
    assert not any("Laced" in line for line in told)


def test_what_has_no_price_is_said_and_not_counted() -> None:
    prices = (PRICES[0], replace(PRICES[1], price=D(0)))
    quote = worked(prices=prices)
    assert quote.unpriced == ("Bone tips", "Cord")
    assert not quote.complete
    lines = {line.name: line for line in quote.inside}
    assert (lines["Bone tips"].words, lines["Bone tips"].amount) == ("no price yet", None)
    assert quote.sums.costs == D("319.44") - D("4.80") - D("4.96")
    finding = next(one for one in quote.findings if one.code == "no_price")
    assert "no usable price yet for Bone tips, Cord" in finding.text("in")


def test_a_long_list_of_missing_prices_is_counted_in_the_finding() -> None:
    quote = quote_of(usual_cutting(), [], Quoting())
    finding = next(one for one in quote.findings if one.code == "no_price")
    assert f"and {len(quote.unpriced) - 3} more" in finding.text("in")


def test_braces_in_a_name_do_not_upset_the_finding() -> None:
    quote = quote_of(NOTHING, [ClothBought("{silk}", 900.0, None)], Quoting())
    assert "{silk}" in quote.findings[0].text("cm")


def test_a_cloth_without_a_price_is_said_and_one_at_hand_costs_nothing() -> None:
    unpriced, there = ClothBought("Twill", 900.0, None, "1 yd"), ClothBought("Lawn", 0.0, D(0))
    lines = {line.name: line for line in quote_of(NOTHING, [unpriced, there], Quoting()).inside}
    assert (lines["Twill"].words, lines["Twill"].amount) == ("1 yd, no price yet", None)
    assert (lines["Lawn"].words, lines["Lawn"].amount) == ("nothing to buy", D(0))


def test_hours_without_a_rate_are_said() -> None:
    quote = worked(rate=D(0))
    assert quote.unpriced == ("Cutting out", "Sewing")
    assert [one.code for one in quote.findings] == ["no_rate"]
    assert "no rate for an hour yet" in quote.findings[0].text("in")


def test_a_price_that_leaves_her_with_nothing_is_said() -> None:
    assert [one.code for one in worked(hours=(), margin_percent=D(0)).findings] == ["no_hours", "no_margin"]
    assert not worked().findings


def test_a_price_for_the_wrong_measure_is_said() -> None:
    by_number = replace(PRICES[2], per="yard", key="tips", name="Tips")
    lines = {line.name: line for line in worked(prices=(by_number,)).inside}
    assert lines["Tips"].amount is None
    assert lines["Tips"].words.startswith("priced by the yard, but listed by number")
    thread = quote_of(
        cutting_with([notion("thread", None, 9e4)]), [], Quoting(prices=(PriceRow("thread", "Thread", D(2)),))
    )
    assert thread.inside[0].words.startswith("priced by number, but listed by length")


def test_what_she_does_not_buy_costs_nothing_and_stays_on_the_list() -> None:
    quote = worked(not_bought=("tips", "bone/spiral_steel/190.5"))
    lines = {line.key: line for line in quote.inside}
    assert lines["tips"].amount == lines["bone/spiral_steel/190.5"].amount == D(0)
    assert lines["tips"].words.startswith("not bought")
    assert lines["bone/spiral_steel"].words == "2 at $0.85 each"
    assert quote.complete
    whole = worked(not_bought=("bone/spiral_steel",))
    assert [line.key for line in whole.inside].count("bone/spiral_steel") == 1
    assert whole.total_of("notion") == D("4.80") + D("4.96")


def test_what_is_bought_besides_the_list_is_counted() -> None:
    beads = notion("beads/4", 250)
    row = PriceRow("beads", "Pearls and beads", D("3.20"), "pack", pack_count=100)
    lines = {line.key: line for line in quote_of(NOTHING, [], Quoting(prices=(row,)), (beads,)).inside}
    assert (lines["beads"].words, lines["beads"].amount) == ("3 packs of 100 at $3.20 a pack", D("9.60"))


def test_a_currency_without_small_coins() -> None:
    quote = worked(currency=Currency("¥", 0), round_to=D("0.01"))
    assert all(line.amount == int(line.amount or 0) for line in quote.inside)
    assert quote.sums.price == int(quote.sums.price)
    assert not any("0.01" in line.words for line in quote.inside)


@pytest.mark.parametrize(
    ("changed", "sentence"),
    [
        ({"rate": D(-1)}, "The rate for an hour cannot be less than nothing."),
        ({"rate": D("NaN")}, "The rate for an hour is no number."),
        ({"overhead_percent": D(1001)}, "The overhead must be from 0 to 1,000 %."),
        ({"margin_percent": D(-1)}, "The margin must be from 0 to 1,000 %."),
        ({"margin_percent": D("Infinity")}, "The margin is no number."),
        ({"tax_percent": D(101)}, "The tax must be from 0 to 100 %."),
        ({"tax_percent": D("0.0000001")}, "The tax has more than 6 decimals."),
        ({"deposit_percent": D("100.01")}, "The deposit must be from 0 to 100 %."),
        ({"round_to": D(0)}, "The step the price is rounded up to must be more than nothing."),
        ({"round_to": D("0.015")}, "The step the price is rounded up to must be a whole number of $0.01."),
        ({"hours": (HoursRow("Sewing", D(-1)),)}, "The time for “Sewing” cannot be less than nothing."),
        ({"hours": (HoursRow("Sewing", D(1001)),)}, "The time for “Sewing” cannot be more than 1,000 hours."),
        (
            {"prices": (replace(PRICES[0], price=D("-0.01")),)},
            "The price of “Spiral steel, any length” cannot be less than nothing.",
        ),
        ({"prices": (PRICES[1], PRICES[1])}, "“Bone tips” stands in the price list twice."),
        ({"prices": (replace(PRICES[1], key=" "),)}, "“Bone tips” has no key in the price list."),
        ({"hours": (HoursRow("Sewing", D(1)),) * 501}, "The list of hours has more than 500 lines."),
        ({"not_bought": ("x" * 121,)}, "A key of what is not bought is longer than 120 characters."),
        ({"not_bought": ("x",) * 501}, "The list of what is not bought has more than 500 lines."),
        ({"currency": Currency("$", -1)}, "The decimals of the currency must be from 0 to 4."),
        ({"currency": Currency("a long symbol")}, "The symbol of the currency is longer than 8 characters."),
        ({"ready_by": "x" * 81}, "The date it is ready by is longer than 80 characters."),
    ],
)
def test_a_figure_that_is_none_is_refused_by_the_name_of_its_field(
    changed: dict[str, Any], sentence: str
) -> None:
    with pytest.raises(MoneyError) as caught:
        worked(**changed)
    assert caught.value.sentence == sentence
    assert caught.value.place[0] in changed
    assert [problem.sentence for problem in quoting_problems(replace(WORKED, **changed))] == [sentence]


@pytest.mark.parametrize(
    ("cloth", "reason"),
    [
        (ClothBought("Silk", 900.0, D(-1)), "The cost of “Silk”"),
        (ClothBought("Silk", 900.0, D("NaN")), "The cost of “Silk”"),
        (ClothBought("Silk", -900.0, D(1)), "The length to buy of “Silk”"),
        (ClothBought("Silk", float("nan"), D(1)), "The length to buy of “Silk”"),
    ],
)
def test_a_cloth_with_a_figure_that_is_none_is_refused(cloth: ClothBought, reason: str) -> None:
    with pytest.raises(MoneyError, match=reason):
        quote_of(NOTHING, [cloth], Quoting())


def money(most: int = 10**9, places: int = 4) -> st.SearchStrategy[Decimal]:
    return st.decimals(0, most, places=places)


ROWS = st.builds(
    PriceRow,
    st.sampled_from([*KEYS, "bone/flat_steel", "bone/spiral_steel", "bone/plastic", "beads"]),
    st.just("Something"),
    money() | st.just(D(0)),
    st.sampled_from(list(PER_WORDS)),
    st.integers(1, 100_000),
    st.just(0.0) | st.floats(1, 1e8),
)


@st.composite
def quotings(draw: st.DrawFn) -> Quoting:
    currency = Currency("$", draw(st.integers(0, 4)))
    return Quoting(
        currency=currency,
        prices=tuple(draw(st.lists(ROWS, max_size=8, unique_by=lambda row: row.key))),
        not_bought=tuple(draw(st.lists(st.sampled_from(KEYS), max_size=2))),
        hours=tuple(draw(st.lists(st.builds(HoursRow, st.just("Sewing"), money(1000)), max_size=4))),
        rate=draw(money()),
        overhead_percent=draw(money(1000)),
        margin_percent=draw(money(1000)),
        tax_percent=draw(money(100)),
        deposit_percent=draw(money(100)),
        round_to=coin_of(currency) * draw(st.sampled_from([1, 5, 50, 500, 12345])),
    )


CLOTHS = st.lists(st.builds(ClothBought, st.just("Cloth"), st.floats(0, 1e7), money()), max_size=3)


@settings(max_examples=150, deadline=None)
@given(NOTIONS, CLOTHS, quotings())
def test_lines_always_add_up_to_the_coin(
    notions: tuple[Notion, ...], cloths: list[ClothBought], quoting: Quoting
) -> None:
    quote = quote_of(cutting_with(notions), cloths, quoting)
    coin = coin_of(quoting.currency)
    with localcontext(Context(prec=60)):
        counted = [line.amount for line in quote.inside if line.amount is not None]
        assert all(amount >= 0 and amount % coin == 0 for amount in counted)
        assert sum(counted, D(0)) == quote.sums.price
        parts = {line.name: line.amount for line in quote.client if line.amount is not None}
        if quoting.tax_percent:
            assert parts["Price before tax"] + parts["Tax"] == parts["Price with tax"] == quote.sums.price
        if quoting.deposit_percent:
            assert parts["Deposit"] + parts["Balance"] == quote.sums.price
    assert len(quote.unpriced) == len(quote.inside) - len(counted)


@settings(max_examples=200, deadline=None)
@given(money(10**7, 2), quotings())
def test_sums_are_those_of_the_decimal_standard(costs: Decimal, quoting: Quoting) -> None:
    """Against the standard library's decimals, each step rounded half up on its own."""
    coin = coin_of(quoting.currency)
    with localcontext(Context(prec=60)):
        costs = costs.quantize(coin, ROUND_HALF_UP)
        sums = sums_of(costs, quoting)
        assert sums.overhead == (costs * quoting.overhead_percent / 100).quantize(coin, ROUND_HALF_UP)
        margin = (costs + sums.overhead) * quoting.margin_percent / 100
        assert sums.margin == margin.quantize(coin, ROUND_HALF_UP)
        least = costs + sums.overhead + sums.margin
        taxed = least * (100 + quoting.tax_percent) / 100
        assert 0 <= sums.price - taxed < quoting.round_to
        assert sums.price % quoting.round_to == 0
        assert sums.before_tax >= least
        assert sums.rounding == sums.before_tax - least
        assert abs(sums.tax - sums.before_tax * quoting.tax_percent / 100) <= coin
        assert sums.deposit + sums.balance == sums.price == sums.before_tax + sums.tax
        assert 0 <= sums.deposit <= sums.price


def test_a_quote_does_not_depend_on_the_precision_somebody_else_has_set() -> None:
    usual = worked()
    with localcontext(Context(prec=4)):
        assert worked() == usual


def a_step(stage: str, minutes: float) -> Step:
    return Step(f"sewing.{stage}.{minutes}", stage, stage, (), minutes)


def test_the_usual_hours_are_the_steps_of_the_sewing_order_added_up() -> None:
    """By hand: 11 bones of 5 minutes are 55, a whole hour; 16 loops of 2 and a cord of 10 are 42, ¾ h."""
    steps = (
        *(a_step("Putting in bones", 5) for _ in range(11)),
        a_step("Making the lacing", 32),
        a_step("Stitching bone channels", 30.0000001),
        a_step("Making the lacing", 10),
        a_step("Marking", 0),
    )
    assert [(row.step, row.hours) for row in hours_of(steps)] == [
        ("Putting in bones", D("1")),
        ("Making the lacing", D("0.75")),
        ("Stitching bone channels", D("0.5")),
    ]


@pytest.mark.parametrize("closing", ["loops", "eyelets", "side_zip"])
@pytest.mark.parametrize(("front", "stuff"), [("fold", "plastic"), ("busk", "spiral_steel")])
def test_the_usual_hours_can_be_quoted_as_they_are(
    closing: Closing, front: FrontMade, stuff: BoneStuff
) -> None:
    made = Making(front=front, opening=Opening(closing=closing), boning=Boning(stuff=stuff))
    rows = hours_of(sewing_order(cutting_of(outcome(), made), made))
    assert len({row.step for row in rows}) == len(rows)
    assert all(row.hours > 0 and row.hours % D("0.25") == 0 for row in rows)
    assert ("Setting the busk" in {row.step for row in rows}) == (front == "busk")
    assert ("Setting the zip" in {row.step for row in rows}) == (closing == "side_zip")
    assert not list(quoting_problems(Quoting(hours=rows)))
    # a boned bodice made to measure takes from a day and a half to six days (common practice, no source)
    assert 12 <= sum(row.hours for row in rows) <= 48


def test_without_pieces_there_are_no_hours_and_nothing_is_included() -> None:
    assert hours_of(()) == ()
    quote = quote_of(NOTHING, [], Quoting())
    assert quote.sums.price == 0
    assert not [line for line in quote.client if line.kind == "included"]
