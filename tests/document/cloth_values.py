"""Any cloths, lay plans and quotes that a project may hold."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from hypothesis import strategies as st

from workbench.cloth import Cloth, Currency, HoursRow, KeptPlan, Placed, PriceRow, Quoting
from workbench.document import CLOTH_ROWS
from workbench.document.records import said_plainly
from workbench.pieces import LAYERS

LETTERS = st.characters(exclude_categories=["Cs"])
WORDS = st.text(LETTERS, max_size=40)
NAMES = st.text("abcdefgh ½é“", min_size=1, max_size=20).map(str.strip).filter(bool)


def amounts(most: int, decimals: int = 2) -> st.SearchStrategy[Decimal]:
    """Amounts from nothing to ``most``, written without idle noughts, as they come out of a file."""
    parts = 10**decimals
    return st.integers(0, most * parts).map(lambda n: Decimal(said_plainly(Decimal(n) / parts)))


_far = st.floats(-90_000, 90_000)
_long = st.floats(10, 5000)
_placed = st.builds(
    Placed, WORDS, st.integers(1, 9), _far, _far, st.floats(-360, 360), st.booleans(), st.booleans()
)


def _usable(cloth: Cloth) -> st.SearchStrategy[Cloth]:
    """The cloth with some width between its selvedges, and perhaps a remnant where it is single."""
    narrow = replace(cloth, selvedge_mm=min(cloth.selvedge_mm, 0.2 * cloth.width_mm))
    if cloth.laid == "folded":
        return st.just(narrow)
    corners = st.builds(lambda w, h: ((0.0, 0.0), (w, 0.0), (0.5 * w, h), (0.0, h)), _long, _long)
    return st.builds(replace, st.just(narrow), remnant=st.none() | corners)


@st.composite
def cloths(draw: st.DrawFn) -> tuple[Cloth, ...]:
    """Some cloths, among which some of the layers are shared out."""
    names = draw(st.lists(NAMES, max_size=4, unique_by=str.casefold))
    homes = draw(st.lists(st.integers(0, 4), min_size=len(LAYERS), max_size=len(LAYERS)))
    figures = {key: st.floats(row.low, row.high) for key, row in CLOTH_ROWS.items()}
    found = []
    for number, name in enumerate(names):
        layers = tuple(layer for layer, home in zip(LAYERS, homes, strict=True) if home == number)
        cloth = st.builds(
            Cloth,
            st.just(name),
            st.just(layers),
            run=st.sampled_from(["either_way", "one_way"]),
            laid=st.sampled_from(["single", "folded"]),
            step=st.sampled_from(["eighth_yard", "quarter_yard", "half_yard", "ten_cm"]),
            price=amounts(1000),
            **figures,
        )
        found.append(draw(cloth.flatmap(_usable)))
    return tuple(found)


@st.composite
def plans(draw: st.DrawFn, names: tuple[str, ...]) -> tuple[KeptPlan, ...]:
    """A kept plan for some of the cloths."""
    kept = [name for name in names if draw(st.booleans())]
    placed = st.lists(_placed, max_size=5, unique_by=lambda each: (each.piece, each.copy)).map(tuple)
    return tuple(
        draw(
            st.builds(
                KeptPlan,
                st.just(name),
                st.text("0123456789abcdef", max_size=32),
                st.floats(0, 9e4),
                placed,
                WORDS,
            )
        )
        for name in kept
    )


_keys = st.text("abc/_.5", min_size=1, max_size=20)
_rows = st.builds(
    PriceRow,
    _keys,
    WORDS,
    amounts(1000, 3),
    st.sampled_from(["each", "yard", "metre", "pair", "pack"]),
    st.integers(1, 1000),
    st.floats(0, 1e6),
)
_percents = amounts(100, 1)

quotings = st.builds(
    Quoting,
    currency=st.builds(Currency, st.sampled_from(["$", "€", "kr", ""]), st.integers(0, 2), st.booleans()),
    prices=st.lists(_rows, max_size=4, unique_by=lambda row: row.key).map(tuple),
    not_bought=st.lists(_keys, max_size=3, unique=True).map(tuple),
    hours=st.lists(st.builds(HoursRow, WORDS, amounts(100)), max_size=4).map(tuple),
    rate=amounts(200),
    overhead_percent=_percents,
    margin_percent=_percents,
    tax_percent=_percents,
    deposit_percent=_percents,
    round_to=st.sampled_from([Decimal("0.01"), Decimal(1), Decimal(5), Decimal(100)]),
    included=WORDS,
    fitting_dates=WORDS,
    ready_by=WORDS,
    valid_until=WORDS,
)
