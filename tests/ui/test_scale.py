"""How large everything is: as the system's font has it, and never too large for the screen."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest
from PySide6.QtCore import QSize

from workbench.ui.scale import scale_for

POINT = 96 / 72
"""Pixels of one point on a screen of 96 dots an inch, as CSS has it (from memory)."""
LARGE = QSize(3840, 2160)


@pytest.mark.parametrize(("points", "scale"), [(9, 1.0), (10, 1.11), (12, 1.33), (16, 1.78), (18, 2.0)])
def test_everything_grows_with_the_font_of_the_system(points: float, scale: float) -> None:
    assert scale_for(points * POINT, LARGE) == pytest.approx(scale)


@pytest.mark.parametrize("points", [6, 9, 9.5])
def test_a_font_hardly_larger_or_smaller_changes_nothing(points: float) -> None:
    assert scale_for(points * POINT, LARGE) == 1.0


def test_the_window_still_fits_on_a_small_screen() -> None:
    assert scale_for(16 * POINT, QSize(1280, 720)) == pytest.approx(1.2)
    assert scale_for(16 * POINT, QSize(960, 600)) == 1.0


_TOLD = """
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QApplication, QWidget
from workbench.ui import scale

class Larger(QApplication):
    def font(self):
        return QFont("Sans", 16)

    def primaryScreen(self):
        return type("Screen", (), {"logicalDotsPerInchY": lambda _: 96.0,
                                   "availableSize": lambda _: scale.QSize(3840, 2160)})()

scale.QApplication = Larger
application = scale.made_application(["program"])
widget = QWidget()
print(widget.devicePixelRatioF(), "QT_SCALE_FACTOR" in __import__("os").environ)
"""


def test_the_application_is_made_again_at_that_size() -> None:
    asked = {key: value for key, value in os.environ.items() if not key.startswith("QT_SCALE")}
    done = subprocess.run(
        [sys.executable, "-c", _TOLD], capture_output=True, text=True, env=asked, check=True
    )
    assert done.stdout.split() == ["1.78", "False"]
