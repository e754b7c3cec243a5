"""From the pieces of a layer to how they are marked on the cloth by hand."""

from __future__ import annotations

import re
from collections.abc import Iterator

import numpy as np

from workbench.body import LevelName
from workbench.draft import Design, Outcome, seam_name
from workbench.marking.frame import Frame, edge_base, frame_of
from workbench.marking.girths import girths_of, turns_of
from workbench.marking.records import GirthRow, Guide, PieceGuide, SeamRow, places_of
from workbench.marking.rounding import Rounding
from workbench.marking.sets import Marked, marked
from workbench.marking.smooth import Array, along, apart, smooth_through
from workbench.marking.words import EDGES, Telling, edge_words, steps_of
from workbench.pieces import EdgeName, Layer, Making


def guide_of(outcome: Outcome, making: Making, layer: Layer, rounding: Rounding) -> Guide:
    """How every piece of a layer is marked, lengths rounded; nothing to mark without a draft.

    Widths of a level are rounded together over all panels of the half, so that their sum is the
    exact half rounded once.
    """
    if outcome.draft is None:
        return Guide(layer.name, layer.label, rounding, (), (), ())
    frames = [frame_of(piece) for piece in layer.pieces]
    by_panel = {frame.piece.panel: frame for frame in frames if frame.piece.panel is not None}
    turns = turns_of(outcome.draft, making, layer.name)
    girths = girths_of(outcome.draft, by_panel, turns, rounding) if by_panel else ()
    pieces = tuple(
        _piece(frame, layer, outcome.design, rounding, _widths(frame, girths, rounding)) for frame in frames
    )
    seams = tuple(_seams(pieces, by_panel, outcome.design))
    return Guide(layer.name, layer.label, rounding, pieces, girths, seams)


def _widths(frame: Frame, girths: tuple[GirthRow, ...], rounding: Rounding) -> dict[LevelName, float]:
    """The widths of a piece at its levels, rounded: a panel's with those of the others."""
    panel = frame.piece.panel
    if panel is not None:
        return {row.level: row.widths[panel] for row in girths}
    return {"waist": rounding.near(_across(frame))} if frame.on_waist else {}


def _across(frame: Frame) -> float:
    """How wide a piece that is no panel is at the waist, mm."""
    left, right = (
        float(np.interp(0.0, line[:, 1], line[:, 0])) for line in (frame.edges["left"], frame.edges["right"])
    )
    return right - left


def _piece(
    frame: Frame, layer: Layer, design: Design, rounding: Rounding, widths: dict[LevelName, float]
) -> PieceGuide:
    found = marked(frame, rounding, widths)
    piece, key = frame.piece, f"marking.{layer.name}.{_slug(frame.piece.name)}"
    lines = _drawn(found)
    words = edge_words(piece, design)
    allowed = {edge.name: edge.allowance for edge in piece.edges}
    return PieceGuide(
        key=key,
        name=piece.name,
        layer=layer.name,
        layer_label=layer.label,
        cut_words=piece.cut_words,
        base=edge_base(frame.on_waist),
        side=frame.side,
        corner=1,
        marks=tuple(found.marks),
        curves=tuple(found.curves),
        steps=steps_of(Telling(found, design), key),
        levels=tuple((level, *ends) for level, ends in found.levels.items()),
        allowances=tuple((edge, words[edge], allowed[edge]) for edge in EDGES),
        exact=tuple((edge, frame.edges[edge]) for edge in EDGES),
        cut=frame.moved(piece.cut),
        drawn=lines,
        error=max(_errors(found, lines)),
    )


def _drawn(found: Marked) -> tuple[Array, ...]:
    places = places_of(tuple(found.marks), found.frame.side)
    return tuple(
        smooth_through(np.array([places[number] for number in curve.marks])) for curve in found.curves
    )


def _errors(found: Marked, lines: tuple[Array, ...]) -> Iterator[float]:
    for edge in EDGES:
        drawn = np.concatenate([lines[place] for place in found.drawn[edge]])
        yield apart(drawn, found.frame.edges[edge])


def _seams(pieces: tuple[PieceGuide, ...], frames: dict[int, Frame], design: Design) -> Iterator[SeamRow]:
    """Both sides of every seam between two panels of the layer."""
    names = {frame.piece.name: number for number, frame in frames.items()}
    by_panel = {names[piece.name]: piece for piece in pieces if piece.name in names}
    for panel, piece in by_panel.items():
        after = by_panel.get(panel + 1)
        if after is not None:
            yield SeamRow(
                panel + 1,
                seam_name(panel + 1, design),
                _length(piece, "right"),
                _length(after, "left"),
                float(along(dict(piece.exact)["right"])[-1]),
            )


def _length(piece: PieceGuide, edge: EdgeName) -> float:
    return sum(
        float(along(line)[-1])
        for curve, line in zip(piece.curves, piece.drawn, strict=True)
        if curve.edge == edge
    )


def _slug(name: str) -> str:
    """A piece's name as a key has it: ``front-1``."""
    return re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")
