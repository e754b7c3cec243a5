"""Fittings in the draft of a project: said wherever the draft is, and gone without a trace when undone."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings

from tests.document import example
from tests.document.fitting_values import FITTED, fittings
from tests.sheets.readback import text_of
from workbench.body import read_length
from workbench.document import (
    Client,
    Paper,
    Project,
    Session,
    carried,
    picture_of,
    printed,
    report,
    report_text,
    set_fitting,
    set_pinned,
    set_rule,
    set_unit,
    to_bytes,
)
from workbench.draft import Draft
from workbench.fitting import Change, Fitting

INCH = 25.4
PLAIN = example()
WITH = replace(PLAIN, fittings=FITTED)


def drafted(project: Project) -> Draft:
    outcome = picture_of(project).outcome
    assert outcome is not None
    assert outcome.draft is not None
    return outcome.draft


def outlines(project: Project) -> list[bytes]:
    return [panel.outline.tobytes() for panel in drafted(project).panels]


# --- applied and undone --------------------------------------------------------------------------


def test_applied_and_undone_gives_the_same_bytes() -> None:
    session = Session(PLAIN)
    before, drawn = to_bytes(PLAIN), outlines(PLAIN)
    session.apply("Fitting", WITH)
    assert outlines(session.project) != drawn
    session.undo()
    assert to_bytes(session.project) == before
    assert outlines(session.project) == drawn


def test_switched_off_gives_the_same_outlines() -> None:
    drawn = outlines(PLAIN)
    assert outlines(set_fitting(WITH, 0, applied=False)) == drawn
    off = WITH
    for which in range(len(FITTED[0].changes)):
        off = set_pinned(off, 0, which, on=False)
    assert outlines(off) == drawn
    again = off
    for which in range(len(FITTED[0].changes)):
        again = set_pinned(again, 0, which, on=True)
    assert to_bytes(again) == to_bytes(WITH)
    assert outlines(again) == outlines(WITH)


@given(fittings)
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_whatever_was_pinned_is_drafted_or_refused_by_name(some: tuple[Fitting, ...]) -> None:
    picture = picture_of(replace(PLAIN, fittings=some))
    assert picture.outcome is not None
    if picture.outcome.draft is None:
        assert picture.findings[0].severity == "stop"
        assert len(picture.findings[0].text("in")) > 20
    undone = replace(picture.project, fittings=())
    assert outlines(undone) == outlines(PLAIN)


def test_what_is_only_noted_is_not_drafted_anew() -> None:
    picture = picture_of(WITH)
    again = picture_of(replace(WITH, client=Client("Somebody, invented")), picture)
    assert again.outcome is picture.outcome


def test_a_change_that_no_longer_suits_is_a_finding_of_the_picture() -> None:
    gone = Fitting("2031-05-20", "", (4, 3), changes=(Change("seam", 5.0, "waist", 1),))
    codes = [finding.code for finding in picture_of(replace(PLAIN, fittings=(gone,))).findings]
    assert "fitting_seam_gone" in codes
    assert outlines(replace(PLAIN, fittings=(gone,))) == outlines(PLAIN)


# --- said ----------------------------------------------------------------------------------------


def test_the_report_as_data_has_fittings_and_what_they_come_to() -> None:
    data = json.loads(json.dumps(report(picture_of(WITH), "client")))
    assert data["fittings"][0]["date"] == "2031-05-20"
    assert data["fittings"][0]["changes"][0]["amount_mm"] == 6.35
    waist = next(level for level in data["levels"] if level["name"] == "waist")
    assert waist["fitted_mm"] == pytest.approx(12.7)
    plain = json.loads(json.dumps(report(picture_of(PLAIN), "client")))
    was = next(level for level in plain["levels"] if level["name"] == "waist")
    assert was["finished_girth_mm"] - waist["finished_girth_mm"] == pytest.approx(12.7)
    assert plain["fittings"] == []


def test_the_report_to_read_names_every_line() -> None:
    text = report_text(picture_of(set_pinned(WITH, 0, 1, on=False)))
    assert "20 May 2031 in calico" in text
    assert "- Take in ¼ in at side seam, waist" in text
    assert "- Shorten ½ in between waist and underbust (off)" in text
    assert "Raise ⅜ in the neckline 50 % across front 2: for the brooch" in text
    assert "With the corrections of fittings: waist ½ in smaller round the body." in text
    assert "Fittings" not in report_text(picture_of(PLAIN))
    assert "Nothing of it is carried" in report_text(picture_of(set_fitting(WITH, 0, applied=False)))
    assert "6.4 mm" not in report_text(picture_of(set_unit(WITH, "cm", 8)))


def test_the_first_page_says_that_fittings_are_in() -> None:
    said = " ".join(text_of(printed(picture_of(WITH), Paper()))[0].split())
    assert "With the corrections of fittings: bust ½ in lower, underbust ½ in lower," in said
    assert "waist ½ in smaller round the body." in said
    assert "corrections of fittings" not in text_of(printed(picture_of(PLAIN), Paper()))[0]


def test_one_figure_is_said_as_it_was_reckoned() -> None:
    """The girth the reduction was taken from is a girth of the body, whatever was pinned later."""
    one = set_rule(WITH, "one_figure")
    for project in (one, replace(one, fittings=())):
        said = " ".join(text_of(printed(picture_of(project), Paper()))[0].split())
        assert "reckoned from the smaller girth, 27¾ in" in said


# --- another client ------------------------------------------------------------------------------


def test_another_client_gets_the_style_without_the_fittings() -> None:
    measurements = dict(PLAIN.measurements)
    measurements["waist_girth"] = read_length("29", "in")
    with_fitting, _ = carried(WITH, measurements, "in", Client("Another, invented"))
    without, _ = carried(PLAIN, measurements, "in", Client("Another, invented"))
    assert with_fitting == without
    assert with_fitting.fittings == ()
