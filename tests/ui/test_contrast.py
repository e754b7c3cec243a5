"""Contrast as W3C's WCAG 2.1 reckons it: every role of the look on every ground that it is used on.

The formula and its limits are those of the published recommendation (relative luminance; success criteria
1.4.3 for text, 1.4.11 for what has to be seen to understand a picture or find a control), from memory.
"""

from __future__ import annotations

from dataclasses import fields

import pytest
from PySide6.QtGui import QColor

from tests.ui.test_shell_look import LOOKS, contrast
from workbench.ui.look import Look

GROUNDS = ("ground", "paper", "field", "panel", "selected_fill", "attend_fill")
TEXT = {
    "ink": GROUNDS,
    "soft_ink": GROUNDS,
    "attend": GROUNDS,
    "selected": GROUNDS,
    "on_selected": ("selected",),
}
"""Roles that words are written in, and what they stand on."""
MARKS = {
    "rule": GROUNDS,
    "level": ("paper", "panel"),
    "ghost": ("paper", "panel", "field"),
    "bar_finished": ("paper", "bar_body"),
    "bar_shut": ("paper", "bar_body", "bar_finished"),
    "ink": ("paper", "panel", "bar_body"),
}
"""Roles of lines and areas that carry a meaning."""
QUIET = {
    "hairline": "grid and dividers only: a picture says the same without them",
    "bar_body": "has a rule round it",
    "intake": "the stitch lines on either side bound it",
    "breath": "has a foot of the colour of what is selected at either end",
}
"""Roles that may be faint, and why."""


@pytest.fixture(params=LOOKS, ids=["light", "dark"])
def shown(request: pytest.FixtureRequest) -> Look:
    shown: Look = request.param
    return shown


def faint(shown: Look, roles: dict[str, tuple[str, ...]], least: float) -> list[str]:
    return [
        f"{role} on {ground}: {found:.2f}"
        for role, grounds in roles.items()
        for ground in grounds
        if (found := contrast(getattr(shown, role), getattr(shown, ground))) < least
    ]


def test_the_formula_gives_what_the_recommendation_says() -> None:
    # black on white is 21 to 1 by definition; #767676 on white is the grey commonly given as the
    # lightest that passes, at 4.54 to 1 (from memory of W3C's examples)
    assert contrast(QColor("black"), QColor("white")) == pytest.approx(21.0)
    assert contrast(QColor("#767676"), QColor("white")) == pytest.approx(4.54, abs=0.01)


def test_text_is_at_least_four_and_a_half_to_one(shown: Look) -> None:
    assert faint(shown, TEXT, 4.5) == []


def test_marks_are_at_least_three_to_one(shown: Look) -> None:
    assert faint(shown, MARKS, 3.0) == []


def test_every_kind_of_bead_stands_out_from_the_panel(shown: Look) -> None:
    assert min(contrast(bead, shown.panel) for bead in shown.beads) >= 3.0


def test_every_role_is_judged() -> None:
    colours = {field.name for field in fields(Look)} - {"dark", "beads"} - set(GROUNDS)
    assert colours == (set(TEXT) | set(MARKS) | set(QUIET)) - set(GROUNDS)
