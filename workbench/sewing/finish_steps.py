"""Edges, beads, the last fitting and the last look."""

from __future__ import annotations

from collections.abc import Iterator

from workbench.sewing import minutes
from workbench.sewing.cutting_steps import FITTINGS
from workbench.sewing.garment import Garment
from workbench.sewing.step import Say, Step, step
from workbench.sewing.words import counted, listed

EDGES = "Finishing neckline and hem"
PRESSING = "Last pressing and looking over"
BEADING = "Sewing on beads"


def fit_shell(garment: Garment) -> Iterator[Step]:
    """The fitting in the real cloth, while the side seams can still be changed."""
    if garment.shell is None:
        return
    yield step(
        "fitting.second",
        FITTINGS,
        "Fitting in the real cloth",
        minutes.FITTING,
        "Lace it to the planned gap and look at the back first: edges that are not parallel say "
        "where it is too small.",
        "Write down what was pinned before it is unpinned.",
        watch="Loosen it at once when she is short of breath, faint, numb or in pain.",
    )


def sew_beads(beads: int, hours_minutes: float) -> Iterator[Step]:
    """Beads go on before the lining covers their threads."""
    if beads <= 0:
        return
    yield step(
        "beads",
        BEADING,
        "Sew on the beads",
        hours_minutes,
        f"Sew on {counted(beads, 'bead')} by the printed map, a knot every inch or two, so that one "
        "broken thread loses few.",
        watch="None on a bone channel or in an allowance: the needle must pass there again.",
    )


def finish_edges(garment: Garment) -> Iterator[Step]:
    """Facings or binding at neckline and hem."""
    binding = garment.listed.get("binding")
    facings = [garment.layer("top_facing"), garment.layer("hem_facing")]
    made = [layer for layer in facings if layer is not None]
    edges = garment.sewn("edges")
    if edges <= 0 and binding is None and not made:
        return
    says: list[Say | str] = []
    if made:
        says.append(
            Say(
                f"Sew the {listed(layer.label.lower() for layer in made)} on, {{deep}} deep, clip, "
                "turn in and catch by hand.",
                {"deep": garment.making.facing_depth_mm},
            )
        )
    if binding is not None and binding.length_mm is not None:
        says.append(
            Say(
                f"Bind with {{binding}} of binding in {counted(binding.count or 1, 'length')}, "
                "stretched a little where the edge curves in.",
                {"binding": binding.length_mm},
            )
        )
    says.append("Trim the layers to different widths first, so that no ridge shows.")
    yield step(
        "edges", EDGES, "Finish neckline and hem", minutes.by_length(minutes.EDGE_PER_METRE, edges), *says
    )


def look_over(garment: Garment) -> Iterator[Step]:
    """The last thing."""
    if garment.shell is None:
        return
    yield step(
        "last",
        PRESSING,
        "Press and look it over",
        minutes.PRESSING,
        "Press from the inside, cut every thread, and pull once at each bone end and each eyelet or loop.",
        "Lay it flat and measure it shut against the finished girths of the first page.",
    )
