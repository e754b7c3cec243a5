"""How closely shapes are packed, on open strip-packing instances: ``python -m tests.bench.strips FILE...``.

None is shipped: give files of your own, in the plain JSON that packing libraries read::

    {"name": "shirts", "strip_height": 40, "items": [
        {"demand": 8, "allowed_orientations": [0, 180], "shape": [[0, 0], [3, 0], [3, 5]]}]}

A shape may also be ``{"type": "simple_polygon", "data": [[0, 0], ...]}``. Turns other than
end for end are not made here, so an instance that allows more is packed less closely.
"""

from __future__ import annotations

import json
import sys
from argparse import ArgumentParser
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from workbench.cloth import Cloth, Copy, Plan, Solve

WIDTH_MM = 1000.0
"""Every instance is brought to this width: lengths here are reckoned to a hundredth of a millimetre."""
BEST_KNOWN = {
    "shirts": 90.9,
    "trousers": 92.6,
    "swim": 79.8,
    "shapes1": 76.7,
    "marques": 92.0,
    "albano": 89.8,
    "dagli": 90.2,
}
"""Density in per cent of the best published packings of the ESICUP sets (second-hand, not read)."""
MEASURED = {
    "shirts": 87.0,
    "trousers": 89.8,
    "swim": 74.6,
    "shapes1": 72.7,
    "marques": 88.7,
    "albano": 87.6,
    "dagli": 85.3,
}
"""What the packing library alone reached in 20 s on two cores."""


@dataclass(frozen=True)
class Instance:
    """Shapes for one strip, brought to :data:`WIDTH_MM`."""

    name: str
    cloth: Cloth
    copies: tuple[Copy, ...]


@dataclass(frozen=True)
class Density:
    """Per cent of the strip that is covered: laid the plain way, and after the search."""

    name: str
    pieces: int
    plain: float
    packed: float


def read_instance(path: Path) -> Instance:
    """One instance of a file; ValueError with the file's name where it is none."""
    try:
        data = json.loads(path.read_text(encoding="utf-8"))
        scale = WIDTH_MM / float(data["strip_height"])
        turned = any(180 in item["allowed_orientations"] for item in data["items"])
        name = str(data.get("name") or path.stem)
        copies = [copy for number, item in enumerate(data["items"]) for copy in _copies(item, number, scale)]
    except (KeyError, TypeError, ValueError, ZeroDivisionError) as error:
        raise ValueError(f"{path.name} is not a strip-packing instance ({error}).") from error
    cloth = Cloth(
        name,
        ("fashion",),
        width_mm=WIDTH_MM,
        selvedge_mm=0.0,
        run="either_way" if turned else "one_way",
        gap_mm=0.0,
    )
    return Instance(name, cloth, tuple(copies))


def _copies(item: dict[str, Any], number: int, scale: float) -> list[Copy]:
    """The strip's height becomes the cloth's width: a shape is turned a quarter."""
    shape = item["shape"]["data"] if isinstance(item["shape"], dict) else item["shape"]
    ring = scale * np.array(shape, dtype=float)
    if len(ring) > 1 and np.array_equal(ring[0], ring[-1]):
        ring = ring[:-1]
    if ring.ndim != 2 or ring.shape[1] != 2 or len(ring) < 3:
        raise ValueError(f"shape {number} has no area")
    upright = np.column_stack((-ring[:, 1], ring[:, 0]))
    name = f"shape {number}"
    return [
        Copy(name, copy, name, "fashion", None, False, upright, (0.0, 1.0))
        for copy in range(1, int(item["demand"]) + 1)
    ]


def density_of(plan: Plan) -> float:
    """Per cent of the strip that is covered."""
    return 100 * plan.utilisation


def measured(instance: Instance, seconds: float) -> Density:
    """Densities of one instance; ValueError where the search gives a plan that does not hold."""
    solve = Solve(instance.copies, instance.cloth, seconds=seconds)
    plain = solve.best
    best = solve.wait()
    for plan in (plain, best):
        if plan.findings:
            raise ValueError(plan.findings[0].text("cm"))
    return Density(instance.name, len(instance.copies), density_of(plain), density_of(best))


def line_of(row: Density) -> str:
    """One line of the table, beside what is known of the instance."""
    name = row.name.lower()
    before, best = MEASURED.get(name), BEST_KNOWN.get(name)
    known = [f"{value:8.1f}" if value is not None else f"{'':8}" for value in (before, best)]
    return f"{row.name:16} {row.pieces:6} {row.plain:8.1f} {row.packed:8.1f} {' '.join(known)}".rstrip()


def main(arguments: Sequence[str] | None = None) -> int:
    """Print the table."""
    parser = ArgumentParser(prog="python -m tests.bench.strips", description=__doc__.splitlines()[0])
    parser.add_argument("files", nargs="+", type=Path)
    parser.add_argument("--seconds", type=float, default=20.0)
    given = parser.parse_args(arguments)
    print(f"{'density, %':16} {'pieces':>6} {'plain':>8} {'packed':>8} {'library':>8} {'best':>8}")
    for path in given.files:
        print(line_of(measured(read_instance(path), given.seconds)), flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main())
