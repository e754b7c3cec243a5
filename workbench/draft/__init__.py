"""Measurements and a design in, panels out: levels, intake, edges, neckline and hem, comfort.

Pure numbers. Lengths are millimetres; walks are measured along the body from the waist,
up positive. One call does it all: :func:`work_out`.
"""

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

__all__ = [
    "FEWEST_PANELS",
    "MOST_PANELS",
    "Comfort",
    "Design",
    "Draft",
    "EdgeLine",
    "Finding",
    "Judgement",
    "LedgerLine",
    "Level",
    "LineName",
    "Outcome",
    "Panel",
    "Place",
    "Quarter",
    "QuarterName",
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
    "with_panels",
    "work_out",
]
