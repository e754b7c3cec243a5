"""Keys and gestures as a page of the help; those of the menus come from the actions themselves."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from html import escape

from PySide6.QtGui import QKeySequence

from workbench.ui.actions import DEEDS

_GESTURES: tuple[tuple[str, tuple[tuple[str, str], ...]], ...] = (
    (
        "Anywhere",
        (
            ("Tab, Shift+Tab", "go on to the next field, button or drawing, or back"),
            ("Arrow keys", "go from one to the next of a few buttons that belong together"),
            ("Alt and an underlined letter", "open a menu; in it the letter alone"),
            ("Enter or Space", "press the button that has the keys"),
        ),
    ),
    (
        "In a field",
        (
            ("Enter, or leave the field", "hand in what is typed"),
            ("Escape", "put back what was there"),
            ("Up, Down", "one step more or less"),
        ),
    ),
    (
        "On any drawing",
        (
            ("Wheel", "larger or smaller at the pointer"),
            ("Space or middle button, and drag", "move the drawing"),
            ("+, −, 0", "larger, smaller, fit to the window"),
        ),
    ),
    (
        "On the draft",
        (
            ("Click an intake figure", "type another; Enter pins it, Delete unpins it"),
            ("I, Shift+I", "pick the next intake figure, the one before"),
            ("Drag the end of a bar at the right", "draw that level in, or let it out"),
            (
                "Up and Down, Left and Right on the bars",
                "choose a level, draw it in or let it out by one step",
            ),
            ("H, Shift+H", "pick the next point of neckline and hem, the one before"),
            ("Drag a point", "it snaps to the step of the ruler; hold Alt to move it freely"),
            ("Arrow keys, with Shift", "move the picked point by one step, by four"),
            ("Double click on the line", "add a point"),
            ("T, Delete", "smooth or corner; remove the point"),
            ("Escape while dragging", "leave it as it was"),
        ),
    ),
    (
        "Among the pieces",
        (
            ("Page Up, Page Down", "the layer before, the next one"),
            ("Left and Right, Up and Down", "from piece to piece, from edge to edge"),
            ("Click an allowance, or Enter", "type one for this edge alone; Delete takes its kind’s again"),
        ),
    ),
    (
        "On the cloth",
        (
            ("Page Up, Page Down", "pick the piece before, the next one"),
            ("Arrow keys, with Shift", "nudge the picked piece by one mark of the ruler, by eight"),
            ("R, P", "turn the picked piece; pin it or free it"),
        ),
    ),
    (
        "On the map of beads",
        (
            ("Left, Right", "the panel before, the next one"),
            ("N, P", "pick the next point of the drawn line, the one before"),
            ("Arrow keys", "move the picked point by one mark of the ruler"),
            ("C, Delete", "corner or smooth; take the point out"),
        ),
    ),
    (
        "In the help",
        (
            ("Ctrl+F", "the search"),
            ("Alt+Left, Alt+Right", "the page before, and back again"),
            ("Escape", "empty the search; once more closes the help"),
        ),
    ),
)


@cache
def keys_html() -> str:
    """Keys of the menus as they are set on this system, then what keys and pointer do on each drawing."""
    parts = [_key_table("In the menus", tuple(_menu_keys()))]
    parts += [_key_table(heading, rows) for heading, rows in _GESTURES]
    return "".join(parts)


def _menu_keys() -> Iterator[tuple[str, str]]:
    for deed in DEEDS:
        if deed.keys is not None:
            keys = QKeySequence(deed.keys).toString(QKeySequence.SequenceFormat.NativeText)
            yield keys, deed.text.replace("&", "").removesuffix("…")


def _key_table(heading: str, rows: tuple[tuple[str, str], ...]) -> str:
    cells = "".join(
        f'<tr><td width="220"><b>{escape(keys)}</b></td><td>{escape(meaning)}</td></tr>'
        for keys, meaning in rows
    )
    return f'<h3>{escape(heading)}</h3><table cellspacing="0" cellpadding="4">{cells}</table>'
