"""Shapes from their recipes: projects on the invented body, as any shape of her own is kept."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

from workbench.body import LEVELS, Unit, complete, walks
from workbench.document import Client, Project, new_project
from workbench.draft import Design, Quarter, QuarterName, Seam, ShapePoint, usual_design
from workbench.styles.kept import KeptShape
from workbench.styles.recipes import RECIPES, Line, Recipe
from workbench.styles.reference import REFERENCE, REFERENCE_NAME


@lru_cache(maxsize=2)
def drawn_shapes(unit: Unit = "in") -> tuple[KeptShape, ...]:
    """The shapes that come with the program, the shortest first; a new project from one is in ``unit``."""
    return tuple(KeptShape(recipe.name, recipe.purpose, _project(recipe, unit)) for recipe in RECIPES)


def _project(recipe: Recipe, unit: Unit) -> Project:
    project = new_project(recipe.style, unit)
    return replace(
        project,
        client=Client(name=REFERENCE_NAME, notes=recipe.purpose, invented=True),
        measurements=dict(REFERENCE),
        design=_design(recipe),
        making=replace(project.making, front=recipe.front_made),
        style_name=recipe.name,
    )


def _design(recipe: Recipe) -> Design:
    design = replace(
        usual_design(recipe.style),
        front=_quarter(recipe, "front"),
        back=_quarter(recipe, "back"),
    )
    return replace(design, neckline=_points(recipe.neckline, design), hem=_points(recipe.hem, design))


def _quarter(recipe: Recipe, name: QuarterName) -> Quarter:
    front = name == "front"
    seams = tuple(
        Seam(*row, through_bust_point=front and number == 0 and recipe.through_bust)
        for number, row in enumerate(recipe.front if front else recipe.back)
    )
    return Quarter(seams, recipe.side[0 if front else 1])


def _points(line: Line, design: Design) -> tuple[ShapePoint, ...]:
    """The line on the invented body."""
    ladder = _ladder(design)
    return tuple(
        ShapePoint(_panels(quarters, design), _walk(rung, ladder), smooth) for quarters, rung, smooth in line
    )


def _panels(quarters: float, design: Design) -> float:
    """u, which runs by one a panel, of a place given in quarters."""
    front, back = design.front.panel_count, design.back.panel_count
    return quarters * front if quarters <= 1 else front + (quarters - 1) * back


def _ladder(design: Design) -> tuple[float, ...]:
    """Walks of the levels that shape the design, bottom to top."""
    found = walks(complete({key: length.mm for key, length in REFERENCE.items()}))
    return tuple(found[level] for level in LEVELS if level in design.levels)


def _walk(rung: float, ladder: Sequence[float]) -> float:
    """Walk of a height counted in levels from the waist; beyond the outermost ones in steps of the last."""
    place = rung + LEVELS.index("waist")
    below = min(max(int(place // 1), 0), len(ladder) - 2)
    return ladder[below] + (place - below) * (ladder[below + 1] - ladder[below])
