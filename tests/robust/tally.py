"""What was tried and what fell, told in one table at the end of a run."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field


@dataclass
class Row:
    """One line of the table."""

    what: str
    tried: int = 0
    fell: list[str] = field(default_factory=list)
    """A line for each that fell."""
    seen: Counter[str] = field(default_factory=Counter)
    """How often each outcome came about."""
    figures: dict[str, str] = field(default_factory=dict)

    def note(self, outcome: str) -> None:
        """One more was tried, with this outcome."""
        self.tried += 1
        self.seen[outcome] += 1

    def fall(self, line: str) -> None:
        """One more was tried, and fell."""
        self.tried += 1
        self.fell.append(line)

    def check(self) -> None:
        """AssertionError with the first of what fell; also where nothing was tried at all."""
        assert self.tried, f"{self.what}: nothing was tried"
        assert not self.fell, f"{len(self.fell)} of {self.tried} fell:\n" + "\n".join(self.fell[:8])


ROWS: list[Row] = []


def row(what: str) -> Row:
    """A new line of the table."""
    made = Row(what)
    ROWS.append(made)
    return made


def table(rows: list[Row]) -> str:
    """The lines as text."""
    head = f"{'':46} {'tried':>7} {'fell':>5}  outcomes"
    return "\n".join([head, *map(_line, rows)])


def _line(one: Row) -> str:
    said = [f"{count} {outcome}" for outcome, count in one.seen.most_common()]
    said += [f"{name} {figure}" for name, figure in one.figures.items()]
    return f"{one.what[:46]:46} {one.tried:>7} {len(one.fell):>5}  {', '.join(said)}"
