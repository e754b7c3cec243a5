"""The silhouette, and the design as worn on the quote: one page, true numbers, outlines before and after."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from tests.sheets.conftest import CutJob
from tests.sheets.readback import text_of
from workbench.body import WEARER_CAUTIONS
from workbench.draft import usual_design, work_out
from workbench.sheets import PrintError, print_silhouette, quote_views, worn_for
from workbench.sheets.worn_view import AROUND_MM, worn_view
from workbench.worn import Torso


def silhouette(cut: CutJob, paper: str = "A4") -> bytes:
    return print_silhouette(cut.job.outcome, Torso(), cut.job.heading, paper, cut.cutting)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_silhouette_is_one_page_with_girths_and_cautions(folded: CutJob, paper: str) -> None:
    pages = text_of(silhouette(folded, paper))
    assert len(pages) == 1
    text = " ".join(pages[0].split())
    for words in ("Front", "Three-quarter", "Side", "Back", "Round the body at", "Waist"):
        assert words in text
    waist = folded.job.outcome.level("waist")
    assert f"{waist.percent:.1f} %" in text
    for caution in WEARER_CAUTIONS:
        assert "".join(caution.split()) in "".join(text.split())
    assert "safe" not in text.lower()


def test_the_same_silhouette_gives_the_same_bytes(folded: CutJob) -> None:
    assert silhouette(folded) == silhouette(folded)


def test_a_stopped_draft_and_another_paper_are_refused(folded: CutJob) -> None:
    outcome = folded.job.outcome
    design = usual_design()
    stopped = work_out(outcome.body, replace(design, reductions=replace(design.reductions, waist=900.0)))
    with pytest.raises(PrintError, match="no silhouette"):
        print_silhouette(stopped, Torso(), folded.job.heading)
    with pytest.raises(PrintError, match="A4 or Letter"):
        silhouette(folded, "roll")


def test_the_quote_shows_her_as_worn_only_where_a_torso_is_given(folded: CutJob) -> None:
    outcome, words = folded.job.outcome, folded.job.heading
    plain = quote_views(outcome, folded.cutting, None, words.unit, words.fraction)
    assert [view.name for view in plain] == ["Front", "Back"]
    *same, worn = quote_views(outcome, folded.cutting, Torso(), words.unit, words.fraction)
    assert [view.name for view in same] == ["Front", "Back"]
    assert worn.name.startswith("As worn: waist ")


def test_on_the_quote_she_is_drawn_round_the_garment_only(folded: CutJob) -> None:
    worn = worn_for(folded.job.outcome, Torso(), folded.cutting)
    assert worn is not None
    whole, part = (worn_view(worn, "As worn", whole=whole).bounds() for whole in (True, False))
    garment = np.concatenate(worn_view(worn, "As worn").fills)
    assert part[1] == pytest.approx(garment[:, 1].min() - AROUND_MM, abs=25.0)
    assert whole[1] < part[1] < part[3] < whole[3]


def test_the_outline_before_is_dashed_only_where_it_was_another(folded: CutJob) -> None:
    outcome = folded.job.outcome
    worn = worn_for(outcome, Torso())
    assert worn is not None
    before = [stroke for stroke in worn_view(worn, "As worn").strokes if stroke.role == "fold"]
    drawn_in = any(abs(level.reduction) > 5 for level in outcome.levels)
    assert bool(before) == drawn_in
