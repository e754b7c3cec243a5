"""Invented bodies and designs to print."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache

import pytest

from workbench.body import Limits, complete
from workbench.draft import Comfort, Outcome, Reductions, comfort_of, usual_design, work_out
from workbench.pieces import LAYERS, Cutting, LayerChoice, Making, cutting_of
from workbench.sheets import Heading, PrintChoice, print_pdf

BODY_MM = {
    "bust_girth": 965.2,
    "underbust_girth": 812.8,
    "waist_girth": 736.6,
    "top_hip_girth": 914.4,
    "upper_chest_girth": 889.0,
    "shoulder_to_bust": 266.7,
    "shoulder_to_underbust": 349.25,
    "shoulder_to_waist": 431.8,
    "bust_span": 190.5,
    "waist_to_top_hip": 95.25,
    "underarm_to_waist": 209.55,
    "nape_to_waist": 400.05,
}
"""Invented: bust 38, waist 29 in."""


@dataclass(frozen=True)
class Job:
    """Everything a print is made from."""

    outcome: Outcome
    comfort: Comfort
    heading: Heading

    def pdf(self, **choice: object) -> bytes:
        return _printed(self, PrintChoice(**choice))  # type: ignore[arg-type]


@cache
def _printed(job: Job, choice: PrintChoice) -> bytes:
    return print_pdf(job.outcome, job.comfort, job.heading, choice)


HEADING = Heading(
    client="Soloist, invented",
    style="Over-bust",
    date="2031-03-01",
    wish="Sings standing",
    measured_by="Example workroom",
    invented=True,
    measurements=(("Bust", "38 in", False), ("Top hip", "36 in", True)),
    limits=(("Waist reduction", "10 %"),),
)


def job(shape: str, front: int, back: int, waist_mm: float, **heading: object) -> Job:
    design = usual_design(shape, front, back)  # type: ignore[arg-type]
    design = replace(design, reductions=Reductions(waist=waist_mm))
    outcome = work_out(complete(BODY_MM), design)
    assert outcome.draft is not None, [finding.text("in") for finding in outcome.findings]
    return _Hashable(outcome, comfort_of(outcome, Limits()), replace(HEADING, **heading))  # type: ignore[arg-type]


class _Hashable(Job):
    """Known by identity, so that each print is made once."""

    __hash__ = object.__hash__
    __eq__ = object.__eq__


@pytest.fixture(scope="session")
def gown() -> Job:
    """Eight panels, over-bust, within its limit at the waist."""
    return job("over_bust", 4, 4, 50.8)


@pytest.fixture(scope="session")
def belt() -> Job:
    """Four panels, under-bust, far over its limit."""
    return job("under_bust", 2, 2, 152.4, style="Under-bust", unit="cm")


@pytest.fixture(scope="session", params=["gown", "belt"])
def either(request: pytest.FixtureRequest) -> Job:
    found: Job = request.getfixturevalue(request.param)
    return found


@dataclass(frozen=True)
class CutJob:
    """A job with its pieces."""

    job: Job
    cutting: Cutting
    making: Making

    def pdf(self, **choice: object) -> bytes:
        return _printed_pieces(self, PrintChoice(**choice))  # type: ignore[arg-type]


@cache
def _printed_pieces(cut: CutJob, choice: PrintChoice) -> bytes:
    return print_pdf(cut.job.outcome, cut.job.comfort, cut.job.heading, choice, cut.cutting)


class _CutHashable(CutJob):
    __hash__ = object.__hash__
    __eq__ = object.__eq__


EVERY_LAYER = tuple(LayerChoice(layer, True, net=layer == "interfacing") for layer in LAYERS)


def cut_job(job: Job, making: Making) -> CutJob:
    cutting = cutting_of(job.outcome, making)
    assert cutting.pieces
    return _CutHashable(job, cutting, making)


@pytest.fixture(scope="session")
def folded(gown: Job) -> CutJob:
    """Every layer of eight panels, the front on the fold."""
    return cut_job(gown, Making(layers=EVERY_LAYER))


@pytest.fixture(scope="session")
def busked(belt: Job) -> CutJob:
    """The usual layers of four panels, a busk in front."""
    return cut_job(belt, Making(front="busk"))


@pytest.fixture(scope="session", params=["folded", "busked"])
def either_cut(request: pytest.FixtureRequest) -> CutJob:
    found: CutJob = request.getfixturevalue(request.param)
    return found
