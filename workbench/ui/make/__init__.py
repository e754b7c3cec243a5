"""The place where the bodice is made: what to do next, and what is done."""

from workbench.ui.make.place import MakePlace

__all__ = ["MakePlace"]
