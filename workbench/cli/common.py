"""What the commands share: how they refuse, read, write and speak.

Projects and lengths are read where they are needed and not above: the window is told of its
file from here, and all that is read before it opens is waited for.
"""

from __future__ import annotations

import argparse
import json
import sys
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn, TypeAlias

if TYPE_CHECKING:
    from workbench.document import NoDraftError, Project


class Refused(Exception):  # noqa: N818  carries one line to the user
    """A command that cannot be carried out."""


class Parser(argparse.ArgumentParser):
    """Says what is wrong with the arguments in one line, without the usage before it."""

    def error(self, message: str) -> NoReturn:
        """Refuse, and say where help is."""
        raise Refused(f"{message}; see {self.prog} --help")


Commands: TypeAlias = "argparse._SubParsersAction[Parser]"
"""What a command adds its own parser to."""


def read(path: Path) -> Project:
    """The project in a file; Refused with what is wrong with it."""
    from workbench.document import FileTrouble, read_project

    try:
        return read_project(path)
    except FileTrouble as trouble:
        raise Refused(str(trouble)) from trouble


def write(path: Path, data: bytes) -> None:
    """Put bytes in a file, whole; Refused with why that cannot be, and nothing changed."""
    from workbench.document import FileTrouble, write_whole

    try:
        write_whole(path, data)
    except FileTrouble as trouble:
        raise Refused(str(trouble)) from trouble


def refuse_project(chosen: argparse.Namespace) -> None:
    """Refused where the output would go over a project."""
    from workbench.document import SUFFIX

    if chosen.out.suffix == SUFFIX or _same(chosen.out, chosen.file):
        raise Refused(f"{chosen.out}: a print is not written over a project; name a .pdf file")


def no_draft(path: Path, error: NoDraftError) -> Refused:
    """The refusal of a file that opens but cannot be drafted, with the entry at fault as the file has it."""
    place = error.field.replace(".", " › ") + ": " if error.field else ""
    return Refused(f"{path}: {place}{error}")


def _same(one: Path, other: Path) -> bool:
    try:
        return one.samefile(other)
    except (OSError, ValueError):
        return False


def length(option: str, text: str) -> float:
    """Millimetres, in which a bare figure is too."""
    from workbench.body import LengthError, read_length

    try:
        return read_length(text, "mm").mm
    except LengthError as error:
        raise Refused(f"{option}: {error}") from error


def as_json(data: object) -> str:
    """Data as JSON that is read by people too."""
    return json.dumps(data, indent=2, ensure_ascii=False) + "\n"


def say(text: str) -> None:
    """Write to the output, in UTF-8 whatever the terminal claims: fractions must come through."""
    sys.stdout.flush()
    output = getattr(sys.stdout, "buffer", None)
    if output is None:
        sys.stdout.write(text)
    else:
        output.write(text.encode("utf-8"))
        output.flush()
