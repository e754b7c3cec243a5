"""From a project file to its entry: read whole, as when it is opened, and drafted once."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from pathlib import Path

from workbench.book.entry import Entry, Found, Matter
from workbench.book.small_picture import small_picture
from workbench.document import STYLE_WORDS, FileTrouble, Picture, Project, picture_of
from workbench.document.keeping import open_project

_JUST_NOW_NS = 3_000_000_000
"""A file written this short a while ago may be written again without its size and time telling."""


def entry_of(folder: Path, found: Found, clock: Callable[[], int] = time.time_ns) -> Entry:
    """The entry of one file; one that cannot be opened has the reason in it."""
    if clock() - found.mtime_ns < _JUST_NOW_NS:
        # read as it is, and once more when the book is next opened
        found = found._replace(mtime_ns=-1)
    try:
        project = open_project(folder / found.place).project
    except FileTrouble as trouble:
        return Entry(found, reason=trouble.reason)
    try:
        picture = picture_of(project)
        drawn = small_picture(picture)
    except Exception as error:
        # a fault of the program in one project must not keep all the others from being listed
        return Entry(found, name=_name(project), reason=f"cannot be worked out ({type(error).__name__}).")
    return Entry(
        found,
        name=_name(project),
        style=_style(project),
        date=project.client.date,
        next_fitting=project.client.next_fitting,
        invented=project.client.invented,
        matters=tuple(_matters(picture)),
        picture=drawn,
    )


def _name(project: Project) -> str:
    return " ".join(project.client.name.split())


def _style(project: Project) -> str:
    design = project.design
    panels = f"{design.front.panel_count} + {design.back.panel_count} panels"
    return f"{project.style_name or STYLE_WORDS[design.style]}, {panels}"


def _matters(picture: Picture) -> Iterator[Matter]:
    """What is open, by what the file says and the draft: nothing is cut or laid for it."""
    project = picture.project
    if not project.measurements:
        yield Matter("note", "not measured yet")
    elif picture.stopped:
        yield Matter("stop", "cannot be drafted")
    if any(finding.severity == "over" for finding in picture.findings):
        yield Matter("over", "above the limit you set")
    waiting = sum(not fitting.applied for fitting in project.fittings)
    if waiting:
        yield Matter("attend", f"{waiting} fitting{'s' if waiting > 1 else ''} not carried into the draft")
    if project.done:
        count = len(project.done)
        yield Matter("note", f"{count} step{'s' if count > 1 else ''} of the work ticked off")
