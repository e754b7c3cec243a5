"""The layers: what each is called, what it is for, and how its pieces come about."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from workbench.pieces.facings import facing_pieces
from workbench.pieces.kinds import PANEL_LAYERS, choice_of
from workbench.pieces.making import LayerName, Making
from workbench.pieces.panel_pieces import Bench
from workbench.pieces.result import Layer, Piece
from workbench.pieces.strips import modesty_pieces, strip_pieces, tape_pieces

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
_SPECIAL: Mapping[LayerName, Callable[[Bench], tuple[Piece, ...]]] = {
    "top_facing": lambda bench: facing_pieces(bench, "neckline"),
    "hem_facing": lambda bench: facing_pieces(bench, "hem"),
    "modesty": modesty_pieces,
    "strip": strip_pieces,
    "waist_tape": tape_pieces,
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


def layer_on(bench: Bench, name: LayerName) -> Layer:
    """One layer with its pieces; without any where it is not made."""
    choice = choice_of(bench.making, name)
    if not choice.made:
        return empty_layer(name, bench.making)
    pieces = bench.panel_pieces(choice) if name in PANEL_LAYERS else _SPECIAL[name](bench)
    return Layer(name, label_of(name, bench.making), purpose_of(name, bench.making), pieces)
