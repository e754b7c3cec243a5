"""Projects to edit, keep and report."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import strategies as st

from tests.document.bead_values import bead_plans
from tests.document.cloth_values import cloths, plans, quotings
from tests.document.fitting_values import fittings
from tests.document.wish_values import wishes
from workbench.body import BY_KEY, LEVELS, LIMIT_TABLE, Length, Limits, read_length
from workbench.document import (
    BONE_PLACES,
    EDGE_NAMES,
    MAKING_ROWS,
    TEXT_LENGTHS,
    Client,
    Paper,
    Project,
    new_project,
    set_measurement,
)
from workbench.draft import Design, Quarter, Reductions, Seam, ShapePoint, Share, Style
from workbench.pieces import (
    EDGE_KINDS,
    LAYERS,
    Allowances,
    Boning,
    LayerChoice,
    Making,
    Marks,
    Opening,
    OwnAllowance,
)

GIRTHS = {"bust_girth": "36", "waist_girth": "27 3/4", "underbust_girth": "31 1/8", "top_hip_girth": "35"}


def example(style: Style = "under_bust") -> Project:
    """A project that can be drafted (figures invented)."""
    project = new_project(style)
    for key, typed in GIRTHS.items():
        project = set_measurement(project, key, typed)
    return project


_parts = st.floats(0.01, 0.99)
_lengths = st.floats(-400, 400)
_weights = st.floats(0, 10)
_texts = st.text(st.characters(exclude_categories=["Cs"]), max_size=60)


def _maybe(values: st.SearchStrategy[float]) -> st.SearchStrategy[float | None]:
    return st.none() | values


@st.composite
def _shares(draw: st.DrawFn) -> tuple[Share, ...]:
    levels = draw(st.lists(st.sampled_from(LEVELS), unique=True, max_size=3))
    return tuple(
        Share(level, draw(_maybe(_lengths)), draw(_maybe(_weights)), draw(_maybe(_parts))) for level in levels
    )


_seams = st.builds(Seam, _parts, _parts, _weights, _parts, st.booleans(), _shares())
_quarters = st.builds(Quarter, st.lists(_seams, min_size=1, max_size=3).map(tuple), _weights, _shares())
_points = st.builds(ShapePoint, st.floats(-1, 9), _lengths, st.booleans())
_lines = st.none() | st.lists(_points, min_size=2, max_size=8).map(tuple)
_designs = st.builds(
    Design,
    st.sampled_from(["under_bust", "over_bust"]),
    st.sampled_from(["one_figure", "own_figure"]),
    _quarters,
    _quarters,
    st.builds(Reductions, _lengths, _lengths, _lengths, _lengths, _lengths),
    st.floats(0, 400),
    _parts,
    _lines,
    _lines,
)


def _typed() -> st.SearchStrategy[Length]:
    inches = st.integers(1 * 8, 70 * 8).map(lambda e: read_length(f"{e // 8} {e % 8}/8", "in"))
    others = st.sampled_from(["24,1", "61.25", "9½", "37⅜ in", "812 mm", "3⁄4 in", "20.3cm"])
    return inches | others.map(lambda text: read_length(text, "cm"))


@st.composite
def _limits(draw: st.DrawFn) -> Limits:
    limits = Limits()
    for row in LIMIT_TABLE:
        limits = replace(limits, **{row.key: draw(st.floats(row.low, row.high))})
    return limits


_clients = st.builds(
    Client,
    name=_texts,
    wish=_texts,
    date=st.just("") | st.dates().map(str),
    measured_by=_texts,
    worn=_texts,
    next_fitting=st.just("") | st.dates().map(str),
    notes=st.text(st.characters(exclude_categories=["Cs"]), max_size=TEXT_LENGTHS["notes"] // 50),
    invented=st.booleans(),
)
_papers = st.builds(
    Paper,
    st.sampled_from(["A4", "Letter", "A3", "A0", "roll"]),
    st.floats(0, 50),
    st.floats(0, 50),
    st.floats(100, 2000),
    st.booleans(),
)

_STUFFS = st.sampled_from(["flat_steel", "spiral_steel", "plastic"])


def _figures(group: str) -> dict[str, st.SearchStrategy[float]]:
    """Any figure within its bounds, by the names of one record of the making."""
    return {key: st.floats(row.low, row.high) for (held, key), row in MAKING_ROWS.items() if held == group}


@st.composite
def _own_allowances(draw: st.DrawFn, panels: int) -> tuple[OwnAllowance, ...]:
    edge = st.tuples(
        st.sampled_from(LAYERS), st.integers(0, panels - 1), st.sampled_from(EDGE_NAMES), st.floats(0, 100)
    )
    edges = draw(st.lists(edge, max_size=3, unique_by=lambda each: each[:3]))
    return tuple(OwnAllowance(*each) for each in edges)


@st.composite
def _layers(draw: st.DrawFn, panels: int) -> tuple[LayerChoice, ...]:
    left_out = st.lists(st.integers(0, panels - 1), unique=True, max_size=2).map(tuple)
    plain_choice = {"made": st.booleans(), "net": st.booleans()}
    return tuple(
        draw(st.builds(LayerChoice, st.just(layer), left_out=left_out, **plain_choice, **_figures("layer")))
        for layer in LAYERS
    )


def makings(panels: int) -> st.SearchStrategy[Making]:
    """Every way of making a half of so many panels that a project may hold."""
    assert set(_figures("allowances")) == set(EDGE_KINDS)
    places = st.lists(st.sampled_from(BONE_PLACES), unique=True).map(tuple)
    figures = {key: values for key, values in _figures("").items() if key != "busk_mm"}
    return st.builds(
        Making,
        allowances=st.builds(Allowances, **_figures("allowances")),
        own_allowances=_own_allowances(panels),
        layers=_layers(panels),
        marks=st.builds(Marks, st.sampled_from(["slit", "triangle"]), **_figures("marks")),
        front=st.sampled_from(["fold", "busk"]),
        busk_mm=_maybe(_figures("")["busk_mm"]),
        opening=st.builds(Opening, st.sampled_from(["loops", "eyelets", "side_zip"]), **_figures("opening")),
        boning=st.builds(Boning, places, _STUFFS, _STUFFS, **_figures("boning")),
        **figures,
    )


@st.composite
def _projects(draw: st.DrawFn) -> Project:
    design = draw(_designs)
    some = draw(cloths())
    pictures, behind = draw(wishes())
    return Project(
        client=draw(_clients),
        unit=draw(st.sampled_from(["in", "cm"])),
        fraction=draw(st.sampled_from([8, 16])),
        measurements=draw(st.dictionaries(st.sampled_from(sorted(BY_KEY)), _typed())),
        design=design,
        making=draw(makings(design.panel_count)),
        limits=draw(_limits()),
        paper=draw(_papers),
        cloths=some,
        plans=draw(plans(tuple(cloth.name for cloth in some))),
        quoting=draw(quotings),
        style_name=draw(_texts),
        pictures=pictures,
        behind=behind,
        beads=draw(bead_plans()),
        fittings=draw(fittings),
    )


projects = _projects()
