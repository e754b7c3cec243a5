"""From the folded cloth to pieces with their layers together: before the first seam."""

from __future__ import annotations

from collections.abc import Iterator

from workbench.sewing import minutes
from workbench.sewing.garment import Garment
from workbench.sewing.step import Step, step
from workbench.sewing.words import counted, listed

MEASURING = "Measuring and drafting"
MOCK_UP = "First make-up in cheap cloth"
CUTTING = "Cutting out and marking"
FITTINGS = "Fittings"
INTERFACING = "Putting on interfacing"
BASTING = "Basting layers together"


def before_cutting(garment: Garment) -> Iterator[Step]:
    """Measuring, the first make-up and its fitting."""
    shell = garment.shell
    pieces = sum(piece.count for piece in shell.pieces) if shell else 0
    yield step(
        "measure",
        MEASURING,
        "Measure, draft and print",
        minutes.MEASURING,
        "Measure the client, draft, and print or mark the panels.",
        "Measure the printed square before anything is cut.",
    )
    yield step(
        "mock_up",
        MOCK_UP,
        "Make it up in cheap cloth",
        minutes.MOCK_UP_PER_PIECE * pieces,
        f"Cut {counted(pieces, 'piece')} in firm cheap cloth with the stitch lines and the waist line "
        "drawn on.",
        "Sew the seams with a long stitch, allowances outwards, and put a bone beside each back edge.",
    )
    yield step(
        "fitting.first",
        FITTINGS,
        "First fitting",
        minutes.FITTING,
        "Lace it loosely, wait a few minutes, then close it to the gap you planned.",
        "Let her sit, bend, breathe in fully and speak. Measure the gap at top, waist and hem, and "
        "pin what must change.",
        watch="Loosen it at once when she is short of breath, faint, numb or in pain.",
    )


def cut_and_mark(garment: Garment) -> Iterator[Step]:
    """A step for each layer, then the marks."""
    pieces = sum(piece.count for piece in garment.cutting.pieces)
    layers = [layer for layer in garment.cutting.layers if layer.pieces]
    for layer in layers:
        count = sum(piece.count for piece in layer.pieces)
        each = listed(f"{piece.count} × {piece.name}" for piece in layer.pieces)
        folded = [piece.name for piece in layer.pieces if piece.on_fold]
        says = [f"Cut {counted(count, 'piece')}: {each}."]
        if folded:
            lies = "lies" if len(folded) == 1 else "lie"
            says.append(f"{listed(folded)} {lies} with the centre on the fold.")
        yield step(
            f"cut.{layer.name}",
            CUTTING,
            f"Cut the {layer.label[0].lower()}{layer.label[1:]}",
            minutes.CUTTING / len(layers) + minutes.CUTTING_PER_PIECE * count,
            *says,
        )
    yield step(
        "mark",
        CUTTING,
        "Mark the pieces",
        0.0,
        f"Mark the notches, the waist line and the bone lines on {counted(pieces, 'piece')}; two "
        "notches mean back.",
        "Pin left and right of each panel together until they are sewn.",
        watch="A panel turned end for end looks like its neighbour: the waist line tells them apart.",
    )


def layer_up(garment: Garment) -> Iterator[Step]:
    """Interfacing on, strength layer under the shell."""
    interfacing = garment.layer("interfacing")
    if interfacing:
        count = garment.pieces_in("interfacing")
        net = all(edge.allowance == 0 for piece in interfacing.pieces for edge in piece.edges)
        place = (
            "It ends at the stitch lines, so that no seam has to take it."
            if net
            else "It goes into the seams, so lay it edge to edge."
        )
        yield step(
            "interfacing",
            INTERFACING,
            "Put the interfacing on",
            minutes.INTERFACING_PER_PIECE * count,
            f"Put {counted(count, 'piece')} of interfacing on the wrong side of the shell.",
            place,
        )
    if garment.layer("fashion") and garment.layer("strength"):
        count = garment.pieces_in("fashion")
        yield step(
            "baste",
            BASTING,
            "Baste the layers together",
            minutes.BASTING_PER_PIECE * count,
            f"Lay each of {counted(count, 'piece')} of the fashion cloth on its strength piece, waist "
            "lines together.",
            "Baste inside the allowance with the piece bent as it will be worn, then treat the two as one.",
            watch="Basted flat, the outer cloth wrinkles once it goes round her.",
        )
