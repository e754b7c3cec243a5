"""The sheets for the cutting table: one for each layer, bones and notions, and the walk check."""

from __future__ import annotations

from workbench.draft import Outcome
from workbench.pieces import Cutting
from workbench.sheets.block import Block, heading, space, stack
from workbench.sheets.bone_list import bone_list
from workbench.sheets.half_drawing import half_drawing
from workbench.sheets.heading import Heading
from workbench.sheets.layer_sheet import is_small, layer_sheet, small_layer_sheet
from workbench.sheets.notion_list import notion_row
from workbench.sheets.opening_list import opening_list
from workbench.sheets.paper import PrintChoice
from workbench.sheets.setter import Page, Setter, front_size
from workbench.sheets.sheet_head import sheet_head
from workbench.sheets.walk_sheet import verdict, walk_blocks

_REST, _LOW = 62.0, 54.0
"""Room for the words of a layer with a page to itself, and for the drawings of one that shares it, mm."""
_HALF = 80.0
"""Height of the half with its bones, mm."""


def cutting_pages(cutting: Cutting, outcome: Outcome, words: Heading, choice: PrintChoice) -> list[Page]:
    """The pages in the order in which they are used."""
    setter = Setter(front_size(choice, words), squares_due=False)
    _set_layers(setter, cutting, words)
    _set_bones_and_notions(setter, cutting, outcome, words)
    _set_walk_check(setter, cutting, words)
    return setter.pages


def _set_layers(setter: Setter, cutting: Cutting, words: Heading) -> None:
    """A page for each layer; those of one or two pieces share."""
    shared, whole = True, setter.room
    for layer in (layer for layer in cutting.layers if layer.pieces):
        if is_small(layer):
            block = small_layer_sheet(layer, words, setter.width, _LOW)
        else:
            block = layer_sheet(layer, words, setter.width, whole - _REST)
        if setter.begun and not (shared and is_small(layer)):
            setter.turn()
        setter.add(block)
        shared = is_small(layer)


def _set_bones_and_notions(setter: Setter, cutting: Cutting, outcome: Outcome, words: Heading) -> None:
    """The half with its bones, their list, the opening, and everything to buy."""
    _begin(setter, sheet_head("Bones and notions", "what goes in, and what to buy", words, setter.width))
    width = setter.width
    if cutting.bones:
        setter.add(half_drawing(outcome, cutting.bones, width, _HALF))
    setter.add(bone_list(cutting.bones, words, width), 4.0)
    setter.add(opening_list(cutting, words, width), 4.0)
    _set_notions(setter, cutting, words)


def _set_notions(setter: Setter, cutting: Cutting, words: Heading) -> None:
    """Row by row, so that the list can run over pages; its name stands above the first row of each."""
    for number, notion in enumerate(cutting.notions):
        row = notion_row(notion, words, setter.width)
        title = heading("To buy" if not number else "To buy, continued", setter.width)
        if number and row.height <= setter.room:
            setter.add(row, 0.0)
        else:
            setter.add(stack([title, row]), 0.0)


def _set_walk_check(setter: Setter, cutting: Cutting, words: Heading) -> None:
    lead = "The last look before cutting: whether edges that are sewn together are equally long."
    _begin(setter, sheet_head("Walk check", "", words, setter.width, lead))
    setter.add(space(1.0), 0.0)
    setter.add(verdict(cutting, setter.width), 5.0)
    for block in walk_blocks(cutting, words, setter.width):
        setter.add(block)


def _begin(setter: Setter, head: Block) -> None:
    if setter.begun:
        setter.turn()
    setter.add(head)
