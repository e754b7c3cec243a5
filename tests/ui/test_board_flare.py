"""How sharply seams flare, drawn on the panels."""

from __future__ import annotations

import numpy as np
import pytest
from pytestqt.qtbot import QtBot

from tests.ui.conftest import on_screen
from workbench.ui.board import Board
from workbench.ui.board.paint_flare import flare_of
from workbench.ui.desk import Desk


def test_the_flare_is_the_lean_of_the_edge(desk: Desk) -> None:
    draft = desk.picture.good.draft if desk.picture.good else None
    assert draft is not None
    seam = draft.seams[0]
    middles = 0.5 * (seam.walks[1:] + seam.walks[:-1])
    _, _, lean = draft.surface.edges.at(np.full(len(middles), 2 * seam.index - 1), middles)
    assert flare_of(seam.left.right) == pytest.approx(np.abs(lean), abs=2e-3)


def test_switching_it_on_changes_the_drawing_and_switching_it_off_brings_it_back(
    qtbot: QtBot, desk: Desk
) -> None:
    board = on_screen(qtbot, Board(desk), 1280, 640)
    desk.now()
    before = board.canvas.grab().toImage()
    board.set_flare_shown(True)
    shown = board.canvas.grab().toImage()
    board.set_flare_shown(False)
    assert shown != before
    assert board.canvas.grab().toImage() == before
