"""Scatters: even without a pattern, as many as asked for, and the same again after a small edit."""

from __future__ import annotations

from dataclasses import replace
from time import process_time

import numpy as np
import pytest
import shapely
from numpy.typing import NDArray
from scipy.spatial import cKDTree
from scipy.stats import qmc

from tests.beads.garments import KINDS, PLAIN, RICH, beading, bodice, over_all, with_scatters
from workbench.beads import BeadBands, BeadPlan, BeadScatter, BeadWeight, Strewn
from workbench.beads.strew import JAM
from workbench.draft import ShapePoint

SQUARE_INCH = 645.16
SEED = next(kind for kind in KINDS if kind.name == "Seed bead 11/0")
Array = NDArray[np.float64]
OPEN = BeadBands(0.0, 0.0, 0.0, 0.0, 0.0, 0.0)


def on(beads: Strewn, panel: int) -> Array:
    points: Array = beads.points[beads.panels == panel]
    return points


def nearest(points: Array) -> Array:
    """Distance of every point to its nearest neighbour, by scipy's tree."""
    distances, _ = cKDTree(points).query(points, k=2)
    return np.asarray(distances[:, 1])


@pytest.mark.parametrize("density", [4.0, 12.0, 30.0, 60.0])
def test_a_square_inch_holds_as_many_as_asked_for(density: float) -> None:
    """Against the free cloth as shapely measures it."""
    draft = bodice().draft
    assert draft is not None
    plan = replace(with_scatters(over_all(density=density)), bands=OPEN)
    area = sum(
        shapely.area(shapely.buffer(shapely.polygons(p.outline), -0.5 * SEED.size_mm)) for p in draft.panels
    )
    assert len(beading(plan, PLAIN).all) == pytest.approx(density * area / SQUARE_INCH, rel=0.03)


@pytest.mark.parametrize("density", [10.0, 30.0, 60.0])
def test_beads_keep_the_distance_of_their_density(density: float) -> None:
    beads = beading(with_scatters(over_all(density=density)), PLAIN).all
    least = 0.88 * np.sqrt(JAM * SQUARE_INCH / density)
    for panel in range(6):
        assert nearest(on(beads, panel)).min() >= max(least, SEED.size_mm) - 1e-9


def test_they_are_as_blue_as_the_poisson_discs_of_scipy() -> None:
    """Neighbours, against scipy.stats.qmc.PoissonDisk (Bridson's method) and against chance.

    By chance alone the distance to the nearest neighbour spreads by 0.52 of its mean (exponential
    of its square: Clark and Evans, Ecology 35, 1954; from memory); a Poisson disc by a tenth or so.
    """
    points = on(beading(replace(with_scatters(over_all(density=60.0)), bands=OPEN), PLAIN).all, 0)
    low, high = points.min(axis=0), points.max(axis=0)
    side = high - low
    middle = points[((points > low + 0.2 * side) & (points < high - 0.2 * side)).all(axis=1)]
    ours = spread_of(points, middle)
    radius = nearest(points).min() / side.max()
    engine = qmc.PoissonDisk(2, radius=radius, rng=np.random.default_rng(3))
    theirs_points = engine.fill_space() * side.max()
    own = theirs_points[((theirs_points > 0.2 * side.max()) & (theirs_points < 0.8 * side.max())).all(axis=1)]
    theirs = spread_of(theirs_points, own)
    chance = np.random.default_rng(4).random((2000, 2))
    random = spread_of(chance, chance[((chance > 0.2) & (chance < 0.8)).all(axis=1)])
    assert random == pytest.approx(0.52, abs=0.05)
    assert ours < 0.5 * random
    assert ours < 2.0 * theirs


def spread_of(points: Array, middle: Array) -> float:
    """Standard deviation over mean of the distance to the nearest neighbour, away from the border."""
    distances, _ = cKDTree(points).query(middle, k=2)
    return float(distances[:, 1].std() / distances[:, 1].mean())


def test_there_is_no_long_wave_in_them() -> None:
    """Counts in equal squares vary far less than by chance, where the variance is the mean (Poisson)."""
    points = on(beading(replace(with_scatters(over_all(density=60.0)), bands=OPEN), PLAIN).all, 0)
    low, side = np.quantile(points, 0.15, axis=0), 14.0
    cells = np.floor((points - low) / side).astype(int)
    whole = (np.quantile(points, 0.85, axis=0) - low) // side
    counts = [
        int((cells == (i, j)).all(axis=1).sum()) for i in range(int(whole[0])) for j in range(int(whole[1]))
    ]
    assert len(counts) >= 12
    assert np.var(counts) < 0.5 * np.mean(counts)


def test_kinds_come_by_their_weights() -> None:
    mix = (BeadWeight("Seed bead 11/0", 3.0), BeadWeight("Seed bead 8/0", 1.0), BeadWeight("Pearl 8 mm", 0.0))
    beads = beading(with_scatters(replace(over_all(density=20.0), mix=mix)), PLAIN)
    counts = beads.beaded[0].counts
    assert set(counts) == {"Seed bead 11/0", "Seed bead 8/0"}
    assert counts["Seed bead 11/0"] / counts["Seed bead 8/0"] == pytest.approx(3.0, rel=0.15)


def test_they_thin_out_from_the_edge_to_the_line() -> None:
    draft = bodice().draft
    assert draft is not None
    line = (ShapePoint(0.0, -20.0), ShapePoint(6.0, -20.0))
    plan = replace(
        with_scatters(replace(over_all(density=50.0), thin_from="neckline", thin_to=line)), bands=OPEN
    )
    beads = beading(plan, PLAIN).all
    walks = [draft.surface.locate(int(p), *xy)[1] for p, xy in zip(beads.panels, beads.points, strict=True)]
    assert min(walks) > -20.0
    top = min(draft.neckline.seam_walks)
    counts, _ = np.histogram(walks, bins=np.linspace(-20.0, top, 5))
    assert list(counts) == sorted(counts)
    assert counts[-1] > 3 * counts[0]


def test_another_seed_strews_otherwise() -> None:
    one, other = (beading(with_scatters(over_all(seed=seed))).all.points for seed in (1, 2))
    assert len(one) != len(other) or not np.array_equal(one, other)


@pytest.mark.parametrize("waist", [52.0, 54.0])
def test_a_small_edit_leaves_most_beads_where_they_lie(waist: float) -> None:
    plan = with_scatters(over_all(density=20.0))
    draft, changed = bodice().draft, bodice(waist).draft
    assert draft is not None
    assert changed is not None
    before, after = beading(plan).all, beading(plan, outcome=bodice(waist)).all
    stayed = 0
    for panel in range(6):
        old = on(before, panel) - draft.surface.point(panel + 0.5, 0.0)[:2]
        new = on(after, panel) - changed.surface.point(panel + 0.5, 0.0)[:2]
        stayed += int((cKDTree(new).query(old)[0] < 1e-6).sum())
    assert stayed > 0.6 * len(before)


def test_one_panel_more_leaves_the_others_as_they_are() -> None:
    some = replace(over_all(), panels=(0, 1))
    one, two = (beading(with_scatters(s)).all for s in (some, replace(some, panels=(0, 1, 4))))
    assert np.array_equal(on(one, 0), on(two, 0))
    assert np.array_equal(on(one, 1), on(two, 1))


@pytest.mark.parametrize(
    ("changes", "code", "entry"),
    [
        ({"per_square_inch": 0.0}, "bead_scatter_empty", "per_square_inch"),
        ({"per_square_inch": 0.001}, "bead_scatter_empty", "per_square_inch"),
        ({"per_square_inch": 200.0}, "bead_dense", "per_square_inch"),
        ({"per_square_inch": 10_000.0}, "bead_too_many", "per_square_inch"),
        ({"panels": ()}, "bead_no_panel", "panels"),
        ({"panels": (7,)}, "bead_no_panel", "panels"),
        ({"mix": (BeadWeight("Pearl 4 mm", 0.0),)}, "bead_no_weight", "mix"),
        ({"thin_from": "hem"}, "bead_thin_line", "thin_to"),
        ({"thin_from": "hem", "thin_to": (ShapePoint(3, 0), ShapePoint(1, 0))}, "bead_thin_line", "thin_to"),
        ({"thin_from": "hem", "thin_to": (ShapePoint(0, -400), ShapePoint(6, -400))}, "bead_scatter_empty",
         "per_square_inch"),
    ],
)  # fmt: skip
def test_a_scatter_that_cannot_be_laid_says_why_and_lays_nothing(
    changes: dict[str, object], code: str, entry: str
) -> None:
    scatter = replace(over_all(), **changes)  # type: ignore[arg-type]  # entries by name
    beads = beading(with_scatters(scatter))
    assert beads.count.total == 0
    (finding,) = beads.findings
    assert (finding.severity, finding.code) == ("attend", code)
    assert finding.place.field == f"beads.scatters.0.{entry}"
    assert "All over" in finding.text("in")


def test_a_million_beads_are_refused_at_once() -> None:
    began = process_time()
    beads = beading(with_scatters(replace(over_all(), per_square_inch=10_000.0)))
    assert beads.findings[0].code == "bead_too_many"
    assert process_time() - began < 1.0


def test_no_bead_is_too_many_after_others() -> None:
    scatters = [replace(over_all(density=35.0), name=f"Scatter {n}") for n in range(12)]
    beads = beading(with_scatters(*scatters))
    # what is full already takes no more, and that is said
    assert {finding.code for finding in beads.findings} <= {
        "bead_scatter_short",
        "bead_too_many",
        "bead_scatter_empty",
    }
    assert beads.findings


def test_ten_thousand_beads_are_placed_within_a_second() -> None:
    grain = replace(SEED, name="Grain", size_mm=1.5)
    plan = BeadPlan((*KINDS, grain), scatters=(over_all("Grain", 140.0),), bands=OPEN)
    assert len(beading(plan, PLAIN).all) >= 10_000
    times = []
    for _ in range(3):
        began = process_time()
        beading(plan, PLAIN)
        times.append(process_time() - began)
    assert min(times) < 1.0


def test_a_scatter_keeps_off_the_beads_of_runs() -> None:
    beads = beading(RICH)
    assert beads.beaded[4].what == "scatter"
    assert isinstance(beads.plan.scatters[0], BeadScatter)
    runs = np.vstack([each.beads.points for each in beads.beaded[:4]])
    panels = np.concatenate([each.beads.panels for each in beads.beaded[:4]])
    sizes = np.array([kind.size_mm for kind in KINDS])
    for panel in range(3):
        own = beads.beaded[4].beads
        mine, kinds = on(own, panel), own.kinds[own.panels == panel]
        apart, _ = cKDTree(runs[panels == panel]).query(mine)
        # the smallest bead of a run is 3.1 mm
        assert (apart >= 0.5 * (sizes[kinds] + 3.1) - 1e-9).all()
