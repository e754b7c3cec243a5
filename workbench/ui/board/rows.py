"""The ledger on its lines: each level with what is needed and what is placed, per quarter."""

from __future__ import annotations

from workbench.body import LEVEL_LABEL, LevelName
from workbench.draft import LedgerLine, Outcome
from workbench.frozen import dataclass
from workbench.ui.board.figures import Say


@dataclass(frozen=True)
class QuarterRow:
    """One quarter at one level, in words."""

    label: str
    needed: str
    placed: str
    open_words: str
    """``short ⅛`` or ``over ¼``; empty where the sum closes."""


@dataclass(frozen=True)
class LevelRow:
    """One level line: its name, its height, and the rows of its quarters (one where they are alike)."""

    level: LevelName
    name: str
    walk: float
    quarters: tuple[QuarterRow, ...]

    @property
    def closes(self) -> bool:
        """Whether every quarter places what it needs."""
        return not any(row.open_words for row in self.quarters)


def rows_of(outcome: Outcome, say: Say) -> tuple[LevelRow, ...]:
    """One row a level, bottom to top."""
    return tuple(
        LevelRow(level.name, LEVEL_LABEL[level.name], level.walk, _quarters(outcome, level.name, say))
        for level in outcome.levels
    )


def _quarters(outcome: Outcome, level: LevelName, say: Say) -> tuple[QuarterRow, ...]:
    front, back = outcome.line("front", level), outcome.line("back", level)
    if front.closes and back.closes and say(front.needed) == say(back.needed):
        return (_row("", front, say),)
    return (_row("front", front, say), _row("back", back, say))


def _row(label: str, line: LedgerLine, say: Say) -> QuarterRow:
    return QuarterRow(
        label, say(line.needed), say(line.placed), "" if line.closes else gap_words(line.gap, say)
    )


def gap_words(gap: float, say: Say) -> str:
    """``short ⅛``, ``over ¼``: a gap too small for the figures shown is still said to be there."""
    amount = say(abs(gap))
    word = "over" if gap > 0 else "short"
    return f"{word} a little" if amount == "0" else f"{word} {amount}"
