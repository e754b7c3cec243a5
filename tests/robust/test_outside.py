"""No word in a file leads out of its folder: not on the screen, not in what is handed on."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from io import BytesIO, StringIO
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import cast
from xml.etree import ElementTree

import ezdxf
import pikepdf
import pytest
from PySide6.QtCore import QAbstractTableModel, QModelIndex, Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QAbstractItemView, QApplication, QLabel, QMessageBox, QWidget
from pytestqt.qtbot import QtBot

from tests.document import example
from tests.robust.hostile import hostile_project
from tests.robust.opened import watched
from tests.ui.conftest import Answers, let_go
from workbench import cli
from workbench.book import index_file, keep, look_at, read_waiting
from workbench.document import set_client, write_project
from workbench.ui.actions import PLACES, SIDES
from workbench.ui.asking import Asking
from workbench.ui.book.asking import BookAsking
from workbench.ui.settings import Settings
from workbench.ui.style import dress
from workbench.ui.styles.questions import ShapeQuestions
from workbench.ui.window import Window

_MARKED = "<img src="


@pytest.fixture
def bait() -> Iterator[Path]:
    """A sound picture at a short path, which no one has any business with."""
    # names are short, so that the path must be
    with TemporaryDirectory(prefix="b", dir="/tmp" if Path("/tmp").is_dir() else None) as folder:
        path = Path(folder) / "p.png"
        image = QImage(4, 4, QImage.Format.Format_RGB32)
        image.fill(0)
        assert image.save(str(path))
        yield path


# --- on the screen -----------------------------------------------------------------------


def test_the_watch_sees_what_a_page_opens(qapp: QApplication, qtbot: QtBot, bait: Path) -> None:
    with watched(bait.parent) as opened:
        assert not opened()
        label = QLabel(f"<img src={bait}>")
        qtbot.addWidget(label)
        label.grab()
        assert opened()


@pytest.mark.qt_log_ignore("This plugin does not support", extend=True)
def test_no_text_of_a_project_is_shown_as_a_page(
    qapp: QApplication, qtbot: QtBot, bait: Path, tmp_path: Path
) -> None:
    dress("light")
    window = Window(Settings(tmp_path / "window.ini"), Answers(), (), tmp_path / "data")
    qtbot.addWidget(window, before_close_func=let_go)
    window.resize(1400, 900)
    window.show()
    project = hostile_project(bait)
    with watched(bait.parent) as opened:
        window.files.put(project, None)
        for name in (*PLACES, *SIDES, "ledger"):
            if name not in PLACES:
                window.deeds["draft"].trigger()
            window.deeds[name].trigger()
            qapp.processEvents()
            pages = [page for widget in qapp.allWidgets() for page in _pages(widget)]
            assert pages == [], name
            window.grab()
        assert not opened()


def _pages(widget: QWidget) -> Iterator[str]:
    """Each text of a widget that Qt would take for a page, with whose it is."""
    of_it = type(widget).__name__
    if (
        isinstance(widget, QLabel)
        and widget.textFormat() != Qt.TextFormat.PlainText
        and _MARKED in widget.text()
    ):
        yield f"{of_it}: {widget.text()}"
    if _MARKED in widget.toolTip():
        yield f"tool tip of {of_it}: {widget.toolTip()}"
    if isinstance(widget, QAbstractItemView):
        for tip in _tips(widget):
            if _MARKED in tip:
                yield f"tool tip in {of_it}: {tip}"


def _tips(view: QAbstractItemView) -> Iterator[str]:
    # None where a view has no model yet, whatever its types say
    model = cast("QAbstractTableModel | None", view.model())
    if model is None:
        return
    across = model.columnCount(QModelIndex()) if isinstance(model, QAbstractTableModel) else 1
    for row in range(model.rowCount()):
        for column in range(across):
            yield str(model.index(row, column).data(Qt.ItemDataRole.ToolTipRole) or "")


def test_no_question_shows_a_name_as_a_page(qapp: QApplication, monkeypatch: pytest.MonkeyPatch) -> None:
    formats = []

    def asked(box: QMessageBox) -> int:
        assert _MARKED in box.text()
        formats.append(box.textFormat())
        return 0

    monkeypatch.setattr(QMessageBox, "exec", asked)
    name, parent = f"{_MARKED}x>", QWidget()
    Asking().keep_changes(name)
    Asking().tell("Told", name)
    BookAsking(parent).tell("Told", name)
    ShapeQuestions().tell("Told", name, parent)
    ShapeQuestions().replace(name, parent)
    assert formats == [Qt.TextFormat.PlainText] * 5


# --- in what is handed on ------------------------------------------------------------------


@pytest.fixture
def hostile(bait: Path, tmp_path: Path) -> Path:
    path = tmp_path / "hostile.bodice"
    project = hostile_project(bait)
    write_project(set_client(project, name="</text><script>x</script>\n  0\nEOF", wish="]]>&x;"), path)
    return path


def test_a_vector_file_holds_drawing_and_words_and_nothing_else(hostile: Path, tmp_path: Path) -> None:
    out = tmp_path / "out.svg"
    assert cli.main(["export", str(hostile), "-o", str(out), "--layer", "all"]) == 0
    tree = ElementTree.fromstring(out.read_text("utf-8"))
    kinds = {element.tag.rpartition("}")[2] for element in tree.iter()}
    assert kinds <= {
        "svg",
        "g",
        "path",
        "polyline",
        "polygon",
        "line",
        "rect",
        "circle",
        "text",
        "title",
        "desc",
        "style",
    }
    names = {name for element in tree.iter() for name in element.attrib}
    assert not any("href" in name or name.startswith("on") for name in names)


@pytest.mark.parametrize("version", ["R12", "R2000"])
def test_no_name_ends_a_drawing_before_its_end(hostile: Path, tmp_path: Path, version: str) -> None:
    out = tmp_path / "out.dxf"
    assert cli.main(["export", str(hostile), "-o", str(out), "--dxf", version]) == 0
    text = out.read_text("cp1252")
    document = ezdxf.read(StringIO(text))  # type: ignore[attr-defined]  # its stubs do not say so
    assert not document.audit().errors
    assert len(re.findall(r"^EOF\s*$", text, re.M)) == 1


@pytest.mark.parametrize("what", ["sheets", "order", "card"])
def test_a_print_starts_nothing_and_leads_nowhere(hostile: Path, tmp_path: Path, what: str) -> None:
    out = tmp_path / "out.pdf"
    assert cli.main(["print", str(hostile), "-o", str(out), "--what", what]) == 0
    with pikepdf.open(BytesIO(out.read_bytes())) as document:
        keys = {str(key) for one in document.objects if isinstance(one, pikepdf.Dictionary) for key in one}
    assert not keys & {
        "/JS",
        "/JavaScript",
        "/Launch",
        "/URI",
        "/EmbeddedFiles",
        "/OpenAction",
        "/AA",
        "/Annots",
        "/F",
    }


# --- between files -----------------------------------------------------------------------


def test_an_index_cannot_name_what_is_not_in_the_folder(tmp_path: Path) -> None:
    book, outside = tmp_path / "book", tmp_path / "outside.bodice"
    book.mkdir()
    write_project(example(), book / "a.bodice")
    write_project(example(), outside)
    index = index_file(tmp_path / "cache", book)
    shelf = look_at(book, index)
    keep(shelf.with_read(list(read_waiting(shelf))), index)
    head, line = index.read_text("utf-8").split("\n")
    away = [json.dumps([place, *json.loads(line)[1:]]) for place in ("../outside.bodice", str(outside))]
    index.write_text("\n".join([head, *away, line]), encoding="utf-8")
    shelf = look_at(book, index)
    found = [entry.place for entry in shelf.entries] + [each.place for each in shelf.waiting]
    assert found == ["a.bodice"]
