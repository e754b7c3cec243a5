"""How long each kind of work takes; every workroom has its own. Figures are common practice, no source."""

from __future__ import annotations

MEASURING = 60
FITTING = 60
MOCK_UP_PER_PIECE = 15
"""Cutting and sewing a piece of the shell once in cheap cloth, and carrying the changes back."""
CUTTING, CUTTING_PER_PIECE = 30, 3
INTERFACING_PER_PIECE, BASTING_PER_PIECE = 5, 4
SEAM_PER_METRE = 20
"""Pinned, sewn, trimmed and pressed."""
CHANNEL_PER_METRE = 8
PER_BONE = 5
"""Cut, capped and put in."""
PER_LOOP, PER_EYELET = 2, 3
CORD, BUSK, ZIP, TAPE, MODESTY = 10, 60, 45, 20, 30
EDGE_PER_METRE = 60
"""Neckline and hem, half of it by hand."""
PRESSING = 30


def by_length(minutes_per_metre: float, mm: float) -> float:
    """Minutes for so many mm."""
    return minutes_per_metre * mm / 1000.0
