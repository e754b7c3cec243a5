"""The quote place: what a bodice costs her, and what she asks for it."""

from workbench.ui.quote.place import QuotePlace

__all__ = ["QuotePlace"]
