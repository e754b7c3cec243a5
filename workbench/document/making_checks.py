"""What the making of a project may hold; that it does not suit the bodice is for the cutting to say."""

from __future__ import annotations

from workbench.document.making_table import MAKING_TABLE, MakingGroup, span_words
from workbench.document.problem import Place, Problems, twice
from workbench.pieces import LAYERS, Making


def making_problems(making: Making, panel_count: int) -> Problems:
    """Figures out of bounds, panels that are none, and whatever is said twice."""
    place: Place = ("making",)
    yield from _allowance_problems(making, panel_count, place)
    yield from _layer_problems(making, panel_count, place)
    for group in ("marks", "opening", "boning"):
        yield from _figure_problems(group, getattr(making, group), (*place, group))
    yield from twice(making.boning.places, "the place", (*place, "boning", "places"))
    yield from _figure_problems("", making, place)


def _figure_problems(group: MakingGroup, record: object, place: Place) -> Problems:
    for row in MAKING_TABLE:
        if row.group != group:
            continue
        value = getattr(record, row.key)
        if value is not None and not row.low <= value <= row.high:
            yield (*place, row.key), f"must be {span_words(row)}"


def _allowance_problems(making: Making, panel_count: int, place: Place) -> Problems:
    yield from _figure_problems("allowances", making.allowances, (*place, "allowances"))
    inner = (*place, "own_allowances")
    for number, own in enumerate(making.own_allowances):
        yield from _panel_problem(own.panel, panel_count, (*inner, number, "panel"))
        yield from _figure_problems("own_allowance", own, (*inner, number))
    edges = [(own.layer, own.panel, own.edge) for own in making.own_allowances]
    yield from twice(edges, "one edge of one piece", inner)


def _layer_problems(making: Making, panel_count: int, place: Place) -> Problems:
    inner = (*place, "layers")
    names = [choice.layer for choice in making.layers]
    yield from twice(names, "the layer", inner)
    for name in LAYERS:
        if name not in names:
            yield inner, f"lacks the layer {name}"
    for number, choice in enumerate(making.layers):
        yield from _figure_problems("layer", choice, (*inner, number))
        for panel in choice.left_out:
            yield from _panel_problem(panel, panel_count, (*inner, number, "left_out"))
        yield from twice(choice.left_out, "the panel", (*inner, number, "left_out"))


def _panel_problem(panel: int, panel_count: int, place: Place) -> Problems:
    if not 0 <= panel < panel_count:
        yield place, f"names panel {panel}, where the panels are numbered 0 to {panel_count - 1}"
