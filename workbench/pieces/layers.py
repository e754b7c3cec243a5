"""The layers: what each is called, what it is for, and how its pieces come about."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from workbench.pieces.bench import Bench, Blank
from workbench.pieces.facings import facing_blanks
from workbench.pieces.kinds import PANEL_LAYERS, choice_of
from workbench.pieces.making import LayerName, Making
from workbench.pieces.panel_pieces import panel_blanks, panel_pieces
from workbench.pieces.result import Layer, Piece
from workbench.pieces.strips import modesty_blanks, strip_blanks, tape_blanks

_LABELS: Mapping[LayerName, str] = {
    "fashion": "Fashion cloth",
    "strength": "Strength layer",
    "interfacing": "Interfacing",
    "lining": "Lining",
    "top_facing": "Top facing",
    "hem_facing": "Hem facing",
    "modesty": "Modesty panel",
    "strip": "Loop strip",
    "waist_tape": "Waist tape",
}
_PURPOSES: Mapping[LayerName, str] = {
    "fashion": "What is seen.",
    "strength": "A firm cloth that does not give; it carries the pull of the lacing and the bone channels.",
    "interfacing": "Gives the fashion cloth body, so that bones and seams do not show through.",
    "lining": "Lies against the skin or the chemise and covers the seams and the bone channels.",
    "top_facing": "Finishes the neckline inside; it is laid over the closed seams.",
    "hem_facing": "Finishes the hem inside; it is laid over the closed seams.",
    "modesty": "Lies behind the lacing, so that no skin shows in the gap.",
    "strip": "Holds the loops along each centre back.",
    "waist_tape": "Takes the pull at the waist, from the front bone to the back bone, off the cloth.",
}
_SPECIAL: Mapping[LayerName, Callable[[Bench], Sequence[Blank]]] = {
    "top_facing": lambda bench: facing_blanks(bench, "neckline"),
    "hem_facing": lambda bench: facing_blanks(bench, "hem"),
    "modesty": modesty_blanks,
    "strip": strip_blanks,
    "waist_tape": tape_blanks,
}


def label_of(name: LayerName, making: Making) -> str:
    """A layer's name as it is shown."""
    if name == "strip" and making.opening.closing == "eyelets":
        return "Eyelet facing"
    return _LABELS[name]


def purpose_of(name: LayerName, making: Making) -> str:
    """One sentence that says what a layer is for."""
    if name == "strip" and making.opening.closing == "eyelets":
        return "Backs the eyelets along each centre back with firm cloth."
    return _PURPOSES[name]


def empty_layer(name: LayerName, making: Making) -> Layer:
    """A layer without pieces."""
    return Layer(name, label_of(name, making), purpose_of(name, making), ())


def layers_on(bench: Bench, names: Sequence[LayerName]) -> tuple[Layer, ...]:
    """Layers with their pieces, all cut at once; without any where one is not made."""
    made = [name for name in names if choice_of(bench.making, name).made]
    blanks = {name: _blanks(bench, name) for name in made}
    pieces = bench.finished([blank for own in blanks.values() for blank in own])
    return tuple(
        _layer(bench, name, blanks[name], pieces) if name in blanks else empty_layer(name, bench.making)
        for name in names
    )


def _blanks(bench: Bench, name: LayerName) -> Sequence[Blank]:
    return (
        panel_blanks(bench, choice_of(bench.making, name)) if name in PANEL_LAYERS else _SPECIAL[name](bench)
    )


def _layer(bench: Bench, name: LayerName, blanks: Sequence[Blank], pieces: Mapping[Blank, Piece]) -> Layer:
    if name in PANEL_LAYERS:
        own = panel_pieces(bench, choice_of(bench.making, name), blanks, pieces)
    else:
        own = tuple(pieces[blank] for blank in blanks)
    return Layer(name, label_of(name, bench.making), purpose_of(name, bench.making), own)
