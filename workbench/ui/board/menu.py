"""The menu of the canvas: what can be done with what lies under the hand."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import QPoint, QPointF
from PySide6.QtWidgets import QMenu, QWidget

from workbench.document import share_evenly, style_line_again
from workbench.draft import LineName, Place
from workbench.ui.board.figures import Figure, figure_at
from workbench.ui.board.hand import Hand
from workbench.ui.board.handles import Handle, handle_at
from workbench.ui.board.keys import remove, toggle
from workbench.ui.board.near import edge_at
from workbench.ui.board.scene import Scene
from workbench.ui.board.view import Sight
from workbench.ui.desk import Desk

_CORNER, _SMOOTH = "Make it a corner", "Make it smooth"
_REMOVE, _ADD = "Remove this point", "Add a point here"
_AGAIN = {"neckline": "Neckline of the style again", "hem": "Hem of the style again"}
_TYPE, _UNPIN, _EVEN = "Type an amount…", "Unpin", "Share this level by weight again"
_FIT = "Fit in the window"


class Owner(Protocol):
    """What the menu needs of the canvas."""

    @property
    def scene(self) -> Scene | None:
        """What is on the canvas."""

    @property
    def sight(self) -> Sight:
        """The view."""

    @property
    def hand(self) -> Hand:
        """The mouse."""

    def open_figure(self, figure: Figure) -> None:
        """Type a figure."""

    def unpin(self, figure: Figure) -> None:
        """Let a seam share again."""

    def fit(self) -> None:
        """Show all of it."""


class BoardMenu:
    """Makes the menu afresh each time it is opened, for one target."""

    def __init__(self, canvas: Owner, desk: Desk, parent: QWidget) -> None:
        self._canvas = canvas
        self._desk = desk
        self._parent = parent
        self._pixel = QPointF()
        self._handle: Handle | None = None
        self._figure: Figure | None = None
        self._line: LineName | None = None

    def open_at(self, pixel: QPointF, on_screen: QPoint) -> None:
        """Show the menu for a pixel of the canvas."""
        menu = self.menu_for(pixel)
        menu.popup(on_screen)

    def menu_for(self, pixel: QPointF) -> QMenu:
        """The menu that belongs to a pixel of the canvas; it is deleted when it closes."""
        self._find(pixel)
        menu = QMenu(self._parent)
        menu.aboutToHide.connect(menu.deleteLater)
        if self._handle is not None:
            smooth = self._handle.point.smooth
            menu.addAction(_CORNER if smooth else _SMOOTH).triggered.connect(self._on_toggle)
            remove_it = menu.addAction(_REMOVE)
            remove_it.setEnabled(not self._handle.end)
            remove_it.triggered.connect(self._on_remove)
        elif self._figure is not None:
            menu.addAction(_TYPE).triggered.connect(self._on_type)
            unpin = menu.addAction(_UNPIN)
            unpin.setEnabled(self._figure.pinned)
            unpin.triggered.connect(self._on_unpin)
            menu.addAction(_EVEN).triggered.connect(self._on_even)
        elif self._line is not None:
            menu.addAction(_ADD).triggered.connect(self._on_add)
        if self._line is not None:
            again = menu.addAction(_AGAIN[self._line])
            again.setEnabled(self._own(self._line))
            again.triggered.connect(self._on_again)
        menu.addSeparator()
        menu.addAction(_FIT).triggered.connect(self._canvas.fit)
        return menu

    def _find(self, pixel: QPointF) -> None:
        scene, view = self._canvas.scene, self._canvas.sight.view
        scene = scene if scene is not None and scene.editable else None
        self._pixel = pixel
        self._handle = handle_at(scene.handles, view, pixel) if scene else None
        self._figure = figure_at(scene.figures, view, pixel) if scene and self._handle is None else None
        edge = edge_at(scene, view, pixel) if scene and self._handle is None else None
        self._line = self._handle.key.line if self._handle else edge[0] if edge else None
        if self._handle is not None:
            self._desk.select(Place(line=self._handle.key.line, point=self._handle.key.number))

    def _own(self, line: LineName) -> bool:
        design = self._desk.project.design
        return (design.neckline if line == "neckline" else design.hem) is not None

    def _on_toggle(self) -> None:
        if self._handle is not None:
            toggle(self._desk, self._canvas.scene, self._handle.key)

    def _on_remove(self) -> None:
        if self._handle is not None:
            remove(self._desk, self._canvas.scene, self._handle.key)

    def _on_type(self) -> None:
        if self._figure is not None:
            self._canvas.open_figure(self._figure)

    def _on_unpin(self) -> None:
        if self._figure is not None:
            self._canvas.unpin(self._figure)

    def _on_even(self) -> None:
        if self._figure is not None:
            figure = self._figure
            changed = share_evenly(self._desk.project, figure.quarter, figure.key.level)
            self._desk.apply("Share intake by weight", changed)

    def _on_add(self) -> None:
        self._canvas.hand.add_point_at(self._pixel)

    def _on_again(self) -> None:
        if self._line is not None:
            self._desk.apply(f"{_AGAIN[self._line]}", style_line_again(self._desk.project, self._line))
