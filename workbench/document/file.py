"""The project file ``*.bodice``: JSON in UTF-8, with a version, read whole or not at all.

Every entry the program writes must be there when it is read again: a missing one would
silently become its default, and a bodice would be cut to it.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from workbench.body import BY_KEY
from workbench.document.checks import problems
from workbench.document.migrate import VERSION, brought_up
from workbench.document.project import LARGER_NUMBERS, LARGEST_NUMBER, Project
from workbench.document.records import plain, record_of
from workbench.document.storage import FileTrouble, read_whole, write_whole
from workbench.document.tree import TreeError, parsed

FORMAT = "bodice"
SUFFIX = ".bodice"
MOST_BYTES = 6_000_000
"""Own choice: no project is larger."""


def read_project(path: Path) -> Project:
    """The project in a file; FileTrouble names the file, the place in it and the reason."""
    data = read_whole(path, MOST_BYTES)
    try:
        return project_from(data)
    except TreeError as error:
        raise FileTrouble(path, str(error)) from error


def write_project(project: Project, path: Path) -> None:
    """Put the project in a file, whole; FileTrouble if that fails, and then the file is as it was.

    What would not open again is refused rather than written over what is there.
    """
    try:
        _check(project)
        data = to_bytes(project)
        again = project_from(data)
    except TreeError as error:
        raise FileTrouble(path, f"not written, it would not open again: {error}") from error
    if again != project:
        raise FileTrouble(path, "not written, it would not open as the same project.")
    write_whole(path, data)


def to_bytes(project: Project) -> bytes:
    """The project as it is kept in a file: the same project gives the same bytes."""
    tree = plain(project)
    taken = tree["measurements"]
    tree["measurements"] = {key: taken[key] for key in (*BY_KEY, *taken) if key in taken}
    whole = {"format": FORMAT, "version": VERSION, **tree}
    return (json.dumps(whole, indent=2, ensure_ascii=False) + "\n").encode("utf-8")


def project_from(data: bytes) -> Project:
    """The project in the bytes of a file; TreeError for anything else."""
    project: Project = record_of(Project, _known_version(parsed(data, LARGEST_NUMBER, LARGER_NUMBERS)), ())
    _check(project)
    return project


def _check(project: Project) -> None:
    """Nothing, or TreeError for the first thing that a project cannot hold."""
    for place, reason in problems(project):
        raise TreeError(place, reason)


def _known_version(tree: Any) -> dict[str, Any]:
    """The entries of the project record, without the two that say what kind of file it is."""
    if not isinstance(tree, dict) or tree.get("format") != FORMAT:
        raise TreeError((), f"this is no {FORMAT} project file")
    version = tree.get("version")
    if type(version) is not int or version < 1:
        raise TreeError(("version",), "is missing" if version is None else "must be a whole number")
    if version > VERSION:
        raise TreeError((), f"the file has version {version}; this program reads up to version {VERSION}")
    newest = brought_up(tree)
    return {name: value for name, value in newest.items() if name not in ("format", "version")}
