"""What the foot says in the cloth place."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from workbench.document import Picture
from workbench.draft import Finding, Place
from workbench.pieces import Cutting, LayerName, label_of
from workbench.ui.cloth.bench import Worked
from workbench.ui.cloth.lays import Lay

_HEAVY = ("stop", "over")
_NOT_CUT: tuple[LayerName, ...] = ("waist_tape",)
"""Bought as it is, so that it lies on no cloth."""


def findings_on_cloth(
    picture: Picture, worked: Worked | None, searched: Sequence[Finding] = ()
) -> tuple[Finding, ...]:
    """Limits that are passed, then what the plans have to say, then the rest of the draft."""
    heavy = tuple(finding for finding in picture.findings if finding.severity in _HEAVY)
    light = tuple(finding for finding in picture.findings if finding.severity not in _HEAVY)
    if worked is None or worked.cutting is None:
        return heavy + light
    of_plans = tuple(
        replace(finding, place=_on(number, finding.place))
        for number, lay in enumerate(worked.lays)
        for finding in lay.findings
    )
    amiss = (*of_plans, *_on_no_cloth(picture, worked.cutting), *searched)
    return (*heavy, *amiss, *(() if amiss else _in_order(worked.lays)), *light)


def _on(number: int, place: Place) -> Place:
    """The place with the cloth it is about, so that picking the finding puts that cloth on show."""
    return replace(place, field=f"cloths.{number}.{place.field or ''}")


def _on_no_cloth(picture: Picture, cutting: Cutting) -> tuple[Finding, ...]:
    """Layers with pieces that nobody has given a cloth."""
    given = {layer for cloth in picture.project.cloths for layer in cloth.layers}
    without = [
        label_of(layer.name, picture.project.making)
        for layer in cutting.layers
        if layer.pieces and layer.name not in given and layer.name not in _NOT_CUT
    ]
    if not without:
        return ()
    return (
        Finding(
            "attend",
            "layer_without_cloth",
            "No cloth is given for {layers}, so nothing of it is bought.",
            words={"layers": " and ".join(without)},
            remedy="Choose it among the layers of a cloth.",
        ),
    )


def _in_order(lays: Sequence[Lay]) -> tuple[Finding, ...]:
    """One sentence that answers how much to buy of each cloth."""
    bought = [
        f"{lay.cloth.name} {lay.buy.words if lay.buy.length_mm > 0 else 'nothing, you have enough'}"
        for lay in lays
        if lay.buy is not None
    ]
    if not bought:
        return ()
    return (Finding("note", "cloth_told", "To buy: {bought}.", words={"bought": ", ".join(bought)}),)
