"""The beads place: where pearls and beads lie, and how many to buy."""

from workbench.ui.beads.place import BeadsPlace

__all__ = ["BeadsPlace"]
