"""What keeps a body from being drafted."""

from __future__ import annotations

from collections.abc import Mapping

from workbench.body.units import Fraction, Unit, say_with_unit


class BodyError(ValueError):
    """Measurements that cannot be drafted.

    ``key`` is the measurement at fault; ``sentence`` holds ``{name}`` for each of
    ``lengths`` (mm), so that it reads in any unit.
    """

    def __init__(self, key: str, sentence: str, lengths: Mapping[str, float] | None = None) -> None:
        super().__init__(key, sentence, lengths)
        self.key = key
        self.sentence = sentence
        self.lengths: dict[str, float] = dict(lengths or {})

    def text(self, unit: Unit, fraction: Fraction = 8) -> str:
        """The sentence with its lengths in the user's unit."""
        said = {name: say_with_unit(mm, unit, fraction) for name, mm in self.lengths.items()}
        return self.sentence.format(**said)

    def __str__(self) -> str:
        return self.text("in")
