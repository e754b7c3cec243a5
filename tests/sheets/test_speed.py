"""How long a print takes, in process time, so that a busy machine does not matter."""

from __future__ import annotations

import subprocess
import sys
import time

import pytest

from tests.sheets.conftest import EVERY_LAYER, cut_job, job
from workbench.pieces import LAYERS, LayerName, Making
from workbench.sheets import PrintChoice, print_pdf, sheet_map

GOAL_S = 0.400
"""An A4 print of eight over-bust panels, first page and all."""
PIECES_GOAL_S = 0.700
"""The same with pieces, and every sheet for the cutting table."""


@pytest.mark.bench
def test_an_a4_print_takes_no_more_than_twice_its_goal(capsys: pytest.CaptureFixture[str]) -> None:
    gown = job("over_bust", 4, 4, 50.8)
    start = time.process_time()
    print_pdf(gown.outcome, gown.comfort, gown.heading, PrintChoice())
    took = time.process_time() - start
    start = time.process_time()
    sheet_map(gown.outcome, PrintChoice())
    map_took = time.process_time() - start
    with capsys.disabled():
        print(
            f"\nA4 print {1000 * took:.0f} ms (goal {1000 * GOAL_S:.0f}), sheet map {1000 * map_took:.0f} ms"
        )
    assert took <= 2 * GOAL_S


@pytest.mark.bench
@pytest.mark.parametrize("layers", [("fashion",), LAYERS])
def test_all_pieces_and_their_sheets_take_no_more_than_twice_their_goal(
    layers: tuple[LayerName, ...], capsys: pytest.CaptureFixture[str]
) -> None:
    cut = cut_job(job("over_bust", 4, 4, 50.8), Making(layers=EVERY_LAYER))
    start = time.process_time()
    print_pdf(cut.job.outcome, cut.job.comfort, cut.job.heading, PrintChoice(layers=layers), cut.cutting)
    took = time.process_time() - start
    with capsys.disabled():
        print(f"\nprint of {len(layers)} layers {1000 * took:.0f} ms (goal {1000 * PIECES_GOAL_S:.0f})")
    assert took <= 2 * PIECES_GOAL_S


def test_the_pdf_writer_is_not_loaded_until_something_is_printed() -> None:
    script = "import sys, workbench.sheets; print('reportlab' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"
