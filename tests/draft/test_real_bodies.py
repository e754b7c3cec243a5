"""Real bodies, from open data: every one gives a valid draft, or a finding that names the reason."""

from __future__ import annotations

import csv
from dataclasses import replace

import pytest

from tests.draft.conftest import DATA
from tests.draft.test_properties import check_draft
from workbench.body import Body, complete
from workbench.draft import Reductions, Style, usual_design, work_out

STYLES: tuple[Style, ...] = ("under_bust", "over_bust")


def bdims_women() -> list[Body]:
    """The 260 women of bdims (Heinz and others 2003, J. Stat. Educ. 11(2); read).

    Waist, hip and upper chest were taken; bust, underbust, top hip and every length are
    this program's estimates.
    """
    with (DATA / "bdims_women.csv").open() as file:
        rows = list(csv.DictReader(file))
    return [
        complete(
            {
                "waist_girth": 10 * float(row["waist_cm"]),
                "hip_girth": 10 * float(row["hip_cm"]),
                "upper_chest_girth": 10 * float(row["upper_chest_cm"]),
            }
        )
        for row in rows
    ]


def test_the_table_has_the_published_percentiles() -> None:
    with (DATA / "bdims_women.csv").open() as file:
        rows = list(csv.DictReader(file))
    assert len(rows) == 260
    for column, low, middle, high in (
        ("waist_cm", 60.5, 68.3, 85.0),
        ("hip_cm", 85.8, 95.0, 108.1),
        ("upper_chest_cm", 77.0, 85.5, 97.1),
    ):
        ranked = sorted(float(row[column]) for row in rows)
        assert ranked[13] == pytest.approx(low, abs=0.6)
        assert ranked[130] == pytest.approx(middle, abs=0.3)
        assert ranked[246] == pytest.approx(high, abs=1.2)


@pytest.mark.parametrize("percent", [0, 5, 10])
@pytest.mark.parametrize("style", STYLES)
def test_every_woman_of_bdims(style: Style, percent: int) -> None:
    drafted = 0
    for body in bdims_women():
        assert "bust_girth" in body.estimated
        reduction = body.value("waist_girth") * percent / 100
        design = replace(usual_design(style), reductions=Reductions(waist=reduction))
        drafted += check_draft(work_out(body, design)) is not None
    assert drafted >= 255, f"only {drafted} of 260 could be drafted"


# Bust, underbust, waist, hip, back neck point to waist in cm: test data of clad-body 0.6.1 (read).
FOUR_SETS = (
    (92.4, 80.5, 71.5, 96.9, 41.0),
    (95.8, 84.1, 78.9, 102.2, 39.7),
    (97.6, 83.6, 82.2, 108.2, 39.0),
    (112.7, 99.0, 106.7, 120.6, 38.8),
)


@pytest.mark.parametrize("figures", FOUR_SETS)
@pytest.mark.parametrize("style", STYLES)
def test_the_four_consistent_sets(figures: tuple[float, ...], style: Style) -> None:
    keys = ("bust_girth", "underbust_girth", "waist_girth", "hip_girth", "nape_to_waist")
    body = complete({key: 10 * cm for key, cm in zip(keys, figures, strict=True)})
    outcome = work_out(body, usual_design(style))
    draft = check_draft(outcome)
    assert draft is not None, [finding.text("cm") for finding in outcome.findings]
    assert draft.tape_girth["bust"] == pytest.approx(10 * figures[0], abs=0.1)
    assert draft.tape_girth["waist"] == pytest.approx(10 * figures[2] - 50.8, abs=0.1)


# ASTM D5585-11e1 Table 1, misses, inches (read; a few cells): bust, underbust, upper chest, waist curvy.
ASTM = {"8": (36.25, 30.0, 35.875, 28.0), "16": (42.125, 35.75, 40.625, 34.5)}


@pytest.mark.parametrize("size", ASTM)
def test_two_sizes_of_the_standard(size: str) -> None:
    keys = ("bust_girth", "underbust_girth", "upper_chest_girth", "waist_girth")
    body = complete({key: 25.4 * inches for key, inches in zip(keys, ASTM[size], strict=True)})
    draft = check_draft(work_out(body, usual_design("over_bust")))
    assert draft is not None
    assert draft.tape_girth["upper_chest"] == pytest.approx(25.4 * ASTM[size][2], abs=0.1)
