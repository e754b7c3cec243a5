"""Strip-packing instances are read, and their density is what it is."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.bench.strips import Density, density_of, line_of, measured, read_instance
from workbench.cloth import bottom_left

TRIANGLES = {
    "name": "triangles",
    "strip_height": 10,
    "items": [
        {"demand": 2, "allowed_orientations": [0, 180], "shape": [[0, 0], [6, 0], [0, 10], [0, 0]]},
        {"demand": 1, "allowed_orientations": [0.0], "shape": {"data": [[0, 0], [4, 0], [4, 10], [0, 10]]}},
    ],
}
"""Invented: two triangles that make a rectangle, and a rectangle; 10 by 10 is full."""


@pytest.fixture
def triangles(tmp_path: Path) -> Path:
    path = tmp_path / "triangles.json"
    path.write_text(json.dumps(TRIANGLES), encoding="utf-8")
    return path


def test_an_instance_is_read_at_its_scale(triangles: Path) -> None:
    instance = read_instance(triangles)
    assert [copy.number for copy in instance.copies] == [1, 2, 1]
    assert [len(copy.outline) for copy in instance.copies] == [3, 3, 4]
    assert instance.cloth.run == "either_way"


def test_density_is_area_over_strip(triangles: Path) -> None:
    """Area 100 on a strip of 10: per cent covered times length in strip units is 1,000."""
    instance = read_instance(triangles)
    plan = bottom_left(instance.copies, instance.cloth)
    assert plan.sound
    assert density_of(plan) * plan.length_mm / 100 == pytest.approx(1000)


def test_the_search_is_measured(triangles: Path) -> None:
    row = measured(read_instance(triangles), 1.0)
    assert row.pieces == 3
    assert row.plain <= row.packed <= 100.01
    assert row.packed > 99.0


def test_a_known_instance_stands_beside_the_best() -> None:
    assert line_of(Density("Shirts", 99, 78.0, 87.1)).split() == [
        "Shirts",
        "99",
        "78.0",
        "87.1",
        "87.0",
        "90.9",
    ]
    assert line_of(Density("own", 3, 78.0, 87.1)).split() == ["own", "3", "78.0", "87.1"]


@pytest.mark.parametrize(
    "text",
    [
        "no JSON",
        "{}",
        '{"strip_height": 0, "items": []}',
        '{"strip_height": 1, "items": [{"demand": 1, "allowed_orientations": [], "shape": [[0, 0]]}]}',
    ],
)
def test_a_file_that_is_none_is_named(text: str, tmp_path: Path) -> None:
    path = tmp_path / "other.json"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(ValueError, match=r"other\.json is not a strip-packing instance"):
        read_instance(path)
