"""What the cloths, lay plans and prices of a project may hold.

Figures are own choice: they keep out slips of the key and files that are none.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import isfinite

from workbench.cloth import Cloth, KeptPlan, Quoting, faults_of, finer_than_kept, quoting_problems
from workbench.document.cloth_table import CLOTH_TABLE, cloth_span_words
from workbench.document.problem import Place, Problem, Problems, text_problems, twice

MOST_CLOTHS = 30
MOST_PRICE = 1_000_000
"""For a yard or a metre; whatever is laid, its cost is still an amount that can be said."""
LONGEST_NAME = 80
MOST_CORNERS = 200
"""Of a remnant."""
FARTHEST_MM = 300_000.0
"""From the corner of the cloth to anything that lies on it."""
MOST_PLACED = 400
LONGEST_WORDS = 400
MOST_LEFT = 500
"""Keys of notions that are not bought."""


def cloth_problems(cloths: Sequence[Cloth]) -> Problems:
    """Names and figures that are none, and layers that lie on two cloths."""
    place: Place = ("cloths",)
    if len(cloths) > MOST_CLOTHS:
        yield place, f"are more than {MOST_CLOTHS}"
    for number, cloth in enumerate(cloths):
        yield from one_cloth_problems(cloth, (*place, number))
    yield from twice([cloth.name.casefold() for cloth in cloths], "the cloth", place)
    yield from twice([layer for cloth in cloths for layer in cloth.layers], "the layer", place)


def one_cloth_problems(cloth: Cloth, place: Place) -> Problems:
    """What is wrong with one cloth by itself."""
    found = list(figure_problems(cloth, place))
    yield from found
    if not found:
        # only now: what is asked here takes figures that are figures
        yield from _fault_problems(cloth, place)


def figure_problems(cloth: Cloth, place: Place) -> Problems:
    """Figures of a cloth that are none, one by one."""
    yield from name_problems(cloth.name, (*place, "name"))
    for row in CLOTH_TABLE:
        if not row.low <= getattr(cloth, row.key) <= row.high:
            yield (*place, row.key), f"must be {cloth_span_words(row)}"
    yield from _price_problems(cloth, (*place, "price"))
    yield from _remnant_problems(cloth, (*place, "remnant"))


def _fault_problems(cloth: Cloth, place: Place) -> Problems:
    """Figures that are sound one by one and cannot be together, or corners that make no shape."""
    for fault in faults_of(cloth):
        said = fault.text("in").rstrip(".")
        yield (*place, fault.place.field or ""), f"cannot be so: {said[:1].lower()}{said[1:]}"


def name_problems(name: str, place: Place) -> Problems:
    """A name that is empty, has blanks round it, is too long or cannot be kept."""
    if not name or name != name.strip():
        yield place, "must be a name without blanks before or after it"
    yield from text_problems(name, LONGEST_NAME, place)


def _price_problems(cloth: Cloth, place: Place) -> Problems:
    price = cloth.price
    if not price.is_finite() or not 0 <= price <= MOST_PRICE:
        yield place, f"must be an amount from 0 to {MOST_PRICE:,}"
    elif finer_than_kept(price):
        yield place, "has more decimals than any price"


def _remnant_problems(cloth: Cloth, place: Place) -> Problems:
    if cloth.remnant is None:
        return
    if not 3 <= len(cloth.remnant) <= MOST_CORNERS:
        yield place, f"has {len(cloth.remnant)} corners; 3 to {MOST_CORNERS} are possible"
    for number, corner in enumerate(cloth.remnant):
        if not all(isfinite(part) and abs(part) <= FARTHEST_MM for part in corner):
            yield (*place, number), "is no usable corner"


def plan_problems(plans: Sequence[KeptPlan], cloths: Sequence[Cloth]) -> Problems:
    """Plans for a cloth that is none, and pieces that lie nowhere or twice."""
    place: Place = ("plans",)
    names = {cloth.name for cloth in cloths}
    for number, plan in enumerate(plans):
        if plan.cloth not in names:
            yield (*place, number, "cloth"), f"names the cloth “{plan.cloth[:LONGEST_NAME]}”, which is none"
        yield from one_plan_problems(plan, (*place, number))
    yield from twice([plan.cloth for plan in plans], "the cloth", place)


def one_plan_problems(plan: KeptPlan, place: Place) -> Problems:
    """What is wrong with one kept plan by itself."""
    yield from text_problems(plan.made_from, LONGEST_NAME, (*place, "made_from"))
    yield from text_problems(plan.how, LONGEST_WORDS, (*place, "how"))
    if not 0 <= plan.length_mm <= FARTHEST_MM:
        yield (*place, "length_mm"), "is no usable length"
    if len(plan.placed) > MOST_PLACED:
        yield (*place, "placed"), f"has more than {MOST_PLACED} pieces"
        return
    yield from _placed_problems(plan, (*place, "placed"))
    keys = [f"{placed.piece} (copy {placed.copy})" for placed in plan.placed]
    yield from twice(keys, "the piece", (*place, "placed"))


def _placed_problems(plan: KeptPlan, place: Place) -> Iterator[Problem]:
    for number, placed in enumerate(plan.placed):
        inner = (*place, number)
        yield from text_problems(placed.piece, LONGEST_NAME, (*inner, "piece"))
        if not 1 <= placed.copy <= MOST_PLACED:
            yield (*inner, "copy"), f"must be from 1 to {MOST_PLACED}"
        for name in ("x", "y", "degrees"):
            if not abs(getattr(placed, name)) <= FARTHEST_MM:
                yield (*inner, name), "is no usable number"


def quote_problems(quoting: Quoting) -> Problems:
    """Figures that no price can be worked out with, and things not bought that are named twice."""
    for amiss in quoting_problems(quoting):
        yield ("quoting", *amiss.place), amiss.reason
    place: Place = ("quoting", "not_bought")
    if len(quoting.not_bought) > MOST_LEFT:
        yield place, f"has more than {MOST_LEFT} keys"
    for number, key in enumerate(quoting.not_bought):
        yield from name_problems(key, (*place, number))
    yield from twice(quoting.not_bought, "the key", place)
