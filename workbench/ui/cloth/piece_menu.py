"""The menu of a piece on the cloth."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtWidgets import QMenu, QWidget

from workbench.ui.cloth.spread import LaidCopy


class Surroundings(Protocol):
    """What the menu needs of the cloth."""

    def turn(self) -> None:
        """Turn the picked piece."""

    def toggle_pin(self) -> None:
        """Pin the picked piece, or free it."""

    def fit(self) -> None:
        """Show all of the cloth."""


class PieceMenu(QMenu):
    """Turn, pin, and whatever the place adds for the whole cloth."""

    def __init__(self, cloth: Surroundings) -> None:
        super().__init__(cloth if isinstance(cloth, QWidget) else None)
        self.turn = self.addAction("Turn it\tR")
        self.pin = self.addAction("Pin it\tP")
        self.addSeparator()
        self.anew = self.addAction("Lay the rest anew, round what is pinned")
        self.fit = self.addAction("Fit the cloth to the window\t0")
        self.turn.triggered.connect(cloth.turn)
        self.pin.triggered.connect(cloth.toggle_pin)
        self.fit.triggered.connect(cloth.fit)

    def show_piece(self, piece: LaidCopy | None, by_hand: bool) -> None:
        """What can be done with it."""
        for action in (self.turn, self.pin):
            action.setEnabled(piece is not None and by_hand)
        pinned = piece is not None and piece.placed.pinned
        self.pin.setText("Free it\tP" if pinned else "Pin it\tP")
