"""Out of the program: SVG, DXF, one large sheet, half and quarter scale, a sheet for a projector.

What writes a file is read when one is written. Figures are own choice, layout of the page and the
file, unless said.
"""

from typing import TYPE_CHECKING

from workbench.doors import when_asked
from workbench.exchange.choice import (
    COARSEST_GRID,
    DXF_VERSIONS,
    FINEST_GRID,
    FORMATS,
    LEAST_CONTRAST,
    THICKEST,
    THINNEST,
    DxfVersion,
    ExportChoice,
    ExportError,
    Format,
    Ground,
    Projector,
    What,
    format_of,
)

if TYPE_CHECKING:
    from workbench.exchange.page import LargePage
    from workbench.exchange.work import export, laid_out
else:
    __getattr__ = when_asked(__name__, {"page": "LargePage", "work": "export laid_out"})

__all__ = [
    "COARSEST_GRID",
    "DXF_VERSIONS",
    "FINEST_GRID",
    "FORMATS",
    "LEAST_CONTRAST",
    "THICKEST",
    "THINNEST",
    "DxfVersion",
    "ExportChoice",
    "ExportError",
    "Format",
    "Ground",
    "LargePage",
    "Projector",
    "What",
    "export",
    "format_of",
    "laid_out",
]
