"""The look: what can be read, told apart without colour, and stands still in columns."""

from __future__ import annotations

import sys
from dataclasses import fields

import pytest
from PySide6.QtCore import QObject, QRectF
from PySide6.QtGui import QColor, QFontMetricsF, QImage, QPainter, QRawFont
from PySide6.QtWidgets import QDialogButtonBox, QStyle
from pytestqt.qtbot import QtBot

from workbench.body import say_length
from workbench.ui import look as looks
from workbench.ui.actions import DEEDS
from workbench.ui.look import fonts, icon, look, show_look
from workbench.ui.marks import WORDS, Mark, draw_mark
from workbench.ui.style import style_sheet

LOOKS = (looks._LIGHT, looks._DARK)


def luminance(colour: QColor) -> float:
    """Relative luminance as W3C's WCAG 2.1 defines it (from memory)."""

    def linear(part: float) -> float:
        return part / 12.92 if part <= 0.03928 else ((part + 0.055) / 1.055) ** 2.4

    red, green, blue = (linear(part) for part in (colour.redF(), colour.greenF(), colour.blueF()))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: QColor, other: QColor) -> float:
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("shown", LOOKS, ids=["light", "dark"])
@pytest.mark.parametrize("text", ["ink", "soft_ink", "attend", "selected"])
@pytest.mark.parametrize("ground", ["ground", "paper", "field", "panel", "selected_fill", "attend_fill"])
def test_text_can_be_read_on_every_ground(shown: looks.Look, text: str, ground: str) -> None:
    # WCAG 2.1, success criterion 1.4.3: at least 4.5 to 1.
    assert contrast(getattr(shown, text), getattr(shown, ground)) >= 4.5


@pytest.mark.parametrize("shown", LOOKS, ids=["light", "dark"])
def test_what_must_be_seen_stands_out_from_the_ground(shown: looks.Look) -> None:
    # WCAG 2.1, success criterion 1.4.11: borders of controls at least 3 to 1.
    assert min(contrast(shown.rule, ground) for ground in (shown.paper, shown.field, shown.ground)) >= 3.0


def test_digits_are_of_one_width(dressed: None) -> None:
    for field in fields(fonts()):
        metrics = QFontMetricsF(getattr(fonts(), field.name))
        assert len({metrics.horizontalAdvance(digit) for digit in "0123456789"}) == 1


def test_the_face_has_every_sign_a_length_is_written_with(dressed: None) -> None:
    lengths = [say_length(25.4 * part / 16, "in", 16) + say_length(-part, "cm") for part in range(32)]
    said = {sign for length in lengths for sign in length} | set("½¼¾⅛⅜⅝⅞−×·…“”’%")
    for font in (fonts().body, fonts().small, fonts().strong):
        raw = QRawFont.fromFont(font)
        assert raw.familyName() == "Seam Sans"
        missing = [sign for sign in said - {" "} if not raw.supportsCharacter(ord(sign))]
        assert missing == []


def drawn(mark: Mark) -> bytes:
    """The mark in black on white: its shape and nothing else."""
    image = QImage(32, 32, QImage.Format.Format_Grayscale8)
    image.fill(QColor("white"))
    painter = QPainter(image)
    draw_mark(painter, QRectF(0, 0, 32, 32), mark, QColor("white"))
    painter.end()
    ink = [image.pixelColor(x, y).lightness() < 200 for y in range(32) for x in range(32)]
    return bytes(ink)


def test_the_buttons_of_a_dialog_carry_words_and_no_stock_drawings(qtbot: QtBot, dressed: None) -> None:
    drawings = QStyle.StyleHint.SH_DialogButtonBox_ButtonsHaveIcons
    for sheet, wanted in (("", 1), (style_sheet(look()), 0)):
        box = QDialogButtonBox()
        qtbot.addWidget(box)
        box.setStyleSheet(f"QDialogButtonBox {{ dialogbuttonbox-buttons-have-icons: 1; }} {sheet}")
        box.ensurePolished()
        assert box.style().styleHint(drawings, None, box) == wanted


def test_marks_differ_by_shape_and_by_word(dressed: None) -> None:
    shapes = {mark: drawn(mark) for mark in WORDS}
    assert len(set(WORDS.values())) == len(WORDS)
    for one in WORDS:
        for other in WORDS:
            apart = sum(a != b for a, b in zip(shapes[one], shapes[other], strict=True))
            assert one == other or apart > 60, (one, other)


def test_every_icon_is_drawn_in_the_ink_on_show(dressed: None) -> None:
    for scheme in ("light", "dark"):
        show_look(scheme)
        for name in {deed.drawing for deed in DEEDS if deed.drawing} | {"new", "under_bust", "over_bust"}:
            image = icon(name, 96).pixmap(96, 96).toImage()
            solid = [
                image.pixelColor(x, y)
                for y in range(image.height())
                for x in range(image.width())
                if image.pixelColor(x, y).alpha() > 240
            ]
            assert solid, name
            assert all(abs(colour.red() - look().ink.red()) < 12 for colour in solid), name


def test_the_style_sheet_leaves_no_role_open() -> None:
    assert all("%" not in style_sheet(shown) for shown in LOOKS)


@pytest.mark.skipif(sys.version_info >= (3, 12), reason="None is never counted from Python 3.12 on")
def test_calls_that_return_nothing_keep_the_count_of_nothing(dressed: None) -> None:
    """PySide6 6.12.0 lost a reference at each, until the interpreter gave up."""
    something = QObject()
    before = sys.getrefcount(None)
    for _ in range(20_000):
        something.blockSignals(False)
        something.setObjectName("x")
    assert before - sys.getrefcount(None) < 1_000
