"""One style for many clients: a project for each row of a table, and a line that says how it went."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

from workbench.body import complete
from workbench.document.clients_csv import BadRow, ClientRow, Fault
from workbench.document.file import SUFFIX, project_from, to_bytes
from workbench.document.fresh_files import free_stem, plain_stem, settle_folder, write_fresh
from workbench.document.paper import printed
from workbench.document.picture import picture_of
from workbench.document.project import Client, Paper, Project
from workbench.document.storage import FileTrouble
from workbench.document.style_carry import CARRIED, Shape, put_on, shape_of
from workbench.document.tree import TreeError
from workbench.draft import Finding

_PRINT = ".pdf"
_NAMELESS = "client"
_MEASUREMENT = "measurements."
_ALWAYS_SAID = ("levels_laced_shut",)
"""Notes that tell of a limit, and are said however many rows there are."""


@dataclass(frozen=True)
class RowDone:
    """What came of one row: ``ok`` when it is drafted, and printed where that was asked for."""

    line: int
    name: str
    path: Path | None
    """The project written, also where it cannot be drafted: it opens, and says why."""
    ok: bool
    text: str
    """One line: the row, the file, what had to give and what to look at, or why it failed."""


def recut(
    style: Project, rows: Iterable[ClientRow | BadRow], folder: Path, paper: Paper | None = None
) -> Iterator[RowDone]:
    """What came of each row, as it is done; projects, and prints on ``paper``, go to the folder.

    No file is written over: a name that is taken gets a number. The folder must be there.
    """
    shape = shape_of(style)
    try:
        for row in rows:
            yield _bad(row) if isinstance(row, BadRow) else _recut_row(shape, row, folder, paper)
    finally:
        settle_folder(folder)


def _bad(row: BadRow) -> RowDone:
    faults = (
        f"column “{fault.column}”: {fault.sentence}" if fault.column else fault.sentence
        for fault in row.faults
    )
    return _failed(row, None, " ".join(faults))


def _recut_row(shape: Shape, row: ClientRow, folder: Path, paper: Paper | None) -> RowDone:
    project, findings = put_on(shape, row.measurements, row.unit, Client(name=row.name))
    stop = next((finding for finding in findings if finding.severity == "stop"), None)
    if stop is not None and (stop.place.field or "").startswith(_MEASUREMENT):
        column = (stop.place.field or "").removeprefix(_MEASUREMENT)
        sentence = stop.text(project.unit, project.fraction)
        return _bad(BadRow(row.line, row.name, (Fault(column, sentence),)))
    try:
        path = _written(project, row, folder, paper is not None)
    except FileTrouble as trouble:
        return _failed(row, None, str(trouble))
    if stop is not None:
        said = stop.text(project.unit, project.fraction)
        return _failed(row, path, f"{path.name}: cannot be drafted: {said}")
    try:
        prints = "" if paper is None else f" and {_print(project, path, paper)}"
    except ValueError as error:
        return _failed(row, path, f"{path.name}: not printed: {error}")
    text = f"line {row.line}{_named(row.name)}: {path.name}{prints}. {_remarks(project, findings)}"
    return RowDone(row.line, row.name, path, True, _one_line(text))


def _failed(row: ClientRow | BadRow, path: Path | None, said: str) -> RowDone:
    return RowDone(row.line, row.name, path, False, _one_line(f"line {row.line}{_named(row.name)}: {said}"))


def _named(name: str) -> str:
    return f", {name}" if name else ""


def _written(project: Project, row: ClientRow, folder: Path, prints: bool) -> Path:
    """Where the project has been put; FileTrouble where it cannot be."""
    stem = plain_stem(row.name, _NAMELESS)
    endings = (SUFFIX, _PRINT) if prints else (SUFFIX,)
    try:
        data = to_bytes(project)
        project_from(data)
    except TreeError as error:
        raise FileTrouble(
            folder / f"{stem}{SUFFIX}", f"not written, it would not open again: {error}"
        ) from error
    while True:
        path = folder / f"{free_stem(folder, stem, endings)}{SUFFIX}"
        if write_fresh(path, data):
            return path


def _print(project: Project, path: Path, paper: Paper) -> str:
    """Name of the print beside a project; ValueError in one sentence where there can be none."""
    out = path.with_name(path.name.removesuffix(SUFFIX) + _PRINT)
    if not write_fresh(out, printed(picture_of(project), paper)):
        raise FileTrouble(out, "is there already.")
    return out.name


def _remarks(project: Project, findings: tuple[Finding, ...]) -> str:
    """What had to give, what is over or near a limit, figures to check and how many are estimates."""
    said = [finding.text(project.unit, project.fraction) for finding in findings if _worth_saying(finding)]
    body = complete(project.taken())
    said += [check.text(project.unit, project.fraction) for check in body.checks]
    if body.estimated:
        said.append(f"{len(body.estimated)} of {len(body.values)} measurements are estimates.")
    return " ".join(said)


def _worth_saying(finding: Finding) -> bool:
    own = finding.code.startswith(CARRIED) or finding.code in _ALWAYS_SAID
    return own or finding.severity != "note"


def _one_line(text: str) -> str:
    """The text with nothing in it that would upset a terminal or a list of lines."""
    return "".join(sign if sign.isprintable() else "\ufffd" for sign in " ".join(text.split()))
