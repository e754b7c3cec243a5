"""One step of the sewing order, and the sentences it is made of."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from workbench.body import Fraction, Unit, say_at_most, say_with_unit

KEY = "sewing."
"""How the keys of these steps begin among all that is ticked off in a project."""


@dataclass(frozen=True)
class Say:
    """A sentence with its lengths kept apart, so that it reads in any unit."""

    sentence: str
    """With ``{name}`` for each of ``lengths``, which are in mm."""
    lengths: Mapping[str, float] = field(default_factory=dict)
    at_most: tuple[str, ...] = ()
    """Those that are cut to fit into something: rounded up, they would not."""

    def text(self, unit: Unit, fraction: Fraction = 8) -> str:
        """The sentence, lengths in the user's unit."""
        said = {
            name: (say_at_most if name in self.at_most else say_with_unit)(mm, unit, fraction)
            for name, mm in self.lengths.items()
        }
        return self.sentence.format(**said)


@dataclass(frozen=True)
class Step:
    """One thing to do, small enough to be done in one go and ticked off."""

    key: str
    """Steady from draft to draft, such as ``sewing.seam.3``."""
    stage: str
    """The part of the work it belongs to, as the hours of a quote name it."""
    title: str
    says: tuple[Say, ...]
    """What to do, in the order of the hand."""
    minutes: float
    """Common practice, no source; the hours of the quote are the sums of these."""
    watch: tuple[Say, ...] = ()
    """What goes wrong here."""


def step(key: str, stage: str, title: str, minutes: float, *says: Say | str, watch: str = "") -> Step:
    """A step; a plain text is a sentence without lengths."""
    sentences = tuple(Say(say) if isinstance(say, str) else say for say in says)
    return Step(KEY + key, stage, title, sentences, minutes, (Say(watch),) if watch else ())
