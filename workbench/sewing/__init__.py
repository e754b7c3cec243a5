"""The sewing order: a cutting in, the steps of the work out, with this garment's own numbers."""

from workbench.sewing.order import chapters, minutes_by_stage, sewing_order
from workbench.sewing.step import KEY, Say, Step
from workbench.sewing.words import time_words

__all__ = ["KEY", "Say", "Step", "chapters", "minutes_by_stage", "sewing_order", "time_words"]
