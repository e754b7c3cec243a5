"""The picture: one project with all that follows from it, as every pane and sheet shows it."""

from __future__ import annotations

from dataclasses import replace
from functools import cached_property
from typing import TYPE_CHECKING

from workbench.body import Body, BodyError, complete
from workbench.document.project import Project
from workbench.draft import (
    Comfort,
    Finding,
    Outcome,
    Place,
    by_weight,
    comfort_of,
    work_out,
)
from workbench.frozen import dataclass
from workbench.pieces import LayerName

if TYPE_CHECKING:
    from workbench.beads import Beading
    from workbench.cloth import Copy, Plan, Quote
    from workbench.document.lays import Lay
    from workbench.pieces import Cutting, Layer
    from workbench.sewing import Step


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
        from workbench.pieces import cutting_of  # a window opens before anything is cut

        return cutting_of(self.good, self.project.making) if self.good else None

    def layer(self, name: LayerName) -> Layer | None:
        """One layer of the draft on show, worked out alone and once; None where there is no draft."""
        from workbench.pieces import layer_of  # likewise

        if name not in self._layers and self.good is not None:
            self._layers[name] = layer_of(self.good, self.project.making, name)
        return self._layers.get(name)

    def lay(self, cloth: str) -> Lay | None:
        """What lies on the cloth of that name, worked out once; None where there is no draft.

        No search is run for it. ValueError where there is no such cloth.
        """
        from workbench.document.lays import lay_of  # a window opens before anything is laid

        own = self.project.cloth(cloth)
        if cloth not in self._lays and self.cutting is not None:
            self._lays[cloth] = lay_of(self.cutting, own, self.project.kept_plan(cloth))
        return self._lays.get(cloth)

    def copies_of(self, cloth: str) -> tuple[Copy, ...]:
        """Every single shape to lay on the cloth of that name; none where there is no draft."""
        lay = self.lay(cloth)
        return lay.copies if lay is not None else ()

    def plan_for(self, cloth: str) -> Plan | None:
        """The plan kept for the cloth while it holds, else a plain one; None where nothing can be laid."""
        lay = self.lay(cloth)
        return lay.plan if lay is not None else None

    @property
    def lays(self) -> tuple[Lay, ...]:
        """What lies on each cloth, in the order of the cloths; none where there is no draft."""
        found = (self.lay(cloth.name) for cloth in self.project.cloths)
        return tuple(lay for lay in found if lay is not None)

    @cached_property
    def cloth_findings(self) -> tuple[Finding, ...]:
        """What to look at in the lay plans, and layers that no cloth is bought for."""
        from workbench.document.lays import no_cloth_findings  # likewise

        if self.cutting is None:
            return ()
        uncovered = no_cloth_findings(self.cutting, self.project.cloths)
        return by_weight((*uncovered, *(finding for lay in self.lays for finding in lay.findings)))

    @cached_property
    def quote(self) -> Quote | None:
        """What the garment costs and what is asked for it; None where there is no draft."""
        from workbench.cloth import quote_of  # likewise

        if self.cutting is None:
            return None
        cloths = (lay.bought for lay in self.lays if lay.copies)
        beading = self.beading
        if beading is None:
            return quote_of(self.cutting, cloths, self.project.quoting)
        from workbench.document.beading import bead_notions, quoting_with_beads

        quoting = quoting_with_beads(self.project.quoting, beading)
        return quote_of(self.cutting, cloths, quoting, bead_notions(beading))

    @cached_property
    def beading(self) -> Beading | None:
        """Every bead of the plan; None where there is no draft or nothing is to be beaded."""
        if self.cutting is None or self.good is None or self.project.beads.empty:
            return None
        from workbench.beads import beading_of  # most garments have no beads

        return beading_of(self.good, self.project.making, self.cutting.bones, self.project.beads)

    @cached_property
    def sewing(self) -> tuple[Step, ...]:
        """The order in which it is sewn; none where there is no draft."""
        from workbench.sewing import sewing_order

        if self.cutting is None:
            return ()
        if self.beading is None:
            return sewing_order(self.cutting, self.project.making)
        from workbench.document.beading import bead_minutes

        minutes = bead_minutes(self.beading)
        return sewing_order(self.cutting, self.project.making, self.beading.count.total, minutes)

    @cached_property
    def _lays(self) -> dict[str, Lay]:
        return {}

    @cached_property
    def _layers(self) -> dict[LayerName, Layer]:
        return {}

    @cached_property
    def all_findings(self) -> tuple[Finding, ...]:
        """The findings with those of the cutting among them; works the cutting out."""
        if not self.current or self.cutting is None:
            return self.findings
        of_beads = self.beading.findings if self.beading is not None else ()
        return by_weight((*self.findings, *self.cutting.findings, *of_beads))

    @property
    def current(self) -> bool:
        """Whether the draft on show is the one of this project."""
        return self.good is not None and self.good is self.outcome

    @property
    def stopped(self) -> bool:
        """Whether a finding keeps this project from being drafted."""
        return self.outcome is None or self.outcome.draft is None


def picture_of(project: Project, before: Picture | None = None) -> Picture:
    """The project worked out; ``before`` lends its last good draft should this one be stopped.

    It lends all that an edit of something else leaves as it was, too: what is cut when a
    price is typed, what lies on a cloth when another one is chosen.
    """
    if before is not None and _drafted_alike(project, before.project):
        picture = replace(before, project=project)
        _lend(before, picture)
        return picture
    last_good = before.good if before else None
    try:
        body = complete(project.taken())
    except BodyError as error:
        return Picture(project, None, None, None, (_refused(error),), last_good)
    outcome, said = _fitted(body, project) if project.fittings else (work_out(body, project.design), ())
    comfort = comfort_of(outcome, project.limits)
    findings = by_weight((*outcome.findings, *said, *comfort.findings))
    good = outcome if outcome.draft is not None else last_good
    return Picture(project, body, outcome, comfort, findings, good)


def _fitted(body: Body, project: Project) -> tuple[Outcome, tuple[Finding, ...]]:
    """The draft with what fittings changed; what that was, and what of it no longer suits the bodice."""
    from workbench.fitting import carried, fitted_note  # most bodices are not fitted yet

    corrections, left_out = carried(project.fittings, project.design)
    outcome = work_out(body, project.design, corrections)
    note = fitted_note(outcome) if outcome.draft is not None else None
    return outcome, left_out if note is None else (*left_out, note)


def _drafted_alike(one: Project, other: Project) -> bool:
    return (one.measurements, one.design, one.limits, one.fittings) == (
        other.measurements,
        other.design,
        other.limits,
        other.fittings,
    )


def _lend(before: Picture, picture: Picture) -> None:
    """Hand on what has been worked out already and is the same for both."""
    project, old = picture.project, before.project
    if project.making != old.making:
        return
    picture._layers.update(before._layers)
    if "cutting" in vars(before):
        # where a cached property keeps what it has worked out
        vars(picture)["cutting"] = before.cutting
    if project.beads == old.beads:
        for name in ("beading", "sewing"):
            if name in vars(before):
                vars(picture)[name] = vars(before)[name]
    if before._lays:
        _lend_lays(before, picture)


def _lend_lays(before: Picture, picture: Picture) -> None:
    """Nothing is laid anew because a cloth costs more, or there is less of it."""
    from workbench.document.lays import lent  # likewise

    project, old = picture.project, before.project
    for cloth in project.cloths:
        lay = before._lays.get(cloth.name)
        if lay is not None and project.kept_plan(cloth.name) == old.kept_plan(cloth.name):
            same = lent(lay, cloth)
            if same is not None:
                picture._lays[cloth.name] = same


def _refused(error: BodyError) -> Finding:
    return Finding(
        "stop", "body", error.sentence, error.lengths, place=Place(field=f"measurements.{error.key}")
    )
