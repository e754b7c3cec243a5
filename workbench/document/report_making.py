"""What is cut and bought, as plain data for other programs. Lengths are in millimetres."""

from __future__ import annotations

from math import isfinite
from typing import Any

from workbench.document.project import Project
from workbench.document.words import notion_words
from workbench.pieces import AngleRow, Bone, Cutting, Notch, Notion, Piece, WalkRow

Data = dict[str, Any]


def cutting_data(cutting: Cutting, project: Project) -> Data:
    """Pieces, bones, opening, notions and the walk check, ready for JSON."""
    opening = cutting.opening
    return {
        "pieces": [_piece(piece) for piece in cutting.pieces],
        "bones": [_bone(bone) for bone in cutting.bones],
        "busk_mm": cutting.busk_mm,
        "lacing_walks_mm": None if opening is None else list(opening.walks),
        "notions": [_notion(notion, project) for notion in cutting.notions],
        "walk_check": {
            "rows": [_walk(row) for row in cutting.walks],
            "angles": [_angle(row) for row in cutting.angles],
            "holds": walks_hold(cutting),
        },
    }


def walks_hold(cutting: Cutting) -> bool:
    """Whether every pair of edges meets, and every edge runs on over a closed seam where it should."""
    return all(row.holds for row in cutting.walks) and all(row.holds for row in cutting.angles)


def _piece(piece: Piece) -> Data:
    return {
        "name": piece.name,
        "layer": piece.layer,
        "count": piece.count,
        "mirrored": piece.mirrored,
        "on_fold": piece.on_fold,
        "cut_outline_mm": piece.cut.tolist(),
        "stitch_outline_mm": piece.stitch.tolist(),
        "allowances_mm": [
            {"edge": edge.name, "kind": edge.kind, "allowance_mm": edge.allowance} for edge in piece.edges
        ],
        "notches_mm": [list(notch.at) for notch in piece.notches],
        "notches": [_notch(notch) for notch in piece.notches],
        "grain": [list(end) for end in piece.grain],
    }


def _notch(notch: Notch) -> Data:
    """What the notch of the same number in ``notches_mm`` is there for."""
    return {
        "count": notch.count,
        "towards": list(notch.towards),
        "edge": notch.edge,
        "seam": notch.seam,
        "walk_mm": notch.walk,
        "why": notch.why,
        "level": notch.level,
    }


def _bone(bone: Bone) -> Data:
    return {
        "place": bone.place,
        "where": bone.where,
        "stitch_length_mm": bone.stitch_length,
        "cut_length_mm": bone.cut_length,
        "stock": bone.stock,
        "count": bone.count,
        "shorter_mm": bone.shorter,
        "lost_mm": bone.lost,
        # JSON knows no endless radius, which is that of a straight line
        "tightest_radius_mm": bone.tightest_radius if isfinite(bone.tightest_radius) else None,
    }


def _notion(notion: Notion, project: Project) -> Data:
    return {
        "key": notion.key,
        "name": notion.name,
        "count": notion.count,
        "length_mm": notion.length_mm,
        "how": notion_words(notion, project),
    }


def _walk(row: WalkRow) -> Data:
    return {
        "layer": row.layer,
        "seam": row.name,
        "part": row.part,
        "left_mm": row.left,
        "right_mm": row.right,
        "difference_mm": row.difference,
        "holds": row.holds,
    }


def _angle(row: AngleRow) -> Data:
    return {
        "seam": row.name,
        "line": row.line,
        "degrees": row.degrees,
        "wanted": row.wanted,
        "holds": row.holds,
    }
