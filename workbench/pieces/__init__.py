"""From stitch lines to what lies on the cutting table."""

from workbench.pieces.allowance import cut_outlines

__all__ = ["cut_outlines"]
