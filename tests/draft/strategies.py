"""Hypothesis strategies: bodies from the 1st to the 99th percentile and beyond, and designs of every kind.

Ranges widen those of the 600 women of the Spanish apparel survey sample (CRAN package
Anthropometry; read) and of ANSUR II (US Army 2012, public release; read).
"""

from __future__ import annotations

from dataclasses import replace

from hypothesis import strategies as st

from workbench.body import Body, complete
from workbench.draft import Design, Quarter, Reductions, Seam, ShapePoint, Share, usual_design


def _mm(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False)


@st.composite
def bodies(draw: st.DrawFn) -> Body:
    """Bodies with a bust of 700 to 1400 mm, long and short, with a waist above or below every other girth."""
    bust = draw(_mm(700, 1400))
    underbust = bust - draw(_mm(40, 200))
    waist = max(underbust - draw(_mm(-60, 170)), 540.0)
    to_waist = draw(_mm(360, 480))
    to_underbust = to_waist - draw(_mm(50, 120))
    to_bust = to_underbust - draw(_mm(30, 90))
    return complete(
        {
            "bust_girth": bust,
            "underbust_girth": underbust,
            "waist_girth": waist,
            "top_hip_girth": waist + draw(_mm(-20, 260)),
            "upper_chest_girth": bust - draw(_mm(-20, 140)),
            "shoulder_to_waist": to_waist,
            "shoulder_to_underbust": to_underbust,
            "shoulder_to_bust": to_bust,
            "waist_to_top_hip": draw(_mm(60, 130)),
            "underarm_to_waist": to_waist - to_bust + draw(_mm(15, 70)),
            "bust_span": draw(_mm(140, 260)),
        }
    )


@st.composite
def _quarters(draw: st.DrawFn, front: bool) -> Quarter:
    panels = draw(st.integers(2, 4))
    first, step = 0.28 + 0.1 * (4 - panels), 0.6 / (panels - 0.5)
    places = [first + number * step + draw(_mm(-0.06, 0.06)) for number in range(panels - 1)]
    places.sort(reverse=not front)
    seams = tuple(
        Seam(
            lower=place,
            upper=min(max(place + draw(_mm(-0.05, 0.05)), 0.05), 0.95),
            weight=draw(_mm(0.1, 1)),
            left_part=draw(st.sampled_from([0.5, 1 / 3, 0.0, 1.0])),
            through_bust_point=front and number == 0 and draw(st.booleans()),
            shares=draw(_shares()),
        )
        for number, place in enumerate(places)
    )
    return Quarter(seams, draw(_mm(0.1, 1)), draw(_shares()))


@st.composite
def _shares(draw: st.DrawFn) -> tuple[Share, ...]:
    if draw(st.integers(0, 5)):
        return ()
    return (Share(draw(st.sampled_from(["waist", "underbust"])), pin_mm=draw(_mm(0, 25))),)


@st.composite
def designs(draw: st.DrawFn) -> Design:
    """Designs of both styles and rules, 2 to 4 panels a quarter, leaning seams, pins, her own necklines."""
    style = draw(st.sampled_from(["under_bust", "over_bust"]))
    design = replace(
        usual_design(style),
        rule=draw(st.sampled_from(["one_figure", "own_figure"])),
        front=draw(_quarters(front=True)),
        back=draw(_quarters(front=False)),
        reductions=Reductions(
            waist=draw(_mm(-40, 140)),
            underbust=draw(_mm(-40, 90)),
            top_hip=draw(_mm(-30, 20)),
            bust=draw(_mm(-20, 20)),
        ),
        opening_mm=draw(_mm(0, 110)),
        front_share=draw(_mm(0.45, 0.55)),
    )
    return replace(design, neckline=draw(_necklines(design.panel_count))) if draw(st.booleans()) else design


@st.composite
def _necklines(draw: st.DrawFn, panels: int) -> tuple[ShapePoint, ...]:
    inner = sorted({round(draw(_mm(0.1, panels - 0.1)), 2) for _ in range(draw(st.integers(0, 5)))})
    return tuple(ShapePoint(u, draw(_mm(90, 200)), draw(st.booleans())) for u in (0.0, *inner, float(panels)))
