"""A table of clients, row by row: who, in which unit, and her measurements.

One line of the file is one client, and is read by itself: a quotation mark that is never
closed spoils its own row and no other, and a table of any length takes no more memory than
its longest line. Cells are parted by commas, semicolons or tabs, whichever the first line uses.
"""

from __future__ import annotations

import csv
import os
import stat
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TextIO

from workbench.body import BY_KEY, BodyError, Length, LengthError, Unit, complete, read_length
from workbench.document.checks import client_problems
from workbench.document.fresh_files import reason_of
from workbench.document.problem import keepable
from workbench.document.project import Client
from workbench.document.storage import FileTrouble
from workbench.document.taken_checks import LEAST_MEASURE

NAME, UNIT = "name", "unit"
MOST_CHARACTERS = 20_000
"""Of one line; one with every measurement has a few hundred (own choice)."""
_UNITS: Mapping[str, Unit] = {"in": "in", "cm": "cm"}


@dataclass(frozen=True)
class ClientRow:
    """One client as her row says."""

    line: int
    """In the file, the first is 1."""
    name: str
    unit: Unit
    measurements: Mapping[str, Length]


@dataclass(frozen=True)
class Fault:
    """What is wrong with one cell, or with ``column`` empty, with the whole row: one sentence."""

    column: str
    sentence: str


@dataclass(frozen=True)
class BadRow:
    """A row that cannot be used."""

    line: int
    name: str
    faults: tuple[Fault, ...]


class _LongLineError(ValueError):
    """A line longer than any table has."""


@contextmanager
def opened_clients(path: Path) -> Iterator[Iterator[ClientRow | BadRow]]:
    """The rows of a table, read as they are asked for; empty ones are passed over.

    FileTrouble where there is no such table or its first line is none: columns ``name``,
    ``unit``, and measurements by their keys.
    """
    with _opened(path) as file:
        try:
            first = _line(file)
        except _LongLineError as error:
            raise FileTrouble(path, "its first line is too long to name columns.") from error
        delimiter, columns = _columns(path, first)
        yield _rows(path, file, delimiter, columns)


def _opened(path: Path) -> TextIO:
    try:
        # a pipe without a writer would otherwise keep the program waiting for ever
        descriptor = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0))
        if not stat.S_ISREG(os.fstat(descriptor).st_mode):
            os.close(descriptor)
            raise FileTrouble(path, "is not an ordinary file.")
    except OSError as error:
        raise FileTrouble(path, f"cannot be read: {reason_of(error)}.") from error
    # bytes that are no UTF-8 come through as half characters, to be told with their row and column
    return open(descriptor, encoding="utf-8-sig", errors="surrogateescape", newline="")


def _line(file: TextIO) -> str:
    """The next line, nothing at the end; one that is too long is read past."""
    line = file.readline(MOST_CHARACTERS)
    if len(line) < MOST_CHARACTERS or line.endswith(("\n", "\r")):
        return line
    while line and not line.endswith(("\n", "\r")):
        line = file.readline(MOST_CHARACTERS)
    raise _LongLineError


def _cells(line: str, delimiter: str) -> list[str]:
    """The cells of one line without the blanks around them; csv.Error where it is no row."""
    rows = list(csv.reader([line.rstrip("\r\n")], delimiter=delimiter, strict=True))
    return [cell.strip() for cell in rows[0]] if rows else []


def _columns(path: Path, line: str) -> tuple[str, Sequence[str]]:
    """The sign between cells, and the names of the columns."""
    if not line.strip():
        raise FileTrouble(path, "its first line is empty; it must name the columns.")
    if "\0" in line or not keepable(line):
        raise FileTrouble(path, "line 1 is no text in UTF-8; save the table as CSV in UTF-8.")
    try:
        delimiter = max(",;\t", key=lambda sign: len(_cells(line, sign)))
        columns = [cell.casefold() for cell in _cells(line, delimiter)]
    except csv.Error as error:
        raise FileTrouble(path, f"line 1 cannot be read ({error}).") from error
    _refuse_columns(path, columns)
    return delimiter, columns


def _refuse_columns(path: Path, columns: Sequence[str]) -> None:
    """FileTrouble for a column that is missing, not known or there twice."""
    for number, column in enumerate(columns, start=1):
        if column and column in columns[: number - 1]:
            raise FileTrouble(path, f"line 1 names the column “{column}” twice.")
        if column and column not in (NAME, UNIT, *BY_KEY):
            # left out, a misspelt measurement would be estimated and nobody would know
            raise FileTrouble(
                path, f"line 1, column {number}: “{column[:40]}” is no name, unit or measurement known here."
            )
    for wanted in (NAME, UNIT, _lacking(columns)):
        if wanted and wanted not in columns:
            raise FileTrouble(path, f"the column “{wanted}” is missing.")


def _lacking(columns: Sequence[str]) -> str | None:
    """The measurement without which no row could be drafted, tried on usual figures."""
    usual = {key: 0.5 * (row.low_mm + row.high_mm) for key, row in BY_KEY.items() if key in columns}
    try:
        complete(usual)
    except BodyError as error:
        return error.key
    return None


def _rows(path: Path, file: TextIO, delimiter: str, columns: Sequence[str]) -> Iterator[ClientRow | BadRow]:
    number = 1
    while True:
        number += 1
        try:
            line = _line(file)
            cells = _cells(line, delimiter)
        except _LongLineError:
            yield BadRow(number, "", (Fault("", f"It is longer than {MOST_CHARACTERS:,} characters."),))
            continue
        except csv.Error as error:
            yield BadRow(number, "", (Fault("", f"A quotation mark is out of place ({error})."),))
            continue
        except OSError as error:
            raise FileTrouble(path, f"cannot be read: {reason_of(error)}.") from error
        if not line:
            return
        if any(cells):
            yield _row(number, cells, delimiter, columns)


def _row(number: int, cells: Sequence[str], delimiter: str, columns: Sequence[str]) -> ClientRow | BadRow:
    if len(cells) != len(columns):
        return BadRow(number, "", (Fault("", _count(len(cells), delimiter, columns)),))
    row = dict(zip(columns, cells, strict=True))
    name = " ".join(row[NAME].split())
    unit = _UNITS.get(row[UNIT].casefold())
    faults = [*_name_faults(name), *_stray(columns, cells)]
    if unit is None:
        faults.append(Fault(UNIT, f"It must be in or cm, not “{row[UNIT][:24]}”."))
    measurements: dict[str, Length] = {}
    for key, text in row.items():
        if key in BY_KEY and text:
            try:
                measurements[key] = read_length(text, unit or "cm", low=LEAST_MEASURE)
            except LengthError as error:
                faults.append(Fault(key, str(error)))
    if faults or unit is None:
        return BadRow(number, name, tuple(faults))
    return ClientRow(number, name, unit, measurements)


def _count(cells: int, delimiter: str, columns: Sequence[str]) -> str:
    """Why a row with too few or too many cells is not used: its figures may stand under the wrong names."""
    more = cells > len(columns) and delimiter == ","
    hint = " A decimal comma needs quotation marks around its figure, or write a point." if more else ""
    return f"It has {cells} cells where the first line has {len(columns)}.{hint}"


def _name_faults(name: str) -> Iterator[Fault]:
    if not name:
        yield Fault(NAME, "It is empty.")
    elif not keepable(name):
        yield Fault(NAME, "It holds a letter that is no UTF-8; save the table as CSV in UTF-8.")
    elif not name.isprintable():
        yield Fault(NAME, "It holds a sign that cannot be printed.")
    else:
        for _, reason in client_problems(Client(name=name)):
            yield Fault(NAME, f"It {reason}.")


def _stray(columns: Sequence[str], cells: Sequence[str]) -> Iterator[Fault]:
    for number, (column, cell) in enumerate(zip(columns, cells, strict=True), start=1):
        if cell and not column:
            yield Fault("", f"Cell {number} stands in a column without a name.")
