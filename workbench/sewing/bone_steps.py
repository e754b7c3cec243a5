"""Channels, tape, the opening and the bones: what carries the pull."""

from __future__ import annotations

from collections.abc import Iterator

from workbench.pieces import Bone
from workbench.sewing import minutes
from workbench.sewing.garment import Garment
from workbench.sewing.step import Say, Step, step
from workbench.sewing.words import counted

CHANNELS = "Stitching bone channels"
BONES = "Putting in bones"
LACING = "Making the lacing"
ZIP = "Setting the zip"
TAPE = "Setting the waist tape"
MODESTY = "Making the modesty panel"


def stitch_channels(garment: Garment) -> Iterator[Step]:
    """Two rows of stitching for every bone."""
    bones = garment.cutting.bones
    if not bones:
        return
    boning = garment.making.boning
    count = sum(bone.count for bone in bones)
    yield step(
        "channels",
        CHANNELS,
        "Stitch the bone channels",
        minutes.by_length(minutes.CHANNEL_PER_METRE, garment.sewn("rows")),
        Say(
            f"Stitch {counted(count, 'channel')} {{wide}} apart: the bone’s {{bone}} and a little to "
            "slide in.",
            {"wide": boning.width_mm + boning.channel_ease_mm, "bone": boning.width_mm},
        ),
        "Leave the upper ends open; shut the lower ends across.",
        watch="Try one bone in the first channel before the others are stitched.",
    )


def set_tape(garment: Garment) -> Iterator[Step]:
    """The tape that takes the pull off the cloth at the waist."""
    tape, piece = garment.listed.get("waist_tape"), garment.piece("waist_tape")
    if tape is None or piece is None or tape.length_mm is None:
        return
    count = tape.count or 1
    yield step(
        "tape",
        TAPE,
        "Set the waist tape",
        minutes.TAPE,
        Say(
            f"Cut {counted(count, 'length')} of tape, {{each}} {'each' if count > 1 else 'long'}, and "
            "turn the ends in.",
            {"each": tape.length_mm / count},
        ),
        "Pin it inside along the waist line with the seams lying flat, and sew it to the allowances only.",
        watch="Shorter than the waist it gathers the cloth, longer it carries nothing.",
    )


def make_opening(garment: Garment) -> Iterator[Step]:
    """Eyelets or loops with their cord, or the zip."""
    opening, making = garment.cutting.opening, garment.making.opening
    if "zip" in garment.listed:
        yield step(
            "zip",
            ZIP,
            "Set the zip",
            minutes.ZIP,
            "Set the zip into the side, its stop at the hem, waist line level on both sides.",
        )
    if opening is None or making.closing == "side_zip":
        return
    each = len(opening.walks)
    one, minutes_each = (
        ("eyelet", minutes.PER_EYELET) if making.closing == "eyelets" else ("loop", minutes.PER_LOOP)
    )
    yield step(
        "opening",
        LACING,
        f"Make the {one}s",
        minutes_each * 2.0 * each,
        Say(
            f"Set {counted(each, one)} on each side, the first {{end}} from the edge, {{usual}} apart "
            f"and {{waist}} at the waist, "
            "their middles {in} from the back edge.",
            {
                "end": making.end_mm,
                "usual": making.pitch_mm,
                "waist": making.waist_pitch_mm,
                "in": making.set_in_mm,
            },
        ),
        "Mark both sides from one paper strip, so that they stand level.",
    )
    yield step(
        "cord",
        LACING,
        "Lace it",
        minutes.CORD,
        Say(
            "Take {cord} of cord; lace from both ends to the waist and leave two loops there to pull.",
            {"cord": opening.cord_mm},
        ),
    )


def put_in_bones(garment: Garment) -> Iterator[Step]:
    """A step for every kind of place, with the length of each bone."""
    for number, bone in enumerate(garment.cutting.bones, start=1):
        yield _bone(number, bone)


def _bone(number: int, bone: Bone) -> Step:
    ends = "Cap both ends" if bone.stuff == "spiral_steel" else "Round and cover both ends"
    return step(
        f"bone.{bone.where}",
        BONES,
        f"Bone {number}: {bone.where}",
        minutes.PER_BONE * bone.count,
        Say(
            f"Cut {bone.count} of {bone.stock}, {{cut}} long. {ends}.",
            {"cut": bone.cut_length},
            at_most=("cut",) if bone.stuff == "plastic" else (),
        ),
        Say(
            "The channel is {channel} long when finished: the bone must slide, not push.",
            {"channel": bone.stitch_length},
        ),
    )


def make_modesty(garment: Garment) -> Iterator[Step]:
    """The panel behind the lacing."""
    piece = garment.piece("modesty")
    if piece is None:
        return
    across, up = piece.stitch.max(axis=0) - piece.stitch.min(axis=0)
    yield step(
        "modesty",
        MODESTY,
        "Make the modesty panel",
        minutes.MODESTY,
        Say(
            "Make it up {across} wide and {up} long, and sew it to one side only.",
            {"across": float(across), "up": float(up)},
        ),
    )
