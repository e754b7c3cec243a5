"""The sewing place: what to do next, and what is done."""

from workbench.ui.sewing.place import SewingPlace

__all__ = ["SewingPlace"]
