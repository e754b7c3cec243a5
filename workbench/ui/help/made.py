"""Parts of the help made from the program itself, so that they cannot fall behind it."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from functools import cache
from html import escape

from workbench.body import CAUTIONS, LIMIT_TABLE, MEASUREMENTS, LimitRow, Measurement, Unit, say_with_unit
from workbench.ui.help.keys import keys_html

TAKE = "take:"
"""Of the address of a drawing of where the tape goes, before the key of the measurement."""
_UNITS: tuple[Unit, Unit] = ("in", "cm")


def made_html(name: str) -> str:
    """A part by the name that a page calls it by, as HTML; KeyError for a name that no part has."""
    return _MADE[name]()


def made_text(name: str) -> str:
    """The same as the search reads it."""
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", made_html(name))).strip()


def made_names() -> tuple[str, ...]:
    """The parts there are."""
    return tuple(_MADE)


# --- measurements and limits -------------------------------------------------------------


@cache
def _measurements() -> str:
    rows: list[str] = []
    group = ""
    for measurement in MEASUREMENTS:
        if measurement.group != group:
            group = measurement.group
            rows.append(f'<tr><td colspan="2"><h3>{escape(group)}</h3></td></tr>')
        rows.append(_measurement(measurement))
    return f'<table cellspacing="0" cellpadding="6">{"".join(rows)}</table>'


def _measurement(row: Measurement) -> str:
    low, high = (" or ".join(say_with_unit(mm, unit) for unit in _UNITS) for mm in (row.low_mm, row.high_mm))
    needed = " <b>Needed.</b>" if row.needed else ""
    return (
        f'<tr><td><img src="{TAKE}{row.key}"></td><td><a name="{row.key}"></a><b>{escape(row.label)}</b>'
        f'<br>{escape(row.how)}{needed}<br><span class="soft">Asked about below {low} and above {high}; '
        f"{escape(row.source)}.</span></td></tr>"
    )


@cache
def _limits() -> str:
    return "".join(
        f"<p><b>{escape(row.label)}</b>, usually {_usual(row)}. {escape(row.how)} "
        f'<span class="soft">{escape(row.source)}.</span></p>'
        for row in LIMIT_TABLE
    )


def _usual(row: LimitRow) -> str:
    if row.unit_kind == "length":
        return " or ".join(say_with_unit(row.default, unit) for unit in _UNITS)
    return f"{row.default if row.unit_kind == 'percent' else 100 * row.default:g} %"


def _cautions() -> str:
    return "".join(f"<p>{escape(sentence)}</p>" for sentence in CAUTIONS)


# --- the program itself --------------------------------------------------------------------


def _version() -> str:
    import workbench

    return f"<p>Version {escape(workbench.__version__)}.</p>"


@cache
def _licences() -> str:
    from workbench.resources import resource

    parts = []
    for heading, name in (("The program", "LICENCE.txt"), ("The typeface", "fonts/OFL.txt")):
        text = resource(name).read_text(encoding="utf-8")
        paragraphs = "".join(f'<p class="soft">{escape(part)}</p>' for part in text.strip().split("\n\n"))
        parts.append(f"<h3>{heading}</h3>{paragraphs}")
    return "".join(parts)


@cache
def _sources() -> str:
    from workbench.sources import sources_page

    parts = []
    for section in sources_page():
        rows = "".join(
            f"<p><b>{escape(entry.name)}</b> {escape(entry.value)}<br>{escape(entry.words)} "
            f'<span class="soft">{escape(", ".join(entry.statuses))}</span></p>'
            for entry in section.entries
            if entry.sourced
        )
        if rows:
            parts.append(f"<h3>{escape(section.title)}</h3>{rows}")
    return "".join(parts)


_MADE: Mapping[str, Callable[[], str]] = {
    "measurements": _measurements,
    "limits": _limits,
    "cautions": _cautions,
    "keys": keys_html,
    "sources": _sources,
    "version": _version,
    "licences": _licences,
}
