"""The picture: one project with all that follows from it, as every pane and sheet shows it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from workbench.body import Body, BodyError, complete
from workbench.document.project import Project
from workbench.draft import Comfort, Finding, Outcome, Place, by_weight, comfort_of, work_out
from workbench.pieces import Cutting, Layer, LayerName, cutting_of, layer_of


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
    """Those of body, draft and comfort, the most important first."""
    good: Outcome | None

    @cached_property
    def cutting(self) -> Cutting | None:
        """All that is cut and bought for the draft on show; None where there is none.

        Worked out when it is first asked for: too dear for every move of a drag.
        """
        return cutting_of(self.good, self.project.making) if self.good else None

    def layer(self, name: LayerName) -> Layer | None:
        """One layer of the draft on show, worked out alone and once; None where there is no draft."""
        if name not in self._layers and self.good is not None:
            self._layers[name] = layer_of(self.good, self.project.making, name)
        return self._layers.get(name)

    @cached_property
    def _layers(self) -> dict[LayerName, Layer]:
        return {}

    @cached_property
    def all_findings(self) -> tuple[Finding, ...]:
        """The findings with those of the cutting among them; works the cutting out."""
        if not self.current or self.cutting is None:
            return self.findings
        return by_weight((*self.findings, *self.cutting.findings))

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
