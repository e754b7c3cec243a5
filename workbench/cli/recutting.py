"""The command that cuts a style again for each client of a table."""

from __future__ import annotations

import argparse
from pathlib import Path

from workbench.body import CAUTION_SHORT
from workbench.cli.common import Commands, Refused, read, say
from workbench.cli.printing import named_paper
from workbench.document import (
    FileTrouble,
    Paper,
    Project,
    make_folder,
    opened_clients,
    picture_of,
    printed,
    recut,
)
from workbench.progress import Progress

SOME_FAILED = 1
_SAY_EVERY = 0.1
"""Seconds between two words of progress."""


def add_recut(commands: Commands) -> None:
    """Add the command."""
    parser = commands.add_parser(
        "recut",
        help="cut a style again for each client of a table",
        epilog="Columns of the table: name, unit (in or cm) and measurements by their keys, such as "
        "waist_girth. Seams, shares, neckline and hem go with the body, reductions stay the lengths they "
        "are. Nothing is written over: a name that is taken gets a number. Ends with 1 where a row failed.",
    )
    parser.add_argument("style", type=Path, metavar="STYLE.bodice", help="the project to take the style from")
    parser.add_argument(
        "clients", type=Path, metavar="CLIENTS.csv", help="a table with a row for each client"
    )
    parser.add_argument("-o", dest="out", type=Path, required=True, metavar="DIR", help="folder for projects")
    parser.add_argument(
        "--print", dest="paper", metavar="PAPER", help="print each one, too: A4, Letter, A3, A0 or roll:WIDTH"
    )
    parser.set_defaults(run=_recut)


def _recut(chosen: argparse.Namespace) -> int:
    style = read(chosen.style)
    paper = None if chosen.paper is None else _paper_for_all(style, chosen)
    done = failed = 0
    progress = Progress(_SAY_EVERY)
    try:
        with opened_clients(chosen.clients) as rows:
            make_folder(chosen.out)
            for row in recut(style, rows, chosen.out, paper):
                done, failed = done + row.ok, failed + (not row.ok)
                progress.make_way()
                say(f"{row.text}\n")
                progress.tell(f"line {row.line}: {done} done, {failed} failed")
    except FileTrouble as trouble:
        raise Refused(str(trouble)) from trouble
    finally:
        progress.clear()
    if not done + failed:
        raise Refused(f"{chosen.clients}: there are no clients below its first line")
    say(f"{done} done, {failed} failed. {CAUTION_SHORT}\n")
    return SOME_FAILED if failed else 0


def _paper_for_all(style: Project, chosen: argparse.Namespace) -> Paper:
    """The paper to print every row on, tried on the style itself before a thousand rows fail for it."""
    paper = named_paper(style.paper, chosen.paper, "--print")
    picture = picture_of(style)
    try:
        if not picture.stopped:
            printed(picture, paper)
    except ValueError as error:
        raise Refused(f"--print: {error}") from error
    return paper
