"""The seams: which first, how long each is, where it is clipped."""

from __future__ import annotations

from collections.abc import Iterator

from workbench.pieces import Piece, WalkRow
from workbench.sewing import minutes
from workbench.sewing.clips import Clip, clips_of
from workbench.sewing.garment import Garment
from workbench.sewing.step import Say, Step, step
from workbench.sewing.words import counted

SEAMS = "Sewing and pressing seams"
BUSK = "Setting the busk"
BETWEEN_CLIPS = 12.7
"""mm from clip to clip; common practice, no source."""
_HALVES = 2
"""Of a bodice (derived: two)."""


def close_front(garment: Garment) -> Iterator[Step]:
    """The busk, while the front is still flat and alone."""
    if garment.cutting.busk_mm is None:
        return
    yield step(
        "busk",
        BUSK,
        "Set the busk",
        minutes.BUSK,
        Say(
            "Put the {busk} busk into the centre front, its ends level with each other.",
            {"busk": garment.cutting.busk_mm},
        ),
        "Sew the loop side first, from loop to loop, and mark the studs through the closed loops.",
        watch="Both halves of the waist line must meet across the busk before a hole is made.",
    )


def sew_shell(garment: Garment) -> Iterator[Step]:
    """The seams of the shell: front panels from the centre, back panels from the centre, the sides last."""
    shell = garment.shell
    if shell is None:
        return
    for number, row in enumerate(_in_order(garment.seams(shell.name)), start=1):
        yield _seam(row, number, shell.pieces)


def sew_lining(garment: Garment) -> Iterator[Step]:
    """The lining by itself, as long as it is not the shell."""
    lining = garment.layer("lining")
    if lining is None or lining is garment.shell:
        return
    rows = garment.seams("lining")
    length = _HALVES * sum(row.left for row in rows)
    yield step(
        "lining",
        SEAMS,
        "Sew the lining",
        minutes.by_length(minutes.SEAM_PER_METRE, length),
        Say(
            f"Sew {counted(_HALVES * len(rows), 'seam')} of the lining, {{length}} together, and "
            "press them open.",
            {"length": length},
        ),
        "Clip it where the shell was clipped; lay it in wrong sides together with the waist lines matched.",
    )


def _in_order(rows: tuple[WalkRow, ...]) -> list[WalkRow]:
    """The side seams last: they are what a fitting changes most."""
    sides = [row for row in rows if row.name == "side seam"]
    back = [row for row in rows if row.name.startswith("back")]
    front = [row for row in rows if row not in sides and row not in back]
    return [*front, *back[::-1], *sides]


def _seam(row: WalkRow, number: int, pieces: tuple[Piece, ...]) -> Step:
    """One seam on both halves, with its clips."""
    return step(
        f"seam.{row.seam}",
        SEAMS,
        f"Seam {number}: {row.name}",
        minutes.by_length(minutes.SEAM_PER_METRE, _HALVES * row.left),
        Say(
            f"Sew the {row.name} on both halves, {{length}} each: waist notch first, then hem and "
            "top, then between.",
            {"length": row.left},
        ),
        "Press it open over a round.",
        *_clipping(row, pieces),
    )


def _clipping(row: WalkRow, pieces: tuple[Piece, ...]) -> Iterator[Say]:
    """Where each side of a seam is clipped, from the hem up."""
    for piece in pieces:
        for edge in piece.edges:
            if edge.seam == row.seam and edge.name in ("left", "right"):
                for clip in clips_of(piece, edge):
                    yield _clip(piece.name, clip)


def _clip(name: str, clip: Clip) -> Say:
    return Say(
        f"Clip the allowance of {name} from {{low}} to {{high}} above the hem, every {{every}}, "
        "and never into the stitching.",
        {"low": clip.low, "high": clip.high, "every": BETWEEN_CLIPS},
    )
