"""What lies on each cloth as it is drawn: a plan that is kept stays in sight when it is stale."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.cloth import Buy, Cloth, Copy, KeptPlan, Plan, lie_alike, plan_at
from workbench.document import Picture
from workbench.draft import Finding

_STALE = "plan_stale"


@dataclass(frozen=True)
class Lay:
    """One cloth, what is to be laid on it, and the plan there is."""

    cloth: Cloth
    copies: tuple[Copy, ...] = ()
    plan: Plan | None = None
    """The plan that is drawn; None where nothing can be laid."""
    valid: Plan | None = None
    """The plan that tells what to buy: another one where the one drawn is stale."""
    buy: Buy | None = None
    trouble: Finding | None = None
    """Why nothing can be laid."""
    own: bool = False
    """Whether the plan drawn is the one the project keeps."""
    findings: tuple[Finding, ...] = ()
    """What speaks against cutting it so."""

    @property
    def stale(self) -> bool:
        """Whether the plan drawn was made before pieces or cloth changed."""
        return self.plan is not self.valid


def lay_of(picture: Picture, cloth: Cloth) -> Lay:
    """One cloth of the picture's project; with nothing on it where there is no draft to cut from."""
    found = picture.lay(cloth.name) if picture.current else None
    if found is None:
        return Lay(cloth)
    if not found.copies or found.plan is None:
        return Lay(cloth, found.copies, trouble=found.trouble, findings=found.findings)
    own = picture.project.kept_plan(cloth.name)
    drawn = found.plan
    if own is not None and found.state == "stale":
        drawn = as_it_was(own, found.copies, cloth)
    findings = tuple(_stale(cloth) if each.code == _STALE else each for each in found.findings)
    return Lay(cloth, found.copies, drawn, found.plan, found.buy, None, own is not None, findings)


def alike(one: Lay | None, other: Lay | None) -> bool:
    """Whether the same pieces are to be laid on the same kind of cloth of the same name."""
    if one is None or other is None or one.valid is None or other.valid is None:
        return False
    return one.cloth.name == other.cloth.name and one.valid.made_from == other.valid.made_from


def as_it_was(own: KeptPlan, copies: tuple[Copy, ...], cloth: Cloth) -> Plan:
    """A stale plan with the pieces as they are now, where they lay then."""
    known = {copy.key for copy in copies}
    there = tuple(placed for placed in own.placed if (placed.piece, placed.copy) in known)
    return plan_at(there, copies, cloth, own.how)


def quickly(picture: Picture, before: Picture | None, cloth: Cloth) -> bool:
    """Whether the plan of a cloth is there without cutting or laying anything anew."""
    if before is None or hangs_on(picture) != hangs_on(before):
        return False
    own = picture.project.kept_plan(cloth.name)
    known = next((lay for lay in before.lays if lie_alike(lay.cloth, cloth)), None)
    if known is None:
        return False
    if known.cloth.name == cloth.name and own == before.project.kept_plan(cloth.name):
        return True
    return own is not None and known.plan is not None and own.made_from == known.plan.made_from


def hangs_on(picture: Picture) -> tuple[object, ...]:
    """What pieces are cut from; edits keep the parts they do not change as they are."""
    project = picture.project
    return project.measurements, project.design, project.limits, project.making


def _stale(cloth: Cloth) -> Finding:
    text = "The plan kept for {cloth} is stale: pieces or cloth have changed since it was made."
    remedy = "Until it is laid anew, what to buy is reckoned from a plain plan."
    return Finding("attend", _STALE, text, words={"cloth": cloth.name}, remedy=remedy)
