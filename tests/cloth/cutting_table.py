"""Things to lay, all invented, and a judge that shares no code with what lays them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from functools import cache

import numpy as np
import shapely
from shapely import affinity
from shapely.geometry import Polygon, box

from tests.pieces.figures import outcome, outcome_of
from workbench.cloth import Cloth, Copy, Placed, Plan, copies_of
from workbench.draft import usual_design
from workbench.pieces import LAYERS, Cutting, FrontMade, LayerChoice, LayerName, Making, cutting_of

INCH, YARD = 25.4, 914.4
ONE: tuple[LayerName, ...] = ("fashion",)
THREE: tuple[LayerName, ...] = ("fashion", "strength", "lining")
CORNERED = ((0.0, 0.0), (1150.0, 150.0), (1000.0, 1500.0), (600.0, 900.0), (80.0, 2500.0))
"""A remnant with a notch cut into its far end, larger than the bodice needs."""


@cache
def cutting(front: FrontMade = "fold") -> Cutting:
    """Six panels a half."""
    return cutting_of(outcome(), Making(front=front))


@cache
def with_facings(front: FrontMade) -> Cutting:
    """Every layer there is."""
    return cutting_of(
        outcome(), Making(front=front, layers=tuple(LayerChoice(name, True) for name in LAYERS))
    )


@cache
def seven_panels() -> Cutting:
    """Fourteen pieces a layer."""
    return cutting_of(outcome_of(usual_design("over_bust", 4, 3)), Making(front="busk"))


def copies(cloth: Cloth, front: FrontMade = "fold") -> tuple[Copy, ...]:
    return copies_of(cutting(front), cloth)


def block(name: str, wide: float, high: float, **other: object) -> Copy:
    """A rectangle to lay."""
    ring = np.array([[0.0, 0.0], [wide, 0.0], [wide, high], [0.0, high]])
    return replace(Copy(f"fashion/{name}", 1, name, "fashion", None, False, ring, (0.0, 1.0)), **other)  # type: ignore[arg-type]


def on_cloth(copy: Copy, placed: Placed) -> Polygon:
    """The shape on the cloth, by another library's transformations."""
    shape = Polygon(copy.outline)
    if placed.mirrored:
        shape = affinity.scale(shape, xfact=-1.0, yfact=1.0, origin=(0, 0))
    shape = affinity.rotate(shape, placed.degrees, origin=(0, 0))
    return affinity.translate(shape, placed.x, placed.y)


def usable(cloth: Cloth) -> Polygon:
    if cloth.laid == "folded":
        return box(0.0, 0.0, cloth.width_mm / 2 - cloth.selvedge_mm, 1e5)
    strip = box(cloth.selvedge_mm, -1e5, cloth.width_mm - cloth.selvedge_mm, 1e5)
    return strip & (Polygon(cloth.remnant) if cloth.remnant else box(0.0, 0.0, 1e5, 1e5))


def judged(plan: Plan, laid_out: Sequence[Copy], cloth: Cloth, within: float = 0.06) -> list[str]:
    """What is wrong with a plan: nothing for one that can be cut. Sizes in mm."""
    known = {copy.key: copy for copy in laid_out}
    wrong = []
    if Counter((own.piece, own.copy) for own in plan.placed) != Counter(known.keys()):
        wrong.append("counts")
    shapes = [(own, known[own.piece, own.copy]) for own in plan.placed]
    polygons = [on_cloth(copy, own) for own, copy in shapes]
    room = usable(cloth).buffer(within, join_style="mitre")
    wrong += [
        f"{own.piece} outside" for (own, _), shape in zip(shapes, polygons, strict=True) if shape - room
    ]
    for number, shape in enumerate(polygons):
        for other in range(number):
            if shape.distance(polygons[other]) < cloth.gap_mm - within:
                wrong.append(f"{shapes[number][0].piece} near {shapes[other][0].piece}")
    for own, copy in shapes:
        grain = on_grain(copy, own)
        lean = np.degrees(np.arctan2(abs(grain[0]), grain[1] if cloth.run == "one_way" else abs(grain[1])))
        if lean > cloth.tilt_degrees + 0.01:
            wrong.append(f"{own.piece} off grain")
        if own.mirrored != copy.mirrored and not copy.either_side:
            wrong.append(f"{own.piece} wrong side")
    if polygons and abs(max(shape.bounds[3] for shape in polygons) - bottom(cloth) - plan.length_mm) > within:
        wrong.append("length")
    return wrong


def bottom(cloth: Cloth) -> float:
    return float(usable(cloth).bounds[1]) if cloth.remnant else 0.0


def on_grain(copy: Copy, placed: Placed) -> tuple[float, float]:
    line = shapely.LineString([(0.0, 0.0), copy.grain])
    if placed.mirrored:
        line = affinity.scale(line, xfact=-1.0, yfact=1.0, origin=(0, 0))
    x, y = affinity.rotate(line, placed.degrees, origin=(0, 0)).coords[1]
    return x, y
