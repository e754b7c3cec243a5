"""What can stand beside the panels while they are drafted, one pane at a time."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QStackedWidget, QWidget

from workbench.ui.actions import SIDES, SideName

if TYPE_CHECKING:
    from workbench.ui.window import Window

_WIDE = 1480
"""Pixels from which form, side and drawing have room beside each other."""


def _comfort(window: Window) -> QWidget:
    from workbench.ui.comfort_pane import ComfortPane

    return ComfortPane(window.desk, window.deeds["take_most"], window.deeds["comfort"])


def _wish(window: Window) -> QWidget:
    from workbench.ui.wish import WishPane

    return WishPane(window.desk)


def _worn(window: Window) -> QWidget:
    from workbench.ui.worn import WornPane

    pane = WornPane(window.desk, window.deeds["worn"])
    pane.save_wanted.connect(window.deeds["print_silhouette"].trigger)
    return pane


_MAKERS: Mapping[SideName, Callable[[Window], QWidget]] = {"comfort": _comfort, "worn": _worn, "wish": _wish}
"""Each is read and made when it is first wanted: the first picture need not wait for it."""


class Sides(QObject):
    """Shows the pane whose action is checked; the form gives way to it where there is no room for both."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self._window = window
        self._made: dict[SideName, QWidget] = {}
        self.stack = QStackedWidget()
        self.stack.hide()
        for name in SIDES:
            window.deeds[name].toggled.connect(self.show_side)

    @property
    def wanted(self) -> SideName | None:
        """The pane whose action is checked."""
        return next((name for name in SIDES if self._window.deeds[name].isChecked()), None)

    def pane(self, name: SideName) -> QWidget:
        """One of the panes, made if need be."""
        if name not in self._made:
            self._made[name] = _MAKERS[name](self._window)
            self.stack.addWidget(self._made[name])
        return self._made[name]

    def show_side(self) -> None:
        """Show the pane that is wanted, and the form where there is room."""
        name, window = self.wanted, self._window
        if name is not None:
            self.stack.setCurrentWidget(self.pane(name))
        self.stack.setVisible(name is not None)
        window.form.setVisible(name is None or self.has_room)

    @property
    def has_room(self) -> bool:
        """Whether the form has room beside a pane."""
        return self._window.width() >= _WIDE

    def put_away(self) -> None:
        """Show none of them."""
        for name in SIDES:
            self._window.deeds[name].setChecked(False)
