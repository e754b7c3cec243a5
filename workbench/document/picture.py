"""The picture: one project with all that follows from it, as every pane and sheet shows it."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.body import Body, BodyError, complete
from workbench.document.project import Project
from workbench.draft import Comfort, Finding, Outcome, Place, by_weight, comfort_of, work_out


@dataclass(frozen=True)
class Picture:
    """What is known after one redraft.

    ``outcome`` is None while the measurements cannot be drafted; ``good`` is the last
    outcome that had a draft, and stays on the canvas while a finding stops the next one.
    """

    project: Project
    body: Body | None
    outcome: Outcome | None
    comfort: Comfort | None
    findings: tuple[Finding, ...]
    """All of them, the most important first."""
    good: Outcome | None

    @property
    def current(self) -> bool:
        """Whether the draft on show is the one of this project."""
        return self.good is not None and self.good is self.outcome

    @property
    def stopped(self) -> bool:
        """Whether a finding keeps this project from being drafted."""
        return self.outcome is None or self.outcome.draft is None


def picture_of(project: Project, before: Picture | None = None) -> Picture:
    """The project worked out; ``before`` lends its last good draft should this one be stopped."""
    last_good = before.good if before else None
    try:
        body = complete(project.taken())
    except BodyError as error:
        return Picture(project, None, None, None, (_refused(error),), last_good)
    outcome = work_out(body, project.design)
    comfort = comfort_of(outcome, project.limits)
    findings = by_weight((*outcome.findings, *comfort.findings))
    good = outcome if outcome.draft is not None else last_good
    return Picture(project, body, outcome, comfort, findings, good)


def _refused(error: BodyError) -> Finding:
    return Finding(
        "stop", "body", error.sentence, error.lengths, place=Place(field=f"measurements.{error.key}")
    )
