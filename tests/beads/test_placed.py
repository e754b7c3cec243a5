"""What must hold for every bead, looked over from outside: with shapely's shapes and scipy's trees."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
import pytest
import shapely
from scipy.spatial import cKDTree
from shapely.ops import substring

from tests.beads.garments import LACED, PLAIN, RICH, beading, bodice, over_all, with_scatters
from workbench.beads import BeadBands, Beading, BeadPlan
from workbench.beads.ground import TOUCH
from workbench.pieces import Making, bones_of

HAIR = 1e-6


def drafted() -> Any:
    draft = bodice().draft
    assert draft is not None
    return draft


MAKINGS = {
    "laced": LACED,
    "busk": replace(LACED, front="busk"),
    "zip": replace(LACED, opening=replace(LACED.opening, closing="side_zip")),
    "bones up the middle": replace(LACED, boning=replace(LACED.boning, places=("mid_panel", "seams"))),
    "no bones": PLAIN,
}


@pytest.fixture(params=MAKINGS)
def making(request: pytest.FixtureRequest) -> Making:
    return MAKINGS[request.param]


def smallest_overlap(beads: Beading, panel: int) -> float:
    """The least distance over what two beads of a panel need, both pairs of runs and of scatters."""
    lying = beads.all
    own = lying.part(lying.panels == panel)
    if len(own) < 2:
        return np.inf
    sizes = np.array([kind.size_mm for kind in beads.plan.kinds])[own.kinds]
    pairs = cKDTree(own.points).query_pairs(float(sizes.max()), output_type="ndarray")
    if not len(pairs):
        return np.inf
    apart = np.hypot(*(own.points[pairs[:, 0]] - own.points[pairs[:, 1]]).T)
    return float((apart / (0.5 * (sizes[pairs[:, 0]] + sizes[pairs[:, 1]]))).min())


def test_no_two_beads_lie_on_each_other(making: Making) -> None:
    beads = beading(RICH, making)
    assert len(beads.all) > 200
    for panel in range(6):
        assert smallest_overlap(beads, panel) >= TOUCH - HAIR


def discs(beads: Beading, panel: int) -> Any:
    """Every bead of a panel as a disc; a polygon within the circle, so hardly smaller."""
    lying = beads.all
    own = lying.part((lying.panels == panel) & ~lying.once)
    sizes = np.array([kind.size_mm for kind in beads.plan.kinds])[own.kinds]
    return shapely.buffer(shapely.points(own.points), 0.5 * sizes - HAIR, quad_segs=16)


def test_every_bead_lies_within_the_stitch_lines(making: Making) -> None:
    beads = beading(RICH, making)
    for panel in drafted().panels:
        assert shapely.contains(shapely.polygons(panel.outline), discs(beads, panel.index)).all()


def test_no_bead_lies_on_a_bone_channel(making: Making) -> None:
    beads = beading(RICH, making)
    half = 0.5 * (making.boning.width_mm + making.boning.channel_ease_mm) + RICH.bands.bone_mm
    panels = drafted().panels
    for bone in bones_of(bodice(), making)[0]:
        channel = shapely.buffer(shapely.linestrings(bone.line), half, cap_style="flat")
        assert not shapely.intersects(channel, discs(beads, bone.panel)).any()
        if bone.place == "seams":
            beyond = shapely.buffer(shapely.linestrings(panels[bone.panel + 1].left), half, cap_style="flat")
            assert not shapely.intersects(beyond, discs(beads, bone.panel + 1)).any()


def test_seams_neckline_and_hem_are_kept_free(making: Making) -> None:
    beads, bands = beading(RICH, making), RICH.bands
    for panel in drafted().panels:
        own = discs(beads, panel.index)
        for line in (panel.neckline, panel.hem):
            assert (
                shapely.distance(shapely.linestrings(line), own).min(initial=np.inf) >= bands.edge_mm - 1e-3
            )
        for line in (panel.left, panel.right)[panel.index == 0 :]:
            assert (
                shapely.distance(shapely.linestrings(line), own).min(initial=np.inf) >= bands.seam_mm - 1e-3
            )


@pytest.mark.parametrize(
    ("how", "panel", "side"),
    [("laced", 5, "right"), ("busk", 0, "left"), ("zip", 2, "right"), ("zip", 3, "left")],
)
def test_the_opening_is_kept_free(how: str, panel: int, side: str) -> None:
    beads = beading(RICH, MAKINGS[how])
    line = shapely.linestrings(getattr(drafted().panels[panel], side))
    own = discs(beads, panel)
    if len(own):
        assert shapely.distance(line, own).min() >= RICH.bands.opening_mm - 1e-3


def test_nothing_lies_under_the_arm() -> None:
    wide = replace(with_scatters(over_all()), bands=BeadBands(arm_mm=30.0, arm_depth_mm=80.0))
    seam = drafted().seams[2]
    for panel, side in ((2, "right"), (3, "left")):
        line = getattr(drafted().panels[panel], side)
        arm = shapely.buffer(shapely.linestrings(part_above(line, 80.0)), 30.0, cap_style="flat")
        assert not shapely.intersects(shapely.buffer(arm, -1e-3), discs(beading(wide, PLAIN), panel)).any()
        none = replace(wide, bands=replace(wide.bands, arm_mm=0.0))
        assert shapely.intersects(arm, discs(beading(none, PLAIN), panel)).any()
    assert seam.index == 3


def part_above(line: Any, depth: float) -> Any:
    """The upper end of an upward line, told by shapely."""
    whole = shapely.linestrings(line)
    length = shapely.length(whole)
    return shapely.get_coordinates(substring(whole, length - depth, length))


def test_wider_bands_leave_fewer_beads() -> None:
    totals = [
        beading(replace(RICH, bands=BeadBands(bone_mm=wide, seam_mm=wide, edge_mm=wide))).count.total
        for wide in (0.0, 4.0, 12.0)
    ]
    assert totals == sorted(totals, reverse=True)
    assert totals[0] > totals[-1]


def test_the_same_input_gives_the_same_beads() -> None:
    one, other = beading(RICH).all, beading(RICH).all
    assert np.array_equal(one.points, other.points)
    assert np.array_equal(one.kinds, other.kinds)


def test_no_draft_and_no_plan_have_no_beads() -> None:
    assert beading(BeadPlan()).count.total == 0
    assert len(beading(BeadPlan()).all) == 0
