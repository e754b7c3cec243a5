"""What fittings cost at every edit: nothing where there are none, less than a draft where there are three."""

from __future__ import annotations

from time import perf_counter

from tests.draft.test_worked_sums import INCH, inch_body
from workbench.draft import NO_CORRECTIONS, Corrections, Design, usual_design, work_out
from workbench.fitting import Change, Fitting, carried

BODY = inch_body(bust=36, underbust=31, waist=28, top_hip=36, upper_chest=35)
DESIGN: Design = usual_design("over_bust", 3, 3)
THREE = tuple(
    Fitting(
        panels=(3, 3),
        changes=(
            Change("seam", INCH / 8, "waist", 1),
            Change("seam", -INCH / 16, "bust", 3),
            Change("length", INCH / 8, "waist"),
            Change("neckline", INCH / 8, u=1.5 + 0.1 * number),
            Change("hem", -INCH / 8, u=2.0),
        ),
    )
    for number in range(3)
)


def quickest(corrections: Corrections) -> float:
    """The shortest of many: whatever else the machine does only makes one longer."""
    times = []
    for _ in range(80):
        start = perf_counter()
        work_out(BODY, DESIGN, corrections)
        times.append(perf_counter() - start)
    return min(times)


def test_three_fittings_cost_less_than_another_draft() -> None:
    made = carried(THREE, DESIGN).corrections
    assert work_out(BODY, DESIGN, made).draft is not None
    quickest(made)
    assert quickest(made) < 2 * quickest(NO_CORRECTIONS)
