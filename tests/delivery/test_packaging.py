"""What stands around the built program: what it leaves out, licences, icons, its place on a desktop."""

from __future__ import annotations

import configparser
import os
import subprocess
import sys
from pathlib import Path

import pytest
from PIL import Image

from tests.delivery.conftest import ROOT
from workbench.cloth.worker import child_command

PACKAGING = ROOT / "resources" / "packaging"
sys.path.append(str(PACKAGING))

import icons  # noqa: E402
import inside  # noqa: E402
import licences  # noqa: E402
import program  # noqa: E402

LINUX = pytest.mark.skipif(sys.platform != "linux", reason="the desktop of a Linux")


def test_the_built_program_knows_the_words_its_child_is_started_with() -> None:
    assert child_command()[1:] == program.CHILD


def test_a_viewer_for_prints_gets_the_environment_of_the_user(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("LD_LIBRARY_PATH", "/the/program")
    monkeypatch.setenv("LD_LIBRARY_PATH_ORIG", "/her/own")
    monkeypatch.setenv("QT_PLUGIN_PATH", "/the/program")
    program.give_back()
    assert os.environ["LD_LIBRARY_PATH"] == "/her/own"
    assert not {"LD_LIBRARY_PATH_ORIG", "QT_PLUGIN_PATH"} & set(os.environ)
    program.give_back()
    assert "LD_LIBRARY_PATH" not in os.environ


@pytest.mark.parametrize(
    ("name", "goes"),
    [
        ("PySide6/Qt/plugins/platforms/libqxcb.so", True),
        ("PySide6/plugins/platforms/qwindows.dll", True),
        ("PySide6/Qt/plugins/platforms/libqvnc.so", False),
        ("PySide6/Qt/plugins/platformthemes/libqgtk3.so", False),
        ("PySide6/Qt/plugins/tls/libqopensslbackend.so", False),
        ("PySide6/Qt/plugins/imageformats/libqwebp.so", True),
        ("PySide6/Qt/translations/qtbase_de.qm", False),
        ("workbench/_resources/icons/open.svg", True),
    ],
)
def test_what_goes_along(name: str, goes: bool) -> None:
    assert inside.goes_along(name) is goes


def test_libraries_nobody_asks_for_any_more_stay_behind() -> None:
    asks = {"/p/plugin": ["libone.so"], "/s/libone.so": ["libtwo.so"], "/s/libleft.so": ["libtwo.so"]}
    plugin = ("PySide6/Qt/plugins/platforms/libqxcb.so", "/p/plugin", "BINARY")
    one, two, left = ((f"lib{name}.so", f"/s/lib{name}.so", "BINARY") for name in ("one", "two", "left"))
    python = ("libpython3.11.so.1.0", "/s/libpython", "BINARY")
    entries = [plugin, one, two, left, python]
    assert inside.still_needed(entries, lambda path: asks.get(path, [])) == [plugin, one, two, python]
    links = [("libone.so.1", "libone.so", "SYMLINK"), ("libleft.so.1", "libleft.so", "SYMLINK")]
    assert inside.without_dead_links(links, ["libone.so"]) == links[:1]


def test_every_part_brings_its_licence(tmp_path: Path) -> None:
    import numpy
    import PySide6
    import shapely

    sources = [str(module.__file__) for module in (numpy, PySide6, shapely)]
    parts = licences.parts_of(sources)
    licences.write(parts, tmp_path / "licences")
    texts = {part.name: "".join(text.read_text("utf-8", "replace") for text in part.texts) for part in parts}
    assert "Lesser GENERAL PUBLIC LICENSE".lower() in texts["PySide6_Essentials"].lower()
    assert "Version 2.1" in texts["shapely"]
    assert "SIL OPEN FONT LICENSE" in texts["Noto Sans (as Seam Sans)"]
    assert "Bootloader Exception" in texts["pyinstaller"]
    page = (tmp_path / "licences" / "README.txt").read_text("utf-8")
    assert all(part.name in page for part in parts)
    assert (tmp_path / "licences" / "Corset workbench" / "LICENCE.txt").exists()


def test_a_file_that_belongs_to_nobody_stops_the_build() -> None:
    with pytest.raises(LookupError, match=r"stray\.so goes into the program"):
        licences.parts_of(["/nowhere/stray.so"])


def test_icons_of_every_size_and_both_kinds_of_one_file(tmp_path: Path) -> None:
    for drawing in icons.DRAWINGS.values():
        for side in icons.SIZES:
            image = icons.picture(drawing, side)
            assert image.size == (side, side)
            assert _pixels(image)[0][3] == 0
            # ink, paper, and the one line that wants attention can be told from each other at every size
            seen = {tuple(part // 64 for part in pixel[:3]) for pixel in _pixels(image) if pixel[3] > 200}
            assert len(seen) >= 3
    with Image.open(icons.write_one_file(tmp_path / "one.ico")) as image:
        assert {(16, 16), (32, 32), (256, 256)} <= image.info["sizes"]
    with Image.open(icons.write_one_file(tmp_path / "one.icns")) as image:
        assert image.size[0] >= 512


def _pixels(image: Image.Image) -> list[tuple[int, ...]]:
    """Red, green, blue and how full, row by row."""
    data = image.tobytes()
    return [tuple(data[at : at + 4]) for at in range(0, len(data), 4)]


def _desktop(path: Path) -> configparser.SectionProxy:
    entry = configparser.ConfigParser(interpolation=None, delimiters=("=",))
    entry.optionxform = str  # type: ignore[assignment,method-assign]  # keys of an entry have capitals
    entry.read(path, "utf-8")
    return entry["Desktop Entry"]


@LINUX
def test_put_into_the_menu_and_taken_out_again(tmp_path: Path) -> None:
    """Keys and quoting as the Desktop Entry Specification 1.5 of freedesktop.org has them."""
    folder = tmp_path / "My $own programs" / "corset-workbench"
    share, data = folder / "share", tmp_path / "data"
    share.mkdir(parents=True)
    for name in ("corset-workbench.desktop", "corset-workbench.xml"):
        (share / name).write_bytes((PACKAGING / "linux" / name).read_bytes())
    icons.write_pngs(share / "icons")
    (folder / "install.sh").write_bytes((PACKAGING / "linux" / "install.sh").read_bytes())
    env = {"PATH": os.environ["PATH"], "HOME": str(tmp_path), "XDG_DATA_HOME": str(data), "LC_ALL": "C.UTF-8"}
    subprocess.run(["sh", str(folder / "install.sh")], env=env, check=True, capture_output=True)
    entry = _desktop(data / "applications" / "corset-workbench.desktop")
    quoted = str(folder).replace("$", r"\\$")
    assert entry["Exec"] == f'"{quoted}/corset-workbench" %f'
    assert (data / "icons" / "hicolor" / "48x48" / "apps" / "corset-workbench.png").exists()
    assert (data / "icons" / "hicolor" / "48x48" / "mimetypes" / "corset-workbench-file.png").exists()
    assert _kind_of("x.bodice", env) == entry["MimeType"].rstrip(";")
    subprocess.run(["sh", str(folder / "install.sh"), "--remove"], env=env, check=True, capture_output=True)
    assert not list(data.rglob("*corset-workbench*"))


def _kind_of(name: str, env: dict[str, str]) -> str:
    """What Qt, which reads the desktop's table of kinds of files, says of a name."""
    code = (
        "import sys; from PySide6.QtCore import QMimeDatabase as D; "
        "print(D().mimeTypeForFile(sys.argv[1], D.MatchMode.MatchExtension).name())"
    )
    command = [sys.executable, "-c", code, name]
    return subprocess.run(command, env=env, check=True, capture_output=True, text=True).stdout.strip()
