"""The licences of everything inside the built program, collected from where each part came from.

A Python package brings its own in its metadata; what was taken from the system has them
in its package's documentation; Python has one file. What nobody brings along lies in
``licences/`` beside this file.
"""

from __future__ import annotations

import json
import shutil
import subprocess
import sys
import sysconfig
from collections.abc import Iterable
from dataclasses import dataclass, field
from importlib.metadata import Distribution, distributions
from pathlib import Path
from textwrap import shorten

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[1]
_WORDS = ("licen", "copying", "notice", "author")
_ABOVE_ALL = "Corset workbench"
_OTHER_SYSTEM = "Libraries of the system"
"""Taken where no package manager that is known here can say whose they are."""


@dataclass(frozen=True)
class Part:
    """Something inside the program that has a licence of its own."""

    name: str
    version: str
    licence: str
    """In a word or two, as the part itself says it; empty where it only brings the text."""
    texts: tuple[Path, ...] = field(default=())


def parts_of(sources: Iterable[str]) -> list[Part]:
    """Every part that one of the files belongs to, in the order of the alphabet; the program itself first.

    Raises LookupError for a part that has no text, and for a file that belongs to nothing.
    """
    files = {Path(source).resolve() for source in sources}
    packages = _packages(files)
    left = files - {file for owned in packages.values() for file in owned}
    parts = [_of_package(package) for package in packages]
    parts += [
        _of_python(),
        *_of_system(file for file in left if not _is_pythons(file) and not _is_ours(file)),
    ]
    parts.sort(key=lambda part: part.name.lower())
    parts.insert(0, Part(_ABOVE_ALL, _version(), "MIT", (ROOT / "resources" / "LICENCE.txt",)))
    fonts = ROOT / "resources" / "fonts" / "OFL.txt"
    parts.insert(1, Part("Noto Sans (as Seam Sans)", "", "SIL Open Font License 1.1", (fonts,)))
    for part in parts:
        if not part.texts and part.name != _OTHER_SYSTEM:
            raise LookupError(f"{part.name} brings no licence along; put its text into {HERE / 'licences'}.")
    return parts


def write(parts: Iterable[Part], folder: Path) -> None:
    """A folder with the texts of each part, and a page with all of them and what is to be said beside."""
    shutil.rmtree(folder, ignore_errors=True)
    rows = []
    for part in parts:
        own = folder / part.name.replace("/", " ")
        own.mkdir(parents=True, exist_ok=True)
        for number, text in enumerate(part.texts):
            taken = (own / text.name).exists()
            shutil.copyfile(text, own / (f"{number} {text.name}" if taken else text.name))
        rows.append(f"{part.name} {part.version}".strip() + (f": {part.licence}" if part.licence else ""))
    notice = (HERE / "licences" / "NOTICE.txt").read_text("utf-8")
    listed = "\n".join(rows)
    (folder / "README.txt").write_text(f"{notice}\nWhat is inside\n\n{listed}\n", "utf-8")


def _packages(files: set[Path]) -> dict[Distribution, set[Path]]:
    """Installed packages that own one of the files. The bootloader of the program is PyInstaller's."""
    found = {}
    for package in distributions():
        if package.name == "corset-workbench":
            continue
        owned = files & {Path(str(package.locate_file(file))).resolve() for file in package.files or ()}
        if owned or package.name.lower() == "pyinstaller":
            found[package] = owned
    return found


def _of_package(package: Distribution) -> Part:
    own = package.metadata
    said = next((own[word] for word in ("License-Expression", "License") if word in own), "")
    # some packages put the whole text where a word belongs
    said = shorten(said.partition("\n")[0], 160, placeholder=" …")
    texts = [
        Path(str(package.locate_file(file)))
        for file in package.files or ()
        if ".dist-info" in file.parts[0]
        and (any(word in file.name.lower() for word in _WORDS) or "sboms" in file.parts)
    ]
    if package.name.lower().startswith(("pyside6", "shiboken6")):
        texts += [HERE / "licences" / "LGPL-3.0.txt", HERE / "licences" / "GPL-3.0.txt"]
    return Part(package.name, package.version, said, tuple(texts))


def _of_python() -> Part:
    version = sys.version.split()[0]
    places = [
        Path(sysconfig.get_path("stdlib")) / "LICENSE.txt",
        Path(sys.base_prefix) / "LICENSE.txt",
        Path(f"/usr/share/doc/python{sys.version_info.major}.{sys.version_info.minor}/copyright"),
    ]
    return Part("Python", version, "PSF-2.0", tuple(path for path in places if path.exists())[:1])


def _of_system(files: Iterable[Path]) -> list[Part]:
    """A part for each of Debian's packages that files were taken from; elsewhere one that names the files."""
    if shutil.which("dpkg") is None:
        named = ", ".join(sorted({file.name for file in files}))
        return [Part(_OTHER_SYSTEM, "", named)] if named else []
    owners = dict(map(_debian_package, files))
    parts = []
    for name, version in owners.items():
        text = Path("/usr/share/doc") / name / "copyright"
        parts.append(Part(name, version, "as its copyright file says", (text,) if text.exists() else ()))
    if parts:
        # the copyright files name these instead of repeating them
        whole = tuple(sorted({path.resolve() for path in Path("/usr/share/common-licenses").iterdir()}))
        parts.append(Part("common-licenses", "", "the texts that Debian’s copyright files name", whole))
    return parts


def _debian_package(file: Path) -> tuple[str, str]:
    """Name and version of the package that a file of the system came in."""
    # a merged /usr: the package may know the file by the shorter path
    for known_as in (str(file), str(file).removeprefix("/usr")):
        told = _asked("dpkg", "-S", known_as)
        if told:
            name = told.partition(": ")[0]
            return name.partition(":")[0], _asked("dpkg-query", "-W", "-f", "${Version}", name)
    raise LookupError(f"{file} goes into the program, and no package knows it.")


def _asked(*command: str) -> str:
    return subprocess.run(command, capture_output=True, text=True, check=False).stdout.strip()


def _is_pythons(file: Path) -> bool:
    """Whether a file is of Python itself, which has one licence for all."""
    bases = {Path(sysconfig.get_path("stdlib")).resolve(), Path(sysconfig.get_path("platstdlib")).resolve()}
    if sys.platform == "win32":
        bases.add(Path(sys.base_prefix).resolve())
    return any(base in file.parents for base in bases) or file.name.startswith(("libpython", "python3"))


def _is_ours(file: Path) -> bool:
    """Whether a file is of this project or was made from it while the program was built."""
    return ROOT in file.parents and "site-packages" not in file.parts


def _version() -> str:
    from workbench import __version__

    return str(__version__)


def main() -> None:
    """``licences.py INSIDE.json FOLDER``: from the list that the build has written."""
    sources, folder = sys.argv[1:]
    write(parts_of(json.loads(Path(sources).read_text())), Path(folder))


if __name__ == "__main__":
    main()
