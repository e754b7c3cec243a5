"""A project worked out to its last list: it is drafted, or a finding says why not."""

from __future__ import annotations

import traceback
from collections.abc import Callable
from time import process_time

from tests.robust.tally import Row
from workbench.document import NoDraftError, Picture, Project, picture_of, report, report_text

_MOST_SECONDS = 20.0


def worked_through(project: Project, tally: Row, called: str) -> None:
    """Count one more project, with what became of it."""
    start = process_time()
    try:
        outcome = _outcome(picture_of(project))
    except Exception as error:  # whatever it is, it is what is looked for
        where = traceback.extract_tb(error.__traceback__)[-1]
        at = f"{where.filename.rpartition('workbench/')[2]}:{where.lineno}"
        tally.fall(f"{called}: {type(error).__name__}: {error} ({at})")
        return
    took = process_time() - start
    if took > _MOST_SECONDS:
        tally.fall(f"{called}: took {took:.0f} s")
        return
    slowest = float(tally.figures.get("slowest s", "0"))
    tally.figures["slowest s"] = f"{max(took, slowest):.1f}"
    tally.note(outcome)


def _outcome(picture: Picture) -> str:
    for finding in picture.all_findings:
        assert len(finding.text("in", 8)) > 20
    for part in _PARTS:
        part(picture)
    try:
        report(picture, "x")
        report_text(picture)
    except NoDraftError as refused:
        return _refused(picture, str(refused))
    return "drafted"


def _refused(picture: Picture, said: str) -> str:
    assert picture.stopped, said
    assert said.endswith("."), said
    return "not drafted"


_PARTS: tuple[Callable[[Picture], object], ...] = (
    lambda picture: picture.cutting,
    lambda picture: picture.lays,
    lambda picture: picture.cloth_findings,
    lambda picture: picture.quote,
    lambda picture: picture.beading,
    lambda picture: picture.sewing,
)
