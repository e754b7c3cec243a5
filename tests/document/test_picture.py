"""The picture works out the cutting when it is asked for, and once."""

from __future__ import annotations

import pytest

import workbench.pieces
from tests.document import example
from workbench.document import (
    Project,
    Session,
    picture_of,
    set_allowance_of,
    set_boning,
    set_measurement,
    set_reduction,
)
from workbench.draft import Outcome
from workbench.pieces import Cutting, Layer, LayerName, Making, cutting_of, layer_of


@pytest.fixture
def worked(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """What has been worked out so far."""
    done: list[str] = []

    def whole(outcome: Outcome, making: Making) -> Cutting:
        done.append("cutting")
        return cutting_of(outcome, making)

    def alone(outcome: Outcome, making: Making, name: LayerName) -> Layer:
        done.append(name)
        return layer_of(outcome, making, name)

    monkeypatch.setattr(workbench.pieces, "cutting_of", whole)
    monkeypatch.setattr(workbench.pieces, "layer_of", alone)
    return done


def test_a_drag_cuts_nothing(worked: list[str]) -> None:
    session = Session(example())
    session.begin("Waist")
    for mm in range(40, 60):
        session.preview(set_reduction(session.project, "waist", mm))
        assert not session.picture.stopped
    session.commit()
    assert worked == []


def test_cutting_and_layers_are_worked_out_once_for_a_picture(worked: list[str]) -> None:
    picture = picture_of(example())
    assert picture.cutting is picture.cutting
    assert picture.layer("fashion") is picture.layer("fashion")
    assert picture.all_findings is picture.all_findings
    assert worked == ["cutting", "fashion"]


def test_one_layer_alone_does_not_need_the_rest(worked: list[str]) -> None:
    picture = picture_of(example())
    assert picture.layer("lining") is not None
    assert worked == ["lining"]


def test_a_new_way_of_making_is_a_new_cutting() -> None:
    session = Session(example())
    before = session.picture.cutting
    session.apply("Allowance", set_allowance_of(session.project, "seam", 19.05))
    assert session.picture.cutting is not before
    layer = session.picture.layer("fashion")
    assert layer is not None
    seams = [edge for piece in layer.pieces for edge in piece.edges if edge.kind == "seam"]
    assert {edge.allowance for edge in seams} == {19.05}


def test_while_a_finding_stops_the_draft_the_last_one_is_cut() -> None:
    session = Session(example())
    pieces = session.picture.layer("fashion")
    assert pieces is not None
    session.apply("Waist", set_reduction(session.project, "waist", 690))
    assert session.picture.stopped
    kept = session.picture.layer("fashion")
    assert kept is not None
    assert len(kept.pieces) == len(pieces.pieces)
    assert session.picture.all_findings == session.picture.findings


def test_nothing_drafted_nothing_cut() -> None:
    for project in (Project(), set_measurement(example(), "waist_girth", "")):
        picture = picture_of(project)
        assert picture.cutting is None
        assert picture.layer("fashion") is None
        assert picture.all_findings == picture.findings


def test_findings_of_the_cutting_join_the_others_by_weight() -> None:
    picture = picture_of(set_boning(example(), clearance_mm=250))
    assert picture.cutting is not None
    assert picture.cutting.findings
    assert all(finding in picture.all_findings for finding in picture.cutting.findings)
    assert len(picture.all_findings) == len(picture.findings) + len(picture.cutting.findings)
    severities = [finding.severity for finding in picture.all_findings]
    assert severities == sorted(severities, key=["stop", "over", "near", "attend", "note"].index)
