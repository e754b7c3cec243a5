"""Measurements and a design in, panels out: levels, intake, edges, neckline and hem, comfort.

Pure numbers. Lengths are millimetres; walks are measured along the body from the waist,
up positive. One call does it all: :func:`work_out`.
"""

from typing import TYPE_CHECKING

from workbench.doors import when_asked
from workbench.draft.comfort import (
    Comfort,
    Judgement,
    Status,
    breath,
    by_weight,
    comfort_of,
    least_rib_girth,
    take_the_most,
)
from workbench.draft.design import (
    FEWEST_PANELS,
    MOST_PANELS,
    Design,
    Quarter,
    QuarterName,
    Reductions,
    Rule,
    Seam,
    ShapePoint,
    Share,
    Style,
    usual_design,
    usual_quarter,
    with_panels,
)
from workbench.draft.fitted import NO_CORRECTIONS, Corrections, Lengthened, Raised, TakenIn
from workbench.draft.monotone import hermite_weights, slopes_of_few
from workbench.draft.names import panel_name, seam_name
from workbench.draft.result import (
    Draft,
    EdgeLine,
    Finding,
    LedgerLine,
    Level,
    LineName,
    Outcome,
    Panel,
    Place,
    SeamLine,
    Severity,
    Taking,
)
from workbench.draft.styles import style_line
from workbench.draft.surface import Surface
from workbench.draft.work import work_out

if TYPE_CHECKING:
    from workbench.draft.corrections import walk_designed
else:
    __getattr__ = when_asked(__name__, {"corrections": "walk_designed"})

__all__ = [
    "FEWEST_PANELS",
    "MOST_PANELS",
    "NO_CORRECTIONS",
    "Comfort",
    "Corrections",
    "Design",
    "Draft",
    "EdgeLine",
    "Finding",
    "Judgement",
    "LedgerLine",
    "Lengthened",
    "Level",
    "LineName",
    "Outcome",
    "Panel",
    "Place",
    "Quarter",
    "QuarterName",
    "Raised",
    "Reductions",
    "Rule",
    "Seam",
    "SeamLine",
    "Severity",
    "ShapePoint",
    "Share",
    "Status",
    "Style",
    "Surface",
    "TakenIn",
    "Taking",
    "breath",
    "by_weight",
    "comfort_of",
    "hermite_weights",
    "least_rib_girth",
    "panel_name",
    "seam_name",
    "slopes_of_few",
    "style_line",
    "take_the_most",
    "usual_design",
    "usual_quarter",
    "walk_designed",
    "with_panels",
    "work_out",
]
