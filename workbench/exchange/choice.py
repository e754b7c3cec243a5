"""What is to be handed on, and how."""

from __future__ import annotations

from dataclasses import dataclass, field
from math import isfinite
from typing import Literal

from workbench.pieces import LAYERS, LayerName, Marks

Format = Literal["svg", "dxf", "pdf"]
FORMATS: tuple[Format, ...] = ("svg", "dxf", "pdf")
DxfVersion = Literal["R2000", "R12"]
DXF_VERSIONS: tuple[DxfVersion, ...] = ("R2000", "R12")
What = Literal["panels", "pieces"]
Ground = Literal["light", "dark"]

SMALLEST_SCALE, LARGEST_SCALE = 0.1, 1.0
THINNEST, THICKEST = 0.1, 20.0
"""Lines for a projector, mm."""
FINEST_GRID, COARSEST_GRID = 5.0, 1000.0
"""Squares of the grid for a projector, mm."""
LEAST_CONTRAST = 0.2


class ExportError(ValueError):
    """What cannot be handed on; the message is one sentence that says why, and what to do."""


@dataclass(frozen=True)
class Projector:
    """How a sheet for a projector is drawn: lines wide enough to be followed from above."""

    line_mm: float = 2.0
    """Width of cut and stitch lines; the others are half as wide."""
    ground: Ground = "light"
    """Dark lines on a light ground, or light ones on a dark ground, which spares the eyes in a dim room."""
    contrast: float = 1.0
    """Between lines and ground, from :data:`LEAST_CONTRAST` to 1."""
    grid_mm: float = 50.8
    """Side of the squares the picture is squared by."""


@dataclass(frozen=True)
class ExportChoice:
    """The choice for one file."""

    what: What = "pieces"
    """Pieces with all their lines, or the panels of the draft with their stitch lines alone."""
    layers: tuple[LayerName, ...] = ("fashion",)
    """Whose pieces."""
    scale: float = 1.0
    """1 is true to size, 0.5 half of it."""
    dxf: DxfVersion = "R2000"
    projector: Projector | None = None
    """Given for a projector sheet instead of one for a copy shop; only as a PDF."""
    marks: Marks = field(default_factory=Marks)
    """How notches are drawn."""


def checked(choice: ExportChoice, kind: Format) -> ExportChoice:
    """The choice itself; ExportError where it makes no sense for this kind of file."""
    if not (isfinite(choice.scale) and SMALLEST_SCALE <= choice.scale <= LARGEST_SCALE):
        raise ExportError(
            f"The scale must lie between {SMALLEST_SCALE:g} and {LARGEST_SCALE:g}; 1 is true to size."
        )
    if not choice.layers or any(layer not in LAYERS for layer in choice.layers):
        raise ExportError(f"The layers to hand on must be some of {', '.join(LAYERS)}.")
    if choice.projector is not None:
        _check_projector(choice.projector, kind)
    return choice


def _check_projector(projector: Projector, kind: Format) -> None:
    if kind != "pdf":
        raise ExportError("A sheet for a projector is a PDF: name a .pdf file.")
    for name, value, low, high, unit in (
        ("width of the lines", projector.line_mm, THINNEST, THICKEST, " mm"),
        ("squares of the grid", projector.grid_mm, FINEST_GRID, COARSEST_GRID, " mm"),
        ("contrast", projector.contrast, LEAST_CONTRAST, 1.0, ""),
    ):
        if not (isfinite(value) and low <= value <= high):
            raise ExportError(
                f"For a projector the {name} must lie between {low:g} and {high:g}{unit}, not at {value:g}."
            )


def format_of(suffix: str) -> Format:
    """The kind of file a name's ending asks for; ExportError for any other."""
    for kind in FORMATS:
        if suffix.lower() == f".{kind}":
            return kind
    said = f"“{suffix}”" if suffix else "a name without an ending"
    raise ExportError(f"Nothing can be written to {said}: name a .svg, .dxf or .pdf file.")
