"""The end of a seam allowance, folded back true: the mirror image of the edge it will lie under.

The rule itself is common practice, no source; what follows from it is worked here by trigonometry.
"""

from __future__ import annotations

from math import cos, radians, sin, tan

import numpy as np
import pytest
import shapely

from tests.pieces.figures import drafted, outcome
from workbench.pieces.corners import Corner, Frame, folded_back
from workbench.pieces.cutline import Widths, cut_shapes
from workbench.pieces.outline import outline_of

UPRIGHT = Frame((0.0, 0.0), (0.0, 1.0), (1.0, 0.0))
"""A right side that ends at the origin: along it is up, across it is to the right."""


def corner(degrees: float, neckline: float, seam: float, limit: float = 1.6) -> Corner:
    """A straight neckline that meets a straight upright seam at so many degrees inside the piece."""
    turn = radians(degrees)
    away = np.array([-sin(turn), -cos(turn)])
    up = np.array([-cos(turn), sin(turn)])
    cut = [tuple((far * away + neckline * up).tolist()) for far in (0.0, 40.0, 120.0)]
    down = [(seam, -far) for far in (0.0, 30.0, 90.0, 200.0)]
    return folded_back(UPRIGHT, cut, neckline, down, seam, limit)


@pytest.mark.parametrize("degrees", [60.0, 80.0, 90.0, 105.0, 120.0])
@pytest.mark.parametrize(("neckline", "seam"), [(0.0, 12.7), (12.7, 12.7), (10.0, 25.4)])
def test_the_end_is_where_trigonometry_puts_it(degrees: float, neckline: float, seam: float) -> None:
    found = corner(degrees, neckline, seam)
    turn = radians(degrees)
    middle = neckline / sin(turn)
    assert found.points[0] == pytest.approx((0.0, middle), abs=1e-9)
    assert found.points[-1] == pytest.approx((seam, middle - seam / tan(turn)), abs=1e-6)


@pytest.mark.parametrize("degrees", [130.0, 150.0, 164.0])
@pytest.mark.parametrize(("neckline", "seam"), [(0.0, 12.7), (6.0, 12.7), (12.7, 12.7), (12.7, 25.4)])
def test_an_end_that_would_run_out_far_is_cut_blunt(degrees: float, neckline: float, seam: float) -> None:
    found = corner(degrees, neckline, seam)
    reach = 1.6 * np.hypot(neckline, seam)
    tip = seam, neckline / sin(radians(degrees)) - seam / tan(radians(degrees))
    if np.hypot(*tip) <= reach:
        assert found.points[-1] == pytest.approx(tip)
        return
    far = np.array(tip) / np.hypot(*tip)
    assert found.points[-1][0] == pytest.approx(seam)
    # both ends of the blunt cut lie on one line square to the way out
    assert [float(np.dot(point, far)) for point in found.points[-2:]] == pytest.approx([reach, reach])
    assert all(float(np.dot(point, far)) <= reach + 1e-6 for point in found.points)


def test_a_wide_edge_takes_a_narrow_seam_allowance_with_it() -> None:
    """The neckline's own allowance reaches past the seam's: the two cut lines just meet, without a fold."""
    found = corner(164.0, 25.4, 12.7)
    turn = radians(164.0)
    up, away = np.array([-cos(turn), sin(turn)]), np.array([-sin(turn), -cos(turn)])
    far = (12.7 - 25.4 * up[0]) / away[0]
    assert found.points == [pytest.approx((12.7, 25.4 * up[1] + far * away[1]))]


@pytest.mark.parametrize("degrees", [20.0, 30.0, 36.0])
def test_a_peak_over_the_seam_is_cut_level(degrees: float) -> None:
    """Sharper than about 39 degrees the neckline's cut line peaks further out than 1.6 allowances."""
    found = corner(degrees, 12.7, 12.7)
    assert max(y for _, y in found.points) == pytest.approx(1.6 * 12.7)
    left, right = found.points[:2]
    assert left[1] == right[1] == pytest.approx(1.6 * 12.7)
    assert left[0] == pytest.approx(-right[0]) or right[0] == pytest.approx(12.7)


def test_without_allowances_the_corner_stays() -> None:
    assert corner(70.0, 0.0, 0.0).points == [(0.0, 0.0)]


def test_on_the_fold_the_neckline_runs_on_to_the_fold_line() -> None:
    """No allowance to fold back: the cut line meets the fold, run on straight, and comes down it."""
    found = corner(60.0, 10.0, 0.0)
    assert found.points[0] == pytest.approx((0.0, 10.0 / sin(radians(60.0))))
    assert found.points[1] == (0.0, 0.0)


@pytest.mark.parametrize("four", [(0.0, 12.7, 0.0, 12.7), (12.7, 25.4, 10.0, 15.0)])
def test_pressed_open_the_allowance_lies_on_the_edge_of_the_cloth(four: Widths) -> None:
    """Every end of every panel, reflected in the tangent of its seam, against the cut line it must match."""
    checked = 0
    for panel in drafted(outcome()).panels:
        shape = cut_shapes([outline_of(panel)], [four], 10.0)[0]
        seams = (panel.right[1::-1], panel.right[-2:], panel.left[-2:], panel.left[1::-1])
        for place, (inner, end) in enumerate(seams):
            upper = place in (1, 2)
            along = (end - inner) / np.hypot(*(end - inner))
            points = np.array(shape.corners[place].points) - end
            image = end + 2 * np.outer(points @ along, along) - points
            span = shape.spans[2 if upper else 0]
            edge = shapely.LineString(np.concatenate((image[:1], shape.ring[slice(*span)], image[:1])))
            away = shapely.distance(shapely.points(image[1:-1]), edge)
            assert away.size == 0 or away.max() < 1e-6, (panel.name, place)
            checked += away.size
    assert checked > 50
