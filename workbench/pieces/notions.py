"""The shopping list: what is bought besides the cloth, how much of it, and how that was worked out.

Amounts are common practice, no source, unless said.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise

from workbench.draft import Draft, Outcome
from workbench.pieces.bone_notions import bone_notions
from workbench.pieces.making import Making
from workbench.pieces.measured import Measured, measured_of
from workbench.pieces.polyline import lengths_of
from workbench.pieces.result import BackOpening, Bone, Layer, Notion
from workbench.pieces.sewing import bound_edges, finished_size, sewn_lengths
from workbench.pieces.side_zip import zip_of
from workbench.pieces.words import counted, listed

THREAD_PER_SEAM = 2.5
"""Thread of a lockstitch to a length of seam, upper and lower together, with ends."""

_SAME_MM = 0.5
"""Pitches that differ by less cannot be told apart by hand."""

Notions = tuple[Notion, ...]


def notions_of(
    outcome: Outcome,
    making: Making,
    bones: tuple[Bone, ...],
    opening: BackOpening | None,
    busk: float | None,
    layers: tuple[Layer, ...],
    measured: Measured | None = None,
) -> Notions:
    """Every line of the list, lengths in mm; nothing without a draft.

    ``bones``, ``opening`` and ``busk`` are what was worked out for them, ``layers`` the
    pieces as cut: tape and modesty panel are bought as long as their pieces are. ``measured``
    are their edges, where they have been measured already.
    """
    draft = outcome.draft
    if draft is None:
        return ()
    return (
        *bone_notions(bones, making),
        *_busk(busk, making),
        *_closing(opening, making),
        *_zip(outcome, making),
        *_strips(layers),
        *_binding(draft, making),
        *_thread(draft, bones, layers, measured or measured_of(layers)),
    )


def _busk(busk: float | None, making: Making) -> Notions:
    if busk is None:
        return ()
    how = (
        "The one you have, {busk} long."
        if making.busk_mm is not None
        else "{busk}: the longest sold that goes into the centre front less {clearance} at each end."
    )
    lengths = {"busk": busk, "clearance": making.boning.clearance_mm}
    return (Notion("busk", "Front busk", 1, busk, how, lengths),)


def _closing(opening: BackOpening | None, making: Making) -> Notions:
    """Eyelets or loops, and their cord."""
    if opening is None:
        return ()
    side = len(opening.walks)
    lengths = {**_pitches(opening), "end": making.opening.end_mm}
    apart = "{pitch} apart and {waist_pitch} at the waist" if "waist_pitch" in lengths else "{pitch} apart"
    how = (
        f"{side} on each side of the back, from {{end}} above the hem to {{end}} below the neckline, {apart}."
    )
    kind = making.opening.closing
    return (
        Notion(kind, kind.capitalize(), 2 * side, None, how, lengths),
        Notion("cord", "Lacing cord", 1, opening.cord_mm, opening.how, opening.lengths),
    )


def _pitches(opening: BackOpening) -> dict[str, float]:
    """The pitch farthest from the waist, and the one nearest to it where that is another, mm."""
    middles = [abs(below + above) for below, above in pairwise(opening.walks)]
    ordered = [pitch for _, pitch in sorted(zip(middles, opening.pitches, strict=True))]
    lengths = {"pitch": ordered[-1]}
    if abs(ordered[0] - ordered[-1]) > _SAME_MM:
        lengths["waist_pitch"] = ordered[0]
    return lengths


def _zip(outcome: Outcome, making: Making) -> Notions:
    length = zip_of(outcome, making)
    if length is None:
        return ()
    how = "{zip}: the longest sold by the inch that goes into the side seam."
    return (Notion("zip", "Side zip", 1, length, how, {"zip": length}),)


def _strips(layers: tuple[Layer, ...]) -> Notions:
    """Waist tape and modesty panel, as long as their pieces."""
    said: dict[str, Callable[[Layer], Notion]] = {"waist_tape": _tape, "modesty": _modesty}
    return tuple(said[layer.name](layer) for layer in layers if layer.name in said and layer.pieces)


def _tape(layer: Layer) -> Notion:
    count = sum(piece.count for piece in layer.pieces)
    total = sum(piece.count * max(finished_size(piece)) for piece in layer.pieces)
    width = max(min(finished_size(piece)) for piece in layer.pieces)
    return Notion(
        "waist_tape",
        "Waist tape",
        count,
        total,
        f"{counted(count, 'length')}, {{total}} together and {{width}} wide, from the front bone to the "
        "back bone with its ends turned.",
        {"total": total, "width": width},
    )


def _modesty(layer: Layer) -> Notion:
    width, length = finished_size(layer.pieces[0])
    cut = sum(piece.count for piece in layer.pieces)
    return Notion(
        "modesty",
        "Modesty panel",
        1,
        None,
        f"{{width}} wide and {{length}} long when sewn, {counted(cut, 'piece')} of cloth, to lie behind the "
        "opening.",
        {"width": width, "length": length},
    )


def _binding(draft: Draft, making: Making) -> Notions:
    """Binding for the edges that have no allowance; an edge of one length is joined or turned once."""
    neckline, hem = bound_edges(draft, making)
    runs = (2 if making.front == "busk" else 1) * ((neckline > 0) + (hem > 0))
    if not runs:
        return ()
    total = neckline + hem + runs * making.binding_join_mm
    parts = [f"{name} {{{name}}}" for name, length in (("neckline", neckline), ("hem", hem)) if length > 0]
    return (
        Notion(
            "binding",
            "Binding",
            runs,
            total,
            f"Round the garment: {listed(parts)}, and {{join}} for joining or turning each of "
            f"{counted(runs, 'length')}.",
            {"neckline": neckline, "hem": hem, "join": making.binding_join_mm},
        ),
    )


def _thread(draft: Draft, bones: tuple[Bone, ...], layers: tuple[Layer, ...], measured: Measured) -> Notions:
    """Seams of every layer, the edges once, two rows along every bone."""
    seams = [length for layer in layers if (length := sewn_lengths(layer, measured)) > 0]
    edges = 2 * sum(lengths_of([line for panel in draft.panels for line in (panel.neckline, panel.hem)]))
    rows = 2 * sum(bone.count * bone.stitch_length for bone in bones)
    stitched = sum(seams) + edges + rows
    return (
        Notion(
            "thread",
            "Thread",
            None,
            THREAD_PER_SEAM * stitched,
            f"{{seams}} of seams in {counted(len(seams), 'layer')}, {{edges}} of neckline and hem, {{rows}} "
            "for two rows along every bone; times 2½. An estimate.",
            {"seams": sum(seams), "edges": edges, "rows": rows},
        ),
    )
