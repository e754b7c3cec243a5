"""The part of a cloth that pieces may lie on."""

from __future__ import annotations

from dataclasses import dataclass

import shapely
from shapely import Geometry

from workbench.cloth.cloth_faults import faults_of
from workbench.cloth.plan import LayError
from workbench.cloth.records import Cloth
from workbench.draft import Finding, Place

FAR = 1e6
"""mm: longer than any cloth; a plain cloth goes on for as long as it is needed (own choice)."""


@dataclass(frozen=True)
class Room:
    """From ``left`` to ``right`` across and from 0 along, mm; a remnant has its own shape.

    Across is measured from a selvedge, or from the fold where the cloth is folded.
    """

    left: float
    right: float
    folded: bool = False
    shape: Geometry | None = None

    @property
    def width(self) -> float:
        """Usable width in mm."""
        return self.right - self.left

    @property
    def polygon(self) -> Geometry:
        """All of it as one area."""
        return shapely.box(self.left, 0.0, self.right, FAR) if self.shape is None else self.shape


def room_of(cloth: Cloth) -> Room:
    """The usable part of a cloth; LayError with the first fault where the cloth cannot be."""
    faults = faults_of(cloth)
    if faults:
        raise LayError(faults[0])
    if cloth.laid == "folded":
        return Room(0.0, 0.5 * cloth.width_mm - cloth.selvedge_mm, folded=True)
    left, right = cloth.selvedge_mm, cloth.width_mm - cloth.selvedge_mm
    if cloth.remnant is None:
        return Room(left, right)
    return _remnant(cloth, left, right)


def _remnant(cloth: Cloth, left: float, right: float) -> Room:
    """The remnant as far as it lies between where the selvedges would be."""
    shape = shapely.polygons(cloth.remnant)
    low, high = shapely.bounds(shape)[[1, 3]].tolist()
    usable = shapely.intersection(shape, shapely.box(left, low, right, high))
    if not usable.area > 0:
        text = "The remnant of {cloth} lies outside the usable width of the cloth."
        raise LayError(
            Finding(
                "stop", "remnant_outside", text, words={"cloth": cloth.name}, place=Place(field="remnant")
            )
        )
    bounds = shapely.bounds(usable).tolist()
    return Room(bounds[0], bounds[2], shape=usable)


def area_used(cloth: Cloth, length: float) -> float:
    """Area of the cloth that a plan of so many mm takes, selvedges included, square mm."""
    if cloth.remnant is not None:
        return float(shapely.polygons(cloth.remnant).area)
    return cloth.width_mm * length
