"""The command that writes a PDF: panels or pieces at true size, the sewing order, the client's card."""

from __future__ import annotations

import argparse
from dataclasses import replace
from pathlib import Path

from workbench.cli.common import Commands, Refused, length, no_draft, read, refuse_project, write
from workbench.document import (
    NoDraftError,
    Paper,
    Picture,
    picture_of,
    printed,
    printed_beads,
    printed_card,
    printed_order,
)

_WITHOUT_PAPER = {"order": printed_order, "card": printed_card}
"""What is printed on a sheet for words, whatever the panels are printed on."""


def add_print(commands: Commands) -> None:
    """Add the command."""
    parser = commands.add_parser(
        "print",
        help="write the panels to a PDF at true size, or the sewing order, or the client’s card",
        epilog="Lengths such as 0.5in, 1.2cm or 12mm; a bare figure is mm. The rest is the project's.",
    )
    parser.add_argument("file", type=Path, metavar="FILE", help="a .bodice project")
    parser.add_argument("-o", dest="out", type=Path, required=True, metavar="OUT.pdf")
    parser.add_argument(
        "--what",
        choices=("sheets", "beads", *_WITHOUT_PAPER),
        default="sheets",
        help="sheets, if nothing is said",
    )
    parser.add_argument("--paper", metavar="PAPER", help="A4, Letter, A3, A0 or, for example, roll:36in")
    parser.add_argument("--margin", metavar="LENGTH", help="left free at every edge of a sheet")
    parser.add_argument("--overlap", metavar="LENGTH", help="by which neighbouring sheets show the same")
    parser.add_argument("--no-allowance", action="store_true", help="stitch lines only")
    parser.set_defaults(run=_print)


def _print(chosen: argparse.Namespace) -> int:
    picture = picture_of(read(chosen.file))
    refuse_project(chosen)
    try:
        data = _data(picture, chosen)
    except NoDraftError as error:
        raise no_draft(chosen.file, error) from error
    except ValueError as error:
        raise Refused(f"{chosen.file}: {error}") from error
    write(chosen.out, data)
    return 0


def _data(picture: Picture, chosen: argparse.Namespace) -> bytes:
    if chosen.what in _WITHOUT_PAPER:
        return _WITHOUT_PAPER[chosen.what](picture)
    make = printed_beads if chosen.what == "beads" else printed
    return make(picture, _paper(picture.project.paper, chosen))


def _paper(paper: Paper, chosen: argparse.Namespace) -> Paper:
    """The paper of the project with what was chosen on the command line."""
    if chosen.paper is not None:
        paper = named_paper(paper, chosen.paper)
    if chosen.margin is not None:
        paper = replace(paper, margin_mm=length("--margin", chosen.margin))
    if chosen.overlap is not None:
        paper = replace(paper, overlap_mm=length("--overlap", chosen.overlap))
    return replace(paper, with_allowance=paper.with_allowance and not chosen.no_allowance)


def named_paper(paper: Paper, name: str, option: str = "--paper") -> Paper:
    """Paper of the name given with an option; Refused where there is none."""
    kind, _, width = name.partition(":")
    if kind == "roll":
        wide = length(f"{option} roll", width) if width else paper.roll_width_mm
        if wide <= 0:
            raise Refused(f"{option} roll: a roll is wider than nothing")
        return replace(paper, name="roll", roll_width_mm=wide)
    for known in ("A4", "Letter", "A3", "A0"):
        if name.lower() == known.lower():
            return replace(paper, name=known)
    raise Refused(f"{option}: “{name}” is none of A4, Letter, A3, A0 or roll:WIDTH")
