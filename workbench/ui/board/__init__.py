"""The board: panels and girths on level lines that run through both."""

from workbench.ui.board.board import Board

__all__ = ["Board"]
