"""Edits of the cloths and of what lies on them.

As all edits, each takes the project as it stands and returns the project as it should
be; ValueError in one sentence for a name nobody knows or a figure out of its bounds.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from decimal import Decimal

from workbench.body import Unit
from workbench.cloth import Cloth, KeptPlan, Placed, faults_of
from workbench.document.changing import refuse, with_entries
from workbench.document.cloth_checks import (
    MOST_CLOTHS,
    figure_problems,
    name_problems,
    one_plan_problems,
)
from workbench.document.cloth_table import CLOTH_ROWS, cloth_span_words
from workbench.document.project import Project
from workbench.document.usual_cloths import STEP_OF
from workbench.pieces import LAYERS, LayerName

ClothFigure = str | float | Decimal | Sequence[tuple[float, float]] | None
BY_HAND = "Some of it was laid by hand."


def add_cloth(project: Project, name: str, layers: Iterable[LayerName] = ()) -> Project:
    """The project with one more cloth at the end; layers given to it are taken off the others."""
    name = name.strip()
    _must_be_new(project, name)
    if len(project.cloths) >= MOST_CLOTHS:
        raise ValueError(f"A project has at most {MOST_CLOTHS} cloths.")
    cloth = Cloth(name, (), step=STEP_OF[project.unit])
    return set_cloth_layers(replace(project, cloths=(*project.cloths, cloth)), name, layers)


def remove_cloth(project: Project, name: str) -> Project:
    """The project without a cloth and its lay plan; what was cut from it lies on none."""
    project.cloth(name)
    others = tuple(cloth for cloth in project.cloths if cloth.name != name)
    return replace(drop_plan(project, name), cloths=others)


def set_cloth(project: Project, cloth: str, **changes: ClothFigure) -> Project:
    """The project with other figures of a cloth, by the names of :class:`Cloth`; its plan goes along."""
    before = project.cloth(cloth)
    if "layers" in changes:
        raise ValueError("The layers of a cloth have an edit of their own.")
    after = with_entries(before, changes, "cloth")
    after = replace(after, name=after.name.strip())
    if after.name != before.name:
        _must_be_new(project, after.name, besides=before.name)
    _refuse_figures(after, changes, project.unit)
    refuse(figure_problems(after, ("cloth",)))
    for fault in faults_of(after):
        raise ValueError(fault.text(project.unit))
    plans = tuple(replace(p, cloth=after.name) if p.cloth == cloth else p for p in project.plans)
    return replace(_with_cloth(project, before, after), plans=plans)


def set_cloth_layers(project: Project, cloth: str, layers: Iterable[LayerName]) -> Project:
    """The project with these layers cut from a cloth, and from no other one."""
    project.cloth(cloth)
    wanted = set(layers)
    for layer in wanted.difference(LAYERS):
        raise ValueError(f"There is no layer called “{layer}”.")
    # in one order, so that the same decisions are the same project however they came about
    ordered = tuple(layer for layer in LAYERS if layer in wanted)
    return replace(
        project,
        cloths=tuple(
            replace(each, layers=ordered)
            if each.name == cloth
            else replace(each, layers=tuple(layer for layer in each.layers if layer not in wanted))
            for each in project.cloths
        ),
    )


def keep_plan(project: Project, plan: KeptPlan) -> Project:
    """The project with this lay plan for its cloth, instead of the one kept before."""
    project.cloth(plan.cloth)
    refuse(one_plan_problems(plan, ("plan",)))
    others = (kept for kept in project.plans if kept.cloth != plan.cloth)
    order = [cloth.name for cloth in project.cloths]
    plans = sorted((*others, plan), key=lambda kept: order.index(kept.cloth))
    return replace(project, plans=tuple(plans))


def drop_plan(project: Project, cloth: str) -> Project:
    """The project without a lay plan kept for a cloth."""
    project.cloth(cloth)
    return replace(project, plans=tuple(plan for plan in project.plans if plan.cloth != cloth))


def place_by_hand(
    project: Project,
    cloth: str,
    piece: str,
    copy: int,
    length_mm: float | None = None,
    **changes: float | bool,
) -> Project:
    """The project with one piece of a kept plan laid elsewhere, by the names of :class:`Placed`.

    ``length_mm`` is the cloth the plan takes then; without it the length stays as it was kept,
    and the plan is measured anew when it is worked out. ValueError where no plan is kept.
    """
    plan, before = _placed_in(project, cloth, piece, copy)
    after = with_entries(before, changes, "piece laid by hand")
    if after == before and length_mm is None:
        return project
    placed = tuple(after if each is before else each for each in plan.placed)
    length = plan.length_mm if length_mm is None else float(length_mm)
    return keep_plan(project, replace(plan, placed=placed, length_mm=length, how=_by_hand(plan.how)))


def pin_piece(project: Project, cloth: str, piece: str, copy: int, on: bool) -> Project:
    """The project with one piece of a kept plan pinned where it lies, or free again."""
    plan, before = _placed_in(project, cloth, piece, copy)
    placed = tuple(replace(each, pinned=on) if each is before else each for each in plan.placed)
    return keep_plan(project, replace(plan, placed=placed))


def _placed_in(project: Project, cloth: str, piece: str, copy: int) -> tuple[KeptPlan, Placed]:
    project.cloth(cloth)
    plan = project.kept_plan(cloth)
    if plan is None:
        raise ValueError(f"No lay plan is kept for “{cloth}” yet.")
    for placed in plan.placed:
        if (placed.piece, placed.copy) == (piece, copy):
            return plan, placed
    raise ValueError(f"There is no piece “{piece}”, copy {copy}, in the lay plan of “{cloth}”.")


def _by_hand(how: str) -> str:
    return how if how.endswith(BY_HAND) else f"{how} {BY_HAND}".strip()


def _must_be_new(project: Project, name: str, besides: str = "") -> None:
    """ValueError for a name that is none, or that another cloth has in whichever case of letters."""
    refuse(name_problems(name, ("the name of a cloth",)))
    for cloth in project.cloths:
        if cloth.name != besides and cloth.name.casefold() == name.casefold():
            raise ValueError(f"There is a cloth called “{cloth.name}” already.")


def _refuse_figures(cloth: Cloth, changes: Iterable[str], unit: Unit) -> None:
    for name in changes:
        row = CLOTH_ROWS.get(name)
        if row is not None and not row.low <= getattr(cloth, name) <= row.high:
            raise ValueError(f"{row.label}: it must be {cloth_span_words(row, unit)}.")


def _with_cloth(project: Project, before: Cloth, after: Cloth) -> Project:
    return replace(project, cloths=tuple(after if cloth is before else cloth for cloth in project.cloths))
