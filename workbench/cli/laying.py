"""The command that lays the pieces on their cloths and says what to buy."""

from __future__ import annotations

import argparse
import math
from collections.abc import Callable
from pathlib import Path

from workbench.body import say_with_unit
from workbench.cli.common import Commands, Refused, as_json, no_draft, read, refuse_project, say, write
from workbench.cloth import Plan
from workbench.document import (
    Lay,
    NoDraftError,
    Picture,
    Project,
    better_lay,
    cut_out,
    finding_data,
    lay_data,
    lay_text,
    picture_of,
    printed_lays,
)
from workbench.draft import Finding
from workbench.progress import Progress

_SEEK_SECONDS = 5.0
"""After these a longer search is hardly worth its while."""
_MOST_SECONDS = 3600.0


def add_lay(commands: Commands) -> None:
    """Add the command."""
    parser = commands.add_parser(
        "lay",
        help="lay the pieces on their cloths, and say what to buy",
        epilog="A plan that is kept in the project and still holds is taken as it is unless --seconds "
        "are given. The project is not changed.",
    )
    parser.add_argument("file", type=Path, metavar="FILE", help="a .bodice project")
    parser.add_argument("--cloth", metavar="NAME", help="this cloth alone")
    seek = f"seek the shortest plan of each cloth for so long; usually {_SEEK_SECONDS:g}, 0 lays at once"
    parser.add_argument("--seconds", metavar="N", help=seek)
    parser.add_argument("--json", action="store_true", help="as JSON, lengths in millimetres")
    parser.add_argument(
        "-o", dest="out", type=Path, metavar="PLAN.pdf", help="to scale, with measures, as well"
    )
    parser.set_defaults(run=_lay)


def _lay(chosen: argparse.Namespace) -> int:
    seconds = None if chosen.seconds is None else _seconds(chosen.seconds)
    picture = picture_of(read(chosen.file))
    project = picture.project
    if chosen.out is not None:
        # before a search that would be for nothing
        refuse_project(chosen)
    try:
        cut_out(picture)
    except NoDraftError as error:
        raise no_draft(chosen.file, error) from error
    lays: list[Lay] = []
    also: list[Finding] = []
    progress = Progress()
    for lay in _chosen_lays(picture, chosen):
        better, findings = better_lay(
            lay, _time_for(lay, seconds), _teller(progress, lay.cloth.name, project)
        )
        lays.append(better)
        also.extend(findings)
    progress.clear()
    if chosen.out is not None:
        write(chosen.out, _printed_lays(chosen.file, picture, lays))
    if chosen.json:
        say(as_json(_lay_report(chosen.file.stem, project, lays, also)))
    else:
        say(lay_text(lays, project, also))
    return 0


def _printed_lays(path: Path, picture: Picture, lays: list[Lay]) -> bytes:
    try:
        return printed_lays(picture, lays)
    except ValueError as error:
        raise Refused(f"{path}: {error}") from error


def _lay_report(name: str, project: Project, lays: list[Lay], also: list[Finding]) -> dict[str, object]:
    def told(finding: Finding) -> dict[str, object]:
        return finding_data(finding, project)

    return {
        "project": name,
        "invented": project.client.invented,
        "cloths": [lay_data(lay, project, told) for lay in lays],
        "findings": [told(finding) for finding in also],
    }


def _chosen_lays(picture: Picture, chosen: argparse.Namespace) -> list[Lay]:
    """The cloths asked for; refused where one of them cannot be laid or there is none of that name."""
    wanted = None if chosen.cloth is None else chosen.cloth.strip().casefold()
    lays = [lay for lay in picture.lays if wanted in (None, lay.cloth.name.casefold())]
    if not lays:
        names = ", ".join(f"“{cloth.name}”" for cloth in picture.project.cloths) or "none at all"
        called = "cloth" if wanted is None else f"cloth called “{chosen.cloth}”"
        raise Refused(f"{chosen.file}: there is no {called}; the project has {names}")
    for lay in lays:
        if lay.trouble is not None:
            said = lay.trouble.text(picture.project.unit, picture.project.fraction)
            raise Refused(f"{chosen.file}: {lay.cloth.name}: {said}")
    return lays


def _time_for(lay: Lay, seconds: float | None) -> float:
    """How long to seek; a kept plan that holds is not sought anew unless a time is given."""
    if seconds is not None:
        return seconds
    return 0.0 if lay.state == "current" else _SEEK_SECONDS


def _seconds(text: str) -> float:
    try:
        seconds = float(text)
    except ValueError:
        seconds = math.nan
    if not 0 <= seconds <= _MOST_SECONDS:
        raise Refused(f"--seconds: “{text}” is no number of seconds from 0 to {_MOST_SECONDS:g}")
    return seconds


def _teller(progress: Progress, cloth: str, project: Project) -> Callable[[Plan, float], None]:
    """Says each better plan of a cloth."""

    def told(plan: Plan, after: float) -> None:
        length = say_with_unit(plan.length_mm, project.unit, project.fraction)
        progress.tell(f"{cloth}: {length} after {after:.0f} s")

    return told
