"""The cloth place: how the pieces lie on each cloth, and how much of it to buy."""

from workbench.ui.cloth.place import ClothPlace

__all__ = ["ClothPlace"]
