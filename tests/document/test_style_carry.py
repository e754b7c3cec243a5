"""A style on another body: what stays as it is, what keeps its proportion, what is said to have given."""

from __future__ import annotations

import csv
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.document import example
from tests.draft.strategies import bodies, designs
from tests.draft.test_properties import check_draft
from tests.draft.test_real_bodies import FOUR_SETS
from workbench.body import LEVEL_GIRTH, Body, Length, Limits, complete
from workbench.cloth import KeptPlan
from workbench.document import (
    Client,
    Picture,
    Project,
    carried,
    new_project,
    picture_of,
    read_project,
    set_measurement,
    set_panels,
    set_pin,
    set_weight,
    to_bytes,
)
from workbench.document.carry_lines import carried_walk
from workbench.document.file import project_from
from workbench.draft import Finding, ShapePoint

ROOT = Path(__file__).parents[2]
DEMOS = sorted((ROOT / "demo_projects").glob("*.bodice"))
INCH = 25.4
HER = Client(name="Another (invented)")
Findings = tuple[Finding, ...]


def lengths(taken: dict[str, float]) -> dict[str, Length]:
    return {key: Length(mm, repr(float(mm)), "mm") for key, mm in taken.items()}


def every_measure(project: Project) -> dict[str, float]:
    """Taken or estimated, so that nothing is estimated anew on a changed body."""
    return dict(complete(project.taken()).values)


def put(style: Project, taken: dict[str, float]) -> tuple[Project, Findings]:
    return carried(style, lengths(taken), style.unit, HER)


def with_every_measure(project: Project) -> Project:
    return replace(project, measurements=lengths(every_measure(project)))


def gave(findings: Findings) -> list[str]:
    return sorted(finding.code for finding in findings if finding.code.startswith("carried_"))


def half_sums(picture: Picture) -> dict[str, float]:
    """Panel widths added up at each level, mm."""
    assert picture.outcome is not None
    assert picture.outcome.draft is not None
    panels = picture.outcome.draft.panels
    return {level.name: sum(p.widths[level.name] for p in panels) for level in picture.outcome.levels}


def ladder(project: Project) -> tuple[list[float], list[float]]:
    """Walks and finished girths of the levels."""
    outcome = picture_of(project).outcome
    assert outcome is not None
    return [level.walk for level in outcome.levels], [level.finished for level in outcome.levels]


def own_lines(style: Project) -> Project:
    """With a neckline and a hem of her own, from those of the style."""
    draft = picture_of(style).good
    assert draft is not None
    assert draft.draft is not None
    neckline, hem = draft.draft.neckline.points, draft.draft.hem.points
    return replace(style, design=replace(style.design, neckline=neckline, hem=hem))


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
def test_on_its_own_body_a_style_is_what_it_was(path: Path) -> None:
    style = own_lines(read_project(path))
    project, findings = carried(style, style.measurements, style.unit, HER)
    assert project.design == style.design
    assert project.making == style.making
    assert set(gave(findings)) <= {"carried_limits", "carried_at_hand", "carried_busk"}


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
def test_an_inch_more_at_every_level_is_half_an_inch_more_of_panels(path: Path) -> None:
    """Grading: the half sum moves by 1/2 in exactly (identity, derived)."""
    style = with_every_measure(own_lines(read_project(path)))
    taken = every_measure(style)
    larger = {**taken, **{key: taken[key] + INCH for key in LEVEL_GIRTH.values()}}
    project, findings = put(style, larger)
    before, after = half_sums(picture_of(style)), half_sums(picture_of(project))
    for level, half in before.items():
        # twice what the tape girth of one draft may be off, on the half
        assert after[level] - half == pytest.approx(INCH / 2, abs=0.05), level
    assert project.design == style.design
    assert "carried_pin" not in gave(findings)
    for old, new in zip(ladder(style)[1], ladder(project)[1], strict=True):
        assert new - old == pytest.approx(INCH, abs=1e-9)


@pytest.mark.parametrize("inches", [-2, 1, 3])
def test_reductions_stay_lengths_unless_asked_to_be_parts(inches: int) -> None:
    style = with_every_measure(example())
    taken = every_measure(style)
    other = {**taken, "waist_girth": taken["waist_girth"] + inches * INCH}
    as_lengths, _ = put(style, other)
    assert as_lengths.design.reductions == style.design.reductions
    as_parts, _ = carried(style, lengths(other), "in", HER, "percent")
    share = style.design.reductions.waist / taken["waist_girth"]
    assert as_parts.design.reductions.waist == pytest.approx(share * other["waist_girth"])


def test_a_pin_keeps_its_part_of_the_intake() -> None:
    style = with_every_measure(set_pin(example(), "front", 1, "waist", 20.0))
    taken = every_measure(style)
    project, findings = put(style, {**taken, "waist_girth": taken["waist_girth"] - 2 * INCH})
    before, after = picture_of(style).outcome, picture_of(project).outcome
    assert before is not None
    assert after is not None
    old, new = before.line("front", "waist"), after.line("front", "waist")
    assert new.needed == pytest.approx(old.needed + INCH / 2)
    for one, other in zip(old.takings, new.takings, strict=True):
        assert other.total / new.needed == pytest.approx(one.total / old.needed)
    assert gave(findings) == ["carried_pin"]
    pin = next(finding for finding in findings if finding.code == "carried_pin")
    assert pin.value_mm == pytest.approx(20.0 * new.needed / old.needed)
    assert pin.text("cm") == (
        "Waist: the front’s seam 1 takes in 2.4 cm a quarter instead of 2.0 cm, the same part of the intake."
    )


def all_pinned_at_the_bust() -> Project:
    """The bust is the widest level and takes in nothing; every front seam there is pinned to just that."""
    style = with_every_measure(example())
    for seam in (1, 2, 3):
        style = set_pin(style, "front", seam, "bust", 0.0)
    return style


def test_pins_that_no_longer_add_up_are_freed_and_named() -> None:
    style = all_pinned_at_the_bust()
    assert not picture_of(style).stopped
    taken = every_measure(style)
    project, findings = put(style, {**taken, "top_hip_girth": taken["bust_girth"] + 4 * INCH})
    assert not picture_of(project).stopped
    assert gave(findings) == ["carried_pin_freed"] * 3
    first = next(finding for finding in findings if finding.code == "carried_pin_freed")
    assert first.text("in").startswith(
        "Bust: the front’s seam 1 is no longer pinned to 0 in: with it the intake of "
    )
    assert all(not seam.shares for seam in project.design.front.seams)


def test_a_pin_against_the_intake_is_no_part_of_it_and_stays() -> None:
    style = with_every_measure(set_pin(example(), "back", 4, "waist", -6.0))
    taken = every_measure(style)
    project, findings = put(style, {**taken, "waist_girth": taken["waist_girth"] - 2 * INCH})
    assert project.design == style.design
    assert gave(findings) == []


def test_what_cannot_be_freed_stops_and_says_so() -> None:
    style = example()
    for seam in (1, 2, 3):
        style = set_weight(style, "front", seam, 0.0)
    project, findings = put(style, style.taken())
    assert picture_of(project).stopped
    assert findings[0].code == "ledger_short"


def test_the_seam_through_the_bust_point_moves_with_it() -> None:
    style = with_every_measure(example("over_bust"))
    taken = every_measure(style)
    project, findings = put(style, {**taken, "bust_span": taken["bust_span"] + 20.0})
    assert gave(findings) == ["carried_bust_seam"]
    moved = next(finding for finding in findings if finding.code == "carried_bust_seam")
    assert moved.value_mm == pytest.approx(0.5 * taken["bust_span"] + 10.0)
    draft = picture_of(project).outcome
    assert draft is not None
    assert draft.draft is not None
    # the bust level takes in nothing here, so that the first panel ends at the seam
    assert draft.draft.panels[0].widths["bust"] == pytest.approx(moved.value_mm, abs=0.05)


def test_lines_of_her_own_lie_between_the_levels_as_before() -> None:
    style = with_every_measure(own_lines(example()))
    taken = every_measure(style)
    longer = {**taken, "shoulder_to_waist": taken["shoulder_to_waist"] + 30.0, "waist_to_top_hip": 110.0}
    project, _ = put(style, longer)
    old, new = ladder(style)[0], ladder(project)[0]
    for name in ("neckline", "hem"):
        was, now = getattr(style.design, name), getattr(project.design, name)
        assert [(point.u, point.smooth) for point in was] == [(point.u, point.smooth) for point in now]
        for one, other in zip(was, now, strict=True):
            assert other.t == carried_walk(one.t, old, new)
    # drawn from the lines of the style, which follow the body, they still lie on them
    followed = picture_of(replace(project, design=replace(project.design, neckline=None, hem=None))).outcome
    assert followed is not None
    assert followed.draft is not None
    for name in ("neckline", "hem"):
        points = getattr(followed.draft, name).points
        assert [p.t for p in getattr(project.design, name)] == pytest.approx([p.t for p in points])


def test_what_was_decided_for_the_first_client_alone_stays_with_her() -> None:
    style = example()
    style = replace(
        style,
        limits=replace(Limits(), waist_percent=18.0),
        plans=(KeptPlan(style.cloths[0].name, "0", 100.0, (), "by hand"),),
        cloths=(replace(style.cloths[0], at_hand_mm=900.0), *style.cloths[1:]),
        quoting=replace(style.quoting, fitting_dates="3 May", included="one fitting"),
        making=replace(style.making, front="busk", busk_mm=280.0),
    )
    project, findings = carried(style, style.measurements, "cm", HER)
    assert (project.client, project.unit, project.limits, project.plans) == (HER, "cm", Limits(), ())
    assert project.cloths[0].at_hand_mm == 0.0
    assert (project.quoting.fitting_dates, project.quoting.included) == ("", "one fitting")
    assert project.making == style.making
    assert gave(findings) == ["carried_at_hand", "carried_busk", "carried_limits"]


def test_a_style_without_a_body_keeps_its_lengths_and_says_so() -> None:
    style = new_project()
    line = (ShapePoint(0.0, 120.0), ShapePoint(6.0, 100.0))
    style = replace(style, design=replace(style.design, neckline=line))
    project, findings = put(style, example().taken())
    assert project.design == style.design
    assert gave(findings) == ["carried_as_it_was"]
    assert gave(put(new_project(), example().taken())[1]) == []


def test_a_body_that_cannot_be_drafted_names_the_measurement() -> None:
    project, findings = carried(example(), {}, "in", HER)
    assert [(f.severity, f.place.field) for f in findings] == [("stop", "measurements.waist_girth")]
    assert project.client == HER


def drafted(project: Project) -> bool:
    outcome = picture_of(project).outcome
    return outcome is not None and check_draft(outcome) is not None


@pytest.mark.parametrize("path", [DEMOS[0], DEMOS[1], DEMOS[3]], ids=lambda path: path.stem)
def test_every_fourth_woman_of_bdims(path: Path) -> None:
    """Heinz, Peterson, Johnson, Kerk 2003, J. Stat. Educ. 11(2), 260 women; read."""
    style = own_lines(read_project(path))
    with (ROOT / "tests" / "data" / "bdims_women.csv").open() as file:
        rows = list(csv.DictReader(file))[::4]
    done = 0
    for row in rows:
        figures = {"waist_girth": "waist_cm", "hip_girth": "hip_cm", "upper_chest_girth": "upper_chest_cm"}
        project, findings = put(style, {key: 10 * float(row[column]) for key, column in figures.items()})
        ok = drafted(project)
        assert ok or any(finding.severity == "stop" for finding in findings)
        done += ok
    assert done >= len(rows) - 3, f"only {done} of {len(rows)} could be drafted"


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
@pytest.mark.parametrize("figures", FOUR_SETS)
def test_the_four_consistent_sets(path: Path, figures: tuple[float, ...]) -> None:
    """Test data of clad-body 0.6.1 (read)."""
    keys = ("bust_girth", "underbust_girth", "waist_girth", "hip_girth", "nape_to_waist")
    project, findings = put(read_project(path), {key: 10 * cm for key, cm in zip(keys, figures, strict=True)})
    assert drafted(project) or findings[0].severity == "stop"


many = settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow])


def project_on(body: Body, style: Project) -> Project:
    return replace(style, measurements=lengths({key: body.values[key] for key in sorted(body.values)}))


@many
@given(bodies(), bodies(), designs())
def test_carried_over_a_style_drafts_or_says_why_not(one: Body, other: Body, design: object) -> None:
    style = replace(project_on(one, new_project()), design=design)  # type: ignore[arg-type]
    project, findings = put(style, dict(other.values))
    assert project_from(to_bytes(project)) == project
    assert drafted(project) or findings[0].severity == "stop"
    picture = picture_of(project)
    assert picture.outcome is not None
    # every seam has some weight here, so that a ledger that does not close is one with a pin left in it
    assert all(line.closes for line in picture.outcome.ledger)


@many
@given(bodies(), bodies(), designs())
def test_there_and_back_is_where_it_was(one: Body, other: Body, design: object) -> None:
    style = replace(project_on(one, new_project()), design=design)  # type: ignore[arg-type]
    there, _ = put(style, dict(other.values))
    back, _ = put(there, dict(one.values))
    for name in ("neckline", "hem"):
        was, now = getattr(style.design, name), getattr(back.design, name)
        assert (was is None) == (now is None)
        if was is not None:
            assert [p.t for p in now] == pytest.approx([p.t for p in was], abs=1e-6)
    assert back.design.reductions == style.design.reductions


_ladders = st.lists(st.floats(5, 200), min_size=4, max_size=5)


@given(
    _ladders, st.lists(st.floats(5, 200), min_size=5, max_size=5), st.floats(-600, 900), st.floats(-600, 900)
)
def test_heights_keep_their_order_and_their_share(
    gaps: list[float], others: list[float], one: float, other: float
) -> None:
    before = [sum(gaps[:count]) - gaps[0] for count in range(1, len(gaps) + 1)]
    after = [sum(others[:count]) - others[0] for count in range(1, len(gaps) + 1)]
    low, high = sorted((one, other))
    assert carried_walk(low, before, after) <= carried_walk(high, before, after) + 1e-9
    for index, walk in enumerate(before):
        assert carried_walk(walk, before, after) == pytest.approx(after[index], abs=1e-9)
    for index in range(len(before) - 1):
        middle = 0.5 * (before[index] + before[index + 1])
        wanted = 0.5 * (after[index] + after[index + 1])
        assert carried_walk(middle, before, after) == pytest.approx(wanted, abs=1e-9)
    assert carried_walk(before[0] - 50, before, after) == pytest.approx(after[0] - 50)
    assert carried_walk(before[-1] + 50, before, after) == pytest.approx(after[-1] + 50)


def test_more_panels_in_the_style_go_with_it() -> None:
    style = set_panels(example(), "front", 4)
    other = set_measurement(example(), "waist_girth", "29")
    project, _ = carried(style, other.measurements, "in", HER)
    assert project.design.front.panel_count == 4
    assert drafted(project)
