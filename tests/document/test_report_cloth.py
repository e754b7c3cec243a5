"""Cloth and money in the report: as data, and as lines to read."""

from __future__ import annotations

import json
from dataclasses import replace
from decimal import Decimal
from typing import Any

import numpy as np
import pytest
import shapely

from tests.document import example
from workbench.cloth import HoursRow, PriceRow, Solve, kept
from workbench.document import (
    Project,
    finding_data,
    keep_plan,
    lay_data,
    lay_text,
    picture_of,
    report,
    report_text,
    set_all_hours,
    set_allowance_of,
    set_cloth,
    set_cloth_layers,
    set_currency,
    set_price_row,
    set_quoting,
    set_unit,
)

Data = dict[str, Any]
FASHION = "Fashion cloth"


@pytest.fixture(autouse=True)
def no_search(monkeypatch: pytest.MonkeyPatch) -> None:
    """A report never waits for a search."""

    def started(*_: object) -> None:
        raise AssertionError("a search was started")

    monkeypatch.setattr(Solve, "improve", started)


def data_of(project: Project) -> Data:
    read: Data = json.loads(json.dumps(report(picture_of(project), "client"), allow_nan=False))
    return read


def priced() -> Project:
    """Four cloths, one notion and two steps at prices easy to add up (invented)."""
    project = example()
    for cloth in project.cloths:
        project = set_cloth(project, cloth.name, price=Decimal("8.40"))
    project = set_price_row(project, PriceRow("binding", "Binding", Decimal("0.10"), "yard"))
    project = set_all_hours(project, (HoursRow("Sewing", Decimal("7.25")), HoursRow("Fittings", Decimal(2))))
    return set_quoting(
        project,
        rate=Decimal("31.10"),
        overhead_percent=Decimal(10),
        margin_percent=Decimal("12.5"),
        tax_percent=Decimal(7),
        deposit_percent=Decimal(40),
    )


def kept_in(project: Project) -> Project:
    plan = picture_of(project).plan_for(FASHION)
    assert plan is not None
    return keep_plan(project, kept(plan))


def test_each_cloth_says_what_it_takes_and_what_to_buy() -> None:
    """An eighth of a yard is 114.3 mm; whole ones are bought (international yard of 1959, from memory)."""
    data = data_of(priced())
    assert [cloth["name"] for cloth in data["cloths"]] == [cloth.name for cloth in example().cloths]
    for cloth in data["cloths"]:
        eighths = cloth["buy_length_mm"] / 114.3
        assert eighths == pytest.approx(round(eighths))
        assert 0 <= cloth["buy_length_mm"] - cloth["length_mm"] < 114.3
        assert 0.3 < cloth["utilisation"] < 1
        assert Decimal(cloth["cost"]) == (Decimal("1.05") * round(eighths)).quantize(Decimal("0.01"))
        assert (cloth["plan"], cloth["findings"], cloth["left_over"]) == ("none", [], 0)
    assert data["cloths"][0]["width_mm"] == pytest.approx(45 * 25.4)


def test_utilisation_is_that_of_the_cut_pieces() -> None:
    """Areas of the pieces by shapely, those on the fold twice."""
    data = data_of(example())
    for cloth in data["cloths"]:
        area = sum(
            piece["count"] * (2 if piece["on_fold"] else 1) * shapely.Polygon(piece["cut_outline_mm"]).area
            for piece in data["pieces"]
            if piece["layer"] in cloth["layers"]
        )
        assert cloth["utilisation"] == pytest.approx(area / cloth["width_mm"] / cloth["length_mm"])


def test_a_stale_plan_is_told_apart_from_a_current_one() -> None:
    project = kept_in(example())
    assert data_of(project)["cloths"][0]["plan"] == "current"
    assert data_of(project)["cloths"][1]["plan"] == "none"
    stale = data_of(set_allowance_of(project, "side", 40))
    cloth = stale["cloths"][0]
    assert cloth["plan"] == "stale"
    assert cloth["findings"] == [
        finding for finding in stale["cloth_findings"] if "out of date" in finding["text"]
    ]
    assert cloth["length_mm"] != project.plans[0].length_mm
    text = report_text(picture_of(set_allowance_of(project, "side", 40)))
    assert "the kept one is out of date" in text
    assert "out of date: pieces or cloth have changed since" in " ".join(text.split())


def test_inside_lines_add_up_to_the_price_to_the_coin() -> None:
    quote = data_of(priced())["quote"]
    amounts = [Decimal(line["amount"]) for line in quote["inside"] if line["amount"] is not None]
    sums = {name: Decimal(amount) for name, amount in quote["sums"].items()}
    assert sum(amounts) == sums["price"] == sums["deposit"] + sums["balance"]
    hours = {line["name"]: line["amount"] for line in quote["inside"] if line["kind"] == "hours"}
    assert hours == {"Sewing": "225.48", "Fittings": "62.20"}
    assert all(isinstance(line["amount"], str | None) for line in (*quote["inside"], *quote["client"]))


def test_the_client_reads_no_costs() -> None:
    quote = data_of(priced())["quote"]
    assert {line["kind"] for line in quote["client"]} == {"included", "price", "paid"}
    client = json.dumps(quote["client"])
    for hidden in ("Margin", "Overhead", "Sewing", "31.10", "225.48"):
        assert hidden not in client


def test_what_has_no_price_is_said_and_not_silently_nothing() -> None:
    quote = data_of(example())["quote"]
    assert not quote["complete"]
    assert FASHION in quote["unpriced"]
    line = next(line for line in quote["inside"] if line["key"] == FASHION)
    assert line["amount"] is None
    assert "no price yet" in line["words"]
    text = report_text(picture_of(example()))
    assert "no price" in text[text.index("\nCloth\n") : text.index("What it costs you")]
    assert "There is no usable price yet for" in text


def test_a_layer_without_cloth_is_in_the_report() -> None:
    data = data_of(set_cloth_layers(example(), "Lining cloth", ()))
    assert [finding["code"] for finding in data["cloth_findings"]] == ["no_cloth"]
    text = report_text(picture_of(set_cloth_layers(example(), "Lining cloth", ())))
    assert "nothing is cut from it" in text
    assert "Lining is cut from no cloth" in text


def test_a_cloth_that_cannot_be_laid_is_in_the_report_with_the_reason() -> None:
    project = set_cloth(example(), "Lining cloth", width_mm=150.0)
    cloth = data_of(project)["cloths"][2]
    assert (cloth["length_mm"], cloth["buy_length_mm"], cloth["cost"]) == (None, None, None)
    assert cloth["findings"][0]["code"] == "piece_too_wide"
    assert "cannot be laid" in report_text(picture_of(project))


def test_amounts_are_said_in_her_currency() -> None:
    project = set_currency(set_unit(priced(), "cm", 8), symbol="kr", decimals=0, before=False)
    text = report_text(picture_of(project))
    money = text[text.index("What it costs you") : text.index("What to look at")]
    assert "kr" in money
    assert "$" not in money
    assert "." not in money.split("Overhead")[1].split("Price")[0].replace("12.5", "")


def test_places_make_the_outlines_from_the_pieces() -> None:
    """The rule of the docstring, done here in numpy, gives every outline as it is said to lie."""
    project = set_cloth(example("over_bust"), FASHION, run="either_way")
    picture = picture_of(project)
    lay = picture.lay(FASHION)
    assert lay is not None
    data = lay_data(lay, project, lambda finding: finding_data(finding, project))
    pieces = {piece["name"]: piece for piece in data_of(project)["pieces"] if piece["layer"] == "fashion"}
    seen = 0
    for placed in data["placements"]:
        layer, name = placed["piece"].split("/")
        if layer != "fashion" or pieces[name]["on_fold"]:
            continue
        ring = np.array(pieces[name]["cut_outline_mm"]) * ((-1 if placed["mirrored"] else 1), 1)
        angle = np.radians(placed["rotation"])
        turn = np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])
        there = ring @ turn.T + (placed["x"], placed["y"])
        np.testing.assert_allclose(np.array(placed["outline_mm"]), there, atol=1e-9)
        seen += 1
    assert seen >= 6
    assert len(data["placements"]) == data["pieces"]


def test_plans_as_text_name_every_piece_with_its_place() -> None:
    project = kept_in(priced())
    lays = picture_of(project).lays
    text = lay_text(lays, project)
    for lay in lays:
        part = text.split(f"\n{lay.cloth.name}, ")[1].split("\n\n")[0]
        assert lay.buy is not None
        assert f"To buy: {lay.buy.words}, $" in part
        for copy in lay.copies:
            assert copy.name in part
    assert "turned over" in text
    empty = set_cloth_layers(project, FASHION, ())
    assert "Nothing is cut from it." in lay_text(picture_of(empty).lays[:1], empty)


def test_what_went_wrong_on_the_way_is_told() -> None:
    project = set_cloth_layers(example(), "Lining cloth", ())
    finding = picture_of(project).cloth_findings[0]
    text = lay_text((), replace(project), [finding])
    assert text.index("What to look at") < text.index("Lining is cut from no cloth")
