"""The look: paper and ink, one accent for what wants attention, one colour for what is selected.

Colours have the names of their work, never of their hue. Painters call :func:`look` each
time they paint and keep nothing, so that light and dark can change under them.
"""

from __future__ import annotations

from functools import cache
from math import ceil
from typing import Literal

from PySide6.QtCore import QByteArray, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontDatabase, QGuiApplication, QIcon, QPainter, QPalette, QPixmap
from PySide6.QtSvg import QSvgRenderer

from workbench.frozen import dataclass
from workbench.resources import resource

Scheme = Literal["system", "light", "dark"]

GRID = 4
"""Every distance in the window is a multiple of this many pixels."""

_FACE = "Seam Sans"
"""The name our Noto Sans goes by: of two faces of one name Qt may take one that lacks signs."""


def _colour(text: str, alpha: int = 255) -> QColor:
    colour = QColor(text)
    colour.setAlpha(alpha)
    return colour


@dataclass(frozen=True)
class Fonts:
    """The type scale. All of them have digits of one width, so that columns of figures stand still."""

    small: QFont
    """12 px: figures on the canvas, notes under a field."""
    body: QFont
    """13 px: nearly everything."""
    strong: QFont
    """13 px, bold: names of levels and panels."""
    heading: QFont
    """14 px, bold: names of sections."""
    title: QFont
    """20 px, bold."""


@dataclass(frozen=True)
class Look:
    """Colours by role. Text keeps at least 4.5 to 1 against what it stands on, and marks 3 to 1."""

    dark: bool
    ground: QColor
    """Behind the form, the toolbar and dialogs."""
    paper: QColor
    """Behind the panels and the girth strip."""
    field: QColor
    """Behind what can be typed into."""
    panel: QColor
    """Inside a panel."""
    ink: QColor
    """Text and stitch lines."""
    soft_ink: QColor
    """Labels, units, what is estimated."""
    hairline: QColor
    """Grid and dividers: what may be overlooked."""
    level: QColor
    """Level lines other than the waist's."""
    rule: QColor
    """A line that must be seen: borders of fields, the cut line, ruler ticks."""
    attend: QColor
    """The accent: over a limit, short in the ledger, a refused field."""
    attend_fill: QColor
    """A tint of it, to lay behind text."""
    selected: QColor
    """What is lit up, has the focus, or is under the hand."""
    selected_fill: QColor
    """A tint of it, to lay behind text or inside a panel."""
    on_selected: QColor
    """Text on a ground of ``selected``."""
    ghost: QColor
    """The outline as it was before the drag."""
    intake: QColor
    """The shade of what is taken in between panels on the block."""
    bar_body: QColor
    """Girth strip: the body's girth, with a rule round it."""
    bar_finished: QColor
    """Girth strip: the finished girth."""
    bar_shut: QColor
    """Girth strip: laced shut."""
    breath: QColor
    """Girth strip: the breathing band."""
    beads: tuple[QColor, ...]
    """Kinds of bead, in the order of their marks; the shape of the mark tells them apart, too."""

    @property
    def limit(self) -> QColor:
        """Girth strip: the mark of a limit; its shape says whether it is near or passed."""
        return self.ink


_LIGHT = Look(
    dark=False,
    ground=_colour("#EFEADF"),
    paper=_colour("#F8F5EE"),
    field=_colour("#FFFDF8"),
    panel=_colour("#FFFEFB"),
    ink=_colour("#231E19"),
    soft_ink=_colour("#635A4F"),
    hairline=_colour("#D8D0C0"),
    level=_colour("#958B7A"),
    rule=_colour("#857A6A"),
    attend=_colour("#A8321D"),
    attend_fill=_colour("#F6E1D9"),
    selected=_colour("#1C6668"),
    selected_fill=_colour("#DCEBE7"),
    on_selected=_colour("#FFFFFF"),
    ghost=_colour("#8F8473"),
    intake=_colour("#8A6F45", 56),
    bar_body=_colour("#DED5C3"),
    bar_finished=_colour("#7E7464"),
    bar_shut=_colour("#2A241E"),
    breath=_colour("#1C6668", 64),
    beads=tuple(map(_colour, ("#8A6412", "#1F5FA8", "#8A2F7A", "#2C7547", "#A84A12", "#4A5568"))),
)

_DARK = Look(
    dark=True,
    ground=_colour("#24211D"),
    paper=_colour("#1B1916"),
    field=_colour("#302C27"),
    panel=_colour("#2A2722"),
    ink=_colour("#EEE7DB"),
    soft_ink=_colour("#B5AB9B"),
    hairline=_colour("#413B33"),
    level=_colour("#7A7164"),
    rule=_colour("#968C7D"),
    attend=_colour("#F39079"),
    attend_fill=_colour("#4A2A22"),
    selected=_colour("#6FC4BD"),
    selected_fill=_colour("#25413F"),
    on_selected=_colour("#10201F"),
    ghost=_colour("#7D7467"),
    intake=_colour("#D9B98A", 52),
    bar_body=_colour("#3C362E"),
    bar_finished=_colour("#8A7F6F"),
    bar_shut=_colour("#F4EEE4"),
    breath=_colour("#6FC4BD", 72),
    beads=tuple(map(_colour, ("#E3BE6A", "#86B6F2", "#E39AD4", "#86D1A0", "#F0A070", "#AEBACB"))),
)

_shown: Look = _LIGHT


def look() -> Look:
    """The look on show now."""
    return _shown


def show_look(scheme: Scheme) -> Look:
    """Light or dark, or as the system has it, put on show for every window.

    Returns the look; widgets hear of it as a change of palette.
    """
    global _shown
    dark = scheme == "dark" or (scheme == "system" and _system_is_dark())
    _shown = _DARK if dark else _LIGHT
    QGuiApplication.setPalette(_palette(_shown))
    return _shown


def _system_is_dark() -> bool:
    return QGuiApplication.styleHints().colorScheme() == Qt.ColorScheme.Dark


def _palette(shown: Look) -> QPalette:
    roles = QPalette.ColorRole
    palette = QPalette()
    for role, colour in {
        roles.Window: shown.ground,
        roles.WindowText: shown.ink,
        roles.Base: shown.field,
        roles.AlternateBase: shown.paper,
        roles.Text: shown.ink,
        roles.PlaceholderText: shown.soft_ink,
        roles.Button: shown.ground,
        roles.ButtonText: shown.ink,
        roles.ToolTipBase: shown.field,
        roles.ToolTipText: shown.ink,
        roles.Highlight: shown.selected,
        roles.HighlightedText: shown.on_selected,
        roles.Link: shown.selected,
        roles.Accent: shown.selected,
        roles.BrightText: shown.attend,
        roles.Mid: shown.rule,
        roles.Midlight: shown.hairline,
        roles.Light: shown.field,
        roles.Dark: shown.rule,
        roles.Shadow: shown.rule,
    }.items():
        palette.setColor(role, colour)
    for role in (roles.WindowText, roles.Text, roles.ButtonText):
        palette.setColor(QPalette.ColorGroup.Disabled, role, shown.rule)
    return palette


@cache
def fonts() -> Fonts:
    """The type scale in our own face, which has every fraction sign the program writes."""
    for face in ("NotoSans-Regular.ttf", "NotoSans-Bold.ttf"):
        QFontDatabase.addApplicationFont(str(resource(f"fonts/{face}")))
    return Fonts(_font(12), _font(13), _font(13, bold=True), _font(14, bold=True), _font(20, bold=True))


def _font(pixels: int, bold: bool = False) -> QFont:
    font = QFont(_FACE)
    font.setPixelSize(pixels)
    font.setBold(bold)
    font.setFeature(QFont.Tag("tnum"), 1)
    return font


def icon(name: str, size: int = 20) -> QIcon:
    """The drawing ``resources/icons/<name>.svg`` in the ink of the look on show, soft where disabled."""
    made = QIcon()
    ratios = {ceil(screen.devicePixelRatio()) for screen in QGuiApplication.screens()}
    for mode, colour in ((QIcon.Mode.Normal, look().ink), (QIcon.Mode.Disabled, look().rule)):
        for ratio in sorted(ratios):
            made.addPixmap(_drawn(name, size, ratio, colour.name()), mode)
    return made


@cache
def _drawn(name: str, size: int, ratio: int, colour: str) -> QPixmap:
    drawing = resource(f"icons/{name}.svg").read_text(encoding="utf-8").replace("currentColor", colour)
    pixmap = QPixmap(QSize(size, size) * ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    QSvgRenderer(QByteArray(drawing.encode())).render(painter, QRectF(0, 0, size * ratio, size * ratio))
    painter.end()
    pixmap.setDevicePixelRatio(ratio)
    return pixmap
