"""Older files brought up to the version that this program writes, one step for each version.

A step takes the tree of one version and gives the tree of the next. It is never changed
once files of its version have been written; what changes later is the business of a later
step.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from typing import Any

from workbench.document.file import VERSION
from workbench.document.project import LARGER_NUMBERS, LARGEST_NUMBER
from workbench.document.tree import TreeError, parsed

Tree = dict[str, Any]
Upgrade = Callable[[Tree], Tree]

STEPS: Mapping[int, Upgrade] = {}
"""By the version a step begins with. Version 1 is the first and still the newest, so there is none yet."""


def migrated(data: bytes, steps: Mapping[int, Upgrade] = STEPS, newest: int = VERSION) -> bytes:
    """The bytes of a project file in version ``newest``; those of that version are given back as they are.

    What is newer, damaged or no project is given back as well: whoever reads it says what
    is wrong with it. TreeError for an older file that cannot be brought up.
    """
    try:
        tree = parsed(data, LARGEST_NUMBER, LARGER_NUMBERS)
    except TreeError:
        return data
    version = tree.get("version") if isinstance(tree, dict) else None
    if type(version) is not int or not 1 <= version < newest:
        return data
    return json.dumps(brought_up(tree, steps, newest), ensure_ascii=False).encode("utf-8")


def brought_up(tree: Tree, steps: Mapping[int, Upgrade], newest: int) -> Tree:
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
