"""The client's card and the sewing order on paper: what they say, and that it fits."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.sheets.conftest import CutJob
from tests.sheets.readback import page_sizes, text_of
from tests.sheets.test_first_page import LONG, plain
from workbench.body import WEARER_CAUTIONS
from workbench.pieces import Making, Opening, cutting_of
from workbench.sewing import sewing_order
from workbench.sheets.client_card import Card, print_client_card
from workbench.sheets.heading import Heading
from workbench.sheets.paper import PrintError
from workbench.sheets.sewing_sheet import print_sewing_order


def card_of(cut: CutJob, **changes: object) -> Card:
    job = cut.job
    return replace(Card(job.outcome, job.comfort, cut.cutting, Making()), **changes)  # type: ignore[arg-type]


def words(pdf: bytes) -> str:
    return plain(" ".join(text_of(pdf)))


def test_the_card_is_one_page_and_says_every_caution(folded: CutJob) -> None:
    pdf = print_client_card(card_of(folded), folded.job.heading)
    assert len(page_sizes(pdf)) == 1
    text = words(pdf)
    for caution in WEARER_CAUTIONS:
        assert plain(caution) in text


def test_the_card_says_to_lace_loosely_at_first_and_parallel(folded: CutJob) -> None:
    text = words(print_client_card(card_of(folded), folded.job.heading))
    assert "The first few times lace it loosely, about 1 in wider than planned" in text
    assert "parallel, 2 in apart" in text


def test_the_card_never_calls_a_reduction_harmless(folded: CutJob) -> None:
    assert "safe" not in words(print_client_card(card_of(folded), folded.job.heading)).lower()


def test_above_the_limit_it_says_so(busked: CutJob) -> None:
    text = words(print_client_card(card_of(busked), busked.job.heading))
    assert "above the limit of" in text
    assert "that was set for you" in text


@pytest.mark.parametrize("closing", ["loops", "eyelets", "side_zip"])
@pytest.mark.parametrize("front", ["fold", "busk"])
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_it_fits_on_one_page_however_it_closes(folded: CutJob, closing: str, front: str, paper: str) -> None:
    making = replace(Making(), front=front, opening=Opening(closing=closing))  # type: ignore[arg-type]
    long = replace(folded.job.heading, client=LONG, style=LONG[:60])
    card = card_of(folded, making=making, beads=True, next_fitting="2031-06-02")
    assert len(page_sizes(print_client_card(card, long, paper))) == 1


def test_steel_must_not_be_soaked_and_plastic_not_ironed_hot(folded: CutJob) -> None:
    assert "the steel inside rusts" in words(print_client_card(card_of(folded), folded.job.heading))
    boning = replace(Making().boning, stuff="plastic", opening_stuff="plastic")
    making = replace(Making(), boning=boning)
    cutting = cutting_of(folded.job.outcome, making)
    text = words(print_client_card(card_of(folded, making=making, cutting=cutting), folded.job.heading))
    assert "rusts" not in text
    assert "Use a cool iron only" in text


def test_the_same_card_gives_the_same_bytes(folded: CutJob) -> None:
    card = card_of(folded)
    assert print_client_card(card, folded.job.heading) == print_client_card(card, folded.job.heading)


def test_an_unknown_paper_is_refused_in_a_sentence(folded: CutJob) -> None:
    with pytest.raises(PrintError, match="The client’s card is printed on A4 or Letter, not on “roll”"):
        print_client_card(card_of(folded), folded.job.heading, "roll")


def test_the_order_on_paper_has_every_step_and_this_garments_numbers(folded: CutJob) -> None:
    steps = sewing_order(folded.cutting, Making())
    text = words(print_sewing_order(steps, (), folded.job.heading))
    for step in steps:
        assert plain(step.title) in text
        assert plain(step.says[0].text("in")) in text


def test_what_is_done_is_ticked(folded: CutJob) -> None:
    steps = sewing_order(folded.cutting, Making())
    heading: Heading = folded.job.heading
    assert print_sewing_order(steps, {steps[3].key}, heading) != print_sewing_order(steps, (), heading)
