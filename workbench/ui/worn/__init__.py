"""The bodice as worn: a pane beside the panels."""

from workbench.ui.worn.pane import WornPane
from workbench.ui.worn.profile import GirthProfile

__all__ = ["GirthProfile", "WornPane"]
