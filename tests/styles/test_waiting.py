"""Begun from a shape before she was measured: said until the shape is put on her."""

from __future__ import annotations

import time

from workbench.document import Project, move_point, picture_of, set_measurement
from workbench.styles import KeptShape, begun_from, drawn_shapes, not_yet_hers, try_on

PLUNGE = next(shape for shape in drawn_shapes() if shape.name == "Plunge")


def measured(shape: KeptShape, **heights: str) -> Project:
    project = begun_from(shape, "in")
    for key, text in {"bust_girth": "38", "waist_girth": "29", **heights}.items():
        project = set_measurement(project, key, text)
    return project


def codes(project: Project, *hers: KeptShape) -> list[str]:
    return [finding.code for finding in not_yet_hers(picture_of(project), hers)]


def test_with_heights_of_her_own_it_is_said() -> None:
    found = not_yet_hers(picture_of(measured(PLUNGE, shoulder_to_waist="18")))
    assert [finding.text("in") for finding in found] == [
        "Neckline and hem still lie as on the invented body of the shape “Plunge”. "
        "Use the shape again: it is then put in proportion to her."
    ]


def test_once_it_is_put_on_her_nothing_is_said() -> None:
    assert codes(try_on(PLUNGE, measured(PLUNGE, shoulder_to_waist="18")).project) == []


def test_without_heights_there_is_nothing_to_put_right() -> None:
    assert codes(measured(PLUNGE)) == []


def test_with_nothing_measured_nothing_is_said() -> None:
    assert codes(begun_from(PLUNGE, "in")) == []


def test_a_line_she_has_drawn_since_is_hers() -> None:
    project = measured(PLUNGE, shoulder_to_waist="18")
    points = project.design.neckline
    assert points is not None
    assert codes(move_point(project, "neckline", 1, points[1].u, points[1].t + 5, points)) == []


def test_a_shape_nobody_knows_any_more_is_let_be() -> None:
    own = KeptShape("Mine", "", PLUNGE.project)
    project = measured(own, shoulder_to_waist="18")
    assert project.style_name == "Mine"
    assert codes(project) == []
    assert codes(project, own) == ["shape_waits"]


def test_it_costs_next_to_nothing_while_she_drags() -> None:
    picture = picture_of(measured(PLUNGE, shoulder_to_waist="18"))
    not_yet_hers(picture)
    times = []
    for _ in range(50):
        start = time.process_time()
        not_yet_hers(picture)
        times.append(time.process_time() - start)
    assert min(times) < 0.0005
