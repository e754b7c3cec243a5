"""The fittings place: what was pinned, what the opening says, and what both did to the draft."""

from workbench.ui.fitting.place import FittingPlace

__all__ = ["FittingPlace"]
