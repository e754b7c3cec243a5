"""Grab the pictures of the help from the program: ``python resources/help/make_pictures.py``.

Each is a part of the real window with a demo on it, light, reduced to few colours so that all
of them together stay small. Run it again when the window has changed.
"""

from __future__ import annotations

import os
import shutil
import sys
import tempfile
from collections.abc import Callable, Mapping
from itertools import pairwise
from pathlib import Path

from PIL import Image
from PySide6.QtCore import QEventLoop, QPoint, QPointF, QRect, QTimer
from PySide6.QtGui import QColor, QImage, QPainter, QPainterPath, QPen, QPixmap
from PySide6.QtWidgets import QApplication, QWidget

from workbench.document import Session, read_project
from workbench.draft import Place
from workbench.ui.asking import Asking
from workbench.ui.desk import Desk
from workbench.ui.files import Files
from workbench.ui.settings import PLACE, Settings
from workbench.ui.style import dress

_FOLDER = Path(__file__).resolve().parent / "pictures"
_ROOT = _FOLDER.parent.parent.parent
_COLOURS = 64
_SIZE = (1200, 700)
_DEMO = _ROOT / "demo_projects" / "concert_soloist.bodice"
_BEADED = _ROOT / "demo_projects" / "bride_first_wear.bodice"


def settle(milliseconds: int = 150) -> None:
    """Let the window paint, and what it works out beside it come in."""
    loop = QEventLoop()
    QTimer.singleShot(milliseconds, loop.quit)
    loop.exec()


class Stage:
    """What the pictures are taken of."""

    def __init__(self, folder: Path) -> None:
        from workbench.ui.window import Window

        self.folder = folder
        self.settings = Settings(folder / "window.ini")
        self.settings.guided = False
        self.window = Window(self.settings)
        self.window.resize(*_SIZE)
        self.window.show()
        self.put(_DEMO)

    @property
    def desk(self) -> Desk:
        """The desk of the window."""
        return self.window.desk

    def put(self, demo: Path) -> None:
        """A demo on the desk, in the draft."""
        self.window.files.put(read_project(demo), None)
        settle()

    def at_place(self, name: str) -> QPixmap:
        """A place, without the menus and tools above it."""
        self.window.turning.show_place(name)  # type: ignore[arg-type]  # from the table below
        settle(1500)
        return self.window.pages.grab()

    def alone(self, widget: QWidget, width: int, height: int) -> QPixmap:
        """A pane or dialog by itself."""
        widget.resize(width, height)
        widget.show()
        settle(400)
        picture = widget.grab()
        widget.close()
        return picture


def draft(stage: Stage) -> QPixmap:
    """The whole window."""
    stage.window.turning.show_place("draft")
    stage.window.board.fit()
    settle()
    return stage.window.grab()


def taking(stage: Stage) -> QPixmap:
    """The form, with a field in hand."""
    stage.window.turning.show_place("draft")
    stage.desk.select(Place(field="measurements.underbust_girth"))
    settle()
    stage.window.form.show_taking("underbust_girth")
    settle()
    return stage.window.form.grab()


def shapes(stage: Stage) -> QPixmap:
    """The chooser."""
    from workbench.ui.styles import StyleChooser

    return stage.alone(StyleChooser(stage.desk, None), 1100, 680)


def strip(stage: Stage) -> QPixmap:
    """The girth strip and the panels beside it."""
    stage.window.turning.show_place("draft")
    stage.desk.select(None)
    settle()
    board = stage.window.board
    wide = board.width()
    return board.grab(QRect(wide // 2, 60, wide - wide // 2, board.height() - 90))


def comfort(stage: Stage) -> QPixmap:
    """The comfort pane."""
    from workbench.ui.comfort_pane import ComfortPane

    deeds = stage.window.deeds
    return stage.alone(ComfortPane(stage.desk, deeds["take_most"], deeds["comfort"]), 400, 640)


def ledger(stage: Stage) -> QPixmap:
    """The ledger."""
    from workbench.ui.form import LedgerTable

    return stage.alone(LedgerTable(stage.desk), 900, 330)


def lines(stage: Stage) -> QPixmap:
    """A point of the neckline, picked."""
    stage.window.turning.show_place("draft")
    stage.desk.select(Place(line="neckline", point=1))
    settle()
    canvas = stage.window.board.canvas
    picture = canvas.grab(QRect(QPoint(0, canvas.height() // 4), QPoint(canvas.width(), canvas.height())))
    stage.desk.select(None)
    return picture


def printing(stage: Stage) -> QPixmap:
    """The print dialog."""
    from workbench.ui.print_dialog import PrintDialog

    return stage.alone(PrintDialog(stage.desk, _files(stage), Asking()), 960, 600)


def export(stage: Stage) -> QPixmap:
    """The export dialog."""
    from workbench.ui.export_dialog import ExportDialog

    return stage.alone(ExportDialog(stage.desk, _files(stage), Asking()), 1000, 600)


def book(stage: Stage) -> QPixmap:
    """The client book, on a folder of the demos."""
    from workbench.ui.book import BookPane

    clients = stage.folder / "clients"
    shutil.copytree(_DEMO.parent, clients)
    stage.settings.book = clients
    pane = BookPane(stage.desk, stage.settings, None, stage.folder)
    pane.resize(1000, 600)
    pane.show()
    settle(600)
    pane.where.setText("Clients")
    return pane.grab()


def wish(stage: Stage) -> QPixmap:
    """Pictures of the wish, with one that is drawn here."""
    from workbench.document import add_wish, read_wish
    from workbench.ui.wish import WishPane

    path = stage.folder / "wish.png"
    _sketch().save(str(path))
    desk = Desk(Session(add_wish(stage.desk.project, read_wish(path))))
    return stage.alone(WishPane(desk), 440, 640)


def _sketch() -> QImage:
    """A bodice as with a soft pencil."""
    image = QImage(420, 520, QImage.Format.Format_RGB32)
    image.fill(QColor("#FBF7EF"))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(QColor("#544A40"), 3))
    edge = [(0, 118), (50, 78), (118, 84), (150, 165), (114, 300), (160, 415), (80, 440), (0, 470)]
    seam = [(80, 78), (92, 165), (72, 300), (96, 436)]
    for side in (-1, 1):
        for line in (edge, seam):
            painter.drawPath(_smooth([QPointF(210 + side * x, y) for x, y in line]))
    painter.end()
    return image


def fittings(stage: Stage) -> QPixmap:
    """The fittings, with one of a few lines that are made up here."""
    from workbench.document import add_fitting, add_pinned, set_fitting, set_gap, set_pinned

    project = set_fitting(add_fitting(stage.desk.project, "2031-06-03"), 0, cloth="calico")
    for where, inches in (("top", 2.75), ("waist", 2.0), ("hem", 2.0)):
        project = set_gap(project, 0, where, 25.4 * inches)
    project = add_pinned(add_pinned(project, 0, "seam"), 0, "neckline")
    project = set_pinned(project, 0, 0, amount_mm=-9.525)
    project = set_pinned(project, 0, 1, amount_mm=-12.7)
    stage.desk.apply("A fitting", project)
    stage.desk.now()
    return stage.at_place("fittings")


def worn(stage: Stage) -> QPixmap:
    """The bodice on a torso."""
    from workbench.ui.worn import WornPane

    return stage.alone(WornPane(stage.desk), 460, 640)


def _smooth(points: list[QPointF]) -> QPainterPath:
    """A path that is rounded at each of its points."""
    path = QPainterPath(points[0])
    for one, other in pairwise(points[1:]):
        path.quadTo(one, (one + other) / 2)
    path.lineTo(points[-1])
    return path


def _files(stage: Stage) -> Files:
    return stage.window.files


_TAKEN: Mapping[str, Callable[[Stage], QPixmap]] = {
    "draft": draft,
    "taking": taking,
    "shapes": shapes,
    "strip": strip,
    "comfort": comfort,
    "ledger": ledger,
    "worn": worn,
    "lines": lines,
    "pieces": lambda stage: stage.at_place("pieces"),
    "cloth": lambda stage: stage.at_place("cloth"),
    "quote": lambda stage: stage.at_place("quote"),
    "marking": lambda stage: stage.at_place("marking"),
    "sewing": lambda stage: stage.at_place("sewing"),
    "printing": printing,
    "export": export,
    "book": book,
    "wish": wish,
    "beads": lambda stage: stage.at_place("beads"),
    "fittings": fittings,
}
_OF_THE_BRIDE = ("beads", "fittings")
"""Beads and a fitting are in that demo."""


def keep(picture: QPixmap, name: str) -> int:
    """Write a picture in few colours; its size in bytes."""
    path = _FOLDER / f"{name}.png"
    picture.save(str(path))
    with Image.open(path) as image:
        few = image.convert("RGB").quantize(_COLOURS, dither=Image.Dither.NONE)
    few.save(path, optimize=True)
    return path.stat().st_size


def main(wanted: list[str]) -> int:
    """Take all pictures, or those named; 0."""
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    application = QApplication([])
    with tempfile.TemporaryDirectory() as folder:
        os.environ[PLACE] = str(Path(folder) / "window.ini")
        dress("light")
        stage = Stage(Path(folder))
        for name, take in _TAKEN.items():
            if wanted and name not in wanted:
                continue
            if name in _OF_THE_BRIDE:
                stage.put(_BEADED)
            print(f"{name}: {keep(take(stage), name) / 1000:.0f} kB")
        stage.window.turning.rest()
        stage.window.desk.session.mark_saved(Path(folder) / "nowhere.bodice")
        stage.window.close()
    del application
    return 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
