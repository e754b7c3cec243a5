"""Older files brought up to the version that this program writes, one step for each version.

A step takes the tree of one version and gives the tree of the next. It is never changed
once files of its version have been written; what changes later is the business of a later
step.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from workbench.document.tree import TreeError

VERSION = 2
"""Of the files that this program writes (own choice)."""

Tree = dict[str, Any]
Upgrade = Callable[[Tree], Tree]


def _second(tree: Tree) -> Tree:
    """Room for what came with fittings, earlier measurements, pictures and the order of work."""
    client = tree.get("client")
    if isinstance(client, dict):
        # anything else is for the reader to name
        tree = {**tree, "client": {"worn": "", "next_fitting": "", **client}}
    fresh: Tree = {
        "style_name": "",
        "earlier": [],
        "fittings": [],
        "beads": {
            "kinds": [],
            "runs": [],
            "scatters": [],
            "bands": {
                "bone_mm": 3.175,
                "seam_mm": 1.5875,
                "edge_mm": 3.175,
                "opening_mm": 25.4,
                "arm_mm": 38.1,
                "arm_depth_mm": 101.6,
            },
            "reserve_percent": 10.0,
            "per_minute": 3.0,
        },
        "pictures": [],
        "behind": None,
        "done": [],
        "torso": {
            "top_hip": 0.67,
            "waist": 0.705,
            "underbust": 0.75,
            "bust": 0.82,
            "upper_chest": 0.7,
            "short_at_waist": 6.0,
            "short_at_hip": 10.0,
        },
    }
    return {**fresh, **tree}


STEPS: Mapping[int, Upgrade] = {1: _second}
"""By the version a step begins with (own choice)."""


def brought_up(tree: Tree, steps: Mapping[int, Upgrade] = STEPS, newest: int = VERSION) -> Tree:
    """The tree in version ``newest``, step by step; TreeError names the version where that ends."""
    for version in range(tree["version"], newest):
        step = steps.get(version)
        if step is None:
            raise TreeError((), f"files of version {version} can no longer be read")
        try:
            tree = {**step(tree), "version": version + 1}
        except (LookupError, TypeError, ValueError, AttributeError) as error:
            # a file damaged by hand reaches a step before any check of its entries
            raise TreeError((), f"the file is no sound file of version {version}") from error
    return tree
