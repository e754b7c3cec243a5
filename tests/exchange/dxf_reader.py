"""A reader of DXF that knows nothing but the pairs of the format: a group code, then its value.

Written from the published reference of the format (group codes of POLYLINE, LWPOLYLINE, TEXT and the
HEADER section; from memory), without the library that wrote the file.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Pair = tuple[int, str]


@dataclass
class Read:
    """What a file holds."""

    header: dict[str, str] = field(default_factory=dict)
    layers: dict[str, int] = field(default_factory=dict)
    """With their colours."""
    lines: dict[str, list[tuple[bool, Array]]] = field(default_factory=dict)
    """By layer: whether it is closed, and its points."""
    texts: list[tuple[str, str]] = field(default_factory=list)
    """Layer and words."""


def read(data: bytes) -> Read:
    """The file's header, layers and drawn things."""
    pairs = list(_pairs(data.decode("cp1252")))
    found = Read()
    for kind, name, body in _things(pairs):
        if kind == "HEADER":
            found.header[name] = body[0][1]
        elif (kind, name) == ("TABLES", "LAYER"):
            values = dict(body)
            if 62 in values:
                found.layers[values[2]] = int(values[62])
        elif kind == "ENTITIES":
            _take(found, name, body)
    return found


def _pairs(text: str) -> Iterator[Pair]:
    lines = text.replace("\r\n", "\n").split("\n")
    for place in range(0, len(lines) - 1, 2):
        yield int(lines[place]), lines[place + 1]


def _things(pairs: list[Pair]) -> Iterator[tuple[str, str, list[Pair]]]:
    """Section, name and what follows, for every entry of the header and everything begun by a 0."""
    section, name, body = "", "", list[Pair]()
    for code, value in pairs:
        if name == "SECTION" and code == 2:
            section, name = value, ""
        elif code == 0 or (section == "HEADER" and code == 9):
            if section and name and body:
                yield section, name, body
            name, body = value, []
        else:
            body.append((code, value))


def _take(found: Read, name: str, body: list[Pair]) -> None:
    values = dict(body)
    layer = values.get(8, "")
    if name == "LWPOLYLINE":
        points = [(float(x), float(y)) for (a, x), (b, y) in pairwise(body) if (a, b) == (10, 20)]
        found.lines.setdefault(layer, []).append((bool(int(values.get(70, "0")) & 1), np.array(points)))
    elif name == "POLYLINE":
        found.lines.setdefault(layer, []).append((bool(int(values.get(70, "0")) & 1), np.empty((0, 2))))
    elif name == "VERTEX":
        closed, points_before = found.lines[layer][-1]
        here = np.array([[float(values[10]), float(values[20])]])
        found.lines[layer][-1] = (closed, np.concatenate((points_before, here)))
    elif name == "TEXT":
        found.texts.append((layer, values[1]))
