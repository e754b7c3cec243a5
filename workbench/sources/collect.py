"""The page of sources, put together from the program's own files and tables."""

from __future__ import annotations

import ast
from collections.abc import Iterator, Mapping, Sequence
from importlib import import_module
from pathlib import Path
from typing import Any

from workbench.sources.found import Number, numbers_in
from workbench.sources.records import Entry, Section
from workbench.sources.values import name_said, value_said
from workbench.sources.words import said_for_all, statuses_in

PACKAGE = Path(__file__).resolve().parents[1]
FOLDERS: Mapping[str, str] = {
    "body": "Measurements and limits",
    "draft": "The draft",
    "fitting": "Fittings",
    "pieces": "Pieces, bones and notions",
    "beads": "Beads",
    "marking": "Marking by hand",
    "cloth": "Cloth and money",
    "sewing": "The order of work",
    "worn": "The garment as worn",
    "styles": "Shapes",
    "document": "The project and its file",
    "sheets": "Paper",
    "exchange": "Files for other programs",
}
"""Every folder that reckons, with the heading its figures stand under."""


def collected(package: Path = PACKAGE) -> tuple[Section, ...]:
    """Every constant, default and rule, a section for each folder; reads all files and imports them."""
    return tuple(Section(title, tuple(_of_folder(package / folder))) for folder, title in FOLDERS.items())


def _of_folder(folder: Path) -> Iterator[Entry]:
    for_all = said_for_all(ast.get_docstring(ast.parse(_text(folder / "__init__.py"))) or "")
    for path in sorted(folder.rglob("*.py")):
        place = path.relative_to(folder.parent).with_suffix("").as_posix().removesuffix("/__init__")
        numbers = numbers_in(_text(path), for_all)
        if numbers:
            module = import_module(f"{folder.parent.name}.{place.replace('/', '.')}")
            for number in numbers:
                entries = _entries(number, vars(module), place)
                yield from (entry for entry in entries if number.value is None or _has_figure(entry.value))


def _has_figure(value: str) -> bool:
    """An empty list has none, though a number may be written where it is made."""
    return any(sign.isdigit() for sign in value)


def _text(path: Path) -> str:
    return path.read_text(encoding="utf-8")


def _entries(number: Number, names: Mapping[str, Any], place: str) -> Iterator[Entry]:
    """One entry, or one for each row of a table whose rows say where they come from."""
    if number.value is None:
        name = number.name or place.rpartition("/")[2]
        yield Entry(name_said(name), "", number.words, statuses_in(number.words), place)
        return
    value = _value(number, names)
    rows = value if isinstance(value, Sequence) and not isinstance(value, str) else ()
    if rows and all(isinstance(getattr(row, "source", None), str) for row in rows):
        yield from (_of_row(row, place) for row in rows)
        return
    statuses = statuses_in(number.words) or statuses_in(number.inherited)
    words = number.words if statuses_in(number.words) else _joined(number.words, number.inherited)
    yield Entry(name_said(number.name), value_said(value), words, statuses, place)


def _joined(own: str, inherited: str) -> str:
    return f"{own.rstrip('.')}; {inherited}." if own and inherited else own or _sentence(inherited)


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}." if words else ""


def _value(number: Number, names: Mapping[str, Any]) -> object:
    """What stands behind the name now; what is written where only the class knows it."""
    kind, _, name = number.name.rpartition(".")
    if kind:
        assert number.value is not None
        return getattr(names[kind], name, ast.unparse(number.value))
    many = [names[part.strip()] for part in name.split(",")]
    return many if len(many) > 1 else many[0]


def _of_row(row: Any, place: str) -> Entry:
    """A row of a table with a source of its own: what it is called, what it may be, and why."""
    mm = hasattr(row, "low_mm")
    low, high = (row.low_mm, row.high_mm) if mm else (row.low, row.high)
    span = f"{value_said(low)} to {value_said(high)}"
    unit = " mm" if mm or row.unit_kind == "length" else " %" if row.unit_kind == "percent" else ""
    usual = f"{value_said(row.default)} ({span}){unit}" if hasattr(row, "default") else f"{span}{unit}"
    return Entry(row.label, usual, f"{_sentence(row.source.rstrip('.'))}", statuses_in(row.source), place)
