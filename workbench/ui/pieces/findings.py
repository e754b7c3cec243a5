"""What the foot says in the pieces place: whether every piece is there, and what is to be looked at."""

from __future__ import annotations

from workbench.document import Picture
from workbench.draft import Finding
from workbench.pieces import Cutting

_HEAVY = ("stop", "over")


def findings_on_table(picture: Picture, cutting: Cutting | None) -> tuple[Finding, ...]:
    """Limits that are passed, then what the cutting has to say, then the rest of the draft."""
    heavy = tuple(finding for finding in picture.findings if finding.severity in _HEAVY)
    light = tuple(finding for finding in picture.findings if finding.severity not in _HEAVY)
    if cutting is None:
        return heavy + light
    return (*heavy, *(cutting.findings or _in_order(cutting)), *light)


def _in_order(cutting: Cutting) -> tuple[Finding, ...]:
    """One sentence that answers whether every piece is there, where nothing speaks against it."""
    if not cutting.layers:
        return (Finding("attend", "no_layer", "No layer is made, so there is nothing to cut."),)
    count = sum(piece.count for piece in cutting.pieces)
    amiss = sum(not row.holds for row in cutting.walks) + sum(not row.holds for row in cutting.angles)
    words = {
        "count": _counted(count, "piece"),
        "layers": _counted(len(cutting.layers), "layer"),
        "pairs": _counted(len(cutting.walks), "pair"),
    }
    if amiss:
        return (
            Finding(
                "attend",
                "seams_do_not_meet",
                "{amiss} of {pairs} of edges that are sewn together do not meet: see Seams walked.",
                words={**words, "amiss": str(amiss)},
            ),
        )
    meet = " Walked along the seams, all {pairs} of edges meet." if cutting.walks else ""
    return (Finding("note", "pieces_within", f"{{count}} to cut in {{layers}}.{meet}", words=words),)


def _counted(count: int, word: str) -> str:
    return f"{count} {word}" if count == 1 else f"{count} {word}s"
