"""What goes to the child process and comes back: one line of JSON each."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from decimal import Decimal
from typing import Any

import numpy as np

from workbench.cloth.plan import Copy
from workbench.cloth.records import Cloth, Placed

_FIGURES = 6
"""Digits after the point of a millimetre (own choice)."""


@dataclass(frozen=True)
class Job:
    """What a child is asked to do."""

    copies: tuple[Copy, ...]
    cloth: Cloth
    pinned: tuple[Placed, ...]
    seconds: float
    seed: int
    workers: int


def job_line(job: Job) -> bytes:
    """A job as one line; outlines that copies share are written once."""
    shapes = {id(copy.outline): copy.outline for copy in job.copies}
    number = {own: place for place, own in enumerate(shapes)}
    cloth = {**asdict(job.cloth), "price": "0"}
    parts = {
        "shapes": [np.round(outline, _FIGURES).tolist() for outline in shapes.values()],
        "copies": [{**vars(copy), "outline": number[id(copy.outline)]} for copy in job.copies],
        "cloth": cloth,
        "pinned": [asdict(own) for own in job.pinned],
        "seconds": job.seconds,
        "seed": job.seed,
        "workers": job.workers,
    }
    return line(parts)


def read_job(text: bytes) -> Job:
    """The job of a line."""
    parts = json.loads(text)
    shapes = [np.array(shape) for shape in parts["shapes"]]
    copies = [
        {**own, "outline": shapes[own["outline"]], "grain": tuple(own["grain"])} for own in parts["copies"]
    ]
    cloth = {**parts["cloth"], "price": Decimal(0), "layers": tuple(parts["cloth"]["layers"])}
    if cloth["remnant"] is not None:
        cloth["remnant"] = tuple((x, y) for x, y in cloth["remnant"])
    return Job(
        tuple(Copy(**own) for own in copies),
        Cloth(**cloth),
        tuple(Placed(**own) for own in parts["pinned"]),
        parts["seconds"],
        parts["seed"],
        parts["workers"],
    )


def plan_line(placed: Sequence[Placed], how: str) -> bytes:
    """Places as one line."""
    return line({"kind": "plan", "placed": [asdict(own) for own in placed], "how": how})


def read_placed(message: dict[str, Any]) -> tuple[Placed, ...]:
    """The places of a message."""
    return tuple(Placed(**own) for own in message["placed"])


def line(message: dict[str, Any]) -> bytes:
    """One message."""
    return json.dumps(message, separators=(",", ":")).encode("ascii") + b"\n"
