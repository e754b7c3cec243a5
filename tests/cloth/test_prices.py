"""The price list: which line a notion goes by, how much of it is paid for, and the file it is kept in.

How things are sold is common practice, no source, unless one is named.
"""

from __future__ import annotations

import json
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.cloth.garments import cutting_with, notion, usual_cutting
from tests.pieces.figures import outcome
from workbench.cloth.money import MoneyError, plain
from workbench.cloth.price_file import (
    price_list_bytes,
    price_list_from,
    read_price_list,
    remembered,
    with_remembered,
    write_price_list,
)
from workbench.cloth.prices import (
    NO_PRICE,
    bought,
    keys_of,
    price_list,
    row_of,
    rows_for,
    with_prices,
    with_row,
)
from workbench.cloth.purchase import PER_WORDS, Per, needed_of, purchase_of
from workbench.cloth.records import Currency, HoursRow, PriceRow, Quoting
from workbench.document import write_whole
from workbench.pieces import BoneStuff, Boning, Closing, FrontMade, Making, Notion, Opening, cutting_of

YARD_MM = 914.4
"""0.9144 m exactly: international yard and pound agreement of 1959 (from memory)."""


def row(key: str, price: str = "1", per: Per = "each", pack_count: int = 1, pack_mm: float = 0.0) -> PriceRow:
    return PriceRow(key, key.capitalize(), Decimal(price), per, pack_count, pack_mm)


def paid(per: Per, *notions: Notion, pack_count: int = 1, pack_mm: float = 0.0) -> tuple[str, str]:
    """What is paid at a price of 2, and how much of it that is in words."""
    purchase = purchase_of(needed_of(notions), row("x", "2", per, pack_count, pack_mm))
    assert purchase is not None
    cost = purchase.cost(Decimal(2))
    return plain(Decimal(cost.numerator) / cost.denominator), purchase.words


@pytest.mark.parametrize("closing", ["loops", "eyelets", "side_zip"])
@pytest.mark.parametrize(("front", "stuff"), [("fold", "plastic"), ("busk", "spiral_steel")])
def test_whatever_a_garment_needs_has_a_line_that_can_price_it(
    closing: Closing, front: FrontMade, stuff: BoneStuff
) -> None:
    made = Making(front=front, opening=Opening(closing=closing), boning=Boning(stuff=stuff))
    cutting = cutting_of(outcome(), made)
    assert bought(cutting)
    for unit in ("in", "cm"):
        rows = price_list(unit)
        for one in bought(cutting):
            line = row_of(one, rows)
            assert line is not None, one.key
            assert purchase_of(needed_of([one]), line) is not None, one.key


def test_the_list_to_start_from_has_no_prices_and_no_line_twice() -> None:
    rows = price_list()
    assert {one.price for one in rows} == {NO_PRICE}
    assert len({one.key for one in rows}) == len({one.name for one in rows}) == len(rows)


def test_what_is_sold_by_length_goes_by_the_yard_or_the_metre() -> None:
    yards, metres = price_list("in"), price_list("cm")
    changed = {one.key for one, other in zip(yards, metres, strict=True) if one != other}
    assert changed == {"bone/plastic", "channels", "cord", "waist_tape", "binding"}
    assert {one.per for one in metres if one.key in changed} == {"metre"}


def test_nothing_is_bought_for_a_sum_or_for_what_is_cut_from_the_cloth() -> None:
    keys = {one.key for one in bought(usual_cutting())}
    assert {"bones", "modesty"} < {one.key for one in usual_cutting().notions}
    assert not {"bones", "modesty"} & keys


@pytest.mark.parametrize(
    ("mm", "yards", "words"),
    [
        (YARD_MM, "1", "1 yd"),
        (YARD_MM + 1, "1.125", "1⅛ yd"),
        (1.125 * YARD_MM, "1.125", "1⅛ yd"),
        (1.125 * YARD_MM + 1e-8, "1.125", "1⅛ yd"),
        (10.0, "0.125", "⅛ yd"),
    ],
)
def test_a_length_by_the_yard_is_rounded_up_to_an_eighth(mm: float, yards: str, words: str) -> None:
    assert paid("yard", notion("cord", 1, mm)) == (plain(2 * Decimal(yards)), words)


@pytest.mark.parametrize(
    ("mm", "metres", "words"), [(1000.0, "1", "1 m"), (1001.0, "1.1", "1.1 m"), (40.0, "0.1", "0.1 m")]
)
def test_a_length_by_the_metre_is_rounded_up_to_a_tenth(mm: float, metres: str, words: str) -> None:
    assert paid("metre", notion("cord", 1, mm)) == (plain(2 * Decimal(metres)), words)


def test_pairs_and_packs_are_whole() -> None:
    assert paid("each", notion("eyelets", 25)) == ("50", "25")
    assert paid("pair", notion("eyelets", 25)) == ("26", "13 pairs")
    assert paid("pair", notion("eyelets", 2)) == ("2", "1 pair")
    assert paid("pack", notion("eyelets", 25), pack_count=12) == ("6", "3 packs of 12")
    assert paid("pack", notion("eyelets", 24), pack_count=12) == ("4", "2 packs of 12")


def test_a_pack_with_a_length_goes_by_length() -> None:
    assert paid("pack", notion("thread", None, 250_000.0), pack_mm=100_000.0) == ("6", "3 packs")
    assert paid("pack", notion("cord", 1, 100_000.0), pack_mm=100_000.0) == ("2", "1 pack")
    assert paid("pack", notion("thread", None, 250_000.0)) == ("2", "1 pack (taken for enough)")


@pytest.mark.parametrize("per", ["yard", "metre"])
def test_a_number_cannot_be_priced_by_length_nor_a_length_by_number(per: Per) -> None:
    assert purchase_of(needed_of([notion("tips", 4)]), row("tips", per=per)) is None
    assert purchase_of(needed_of([notion("thread", None, 9.0)]), row("thread", per="each")) is None
    assert purchase_of(needed_of([notion("thread", None, 9.0)]), row("thread", per="pair")) is None


def test_lengths_that_go_by_one_price_are_added_up_before_they_are_rounded() -> None:
    five = [notion(f"bone/plastic/{mm}", 2, 2.0 * mm) for mm in (176, 158, 132, 119, 114)]
    # 2 x 699 mm = 1398 mm is 12.23 eighths of a yard of 114.3 mm: 13 of them are paid for
    assert paid("yard", *five) == ("3.25", "1⅝ yd")


def test_a_steel_goes_by_the_price_of_its_length_else_by_that_of_any_length() -> None:
    steel = notion("bone/spiral_steel/190.5", 2, 381.0)
    any_length, exact = row("bone/spiral_steel", "3"), row("bone/spiral_steel/190.5", "2")
    assert row_of(steel, (any_length, exact)) is exact
    assert row_of(steel, (any_length, replace(exact, price=NO_PRICE))) is any_length
    assert row_of(steel, (row("bone/flat_steel"), row("bone/spiral_steel/203.2"))) is None


def test_a_line_without_a_price_still_says_which_one_to_fill_in() -> None:
    rows = price_list()
    line = row_of(notion("bone/spiral_steel/190.5", 2, 381.0), rows)
    assert line is not None
    assert (line.name, line.price) == ("Spiral steel, any length", NO_PRICE)


def test_plastic_has_one_line_and_beads_one_for_their_kind() -> None:
    assert keys_of(notion("bone/plastic/132")) == ("bone/plastic",)
    assert keys_of(notion("beads/round/4")) == ("beads/round/4", "beads/round", "beads")


def test_the_lines_of_a_garment_follow_its_shopping_list_and_keep_her_prices() -> None:
    cutting = cutting_with(
        [
            notion("bone/flat_steel/203.2", 4, 812.8, each=203.2),
            notion("bones", 4, 812.8),
            notion("cord", 1, 6000.0),
            notion("hooks", 12),
            notion("gimp", None, 900.0),
        ]
    )
    hers = (row("cord", "0.75", "metre"), row("busk", "12"))
    lines = rows_for(cutting, hers, "in")
    assert [(one.key, one.name, one.per) for one in lines] == [
        ("bone/flat_steel", "Flat steel, any length", "each"),
        ("bone/flat_steel/203.2", "Bone/flat_steel/203.2, 8 in", "each"),
        ("cord", "Cord", "metre"),
        ("hooks", "Hooks", "each"),
        ("gimp", "Gimp", "yard"),
    ]
    assert lines[2] is hers[0]
    assert rows_for(cutting, hers, "cm")[1].name.endswith(", 20.32 cm")


def test_a_line_is_replaced_in_its_place_or_added_at_the_end() -> None:
    rows = (row("cord", "1"), row("busk", "9"))
    assert with_row(rows, row("cord", "2")) == (row("cord", "2"), row("busk", "9"))
    assert with_row(rows, row("zip", "4")) == (*rows, row("zip", "4"))


def test_remembered_prices_fill_only_what_has_none() -> None:
    rows = (row("cord", "1"), row("busk", "0"), row("tips", "0"))
    kept = (row("cord", "5"), row("busk", "9"), row("tips", "0"), row("zip", "4"))
    assert with_prices(rows, kept) == (row("cord", "1"), row("busk", "9"), row("tips", "0"), row("zip", "4"))


def test_prices_in_another_currency_are_not_taken_over() -> None:
    kept = Quoting(currency=Currency("€", 2, False), prices=(row("cord", "5"),))
    assert with_remembered(Quoting(), kept) == Quoting()
    assert with_remembered(Quoting(currency=kept.currency), kept).prices == kept.prices


ROWS = st.builds(
    PriceRow,
    st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=20).filter(str.strip),
    st.text(st.characters(exclude_categories=["Cs"]), max_size=20),
    st.decimals(0, 10**9, places=6),
    st.sampled_from(list(PER_WORDS)),
    st.integers(1, 100_000),
    st.floats(0, 1e8),
)
KEPT = st.builds(
    Quoting,
    currency=st.builds(Currency, st.sampled_from(["$", "€", ""]), st.just(2), st.booleans()),
    prices=st.lists(ROWS, max_size=4, unique_by=lambda one: one.key).map(tuple),
    rate=st.decimals(0, 1000, places=2),
    margin_percent=st.decimals(0, 1000, places=1),
    round_to=st.sampled_from(
        [Decimal("0.01"), Decimal(5), Decimal("0.0500000000000000000000000000000000000")]
    ),
)


@settings(max_examples=60)
@given(KEPT)
def test_what_is_kept_comes_back(kept: Quoting) -> None:
    assert price_list_from(price_list_bytes(kept), "prices.json") == kept


def test_what_belongs_to_one_client_is_not_kept(tmp_path: Path) -> None:
    quoting = Quoting(
        prices=(row("cord", "0.75"),),
        hours=(HoursRow("Sewing", Decimal(9)),),
        included="A bodice for the invented Miss Example",
        ready_by="May",
    )
    path = tmp_path / "prices.json"
    write_price_list(path, quoting, write_whole)
    assert "Example" not in path.read_text("utf-8")
    assert read_price_list(path) == remembered(quoting) == Quoting(prices=quoting.prices)


def test_no_file_yet_is_no_trouble(tmp_path: Path) -> None:
    assert read_price_list(tmp_path / "prices.json") is None


def test_a_figure_that_is_none_is_refused_and_the_file_stays_as_it_was(tmp_path: Path) -> None:
    path = tmp_path / "prices.json"
    write_price_list(path, Quoting(prices=(row("cord", "0.75"),)), write_whole)
    before = path.read_bytes()
    with pytest.raises(MoneyError, match="The price of “Cord” cannot be less than nothing"):
        write_price_list(path, Quoting(prices=(row("cord", "-1"),)), write_whole)
    assert path.read_bytes() == before
    assert list(tmp_path.iterdir()) == [path]


GOOD = json.loads(price_list_bytes(Quoting(prices=(row("cord", "0.75"),))))
LINE = GOOD["prices"][0]


@pytest.mark.parametrize(
    ("changed", "reason"),
    [
        ({"kind": "bodice"}, "no price list"),
        ({"version": 2}, "newer version"),
        ({"version": "one"}, "“version” is no whole number"),
        ({"rates": "1"}, "an entry “rates” that no price list has"),
        ({"rate": "much"}, "“rate” is no amount"),
        ({"rate": "-1"}, "the rate for an hour cannot be less than nothing"),
        ({"rate": "9" * 41}, "“rate” is no amount"),
        ({"rate": float("nan")}, "the rate for an hour is no number"),
        ({"margin_percent": "1001"}, "the margin must be from 0 to 1,000 %"),
        ({"deposit_percent": "100.5"}, "the deposit must be from 0 to 100 %"),
        ({"currency": []}, "“currency” is no group"),
        ({"currency": {"decimals": 1.5}}, "is no whole number"),
        ({"currency": {"decimals": 5}}, "the decimals of the currency must be from 0 to 4"),
        ({"currency": {"before": 1}}, "neither true nor false"),
        ({"currency": {"symbol": 1}}, "“currency › symbol” is no text"),
        ({"prices": {}}, "“prices” is no list"),
        ({"prices": [7]}, "price no. 1 is no group"),
        ({"prices": [{**LINE, "colour": "red"}]}, "price no. 1 has an entry “colour”"),
        ({"prices": [{**LINE, "per": "mile"}]}, "price no. 1 is for something else"),
        ({"prices": [{**LINE, "per": []}]}, "price no. 1 is for something else"),
        ({"prices": [{**LINE, "price": None}]}, "price no. 1 is no amount"),
        ({"prices": [{**LINE, "price": True}]}, "price no. 1 is no amount"),
        ({"prices": [{**LINE, "price": "Infinity"}]}, "the price of “Cord” is no number"),
        ({"prices": [{**LINE, "price": "1e10"}]}, "the price of “Cord” cannot be more than"),
        ({"prices": [{**LINE, "price": "1e-9999999"}]}, "the price of “Cord” has more than 6 decimals"),
        ({"prices": [{**LINE, "pack_count": 0}]}, "the number in a pack of “Cord” must be from 1"),
        ({"prices": [{**LINE, "pack_mm": -1}]}, "the length in a pack of “Cord” is no usable length"),
        ({"prices": [{**LINE, "name": 3}]}, "the name of price no. 1 is no text"),
        ({"prices": [{**LINE, "name": "\ud800"}]}, "holds half a character"),
        ({"prices": [LINE, LINE]}, "“Cord” stands in the price list twice"),
        ({"prices": [LINE] * 501}, "at most 500 lines"),
    ],
)
def test_a_damaged_list_is_refused_with_its_name_and_the_entry(changed: object, reason: str) -> None:
    assert isinstance(changed, dict)
    with pytest.raises(MoneyError) as caught:
        price_list_from(json.dumps({**GOOD, **changed}).encode(), "prices.json")
    sentence = caught.value.sentence
    assert sentence.startswith("prices.json: ")
    assert reason in sentence
    assert sentence.count(". ") == sentence.count("no. ")
    assert sentence.endswith(".")


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"\xff\xfe",
        b"[]",
        b"{",
        b"[" * 100_000,
        b'{"kind": "price list", "kind": "price list", "version": 1}',
        b'{"kind": "price list", "version": ' + b"9" * 5000 + b"}",
        b" " * 1_000_001,
    ],
)
def test_what_is_no_price_list_is_refused_in_words(data: bytes) -> None:
    with pytest.raises(MoneyError, match=r"^prices\.json: the file is .*no price list\.$"):
        price_list_from(data, "prices.json")


def test_figures_written_by_hand_without_quotation_marks_are_read_exactly() -> None:
    data = json.dumps(GOOD).replace('"0.75"', "0.07")
    assert price_list_from(data.encode(), "prices.json").prices[0].price == Decimal("0.07")
