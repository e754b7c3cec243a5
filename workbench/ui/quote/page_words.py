"""Everything that stands on the client's page: the words, and the design ready to be drawn."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from PySide6.QtGui import QPolygonF

from workbench.body import CAUTIONS
from workbench.cloth import ClientLine, say_money
from workbench.document import STYLE_WORDS, Project
from workbench.draft import Outcome
from workbench.pieces import Cutting
from workbench.sheets import View, quote_views
from workbench.ui.board.polygons import polygon
from workbench.ui.quote.bench import Reckoned


@dataclass(frozen=True)
class DrawnView:
    """One side of the garment, ready to be drawn; mm, y up from the waist."""

    name: str
    bounds: tuple[float, float, float, float]
    fills: tuple[QPolygonF, ...]
    strokes: tuple[tuple[str, QPolygonF], ...]


@dataclass(frozen=True)
class Garment:
    """The design seen from both sides, and what it was drawn from."""

    outcome: Outcome
    cutting: Cutting | None
    project: Project
    """Whose torso and unit it was drawn with."""
    views: tuple[DrawnView, ...]

    def is_of(self, outcome: Outcome, cutting: Cutting | None, project: Project) -> bool:
        """Whether it would be drawn the same again."""
        own, other = ((each.torso, each.unit, each.fraction) for each in (self.project, project))
        return self.outcome is outcome and self.cutting is cutting and own == other


def _garment(
    outcome: Outcome, cutting: Cutting | None, project: Project, before: PageWords | None
) -> Garment:
    old = before.garment if before is not None else None
    if old is not None and old.is_of(outcome, cutting, project):
        return old
    views = quote_views(outcome, cutting, project.torso, project.unit, project.fraction)
    return Garment(outcome, cutting, project, tuple(_drawn(view) for view in views))


def _drawn(view: View) -> DrawnView:
    return DrawnView(
        view.name,
        view.bounds(),
        tuple(polygon(ring) for ring in view.fills),
        tuple((stroke.role, polygon(np.asarray(stroke.points, dtype=float))) for stroke in view.strokes),
    )


@dataclass(frozen=True)
class PageWords:
    """Everything that stands on the page."""

    client: str
    about: str
    invented: bool
    lines: tuple[ClientLine, ...]
    say: Callable[[ClientLine], str]
    """An amount in words."""
    complete: bool
    garment: Garment

    @property
    def spoken(self) -> str:
        """All of it, for a screen reader."""
        lines = (f"{line.name} {line.words} {self.say(line)}".strip() for line in self.lines)
        said = (self.client, self.about, *lines, *CAUTIONS)
        return ". ".join(part for part in said if part)

    def of(self, kind: str) -> list[ClientLine]:
        """The lines of one kind."""
        return [line for line in self.lines if line.kind == kind]


def words_of(reckoned: Reckoned, before: PageWords | None = None) -> PageWords | None:
    """The page of a quote; None while there is none. ``before`` lends its drawing of the same design."""
    quote, picture = reckoned.quote, reckoned.picture
    if quote is None or picture.outcome is None:
        return None
    client, currency = picture.project.client, quote.currency

    def say(line: ClientLine) -> str:
        return "" if line.amount is None else say_money(line.amount, currency)

    about = [part for part in ("Quote", STYLE_WORDS[picture.project.design.style], client.date) if part]
    return PageWords(
        client.name or "No client named",
        " · ".join(about),
        client.invented,
        quote.client,
        say,
        quote.complete,
        _garment(picture.outcome, reckoned.cutting, picture.project, before),
    )
