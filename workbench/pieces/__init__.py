"""From stitch lines to what lies on the cutting table."""

from typing import TYPE_CHECKING

from workbench.doors import when_asked
from workbench.pieces.making import (
    EDGE_KINDS,
    LAYERS,
    USUAL_SET_IN,
    Allowances,
    BonePlace,
    BoneStuff,
    Boning,
    Closing,
    EdgeKind,
    EdgeName,
    FrontMade,
    LayerChoice,
    LayerName,
    Making,
    Marks,
    NotchStyle,
    Opening,
    OwnAllowance,
)

if TYPE_CHECKING:
    from workbench.pieces.bones import bones_of
    from workbench.pieces.check import check_angles, check_walks, tolerance_of
    from workbench.pieces.layers import label_of, purpose_of
    from workbench.pieces.result import (
        AngleRow,
        BackOpening,
        Bone,
        Cutting,
        Layer,
        MarkLine,
        Notch,
        Notion,
        Piece,
        PieceEdge,
        WalkRow,
    )
    from workbench.pieces.shell import cut_lines
    from workbench.pieces.work import cutting_of, layer_of
else:
    # a window that opens shows cut lines; whole pieces are for a later place
    __getattr__ = when_asked(
        __name__,
        {
            "bones": "bones_of",
            "check": "check_angles check_walks tolerance_of",
            "layers": "label_of purpose_of",
            "result": "AngleRow BackOpening Bone Cutting Layer MarkLine Notch Notion Piece PieceEdge WalkRow",
            "shell": "cut_lines",
            "work": "cutting_of layer_of",
        },
    )

__all__ = [
    "EDGE_KINDS",
    "LAYERS",
    "USUAL_SET_IN",
    "Allowances",
    "AngleRow",
    "BackOpening",
    "Bone",
    "BonePlace",
    "BoneStuff",
    "Boning",
    "Closing",
    "Cutting",
    "EdgeKind",
    "EdgeName",
    "FrontMade",
    "Layer",
    "LayerChoice",
    "LayerName",
    "Making",
    "MarkLine",
    "Marks",
    "Notch",
    "NotchStyle",
    "Notion",
    "Opening",
    "OwnAllowance",
    "Piece",
    "PieceEdge",
    "WalkRow",
    "bones_of",
    "check_angles",
    "check_walks",
    "cut_lines",
    "cutting_of",
    "label_of",
    "layer_of",
    "purpose_of",
    "tolerance_of",
]
