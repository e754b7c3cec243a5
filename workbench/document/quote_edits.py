"""Edits of prices, hours and whatever else stands behind a quote.

As all edits, each takes the project as it stands and returns the project as it should
be; ValueError in one sentence that names the field for a figure no price can be worked out with.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from decimal import Decimal

from workbench.body import say_exact
from workbench.cloth import (
    NO_PRICE,
    HoursRow,
    PriceRow,
    Quoting,
    price_list,
    quoting_problems,
    with_row,
)
from workbench.document.changing import refuse, with_entries
from workbench.document.cloth_checks import quote_problems
from workbench.document.project import Project

QuoteFigure = str | Decimal | Sequence[str]
_OWN_EDITS = {"currency": "the currency", "prices": "prices", "hours": "hours"}


def set_quoting(project: Project, **changes: QuoteFigure) -> Project:
    """The project with other figures or texts of its quote, by the names of :class:`Quoting`."""
    for name in _OWN_EDITS.keys() & changes.keys():
        raise ValueError(f"Setting {_OWN_EDITS[name]} has an edit of its own.")
    _refuse_no_amounts(changes.values())
    return _with(project, with_entries(project.quoting, changes, "quote"))


def set_currency(project: Project, **changes: str | int | bool) -> Project:
    """The project with money written in another way, by the names of :class:`Currency`; no amount changes."""
    currency = with_entries(project.quoting.currency, changes, "currency")
    return _with(project, replace(project.quoting, currency=currency))


def set_price(project: Project, key: str, price: Decimal | None) -> Project:
    """The project with another price for one thing that is bought; None where it has no price yet."""
    if price is None and key not in {row.key for row in project.quoting.prices}:
        return project
    row = _row_called(project, key)
    return set_price_row(project, replace(row, price=NO_PRICE if price is None else price))


def set_price_row(project: Project, row: PriceRow) -> Project:
    """The project with this line in its price list: name, price, and what the price is for."""
    _refuse_no_amounts((row.price,))
    return _with(project, replace(project.quoting, prices=with_row(project.quoting.prices, row)))


def set_bought(project: Project, key: str, on: bool) -> Project:
    """The project with one notion bought for it, or not: there already, or done without."""
    others = tuple(each for each in project.quoting.not_bought if each != key)
    left = others if on else tuple(sorted((*others, key)))
    return _with(project, replace(project.quoting, not_bought=left))


def set_hours(project: Project, step: str, hours: Decimal | None) -> Project:
    """The project with other hours for one step of the work, a new one at the end; None takes it away."""
    step = step.strip()
    if not step:
        raise ValueError("A step of the work must have a name.")
    rows = project.quoting.hours
    if hours is None:
        return set_all_hours(project, (row for row in rows if row.step != step))
    row = HoursRow(step, hours)
    if any(each.step == step for each in rows):
        return set_all_hours(project, (row if each.step == step else each for each in rows))
    return set_all_hours(project, (*rows, row))


def set_all_hours(project: Project, rows: Iterable[HoursRow]) -> Project:
    """The project with these steps of the work and no others."""
    rows = tuple(rows)
    _refuse_no_amounts(row.hours for row in rows)
    return _with(project, replace(project.quoting, hours=rows))


def _with(project: Project, quoting: Quoting) -> Project:
    for amiss in quoting_problems(quoting):
        raise ValueError(amiss.sentence)
    refuse(quote_problems(quoting))
    return replace(project, quoting=quoting)


def _row_called(project: Project, key: str) -> PriceRow:
    """Her own line, else the usual one, else a new one for a bone of one length."""
    rows = {row.key: row for row in (*price_list(project.unit), *project.quoting.prices)}
    if key in rows:
        return rows[key]
    kind, _, length = key.rpartition("/")
    try:
        mm = float(length)
        name = f"{rows[kind].name.partition(',')[0]}, {say_exact(mm, project.unit)} {project.unit}"
    except (KeyError, ValueError):
        raise ValueError(f"There is no line of the price list called “{key}”.") from None
    return replace(rows[kind], key=key, name=name)


def _refuse_no_amounts(values: Iterable[object]) -> None:
    for value in values:
        if isinstance(value, Decimal) and not value.is_finite():
            raise ValueError("An amount must be a number.")
