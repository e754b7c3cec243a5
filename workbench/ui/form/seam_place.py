"""Where seams stand and lean: the arithmetic behind their rows."""

from __future__ import annotations

from workbench.document import Project, quarter_of, set_seam_place, set_through_bust_point
from workbench.draft import Design, Outcome, QuarterName, Seam
from workbench.frozen import dataclass


def seam_number(design: Design, quarter: QuarterName, place: int) -> int:
    """Number from the centre front of the seam at a place, from 0, in its quarter's drawing order."""
    return 1 + place if quarter == "front" else design.front.panel_count + 1 + place


def seam_label(quarter: QuarterName, place: int) -> str:
    """As the draft calls it, with a capital."""
    return f"{quarter.capitalize()} seam {place + 1}"


@dataclass(frozen=True)
class SeamPlace:
    """Where one inner seam stands: its middle, and how far its top leans from its foot."""

    quarter: QuarterName
    place: int

    def seam(self, project: Project) -> Seam | None:
        """The seam; None where the quarter has fewer."""
        seams = quarter_of(project.design, self.quarter).seams
        return seams[self.place] if self.place < len(seams) else None

    def middle(self, project: Project) -> float:
        """Part of the quarter between its own centre line and the seam, half way up."""
        seam = self.seam(project)
        return 0.5 * (seam.lower + seam.upper) if seam else 0.5

    def lean(self, project: Project) -> float:
        """Part of the quarter by which the top stands further from the centre line than the foot."""
        seam = self.seam(project)
        return seam.upper - seam.lower if seam else 0.0

    def put_middle(self, project: Project, middle: float) -> Project:
        """The project with the whole seam moved."""
        return self._put(project, middle, self.lean(project))

    def put_lean(self, project: Project, lean: float) -> Project:
        """The project with the seam leaned about its middle."""
        return self._put(project, self.middle(project), lean)

    def _put(self, project: Project, middle: float, lean: float) -> Project:
        number = seam_number(project.design, self.quarter, self.place)
        # Sums of halves are rounded, so that stepping to and fro comes back to the same number.
        lower, upper = round(middle - 0.5 * lean, 9), round(middle + 0.5 * lean, 9)
        return set_seam_place(project, self.quarter, number, lower, upper)


def places_on_block(seam: Seam, quarter: QuarterName, outcome: Outcome) -> tuple[float, float]:
    """Distance in mm from the quarter's centre line of the seam's foot and top, on the block."""
    block = outcome.blocks[quarter]
    shift = bust_shift(seam, outcome) if seam.through_bust_point else 0.0
    return (seam.lower + shift) * block, (seam.upper + shift) * block


def bust_shift(seam: Seam, outcome: Outcome) -> float:
    """How far, as a part of the front block, the bust point lies from where the seam itself would stand."""
    walks = [level.walk for level in outcome.levels]
    rise = (outcome.level("bust").walk - walks[0]) / (walks[-1] - walks[0])
    own = seam.lower + (seam.upper - seam.lower) * rise
    return 0.5 * outcome.body.value("bust_span") / outcome.blocks["front"] - own


def freed(project: Project, outcome: Outcome | None) -> Project:
    """The project with no seam tied to the bust point, and every seam still where it stood."""
    for number, seam in enumerate(project.design.front.seams, 1):
        if not seam.through_bust_point:
            continue
        project = set_through_bust_point(project, number, False)
        shift = bust_shift(seam, outcome) if outcome else 0.0
        lower, upper = round(seam.lower + shift, 4), round(seam.upper + shift, 4)
        if 0 < lower < 1 and 0 < upper < 1:
            project = set_seam_place(project, "front", number, lower, upper)
    return project
