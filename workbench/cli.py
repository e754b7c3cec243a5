"""The command line: the window, and the same work without a window.

Every command ends with 0, or with 2 after one line on the error stream that names the
file, the place in it and the reason. One that works through a table ends with 1 where a
row of it failed.
"""

from __future__ import annotations

import argparse
import json
import math
import os
import sys
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import NoReturn

from workbench import __version__
from workbench.body import CAUTION_SHORT, LengthError, read_length, say_with_unit
from workbench.cloth import Plan
from workbench.document import (
    SUFFIX,
    FileTrouble,
    Lay,
    NoDraftError,
    Paper,
    Picture,
    Project,
    better_lay,
    cut_out,
    finding_data,
    json_schema,
    lay_data,
    lay_text,
    make_folder,
    opened_clients,
    picture_of,
    printed,
    printed_lays,
    read_project,
    recut,
    report,
    report_text,
    write_whole,
)
from workbench.draft import Finding
from workbench.progress import Progress

FAILED = 2
SOME_FAILED = 1
_SEEK_SECONDS = 5.0
"""After these a longer search is hardly worth its while."""
_MOST_SECONDS = 3600.0
_SAY_EVERY = 0.1
"""Seconds between two words of progress."""
_COMMANDS = ("report", "print", "lay", "recut", "schema")
_WITHOUT_A_WINDOW = """\
without a window:
  corset-workbench report FILE [--json]     what was worked out
  corset-workbench print FILE -o OUT.pdf    the panels at true size; --help lists papers
  corset-workbench lay FILE [--json]        the pieces laid on their cloths, and what to buy
  corset-workbench recut STYLE CLIENTS.csv -o DIR   a style cut again for each client of a table
  corset-workbench schema                   the JSON Schema of project files"""


class _Refused(Exception):  # noqa: N818  carries one line to the user
    """A command that cannot be carried out."""


class _Parser(argparse.ArgumentParser):
    """Says what is wrong with the arguments in one line, without the usage before it."""

    def error(self, message: str) -> NoReturn:
        raise _Refused(f"{message}; see {self.prog} --help")


def main(arguments: Sequence[str] | None = None) -> int:
    """Carry out a command; its exit status."""
    try:
        status = _carry_out(list(sys.argv[1:] if arguments is None else arguments))
        sys.stdout.flush()
    except _Refused as refused:
        print("corset-workbench: " + " ".join(str(refused).split()), file=sys.stderr)
        return FAILED
    except BrokenPipeError:
        # whoever read the output has had enough; Python must not complain again at its end
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return FAILED
    except KeyboardInterrupt:
        return FAILED
    return status


def _carry_out(arguments: list[str]) -> int:
    if arguments and arguments[0] in _COMMANDS:
        chosen = _command_parser().parse_args(arguments)
        return int(chosen.run(chosen))
    return _open_window(_window_parser().parse_args(arguments))


def _window_parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog="corset-workbench",
        description="Draft made-to-measure boned bodices and corsets.",
        epilog=_WITHOUT_A_WINDOW,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    _add_version(parser)
    parser.add_argument("file", nargs="?", type=Path, metavar="FILE", help="a .bodice project to open")
    return parser


def _command_parser() -> argparse.ArgumentParser:
    parser = _Parser(prog="corset-workbench")
    _add_version(parser)
    commands = parser.add_subparsers(required=True)
    _add_report(commands)
    _add_print(commands)
    _add_lay(commands)
    _add_recut(commands)
    schema = commands.add_parser("schema", help="print the JSON Schema of project files")
    schema.set_defaults(run=_schema)
    return parser


def _add_version(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--version", action="version", version=f"corset-workbench {__version__}")


def _add_report(commands: argparse._SubParsersAction[_Parser]) -> None:
    parser = commands.add_parser("report", help="print what was worked out")
    parser.add_argument("file", type=Path, metavar="FILE", help="a .bodice project")
    parser.add_argument("--json", action="store_true", help="as JSON, lengths in millimetres")
    parser.set_defaults(run=_report)


def _add_print(commands: argparse._SubParsersAction[_Parser]) -> None:
    parser = commands.add_parser(
        "print",
        help="write the panels to a PDF at true size",
        epilog="Lengths such as 0.5in, 1.2cm or 12mm; a bare figure is mm. The rest is the project's.",
    )
    parser.add_argument("file", type=Path, metavar="FILE", help="a .bodice project")
    parser.add_argument("-o", dest="out", type=Path, required=True, metavar="OUT.pdf")
    parser.add_argument("--paper", metavar="PAPER", help="A4, Letter, A3, A0 or, for example, roll:36in")
    parser.add_argument("--margin", metavar="LENGTH", help="left free at every edge of a sheet")
    parser.add_argument("--overlap", metavar="LENGTH", help="by which neighbouring sheets show the same")
    parser.add_argument("--no-allowance", action="store_true", help="stitch lines only")
    parser.set_defaults(run=_print)


def _add_lay(commands: argparse._SubParsersAction[_Parser]) -> None:
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


def _add_recut(commands: argparse._SubParsersAction[_Parser]) -> None:
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


def _open_window(chosen: argparse.Namespace) -> int:
    path: Path | None = chosen.file
    if path is not None:
        _read(path)
    # only here: the other commands need neither a display nor its libraries
    from workbench.ui import run

    return run(path)


def _report(chosen: argparse.Namespace) -> int:
    picture = picture_of(_read(chosen.file))
    try:
        text = _as_json(report(picture, chosen.file.stem)) if chosen.json else report_text(picture)
    except NoDraftError as error:
        raise _no_draft(chosen.file, error) from error
    _say(text)
    return 0


def _print(chosen: argparse.Namespace) -> int:
    picture = picture_of(_read(chosen.file))
    _refuse_project(chosen)
    paper = _paper(picture.project.paper, chosen)
    try:
        data = printed(picture, paper)
    except NoDraftError as error:
        raise _no_draft(chosen.file, error) from error
    except ValueError as error:
        raise _Refused(f"{chosen.file}: {error}") from error
    _write(chosen.out, data)
    return 0


def _refuse_project(chosen: argparse.Namespace) -> None:
    if chosen.out.suffix == SUFFIX or _same(chosen.out, chosen.file):
        raise _Refused(f"{chosen.out}: a print is not written over a project; name a .pdf file")


def _write(path: Path, data: bytes) -> None:
    try:
        write_whole(path, data)
    except FileTrouble as trouble:
        raise _Refused(str(trouble)) from trouble


def _lay(chosen: argparse.Namespace) -> int:
    seconds = None if chosen.seconds is None else _seconds(chosen.seconds)
    picture = picture_of(_read(chosen.file))
    project = picture.project
    if chosen.out is not None:
        # before a search that would be for nothing
        _refuse_project(chosen)
    try:
        cut_out(picture)
    except NoDraftError as error:
        raise _no_draft(chosen.file, error) from error
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
        _write(chosen.out, _printed_lays(chosen.file, picture, lays))
    if chosen.json:
        _say(_as_json(_lay_report(chosen.file.stem, project, lays, also)))
    else:
        _say(lay_text(lays, project, also))
    return 0


def _printed_lays(path: Path, picture: Picture, lays: list[Lay]) -> bytes:
    try:
        return printed_lays(picture, lays)
    except ValueError as error:
        raise _Refused(f"{path}: {error}") from error


def _lay_report(name: str, project: Project, lays: list[Lay], also: list[Finding]) -> dict[str, object]:
    def say(finding: Finding) -> dict[str, object]:
        return finding_data(finding, project)

    return {
        "project": name,
        "invented": project.client.invented,
        "cloths": [lay_data(lay, project, say) for lay in lays],
        "findings": [say(finding) for finding in also],
    }


def _chosen_lays(picture: Picture, chosen: argparse.Namespace) -> list[Lay]:
    """The cloths asked for; refused where one of them cannot be laid or there is none of that name."""
    wanted = None if chosen.cloth is None else chosen.cloth.strip().casefold()
    lays = [lay for lay in picture.lays if wanted in (None, lay.cloth.name.casefold())]
    if not lays:
        names = ", ".join(f"“{cloth.name}”" for cloth in picture.project.cloths) or "none at all"
        called = "cloth" if wanted is None else f"cloth called “{chosen.cloth}”"
        raise _Refused(f"{chosen.file}: there is no {called}; the project has {names}")
    for lay in lays:
        if lay.trouble is not None:
            said = lay.trouble.text(picture.project.unit, picture.project.fraction)
            raise _Refused(f"{chosen.file}: {lay.cloth.name}: {said}")
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
        raise _Refused(f"--seconds: “{text}” is no number of seconds from 0 to {_MOST_SECONDS:g}")
    return seconds


def _teller(progress: Progress, cloth: str, project: Project) -> Callable[[Plan, float], None]:
    """Says each better plan of a cloth."""

    def told(plan: Plan, after: float) -> None:
        length = say_with_unit(plan.length_mm, project.unit, project.fraction)
        progress.tell(f"{cloth}: {length} after {after:.0f} s")

    return told


def _recut(chosen: argparse.Namespace) -> int:
    style = _read(chosen.style)
    paper = None if chosen.paper is None else _paper_for_all(style, chosen)
    done = failed = 0
    progress = Progress(_SAY_EVERY)
    try:
        with opened_clients(chosen.clients) as rows:
            make_folder(chosen.out)
            for row in recut(style, rows, chosen.out, paper):
                done, failed = done + row.ok, failed + (not row.ok)
                progress.make_way()
                _say(f"{row.text}\n")
                progress.tell(f"line {row.line}: {done} done, {failed} failed")
    except FileTrouble as trouble:
        raise _Refused(str(trouble)) from trouble
    finally:
        progress.clear()
    if not done + failed:
        raise _Refused(f"{chosen.clients}: there are no clients below its first line")
    _say(f"{done} done, {failed} failed. {CAUTION_SHORT}\n")
    return SOME_FAILED if failed else 0


def _paper_for_all(style: Project, chosen: argparse.Namespace) -> Paper:
    """The paper to print every row on, tried on the style itself before a thousand rows fail for it."""
    paper = _named_paper(style.paper, chosen.paper, "--print")
    picture = picture_of(style)
    try:
        if not picture.stopped:
            printed(picture, paper)
    except ValueError as error:
        raise _Refused(f"--print: {error}") from error
    return paper


def _schema(_: argparse.Namespace) -> int:
    _say(_as_json(json_schema()))
    return 0


def _read(path: Path) -> Project:
    try:
        return read_project(path)
    except FileTrouble as trouble:
        raise _Refused(str(trouble)) from trouble


def _no_draft(path: Path, error: NoDraftError) -> _Refused:
    """The refusal of a file that opens but cannot be drafted, with the entry at fault as the file has it."""
    place = error.field.replace(".", " › ") + ": " if error.field else ""
    return _Refused(f"{path}: {place}{error}")


def _same(one: Path, other: Path) -> bool:
    try:
        return one.samefile(other)
    except (OSError, ValueError):
        return False


def _paper(paper: Paper, chosen: argparse.Namespace) -> Paper:
    """The paper of the project with what was chosen on the command line."""
    if chosen.paper is not None:
        paper = _named_paper(paper, chosen.paper)
    if chosen.margin is not None:
        paper = replace(paper, margin_mm=_length("--margin", chosen.margin))
    if chosen.overlap is not None:
        paper = replace(paper, overlap_mm=_length("--overlap", chosen.overlap))
    return replace(paper, with_allowance=paper.with_allowance and not chosen.no_allowance)


def _named_paper(paper: Paper, name: str, option: str = "--paper") -> Paper:
    kind, _, width = name.partition(":")
    if kind == "roll":
        wide = _length(f"{option} roll", width) if width else paper.roll_width_mm
        return replace(paper, name="roll", roll_width_mm=wide)
    for known in ("A4", "Letter", "A3", "A0"):
        if name.lower() == known.lower():
            return replace(paper, name=known)
    raise _Refused(f"{option}: “{name}” is none of A4, Letter, A3, A0 or roll:WIDTH")


def _length(option: str, text: str) -> float:
    """Millimetres, in which a bare figure is too."""
    try:
        return read_length(text, "mm").mm
    except LengthError as error:
        raise _Refused(f"{option}: {error}") from error


def _as_json(data: object) -> str:
    return json.dumps(data, indent=2, ensure_ascii=False) + "\n"


def _say(text: str) -> None:
    """Write to the output, in UTF-8 whatever the terminal claims: fractions must come through."""
    sys.stdout.flush()
    output = getattr(sys.stdout, "buffer", None)
    if output is None:
        sys.stdout.write(text)
    else:
        output.write(text.encode("utf-8"))
        output.flush()


if __name__ == "__main__":
    sys.exit(main())
