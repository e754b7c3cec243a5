"""Invented bodies and designs to hand on."""

from __future__ import annotations

import pytest

from tests.sheets.conftest import EVERY_LAYER, HEADING, CutJob, cut_job, job
from workbench.exchange import ExportChoice, Format, export
from workbench.pieces import Making


@pytest.fixture(scope="session", params=["gown", "belt"])
def cut(request: pytest.FixtureRequest) -> CutJob:
    """Eight over-bust panels on the fold with every layer, and four under-bust ones with a busk."""
    if request.param == "gown":
        return cut_job(job("over_bust", 4, 4, 50.8), Making(layers=EVERY_LAYER))
    return cut_job(job("under_bust", 2, 2, 152.4), Making(front="busk"))


def exported(cut: CutJob, kind: Format, **choice: object) -> bytes:
    return export(cut.job.outcome, cut.cutting, HEADING, kind, ExportChoice(**choice))  # type: ignore[arg-type]
