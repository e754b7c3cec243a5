"""The pieces place: every layer, cut and marked, and what goes into it."""

from workbench.ui.pieces.place import PiecesPlace

__all__ = ["PiecesPlace"]
