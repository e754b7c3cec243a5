"""What was decided about single panels, when there come to be more or fewer of them."""

from __future__ import annotations

from dataclasses import replace

from workbench.draft import Design
from workbench.pieces import LayerChoice, Making


def with_panels_changed(making: Making, old: Design, new: Design) -> Making:
    """The making for a design with other panels: decisions go on with their panel.

    Those about the panels of a quarter that is divided anew are dropped: its panels are
    other ones now.
    """
    kept = _kept_panels(old, new)
    own = tuple(replace(each, panel=kept[each.panel]) for each in making.own_allowances if each.panel in kept)
    layers = tuple(_layer_with(choice, kept) for choice in making.layers)
    return replace(making, own_allowances=own, layers=layers)


def _kept_panels(old: Design, new: Design) -> dict[int, int]:
    """New number of each panel that is still the same one."""
    front, new_front = old.front.panel_count, new.front.panel_count
    kept = {number: number for number in range(front)} if front == new_front else {}
    if old.back.panel_count == new.back.panel_count:
        kept |= {front + number: new_front + number for number in range(old.back.panel_count)}
    return kept


def _layer_with(choice: LayerChoice, kept: dict[int, int]) -> LayerChoice:
    return replace(choice, left_out=tuple(kept[panel] for panel in choice.left_out if panel in kept))
