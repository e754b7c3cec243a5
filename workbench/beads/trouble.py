"""What keeps a run or a scatter from being laid, and what to look at where it was."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from workbench.beads.records import BeadPlan, BeadRun, BeadScatter
from workbench.draft import Draft, Finding, Place

LEAST_SPACING_MM = 0.05
"""Own choice: closer is no distance."""
MOST_HALF = 20_000
"""Beads on the half: ten times a gown sewn all over, and what can still be shown while she draws (own
choice)."""
WHY_WORDS: Mapping[str, str] = {
    "bone": "on bone channels",
    "seam": "at seams",
    "edge": "at neckline or hem",
    "opening": "beside the opening",
    "arm": "under the arm",
    "taken": "where other beads lie",
}
_HAIR = 1e-6
"""Own choice: mm, rounding of sums."""
_SQUARE_CM = 6.4516
"""In a square inch (derived)."""


def run_place(number: int, entry: str = "name", seam: int | None = None) -> Place:
    """Where a finding about a run points."""
    return Place(field=f"beads.runs.{number}.{entry}", seam=seam)


def scatter_place(number: int, entry: str = "name", panel: int | None = None) -> Place:
    """Where a finding about a scatter points."""
    return Place(field=f"beads.scatters.{number}.{entry}", panel=panel)


def run_trouble(number: int, run: BeadRun, plan: BeadPlan, draft: Draft) -> Finding | None:
    """What keeps a run from being laid at all, before its line is drawn."""
    words = {"run": run.name}
    if run.spacing_mm < LEAST_SPACING_MM:
        return Finding(
            "attend",
            "bead_spacing",
            "The run “{run}” has no spacing from one bead to the next, so none are laid.",
            words=words,
            place=run_place(number, "spacing_mm"),
            remedy="Enter a spacing above nothing.",
        )
    least, widest = _least_spacing(run, plan), max(plan.kind(name).size_mm for name in run.pattern)
    if run.spacing_mm < least - _HAIR:
        return _on_each_other(number, "spacing_mm", "beads", run.spacing_mm, least, words)
    if run.rows > 1 and run.row_mm < widest - _HAIR:
        return _on_each_other(number, "row_mm", "rows", run.row_mm, widest, words)
    if run.along == "seam" and run.seam >= len(draft.panels):
        last = {"seam": str(run.seam), "last": str(len(draft.panels) - 1)}
        return Finding(
            "attend",
            "bead_no_seam",
            "The run “{run}” goes along seam {seam}, which this bodice has not; none are laid.",
            words=words | last,
            place=run_place(number, "seam"),
            remedy="Choose a seam from 1 to {last}.",
        )
    if run.along == "drawn" and len(run.points) < 2:
        return Finding(
            "attend",
            "bead_no_line",
            "The drawn line of the run “{run}” has fewer than two points, so no beads are laid.",
            words=words,
            place=run_place(number, "points"),
            remedy="Add points to it on the panels.",
        )
    return None


def _least_spacing(run: BeadRun, plan: BeadPlan) -> float:
    sizes = [plan.kind(name).size_mm for name in run.pattern]
    return max(0.5 * (size + after) for size, after in zip(sizes, [*sizes[1:], sizes[0]], strict=True))


def _on_each_other(
    number: int, entry: str, what: str, apart: float, least: float, words: Mapping[str, str]
) -> Finding:
    return Finding(
        "attend",
        "bead_overlap",
        "The {what} of the run “{run}” stand {apart} apart and would lie on each other; none are laid.",
        {"apart": apart, "least": least},
        {**words, "what": what},
        run_place(number, entry),
        "They need {least}.",
        apart,
        least,
    )


def leaves_panels(number: int, run: BeadRun, some: bool) -> Finding:
    """A drawn line that lies outside the panels, all of it or in part."""
    how = "leaves the panels; beads lie only where it is on them" if some else "lies outside the panels"
    return Finding(
        "attend",
        "bead_outside",
        "The drawn line of the run “{run}” {how}.",
        words={"run": run.name, "how": how},
        place=run_place(number, "points"),
        remedy="Move its points on to the panels.",
    )


def no_row(number: int, run: BeadRun) -> Finding:
    """Rows set in so far that no panel has them."""
    return Finding(
        "attend",
        "bead_no_row",
        "The run “{run}” is set in {inset}, where there is no cloth for a row.",
        {"inset": run.inset_mm},
        {"run": run.name},
        run_place(number, "inset_mm"),
        "Set it in less.",
    )


def left_out(number: int, run: BeadRun, asked: int, why: Counter[str]) -> Finding | None:
    """Places of a run that are kept free; None where there are none."""
    why = +why
    left = why.total()
    if not left:
        return None
    named = ", ".join(f"{count:,} {WHY_WORDS[name]}" for name, count in why.most_common())
    none = left == asked
    return Finding(
        "attend" if none else "note",
        "bead_none" if none else "bead_left_out",
        "{head} of the run “{run}” on the half: {named}.",
        words={
            "head": "No bead is laid" if none else f"{left:,} of {asked:,} places are left free",
            "run": run.name,
            "named": named,
        },
        place=run_place(number, "inset_mm"),
        remedy="Set it in further, or make the bands narrower." if none else "",
    )


def too_many(what: str, name: str, place: Place, about: float) -> Finding:
    """More beads than can be shown and sewn; none of it is laid."""
    return Finding(
        "attend",
        "bead_too_many",
        "The {what} “{name}” would bring the half to about {about} beads; at most {most} are laid, "
        "so none of it is.",
        words={"what": what, "name": name, "about": f"{about:,.0f}", "most": f"{MOST_HALF:,}"},
        place=place,
        remedy="Make it thinner, or take less cloth.",
        value_mm=None,
    )


def scatter_panels(number: int, scatter: BeadScatter, count: int) -> Finding | None:
    """A scatter over no panel, or over one that the bodice has not."""
    words = {"scatter": scatter.name}
    if not scatter.panels:
        return Finding(
            "attend",
            "bead_no_panel",
            "The scatter “{scatter}” is over no panel, so no beads are laid.",
            words=words,
            place=scatter_place(number, "panels"),
            remedy="Choose the panels it goes over.",
        )
    gone = [panel for panel in scatter.panels if panel >= count]
    if not gone:
        return None
    return Finding(
        "attend",
        "bead_no_panel",
        "The scatter “{scatter}” goes over panel {panel} from the front; the half has {count}.",
        words=words | {"panel": str(gone[0] + 1), "count": str(count)},
        place=scatter_place(number, "panels"),
        remedy="Take that panel out of it.",
    )


def scatter_line(number: int, scatter: BeadScatter) -> Finding:
    """A line to thin out to that is none."""
    return Finding(
        "attend",
        "bead_thin_line",
        "The line at which the scatter “{scatter}” ends does not run from front to back on the half; "
        "none are laid.",
        words={"scatter": scatter.name},
        place=scatter_place(number, "thin_to"),
        remedy="Give it two points or more, each behind the one before it.",
    )


def scatter_dense(number: int, scatter: BeadScatter, most: float) -> Finding:
    """More to the square inch than lie beside each other without a pattern."""
    return Finding(
        "attend",
        "bead_dense",
        "The scatter “{scatter}” asks for {asked}; of these kinds no more than {most} have room without "
        "lying on each other, so none are laid.",
        words={
            "scatter": scatter.name,
            "asked": _dense(scatter.per_square_inch),
            "most": _dense(most),
        },
        place=scatter_place(number, "per_square_inch"),
        remedy="Lower the density, or take smaller beads.",
    )


def _dense(per_square_inch: float) -> str:
    """A density in both units: a finding keeps lengths apart for the unit on show, but no areas."""
    return f"{per_square_inch:,.3g} to the square inch ({per_square_inch / _SQUARE_CM:,.3g} to the square cm)"


def scatter_no_kind(number: int, scatter: BeadScatter) -> Finding:
    """A mix in which nothing has a weight."""
    return Finding(
        "attend",
        "bead_no_weight",
        "No kind in the mix of the scatter “{scatter}” has a weight above nothing, so none are laid.",
        words={"scatter": scatter.name},
        place=scatter_place(number, "mix"),
        remedy="Give one of them a weight.",
    )


def scatter_empty(number: int, scatter: BeadScatter) -> Finding:
    """Nothing came of it: too thin for the free cloth, or no cloth is free."""
    return Finding(
        "attend",
        "bead_scatter_empty",
        "At {density} the free cloth of the scatter “{scatter}” holds no bead.",
        words={"scatter": scatter.name, "density": _dense(scatter.per_square_inch)},
        place=scatter_place(number, "per_square_inch"),
        remedy="Raise the density, take more panels, or make the bands narrower.",
    )


def scatter_short(number: int, scatter: BeadScatter, wanted: int, laid: int) -> Finding:
    """Fewer than asked for found room."""
    return Finding(
        "note",
        "bead_scatter_short",
        "Of the scatter “{scatter}” {laid} of {wanted} beads found room on the half.",
        words={"scatter": scatter.name, "laid": f"{laid:,}", "wanted": f"{wanted:,}"},
        place=scatter_place(number, "per_square_inch"),
        remedy="Lower the density, or take smaller beads.",
    )


def no_rate() -> Finding:
    """Beads, and no rate to reckon their hours by."""
    return Finding(
        "attend",
        "bead_no_rate",
        "There is no rate of beads a minute, so the time to sew them on is not in the hours.",
        place=Place(field="beads.per_minute"),
        remedy="Enter how many you sew on in a minute.",
    )
