"""Shapes to begin from: those that come with the program, and those she has kept."""

from workbench.styles.drawn import drawn_shapes
from workbench.styles.kept import KeptShape
from workbench.styles.library import (
    MOST_OWN,
    NameTakenError,
    OwnShapes,
    own_shapes,
    remove_shape,
    save_shape,
)
from workbench.styles.reference import REFERENCE, REFERENCE_NAME
from workbench.styles.try_on import TriedOn, begun_from, try_on
from workbench.styles.waiting import not_yet_hers

__all__ = [
    "MOST_OWN",
    "REFERENCE",
    "REFERENCE_NAME",
    "KeptShape",
    "NameTakenError",
    "OwnShapes",
    "TriedOn",
    "begun_from",
    "drawn_shapes",
    "not_yet_hers",
    "own_shapes",
    "remove_shape",
    "save_shape",
    "try_on",
]
