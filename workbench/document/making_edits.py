"""Edits of how the bodice is made: allowances, layers, notches, front, lacing, bones.

As all edits, each takes the project as it stands and returns the project as it should
be; ValueError in one sentence for a name nobody knows or a figure out of its bounds.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, TypeVar

from workbench.document.changing import with_entries
from workbench.document.making_table import MAKING_ROWS, MakingGroup, span_words
from workbench.document.project import Project
from workbench.pieces import (
    EDGE_KINDS,
    LAYERS,
    USUAL_SET_IN,
    BonePlace,
    EdgeKind,
    EdgeName,
    FrontMade,
    LayerChoice,
    LayerName,
    OwnAllowance,
)

Figure = str | float | bool | None
_Record = TypeVar("_Record")

_HAIR = 1e-6
"""Own choice: mm, rounding of sums."""

EDGE_NAMES: tuple[EdgeName, ...] = ("left", "right", "neckline", "hem")
BONE_PLACES: tuple[BonePlace, ...] = ("seams", "mid_panel", "beside_opening", "centre_front")


def set_allowance_of(project: Project, kind: EdgeKind, mm: float) -> Project:
    """The project with another allowance for one kind of edge, mm."""
    if kind not in EDGE_KINDS:
        raise ValueError(f"There is no kind of edge called “{kind}”.")
    allowances = _changed(project, "allowances", project.making.allowances, {kind: mm})
    return _with_making(project, allowances=allowances)


def set_own_allowance(
    project: Project, layer: LayerName, panel: int, edge: EdgeName, mm: float | None
) -> Project:
    """The project with an allowance, mm, for one edge of one piece alone; None takes its kind's again."""
    _known(layer, LAYERS, "layer")
    _known(edge, EDGE_NAMES, "edge")
    _known_panel(project, panel)
    others = [
        own
        for own in project.making.own_allowances
        if (own.layer, own.panel, own.edge) != (layer, panel, edge)
    ]
    if mm is not None:
        blank = OwnAllowance(layer, panel, edge, 0.0)
        others.append(_changed(project, "own_allowance", blank, {"allowance_mm": mm}))
    # in one order, so that the same decisions are the same project however they came about
    return _with_making(project, own_allowances=tuple(sorted(others, key=_order)))


def set_layer_made(project: Project, layer: LayerName, on: bool) -> Project:
    """The project with a layer made, or left out altogether."""
    return _with_layer(project, layer, made=on)


def set_layer_panel(project: Project, layer: LayerName, panel: int, in_it: bool) -> Project:
    """The project with a piece of one panel in a layer, or without it; panel 0 is at the centre front."""
    _known(layer, LAYERS, "layer")
    _known_panel(project, panel)
    left_out = set(project.making.layer(layer).left_out) - {panel}
    return _with_layer(project, layer, left_out=tuple(sorted(left_out if in_it else left_out | {panel})))


def set_turn(project: Project, layer: LayerName, mm: float) -> Project:
    """The project with a hair added at every joining seam of a layer, mm; negative where it is taken."""
    return _with_layer(project, layer, turn_mm=mm)


def set_net(project: Project, layer: LayerName, on: bool) -> Project:
    """The project with a layer cut net of its allowance, or with it."""
    return _with_layer(project, layer, net=on)


def set_marks(project: Project, **changes: Figure) -> Project:
    """The project with other notches, by the names of :class:`Marks`."""
    return _with_making(project, marks=_changed(project, "marks", project.making.marks, changes))


def set_front(project: Project, front: FrontMade) -> Project:
    """The project with its centre front on the fold, or cut apart for a busk."""
    return set_making(project, front=front)


def set_busk(project: Project, mm: float | None) -> Project:
    """The project with a busk of this length, mm; None chooses the longest that fits."""
    return set_making(project, busk_mm=mm)


def set_lacing(project: Project, **changes: Figure) -> Project:
    """The project with another closing of the back, by the names of :class:`Opening` in the making.

    With another closing a usual set-in becomes the usual one of that closing.
    """
    before = project.making.opening
    usual = USUAL_SET_IN.get(str(changes.get("closing", before.closing)))
    if usual is not None and abs(before.set_in_mm - USUAL_SET_IN[before.closing]) < _HAIR:
        changes = {"set_in_mm": usual, **changes}
    return _with_making(project, opening=_changed(project, "opening", before, changes))


def set_boning(project: Project, **changes: Figure) -> Project:
    """The project with other bones, by the names of :class:`Boning`; where they lie has its own edit."""
    if "places" in changes:
        raise ValueError("The places of the bones are set one by one.")
    return _with_making(project, boning=_changed(project, "boning", project.making.boning, changes))


def set_bone_place(project: Project, place: BonePlace, on: bool) -> Project:
    """The project with bones in one kind of place, or without."""
    _known(place, BONE_PLACES, "place for bones")
    boning = project.making.boning
    wanted = set(boning.places) - {place} | ({place} if on else set())
    places = tuple(each for each in BONE_PLACES if each in wanted)
    return _with_making(project, boning=replace(boning, places=places))


def set_making(project: Project, **changes: Figure) -> Project:
    """The project with other single figures of the making: facing depth, tape width, binding, corners."""
    for name in changes:
        if name != "front" and ("", name) not in MAKING_ROWS:
            raise ValueError(f"The making has no figure called “{name}”.")
    return replace(project, making=_changed(project, "", project.making, changes))


def _changed(project: Project, group: MakingGroup, record: _Record, changes: Mapping[str, object]) -> _Record:
    """The record with some entries changed, of the right kind and within their bounds."""
    group_words = group.replace("_", " ") or "making"
    changed = with_entries(record, changes, group_words)
    for name in changes:
        row, value = MAKING_ROWS.get((group, name)), getattr(changed, name)
        if row is not None and value is not None and not row.low <= value <= row.high:
            raise ValueError(f"{row.label}: it must be {span_words(row, project.unit)}.")
    return changed


def _with_making(project: Project, **changes: Any) -> Project:
    return replace(project, making=replace(project.making, **changes))


def _with_layer(project: Project, layer: LayerName, **changes: object) -> Project:
    _known(layer, LAYERS, "layer")
    layers: tuple[LayerChoice, ...] = tuple(
        _changed(project, "layer", choice, changes) if choice.layer == layer else choice
        for choice in project.making.layers
    )
    return _with_making(project, layers=layers)


def _known(name: str, names: tuple[str, ...], what: str) -> None:
    if name not in names:
        raise ValueError(f"There is no {what} called “{name}”.")


def _known_panel(project: Project, panel: int) -> None:
    count = project.design.panel_count
    if not 0 <= panel < count:
        raise ValueError(f"There is no panel number {panel + 1}; the half has {count}.")


def _order(own: OwnAllowance) -> tuple[int, int, int]:
    return LAYERS.index(own.layer), own.panel, EDGE_NAMES.index(own.edge)
