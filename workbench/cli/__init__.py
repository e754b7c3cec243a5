"""The command line: the window, and the same work without a window.

Every command ends with 0, or with 2 after one line on the error stream that names the
file, the place in it and the reason. One that works through a table ends with 1 where a
row of it failed.
"""

from __future__ import annotations

import argparse
import gc
import os
import sys
from collections.abc import Sequence
from pathlib import Path

from workbench import __version__
from workbench.cli.common import Commands, Parser, Refused, as_json, no_draft, read, say

FAILED = 2
_COMMANDS = ("report", "print", "export", "lay", "recut", "schema")
_WITHOUT_A_WINDOW = """\
without a window:
  corset-workbench report FILE [--json]     what was worked out
  corset-workbench print FILE -o OUT.pdf    the panels at true size; --help lists papers
  corset-workbench export FILE -o OUT.svg   for other programs, a copy shop or a projector; --help says more
  corset-workbench lay FILE [--json]        the pieces laid on their cloths, and what to buy
  corset-workbench recut STYLE CLIENTS.csv -o DIR   a style cut again for each client of a table
  corset-workbench schema                   the JSON Schema of project files"""


def main(arguments: Sequence[str] | None = None) -> int:
    """Carry out a command; its exit status."""
    try:
        status = _carry_out(list(sys.argv[1:] if arguments is None else arguments))
        sys.stdout.flush()
    except Refused as refused:
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
    parser = Parser(
        prog="corset-workbench",
        description="Draft made-to-measure boned bodices and corsets.",
        epilog=_WITHOUT_A_WINDOW,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    _add_version(parser)
    parser.add_argument("file", nargs="?", type=Path, metavar="FILE", help="a .bodice project to open")
    return parser


def _command_parser() -> argparse.ArgumentParser:
    # only here: a window that opens need not wait for what the commands use
    from workbench.cli.exporting import add_export
    from workbench.cli.laying import add_lay
    from workbench.cli.printing import add_print
    from workbench.cli.recutting import add_recut

    parser = Parser(prog="corset-workbench")
    _add_version(parser)
    commands = parser.add_subparsers(required=True)
    _add_report(commands)
    add_print(commands)
    add_export(commands)
    add_lay(commands)
    add_recut(commands)
    schema = commands.add_parser("schema", help="print the JSON Schema of project files")
    schema.set_defaults(run=_schema)
    return parser


def _add_version(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--version", action="version", version=f"corset-workbench {__version__}")


def _add_report(commands: Commands) -> None:
    parser = commands.add_parser("report", help="print what was worked out")
    parser.add_argument("file", type=Path, metavar="FILE", help="a .bodice project")
    parser.add_argument("--json", action="store_true", help="as JSON, lengths in millimetres")
    parser.set_defaults(run=_report)


def _open_window(chosen: argparse.Namespace) -> int:
    path: Path | None = chosen.file
    gc.disable()  # nothing read while starting is garbage; the window has it looked for once it has settled
    try:
        if path is not None:
            read(path)
        # only here: the other commands need neither a display nor its libraries
        from workbench.ui import run

        return run(path)
    finally:
        gc.enable()


def _report(chosen: argparse.Namespace) -> int:
    from workbench.document import NoDraftError, picture_of, report, report_text  # likewise

    picture = picture_of(read(chosen.file))
    try:
        text = as_json(report(picture, chosen.file.stem)) if chosen.json else report_text(picture)
    except NoDraftError as error:
        raise no_draft(chosen.file, error) from error
    say(text)
    return 0


def _schema(_: argparse.Namespace) -> int:
    from workbench.document import json_schema  # likewise

    say(as_json(json_schema()))
    return 0


if __name__ == "__main__":
    sys.exit(main())
