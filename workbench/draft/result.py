"""What a draft gives back: frozen values that every pane, sheet and report reads."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from functools import cached_property
from typing import Literal, NamedTuple

import numpy as np

from workbench.body import Body, Fraction, LevelName, Unit, say_at_most, say_closely, say_exact
from workbench.draft.design import Design, QuarterName, ShapePoint
from workbench.draft.measure import Array, Corners, corner_angles, length_along, slopes_along
from workbench.draft.surface import Surface
from workbench.frozen import dataclass

LineName = Literal["neckline", "hem"]
Severity = Literal["stop", "over", "near", "attend", "note"]
"""``stop``: no draft. ``over``, ``near``: a limit she set. ``attend``: look at it. ``note``: good to know."""


@dataclass(frozen=True)
class Place:
    """Where a finding points: a field, level, seam (1 is next to the centre front), panel or line's point."""

    field: str | None = None
    level: LevelName | None = None
    seam: int | None = None
    panel: int | None = None
    line: LineName | None = None
    point: int | None = None


@dataclass(frozen=True)
class Finding:
    """One sentence about the draft, with its numbers kept apart so that it reads in any unit."""

    severity: Severity
    code: str
    sentence: str
    """With ``{name}`` for each of ``lengths`` and ``words``."""
    lengths: Mapping[str, float] = field(default_factory=dict)
    words: Mapping[str, str] = field(default_factory=dict)
    place: Place = Place()
    remedy: str = ""
    value_mm: float | None = None
    limit_mm: float | None = None
    at_most: tuple[str, ...] = ()
    """Those of ``lengths`` that are limits: rounded up, they would name a figure that passes them."""

    def text(self, unit: Unit, fraction: Fraction = 8) -> str:
        """The sentence and what to do about it, lengths in the user's unit."""
        said = {
            name: (say_at_most if name in self.at_most else say_closely)(mm, unit, fraction)
            for name, mm in self.lengths.items()
        }
        if self.severity == "over" and said.get("reduction", "") == said.get("most"):
            # above the limit by less than the ruler shows
            said |= {name: f"{say_exact(self.lengths[name], unit)} {unit}" for name in ("reduction", "most")}
        filled = self.sentence.format(**said, **self.words)
        return f"{filled} {self.remedy.format(**said, **self.words)}".strip()


@dataclass(frozen=True)
class Level:
    """One line round the body, with its girths in millimetres."""

    name: LevelName
    walk: float
    body: float
    finished: float
    fabric: float
    reckoned: float
    """The girth the reduction is taken from, what fittings took in already taken off.

    It is the body's, or the smaller of two under the one-figure rule.
    """
    fitted: float = 0.0
    """What fittings took in here, round the body; less than nothing was let out."""

    @property
    def reduction(self) -> float:
        """Millimetres round the body, against the body's own girth here."""
        return self.body - self.finished

    @property
    def percent(self) -> float:
        """The reduction as a part of the body girth, in hundredths."""
        return 100.0 * self.reduction / self.body


class Taking(NamedTuple):
    """What one seam takes in at one level, in one quarter."""

    seam: int
    left: float
    right: float
    pinned: bool
    fitted: float = 0.0
    """What fittings took in, of that; less than nothing was let out."""

    @property
    def total(self) -> float:
        """Left and right together; at the side seam only the quarter's own side counts."""
        return self.left + self.right


@dataclass(frozen=True)
class LedgerLine:
    """The intake of one quarter at one level: what is needed, what is placed, and where."""

    quarter: QuarterName
    level: LevelName
    needed: float
    takings: tuple[Taking, ...]

    @property
    def placed(self) -> float:
        """Sum of the takings in millimetres."""
        return sum(taking.total for taking in self.takings)

    @property
    def gap(self) -> float:
        """Placed less needed: negative is short, positive is over."""
        return self.placed - self.needed

    @property
    def closes(self) -> bool:
        """Whether the sum is right, to a thousandth of a millimetre."""
        return abs(self.gap) <= 0.001


@dataclass(frozen=True)
class Panel:
    """One panel on the flat, stitch lines only. x runs to the centre back, y up from the waist line."""

    index: int
    name: str
    quarter: QuarterName
    left: Array
    """(m, 2) from hem to neckline."""
    right: Array
    """(m, 2) from hem to neckline, at the same walks as the panel beyond the seam."""
    neckline: Array
    """(k, 2) from left to right."""
    hem: Array
    """(k, 2) from left to right."""
    level_lines: Mapping[LevelName, Array]
    """(j, 2) from left to right, for each level that crosses the panel."""
    widths: Mapping[LevelName, float]
    """Straight distance between the edges at every level of the draft, also beyond neckline and hem."""

    @cached_property
    def corner_angles(self) -> Corners:
        """Degrees inside the panel as drawn: hem left, hem right, neckline right, neckline left."""
        return corner_angles(self.left, self.right, self.hem, self.neckline)

    @property
    def outline(self) -> Array:
        """(n, 2) closed ring, anticlockwise, the first point not repeated."""
        return np.concatenate((self.hem[:-1], self.right[:-1], self.neckline[:0:-1], self.left[:0:-1]))


@dataclass(frozen=True)
class SeamLine:
    """Where two panels are sewn. ``index`` k lies between panel k - 1 and panel k; angles in degrees.

    Its sides are measured on the points as drawn when that is asked for: no edit needs it.
    """

    index: int
    name: str
    left: Panel
    right: Panel
    walks: Array
    """(m,) at which both its sides are drawn, from hem to neckline."""
    levels: tuple[Level, ...]
    hem_smooth: bool
    neckline_smooth: bool

    @property
    def left_panel(self) -> str:
        """Name of the panel to its left."""
        return self.left.name

    @property
    def right_panel(self) -> str:
        """Name of the panel to its right."""
        return self.right.name

    @property
    def hem_walk(self) -> float:
        """Where the hem crosses it, mm from the waist."""
        return self.walks.item(0)

    @property
    def neckline_walk(self) -> float:
        """Where the neckline crosses it."""
        return self.walks.item(-1)

    @cached_property
    def left_length(self) -> float:
        """mm along the side of the panel to its left."""
        return length_along(self.left.right)

    @cached_property
    def right_length(self) -> float:
        """mm along the side of the panel to its right."""
        return length_along(self.right.left)

    @property
    def hem_angle_sum(self) -> float:
        """The two corners at the hem together; 180 where it runs on over the closed seam."""
        return self.left.corner_angles[1] + self.right.corner_angles[0]

    @property
    def neckline_angle_sum(self) -> float:
        """The two corners at the neckline together."""
        return self.left.corner_angles[2] + self.right.corner_angles[3]

    @property
    def steepest(self) -> float:
        """Largest run per walk of either side, absolute."""
        return self._steepest[0]

    @property
    def steepest_between(self) -> tuple[LevelName, LevelName]:
        """The two levels between which that is, or the two nearest ones."""
        _, walk = self._steepest
        above = next((i for i, level in enumerate(self.levels) if level.walk > walk), len(self.levels) - 1)
        above = max(above, 1)
        return self.levels[above - 1].name, self.levels[above].name

    @cached_property
    def _steepest(self) -> tuple[float, float]:
        """The largest run per walk, and the walk at which it begins."""
        sides = (slopes_along(side, self.walks) for side in (self.left.right, self.right.left))
        slopes = max(sides, key=np.max)
        at = int(slopes.argmax())
        return slopes.item(at), self.walks.item(at)


@dataclass(frozen=True)
class EdgeLine:
    """The neckline or the hem as drafted."""

    name: LineName
    points: tuple[ShapePoint, ...]
    """Its shape points, her own or the style's, where fittings left them."""
    seam_walks: tuple[float, ...]
    """Walk at the centre front, at each seam, and at the centre back."""
    own: bool
    """Whether she drew it, as opposed to the style's line that follows the body."""
    designed: tuple[ShapePoint, ...]
    """The same points as they are designed, before any fitting."""


@dataclass(frozen=True)
class Draft:
    """The half bodice, centre front to centre back, and how it was arrived at."""

    panels: tuple[Panel, ...]
    seams: tuple[SeamLine, ...]
    neckline: EdgeLine
    hem: EdgeLine
    tape_girth: Mapping[LevelName, float]
    surface: Surface

    def line(self, name: LineName) -> EdgeLine:
        """The neckline or the hem."""
        return self.neckline if name == "neckline" else self.hem


@dataclass(frozen=True)
class Outcome:
    """All that follows from one body and one design; ``draft`` is None when a finding stops it."""

    body: Body
    design: Design
    levels: tuple[Level, ...]
    blocks: Mapping[QuarterName, float]
    ledger: tuple[LedgerLine, ...]
    draft: Draft | None
    findings: tuple[Finding, ...]
    designed: tuple[Level, ...] = ()
    """The levels before any fitting, where a fitting changed something."""

    def level(self, name: LevelName) -> Level:
        """The level of that name; KeyError where this style has none."""
        for level in self.levels:
            if level.name == name:
                return level
        raise KeyError(name)

    def line(self, quarter: QuarterName, level: LevelName) -> LedgerLine:
        """One line of the ledger; KeyError where there is none."""
        for line in self.ledger:
            if (line.quarter, line.level) == (quarter, level):
                return line
        raise KeyError((quarter, level))
