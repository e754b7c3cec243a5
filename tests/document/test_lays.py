"""What lies on the cloths of a picture: the plan that is kept while it holds, else a plain one at once."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from decimal import Decimal

import pytest
import shapely

from tests.document import example
from workbench.cloth import Cloth, Copy, Plan, Solve, bottom_left, kept, laid
from workbench.document import (
    Lay,
    Picture,
    Project,
    Session,
    add_cloth,
    keep_plan,
    laying,
    new_project,
    picture_of,
    pin_piece,
    place_by_hand,
    set_allowance_of,
    set_client,
    set_cloth,
    set_cloth_layers,
    set_layer_made,
    set_measurement,
    set_price,
    set_quoting,
    set_reduction,
)
from workbench.document import lays as module
from workbench.document.laying import better_lay

FASHION = "Fashion cloth"


def lay_of(project: Project, cloth: str = FASHION) -> Lay:
    lay = picture_of(project).lay(cloth)
    assert lay is not None
    return lay


def with_plan(project: Project, cloth: str = FASHION) -> Project:
    """The project with the plain plan of a cloth kept."""
    plan = picture_of(project).plan_for(cloth)
    assert plan is not None
    return keep_plan(project, replace(kept(plan), how="Kept in the test."))


def outlines(lay: Lay) -> list[shapely.Polygon]:
    assert lay.plan is not None
    copies = {copy.key: copy for copy in lay.copies}
    return [shapely.Polygon(laid(copies[own.piece, own.copy], own)) for own in lay.plan.placed]


@pytest.fixture
def no_search(monkeypatch: pytest.MonkeyPatch) -> None:
    """Any search for a plan fails the test."""

    def started(*_: object) -> None:
        raise AssertionError("a search was started")

    monkeypatch.setattr(Solve, "improve", started)


@pytest.mark.usefixtures("no_search")
def test_every_piece_lies_on_its_cloth_without_a_search() -> None:
    """Counts against the pieces, places against shapely."""
    picture = picture_of(example("over_bust"))
    assert picture.cutting is not None
    for lay in picture.lays:
        wanted = sum(piece.count for piece in picture.cutting.pieces if piece.layer in lay.cloth.layers)
        polygons = outlines(lay)
        assert len(polygons) == len(lay.copies) == wanted
        assert lay.findings == ()
        assert lay.plan is not None
        cloth = shapely.box(0, 0, lay.cloth.width_mm, lay.plan.length_mm)
        assert all(cloth.buffer(0.1).contains(polygon) for polygon in polygons)
        union = shapely.union_all(polygons).area
        assert union == pytest.approx(sum(polygon.area for polygon in polygons), rel=1e-6)
        assert lay.plan.utilisation == pytest.approx(union / cloth.area, rel=1e-6)
        assert lay.buy is not None
        assert lay.buy.length_mm >= lay.plan.length_mm


def test_a_kept_plan_is_shown_while_it_holds() -> None:
    project = with_plan(example())
    lay = lay_of(project)
    assert (lay.state, lay.findings) == ("current", ())
    assert lay.plan is not None
    assert lay.plan.how == "Kept in the test."
    assert kept(lay.plan) == project.kept_plan(FASHION)
    for same in (
        set_cloth(project, FASHION, price=Decimal(40), shrinkage_percent=4.0, at_hand_mm=900.0),
        set_client(project, name="Another"),
        set_allowance_of(set_allowance_of(project, "side", 30), "side", 25.4),
        set_layer_made(project, "lining", False),
    ):
        assert lay_of(same).state == "current"


@pytest.mark.parametrize("with_kept", [False, True])
def test_a_price_lays_nothing_anew(with_kept: bool) -> None:
    session = Session(with_plan(example()) if with_kept else example())
    before = session.picture.lay(FASHION)
    assert before is not None
    dearer = set_cloth(session.project, FASHION, price=Decimal(40), shrinkage_percent=4.0, at_hand_mm=900.0)
    session.apply("Price of a cloth", dearer)
    after, afresh = session.picture.lay(FASHION), lay_of(dearer)
    assert after is not None
    assert after.plan is before.plan
    assert (after.cloth, after.buy, after.state) == (afresh.cloth, afresh.buy, afresh.state)
    assert after.buy != before.buy


@pytest.mark.parametrize(
    "edit",
    [
        lambda p: set_allowance_of(p, "side", 30),
        lambda p: set_reduction(p, "waist", 30),
        lambda p: set_measurement(p, "waist_girth", "28 1/4"),
        lambda p: set_cloth(p, FASHION, width_mm=1200.0),
        lambda p: set_cloth(p, FASHION, run="one_way"),
        lambda p: set_cloth_layers(p, FASHION, ("fashion",)),
        lambda p: set_layer_made(p, "modesty", False),
    ],
)
def test_a_plan_is_stale_at_once_when_pieces_or_cloth_change(edit: Callable[[Project], Project]) -> None:
    session = Session(with_plan(example()))
    shown = session.picture.lay(FASHION)
    assert shown is not None
    assert shown.state == "current"
    session.apply("Change", edit(session.project))
    lay = session.picture.lay(FASHION)
    assert lay is not None
    assert lay.state == "stale"
    assert lay.plan is not None
    assert lay.plan.how != "Kept in the test."
    assert [finding.code for finding in lay.findings] == ["plan_stale"]
    assert "plan_stale" in {finding.code for finding in session.picture.cloth_findings}
    assert session.project.kept_plan(FASHION) is not None
    session.undo()
    again = session.picture.lay(FASHION)
    assert again is not None
    assert again.state == "current"


def test_a_piece_laid_by_hand_is_where_it_was_put_and_measured_there() -> None:
    project = with_plan(example())
    first = project.plans[0].placed[0]
    far = place_by_hand(project, FASHION, first.piece, first.copy, y=first.y + 2000)
    lay = lay_of(far)
    assert lay.state == "current"
    assert lay.plan is not None
    own = next(each for each in lay.plan.placed if (each.piece, each.copy) == (first.piece, first.copy))
    assert (own.x, own.y) == (first.x, first.y + 2000)
    top = max(polygon.bounds[3] for polygon in outlines(lay))
    assert lay.plan.length_mm == pytest.approx(top)
    assert lay.findings == ()


def test_pieces_laid_over_each_other_are_said() -> None:
    project = with_plan(example())
    first, second = project.plans[0].placed[:2]
    over = place_by_hand(project, FASHION, first.piece, first.copy, x=second.x, y=second.y)
    assert "overlap" in {finding.code for finding in lay_of(over).findings}


def test_nothing_drafted_nothing_laid() -> None:
    picture = picture_of(Project())
    assert picture.lay(FASHION) is None
    assert picture.plan_for(FASHION) is None
    assert picture.quote is None
    assert not (*picture.copies_of(FASHION), *picture.lays, *picture.cloth_findings)


def test_a_cloth_nobody_knows_is_refused() -> None:
    with pytest.raises(ValueError, match="There is no cloth called “Brocade”"):
        picture_of(example()).lay("Brocade")


def test_a_piece_wider_than_the_cloth_is_said_and_the_rest_is_laid() -> None:
    picture = picture_of(set_cloth(example(), "Lining cloth", width_mm=150.0))
    lay = picture.lay("Lining cloth")
    assert lay is not None
    assert lay.trouble is not None
    assert (lay.plan, lay.buy, lay.findings) == (None, None, (lay.trouble,))
    assert lay.copies
    assert [other.plan is None for other in picture.lays] == [False, False, True, False]
    assert picture.quote is not None
    assert "Lining cloth" in picture.quote.unpriced


def test_a_remnant_without_room_for_all_has_no_cost_yet() -> None:
    small = ((0.0, 0.0), (600.0, 0.0), (600.0, 400.0), (0.0, 300.0))
    project = set_cloth(example(), FASHION, remnant=small, price=Decimal(20))
    lay = lay_of(project)
    assert lay.plan is not None
    assert lay.plan.left_over
    quote = picture_of(project).quote
    assert quote is not None
    line = next(line for line in quote.inside if line.key == FASHION)
    assert line.amount is None
    assert "more is needed" in line.words


def test_a_layer_without_a_cloth_is_said() -> None:
    project = set_cloth_layers(example(), "Lining cloth", ())
    findings = picture_of(project).cloth_findings
    assert [finding.code for finding in findings] == ["no_cloth"]
    assert findings[0].text("in").startswith("Lining is cut from no cloth")
    assert picture_of(set_layer_made(project, "lining", False)).cloth_findings == ()
    assert picture_of(add_cloth(project, "Cotton", ("lining",))).cloth_findings == ()


@pytest.fixture
def worked(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The cloths that have been laid so far."""
    done: list[str] = []

    def counted(copies: Sequence[Copy], cloth: Cloth) -> Plan:
        done.append(cloth.name)
        return bottom_left(copies, cloth)

    monkeypatch.setattr(module, "bottom_left", counted)
    return done


def test_what_an_edit_leaves_alone_is_not_worked_out_again(worked: list[str]) -> None:
    session = Session(example())
    assert session.picture.quote is not None
    assert worked == [cloth.name for cloth in session.project.cloths]
    worked.clear()
    cutting = session.picture.cutting
    session.apply("Price", set_price(session.project, "cord", Decimal(2)))
    assert session.picture.quote is not None
    session.apply("Wish", set_client(session.project, wish="To sing."))
    assert len(session.picture.lays) == 4
    assert session.picture.cutting is cutting
    assert worked == []
    session.apply("Width", set_cloth(session.project, "Lining cloth", width_mm=1500.0))
    assert len(session.picture.lays) == 4
    assert worked == ["Lining cloth"]
    worked.clear()
    session.apply("Allowance", set_allowance_of(session.project, "seam", 19.05))
    assert session.picture.cutting is not cutting
    assert len(session.picture.lays) == 4
    assert len(worked) == 4


def test_what_is_lent_is_what_would_be_worked_out() -> None:
    session = Session(example())
    assert session.picture.quote is not None
    for project in (
        set_quoting(session.project, rate=Decimal(30)),
        set_cloth(set_quoting(session.project, rate=Decimal(30)), FASHION, price=Decimal(12)),
        with_plan(set_cloth(session.project, FASHION, price=Decimal(12))),
        set_cloth(session.project, FASHION, name="Silk"),
    ):
        session.apply("Edit", project)
        assert_same(session.picture, picture_of(project))


def assert_same(one: Picture, other: Picture) -> None:
    assert [(lay.cloth, lay.state, lay.plan, lay.buy) for lay in one.lays] == [
        (lay.cloth, lay.state, lay.plan, lay.buy) for lay in other.lays
    ]
    assert one.quote == other.quote
    assert one.findings == other.findings
    assert one.all_findings == other.all_findings


def test_quote_takes_what_is_bought_at_its_price() -> None:
    """At 16 a yard each eighth of a yard costs 2; nothing else has a price."""
    project = example()
    for cloth in project.cloths:
        project = set_cloth(project, cloth.name, price=Decimal(16))
    quote = picture_of(project).quote
    assert quote is not None
    amounts = [line.amount for line in quote.inside if line.kind == "cloth" and line.amount is not None]
    lengths = [lay.buy.length_mm for lay in picture_of(project).lays if lay.buy]
    assert amounts == [Decimal(round(length / 914.4 * 8)) * 2 for length in lengths]
    assert quote.sums.costs == sum(amounts, Decimal(0))


def test_a_search_never_gives_a_longer_plan_and_keeps_pins() -> None:
    project = with_plan(example())
    first = project.plans[0].placed[3]
    project = pin_piece(project, FASHION, first.piece, first.copy, True)
    lay = lay_of(project)
    told: list[Plan] = []
    better, findings = better_lay(lay, 1.0, lambda plan, _: told.append(plan))
    assert findings == ()
    assert lay.plan is not None
    assert better.plan is not None
    assert better.plan.length_mm <= lay.plan.length_mm
    pinned = [own for own in better.plan.placed if own.pinned]
    assert [(own.piece, own.copy, own.x, own.y) for own in pinned] == [
        (first.piece, first.copy, first.x, first.y)
    ]
    assert better.state == ("found" if told else "current")


def test_no_time_no_search(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(laying, "Solve", None)
    lay = lay_of(example())
    assert better_lay(lay, 0.0, lambda *_: None) == (lay, ())
    none_cut = lay_of(set_cloth_layers(new_project_that_drafts(), FASHION, ()))
    assert better_lay(none_cut, 5.0, lambda *_: None) == (none_cut, ())


def new_project_that_drafts() -> Project:
    return replace(new_project(unit="cm"), measurements=example().measurements)


def test_a_search_that_is_interrupted_ends_what_it_started(monkeypatch: pytest.MonkeyPatch) -> None:
    ended: list[bool] = []

    class Endless:
        running = True
        findings = ()

        def __init__(self, *_: object) -> None:
            self.best = None

        def poll(self) -> None:
            raise KeyboardInterrupt

        def cancel(self) -> None:
            ended.append(True)

    monkeypatch.setattr(laying, "Solve", Endless)
    with pytest.raises(KeyboardInterrupt):
        better_lay(lay_of(example()), 5.0, lambda *_: None)
    assert ended == [True]
