"""A shape tried on: what the project on the desk would be in it, without changing anything."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from workbench.body import BodyError, Fraction, Unit, complete
from workbench.document import CARRIED, Client, Picture, Project, carried, in_shape, picture_of
from workbench.draft import Finding
from workbench.styles.kept import KeptShape


@dataclass(frozen=True)
class TriedOn:
    """What using a shape comes to."""

    shape: KeptShape
    project: Project
    """The project in this shape."""
    picture: Picture
    """What is drawn: that project, or the shape on its invented body while nothing is measured."""
    on_her: bool
    """Whether it is drawn on her figures."""
    findings: tuple[Finding, ...]
    """What had to give and what to look at, the gravest first."""

    @property
    def why_not(self) -> str:
        """Why it cannot be drafted on her figures, in one sentence; empty where it can."""
        return self._stop if self.on_her else ""

    @property
    def missing(self) -> str:
        """What is still wanted of her figures to draw it on them, in one sentence; empty where nothing is."""
        return "" if self.on_her else self._stop

    @property
    def _stop(self) -> str:
        return next(iter(self._said(each for each in self.findings if each.severity == "stop")), "")

    @property
    def gave(self) -> tuple[str, ...]:
        """What had to give for this body, a sentence each."""
        return self._said(finding for finding in self.findings if finding.code.startswith(CARRIED))

    @property
    def to_look_at(self) -> tuple[str, ...]:
        """What the draft says, a sentence each, without the mere notes."""
        own = (finding for finding in self.findings if not finding.code.startswith(CARRIED))
        return self._said(finding for finding in own if finding.severity != "note")

    def _said(self, findings: Iterable[Finding]) -> tuple[str, ...]:
        unit, fraction = self.project.unit, self.project.fraction
        return tuple(finding.text(unit, fraction) for finding in findings)


def try_on(shape: KeptShape, project: Project) -> TriedOn:
    """The project in the shape, in proportion to her body as far as that is known."""
    changed, findings = in_shape(project, shape.worked_out)
    changed = replace(changed, style_name=shape.name)
    if _measured(project):
        return TriedOn(shape, changed, picture_of(changed), True, findings)
    shown = replace(shape.project, unit=project.unit, fraction=project.fraction)
    return TriedOn(shape, changed, picture_of(shown), False, findings)


def _measured(project: Project) -> bool:
    try:
        complete(project.taken())
    except BodyError:
        return False
    return True


def begun_from(shape: KeptShape, unit: Unit, fraction: Fraction = 8) -> Project:
    """A project for somebody new in this shape, with nothing measured yet."""
    project, _ = carried(shape.project, {}, unit, Client())
    return replace(project, fraction=fraction, style_name=shape.name)
