"""Bones on the shopping list: by stuff and length, all together, their channels and tips."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import groupby

from workbench.pieces.bone_lines import channel_width
from workbench.pieces.making import BoneStuff, Making
from workbench.pieces.result import Bone, Notion
from workbench.pieces.words import listed

Notions = tuple[Notion, ...]

_STUFF: dict[BoneStuff, str] = {
    "flat_steel": "Flat steel",
    "spiral_steel": "Spiral steel",
    "plastic": "Plastic boning",
}


def bone_notions(bones: tuple[Bone, ...], making: Making) -> Notions:
    """A line for each stuff and length, then all of them, their channels and the tips of the spirals."""
    if not bones:
        return ()

    def kind(bone: Bone) -> tuple[BoneStuff, float]:
        return bone.stuff, -bone.cut_length

    groups = [list(group) for _, group in groupby(sorted(bones, key=kind), key=kind)]
    return (
        *(_of_one_length(group, making) for group in groups),
        _all_bones(bones),
        _channels(bones, making),
        *_tips(bones),
    )


def _of_one_length(bones: list[Bone], making: Making) -> Notion:
    first, count = bones[0], _count(bones)
    rounding = "cut to length" if first.stuff == "plastic" else "then down to the next {step} it is sold by"
    where = listed(f"{bone.count} × {bone.where}" for bone in bones)
    return Notion(
        f"bone/{first.stuff}/{first.cut_length:g}",
        _STUFF[first.stuff],
        count,
        count * first.cut_length,
        f"{count} of {{each}}, {{width}} wide: {where}. Its finished line less {{clearance}} at each end, "
        f"{rounding}.",
        {
            "each": first.cut_length,
            "width": making.boning.width_mm,
            "clearance": making.boning.clearance_mm,
            "step": making.boning.steel_step_mm,
        },
        at_most=("each",) if first.stuff == "plastic" else (),
    )


def _all_bones(bones: tuple[Bone, ...]) -> Notion:
    total = sum(bone.count * bone.cut_length for bone in bones)
    kinds = listed(
        f"{_count(of_kind)} {_STUFF[stuff].lower()}"
        for stuff in _STUFF
        if (of_kind := [bone for bone in bones if bone.stuff == stuff])
    )
    return Notion(
        "bones",
        "All bones together",
        _count(bones),
        total,
        f"The sum of the lines above: {kinds}, {{total}} end to end.",
        {"total": total},
    )


def _channels(bones: tuple[Bone, ...], making: Making) -> Notion:
    total = sum(bone.count * bone.stitch_length for bone in bones)
    return Notion(
        "channels",
        "Channel tape",
        None,
        total,
        "{total} for every bone from hem to neckline, stitched {channel} apart: the bone's {width} and "
        "{ease} to slide in. None where the seam allowances make the channel.",
        {
            "total": total,
            "channel": channel_width(making.boning),
            "width": making.boning.width_mm,
            "ease": making.boning.channel_ease_mm,
        },
    )


def _tips(bones: tuple[Bone, ...]) -> Notions:
    spirals = _count(bone for bone in bones if bone.stuff == "spiral_steel")
    if not spirals:
        return ()
    how = f"Two for each of {spirals} spiral steels."
    return (Notion("tips", "Bone tips", 2 * spirals, None, how, {}),)


def _count(bones: Iterable[Bone]) -> int:
    return sum(bone.count for bone in bones)
