"""The bodice on the body: every place of its panels as a row of the stand and a share of the girth.

At each walk the panels are as wide as they were drafted, one beside the other from the centre
front, and what the opening leaves stands at the centre back; together that is the finished girth.
Under it the body takes the girth of the garment, and its own again beyond it. Figures are own
choice, what is shown and how finely.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from workbench.body import LEVELS, LevelName
from workbench.draft import Draft, LineName, Outcome
from workbench.worn.places import places_of
from workbench.worn.sections import ROW_OF
from workbench.worn.stand import Stand, stand_of
from workbench.worn.torso import Array, Torso

SEAM_POINTS = 21
_EVERY = 4
"""Of the points of neckline and hem as drawn on the flat."""
_BONE_POINTS = 13
_GOES_BACK_MM = 90.0
"""On so much of the walk beyond the garment the body comes back to its own girth (no source)."""


@dataclass(frozen=True, eq=False, repr=False)
class Track:
    """A line on one half of the garment: rows of the stand, and shares of the girth from the centre front."""

    row: Array
    """(n,)"""
    share: Array
    """(n,) 0 at the centre front, half at the centre back."""


@dataclass(frozen=True)
class Inside:
    """What is sewn in: bones as u and t (n, 2) each, and the walks of the eyelets."""

    bones: tuple[Array, ...] = ()
    eyelets: tuple[float, ...] = ()


NOTHING_INSIDE = Inside()
_BOTH: tuple[LineName, LineName] = ("hem", "neckline")


@dataclass(frozen=True, eq=False, repr=False)
class Worn:
    """One bodice on one body, ready to be looked at from any side."""

    outcome: Outcome
    stand: Stand
    girths: Array
    """(rows,) of the body as it is worn, mm."""
    bounds: Array
    """(rows, panels + 1): where each panel begins and the last one ends, as shares of the girth."""
    outlines: tuple[Track, ...]
    """The ring of each panel."""
    seams: tuple[Track, ...]
    """Centre front, every seam, centre back; from hem to neckline."""
    lines: Mapping[LineName, Track]
    bones: tuple[Track, ...] = ()
    lacing: tuple[Track, ...] = ()
    """Strands over the opening; shares go past the half there."""
    levels: Mapping[LevelName, float] = field(default_factory=dict)
    """The row of every level of the body."""

    def place_at(self, row: float, share: float) -> tuple[float, float]:
        """u and t of a share of the girth (of either half) at a row: the map of the panels undone."""
        low = min(max(int(row), 0), len(self.bounds) - 2)
        part = row - low
        bounds = (1 - part) * self.bounds[low] + part * self.bounds[low + 1]
        u = float(np.interp(abs(share), bounds, np.arange(len(bounds))))
        return u, float(np.interp(row, np.arange(len(self.stand.walks)), self.stand.walks))

    def panel_at(self, u: float, t: float) -> int | None:
        """The panel that covers a place on the body; None above the neckline and below the hem."""
        here = self.track(np.array([u]), np.array([t]))
        row, share = float(here.row[0]), float(here.share[0])
        low, high = (float(np.interp(share, self.lines[name].share, self.lines[name].row)) for name in _BOTH)
        inside = low <= row <= high and share < self.bounds[int(row), -1]
        return min(int(u), self.bounds.shape[1] - 2) if inside else None

    def track(self, u: Array, t: Array) -> Track:
        """Places on the body as rows and shares."""
        row = self.stand.row_at(t)
        low = np.minimum(row.astype(np.intp), len(self.bounds) - 2)
        seam = np.minimum(u.astype(np.intp), self.bounds.shape[1] - 2)
        down, along = row - low, u - seam
        low_share = self._share(low, seam, along)
        return Track(row, low_share + down * (self._share(low + 1, seam, along) - low_share))

    def _share(self, row: NDArray[np.intp], seam: NDArray[np.intp], along: Array) -> Array:
        start = self.bounds[row, seam]
        share: Array = start + along * (self.bounds[row, seam + 1] - start)
        return share


def worn_of(outcome: Outcome, torso: Torso, inside: Inside = NOTHING_INSIDE) -> Worn | None:
    """The bodice of an outcome on its body; None without a draft."""
    draft = outcome.draft
    if draft is None:
        return None
    low, high = min(draft.hem.seam_walks), max(draft.neckline.seam_walks)
    u, t, parts = _line_places(draft)
    low, high = min(low, float(t.min())), max(high, float(t.max()))
    stand = stand_of(outcome, torso, low)
    bounds, finished = _bounds(draft, outcome.design.opening_mm, np.clip(stand.walks, low, high))
    worn = Worn(outcome, stand, _girths(stand, finished, low, high), bounds, (), (), {})
    return _with_tracks(worn, draft, (u, t, parts), inside)


def inside_of(
    outcome: Outcome, bones: tuple[tuple[int, Array], ...], eyelets: tuple[float, ...] = ()
) -> Inside:
    """What is sewn in, from the panel and the flat line (n, 2) of each bone."""
    draft = outcome.draft
    if draft is None or not bones:
        return Inside((), eyelets)
    bones = tuple((number, line[_along(len(line))]) for number, line in bones)
    panel = np.concatenate([np.full(len(line), number, dtype=np.intp) for number, line in bones])
    u, t = places_of(draft.surface, panel, np.concatenate([line for _, line in bones]))
    places = np.stack((u, t), axis=1)
    ends = np.cumsum([len(line) for _, line in bones])[:-1]
    return Inside(tuple(np.split(places, ends)), eyelets)


def _along(count: int) -> NDArray[np.intp]:
    """As many of the points of a bone as its curve needs on a picture, both ends among them."""
    return np.linspace(0, count - 1, min(count, _BONE_POINTS)).astype(np.intp)


Lines = tuple[Array, Array, list[slice]]


def _line_places(draft: Draft) -> Lines:
    """u and t of hem and neckline of every panel, and which part belongs to which: hems first."""
    flat = [line for panel in draft.panels for line in (_thinned(panel.hem),)]
    flat += [_thinned(panel.neckline) for panel in draft.panels]
    counts = [len(line) for line in flat]
    panels = np.repeat(np.tile(np.arange(len(draft.panels), dtype=np.intp), 2), counts)
    u, t = places_of(draft.surface, panels, np.concatenate(flat))
    ends = np.cumsum(counts).tolist()
    parts = [slice(end - count, end) for end, count in zip(ends, counts, strict=True)]
    return u, t, parts


def _thinned(line: Array) -> Array:
    """Every fourth point of a line, and its last."""
    return np.concatenate((line[:-1:_EVERY], line[-1:]))


def _bounds(draft: Draft, opening: float, walks: Array) -> tuple[Array, Array]:
    """Shares (rows, panels + 1) at which panels begin and end, and the finished girth (rows,) in mm."""
    chords = draft.surface.chords(walks)
    placed = np.zeros((len(walks), len(chords) + 1))
    np.cumsum(chords.T, axis=1, out=placed[:, 1:])
    finished = 2 * placed[:, -1] + opening
    return placed / finished[:, None], finished


def _girths(stand: Stand, finished: Array, low: float, high: float) -> Array:
    """The finished girth where the garment is, passing over to the body's own beyond it."""
    beyond = np.maximum(np.maximum(low - stand.walks, stand.walks - high), 0.0)
    part = np.maximum(1.0 - beyond / _GOES_BACK_MM, 0.0)
    part = part * part * (3 - 2 * part)
    girths: Array = stand.girths + part * (finished - stand.girths)
    return girths


def _with_tracks(worn: Worn, draft: Draft, lines: Lines, inside: Inside) -> Worn:
    """All lines of the garment as tracks, asked for in one go."""
    u, t, parts = lines
    count = len(draft.panels)
    ends = np.stack((draft.hem.seam_walks, draft.neckline.seam_walks))
    rise = np.linspace(0.0, 1.0, SEAM_POINTS)[:, None]
    seam_t = ends[0] + rise * (ends[1] - ends[0])
    seam_u = np.broadcast_to(np.arange(count + 1.0), seam_t.shape)
    bones = inside.bones
    whole = worn.track(
        np.concatenate((u, seam_u.T.ravel(), *(bone[:, 0] for bone in bones))),
        np.concatenate((t, seam_t.T.ravel(), *(bone[:, 1] for bone in bones))),
    )
    hems, necklines = _cut(whole, parts[:count]), _cut(whole, parts[count:])
    at = len(u)
    seams = _cut(whole, [slice(at + k * SEAM_POINTS, at + (k + 1) * SEAM_POINTS) for k in range(count + 1)])
    at += seam_t.size
    sewn_in = []
    for bone in bones:
        sewn_in.append(_part(whole, slice(at, at + len(bone))))
        at += len(bone)
    return Worn(
        worn.outcome,
        worn.stand,
        worn.girths,
        worn.bounds,
        tuple(_ring(hems[k], seams[k + 1], necklines[k], seams[k]) for k in range(count)),
        tuple(seams),
        {"hem": _joined(hems), "neckline": _joined(necklines)},
        tuple(sewn_in),
        _lacing(worn, inside.eyelets),
        {level: float(ROW_OF[level]) for level in LEVELS},
    )


def _part(track: Track, part: slice) -> Track:
    return Track(track.row[part], track.share[part])


def _cut(track: Track, parts: list[slice]) -> list[Track]:
    return [_part(track, part) for part in parts]


def _joined(tracks: list[Track]) -> Track:
    return Track(
        np.concatenate([each.row for each in tracks]), np.concatenate([each.share for each in tracks])
    )


def _ring(hem: Track, right: Track, neckline: Track, left: Track) -> Track:
    """Round a panel: along the hem, up, back along the neckline, down."""
    return Track(
        np.concatenate((hem.row, right.row[1:-1], neckline.row[::-1], left.row[-2:0:-1])),
        np.concatenate((hem.share, right.share[1:-1], neckline.share[::-1], left.share[-2:0:-1])),
    )


_STRAND = np.linspace(0.0, 1.0, 5)
_SET_IN = 0.006
"""Of the girth: the cord runs from inside the edge."""


def _lacing(worn: Worn, eyelets: tuple[float, ...]) -> tuple[Track, ...]:
    """Crossed strands, each from one side of the opening to the next eyelet up on the other."""
    if len(eyelets) < 2:
        return ()
    row = worn.stand.row_at(np.array(eyelets))
    edge = np.interp(row, np.arange(len(worn.bounds)), worn.bounds[:, -1]) - _SET_IN
    strands = []
    for low in range(len(eyelets) - 1):
        rows = row[low] + _STRAND * (row[low + 1] - row[low])
        strands.append(Track(rows, edge[low] + _STRAND * (1.0 - edge[low + 1] - edge[low])))
    return tuple(strands)
