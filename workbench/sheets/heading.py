"""What the first page says about the client and the figures that were given for her."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.body import Fraction, Unit


@dataclass(frozen=True)
class Heading:
    """The words of a print that do not follow from the draft."""

    client: str = ""
    style: str = ""
    date: str = ""
    wish: str = ""
    """What she must be able to do in it."""
    measured_by: str = ""
    invented: bool = False
    """Whether client and figures are made up for demonstration; every sheet then says so."""
    unit: Unit = "in"
    fraction: Fraction = 8
    measurements: tuple[tuple[str, str, bool], ...] = ()
    """Label, figure with its unit, and whether it was estimated rather than taken."""
    limits: tuple[tuple[str, str], ...] = ()
    """Label and figure of each limit that was set for this client."""
