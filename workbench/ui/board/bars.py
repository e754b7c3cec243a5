"""The girth strip in figures: one bar a level, on an axis that shows a difference of an eighth."""

from __future__ import annotations

from math import ceil, floor

from workbench.body import LEVEL_LABEL, LevelName, Limits
from workbench.document import Picture
from workbench.draft import Outcome, Status, breath
from workbench.frozen import dataclass

_MARGIN = 25.4
"""mm of girth left free at either end of the axis."""
_WHOLE = 25.4
"""The axis begins and ends at whole inches, so that it stands still while a figure changes."""


@dataclass(frozen=True)
class Bar:
    """The girths of one level, mm round the body."""

    level: LevelName
    name: str
    walk: float
    body: float
    finished: float
    shut: float
    reckoned: float
    """What the reduction is taken from: finished = reckoned - reduction."""
    limit: float | None
    """The smallest finished girth that keeps the limit here; None where she set none."""
    status: Status
    shut_status: Status
    breath: tuple[float, float] | None
    """Girths at full exhale and full inhale, at the ribs."""
    sets: LevelName
    """The level whose reduction a drag sets: waist and ribs share one under the one-figure rule."""

    @property
    def reduction(self) -> float:
        """mm against the body's own girth; negative is ease."""
        return self.body - self.finished

    @property
    def percent(self) -> float:
        """The reduction in hundredths of the body girth."""
        return 100.0 * self.reduction / self.body


@dataclass(frozen=True)
class Axis:
    """Girths to pixels. It does not begin at nothing, or no eighth could be seen: it is drawn torn off."""

    low: float
    high: float
    left: float
    width: float

    @property
    def scale(self) -> float:
        """Pixels a millimetre of girth."""
        return self.width / (self.high - self.low)

    def x(self, girth: float) -> float:
        """The pixel of a girth."""
        return self.left + (girth - self.low) * self.scale

    def girth(self, x: float) -> float:
        """The girth at a pixel."""
        return self.low + (x - self.left) / self.scale


def bars_of(picture: Picture) -> tuple[Bar, ...]:
    """The bars of the project as it stands, or of the last good draft while there is none; bottom to top."""
    outcome = picture.outcome or picture.good
    if outcome is None:
        return ()
    return tuple(_bar(number, picture, outcome) for number in range(len(outcome.levels)))


def _bar(number: int, picture: Picture, outcome: Outcome) -> Bar:
    level = outcome.levels[number]
    judged = None
    if picture.comfort is not None and outcome is picture.outcome:
        judged = picture.comfort.at(level.name)
    shares = outcome.design.rule == "one_figure" and level.name == "underbust"
    return Bar(
        level=level.name,
        name=LEVEL_LABEL[level.name],
        walk=level.walk,
        body=level.body,
        finished=level.finished,
        shut=level.fabric,
        reckoned=level.reckoned,
        limit=level.body - judged.most if judged is not None and judged.most is not None else None,
        status=judged.status if judged else "within",
        shut_status=judged.shut_status if judged else "within",
        breath=_breath(outcome, picture.project.limits) if level.name == "underbust" else None,
        sets="waist" if shares else level.name,
    )


def _breath(outcome: Outcome, limits: Limits) -> tuple[float, float]:
    out, full, _ = breath(outcome.body, limits)
    return out, full


def extent_of(bars: tuple[Bar, ...]) -> tuple[float, float]:
    """Smallest and largest girth that the axis must show, in whole inches with a margin."""
    girths = [girth for bar in bars for girth in _girths(bar)]
    low, high = min(girths) - _MARGIN, max(girths) + 0.5 * _MARGIN
    return floor(low / _WHOLE) * _WHOLE, ceil(high / _WHOLE) * _WHOLE


def _girths(bar: Bar) -> tuple[float, ...]:
    limit = () if bar.limit is None else (bar.limit,)
    return (bar.body, bar.finished, bar.shut, *limit, *(bar.breath or ()))
