"""The first page, and its continuation where the findings run long: sections set into pages.

The first page always carries the client, what is over a limit, the measurements and the
cautions. Whatever does not fit any more goes on to the next page; nothing is left out.
"""

from __future__ import annotations

from collections.abc import Sequence

from workbench.draft import Comfort, Finding, Outcome, by_weight
from workbench.sheets.arithmetic import comfort_table, ledger, reduction
from workbench.sheets.block import BODY, HEADING, Block, heading, paragraph, stack
from workbench.sheets.heading import Heading
from workbench.sheets.map_block import map_block, map_block_of_any_size
from workbench.sheets.paper import PrintChoice
from workbench.sheets.pen import SOFT
from workbench.sheets.sections import (
    cautions,
    finding_block,
    listed_over,
    measurements,
    over_limit,
    who,
)
from workbench.sheets.setter import GUTTER, Page, Setter, front_size
from workbench.sheets.sheetmap import SheetMap

_MAP_SHARES = (0.40, 0.32, 0.25)
_MAP_TALLEST, _MAP_LARGE = 84.0, 170.0


def front_pages(
    outcome: Outcome,
    comfort: Comfort,
    words: Heading,
    choice: PrintChoice,
    sheets: SheetMap,
    more: tuple[Finding, ...] = (),
) -> list[Page]:
    """The first page and what follows it; footers come later, when the number of pages is known.

    ``more`` are findings beside those of the draft and of comfort.
    """
    setter = Setter(front_size(choice, words), squares_due=squares_in_front(choice, sheets))
    width = setter.width
    findings = by_weight((*outcome.findings, *comfort.findings, *more))
    over = [finding for finding in findings if finding.severity == "over"]
    setter.reserve(cautions(width))
    setter.add_wide(who(words, width))
    if over:
        setter.add_wide(over_limit(over, words, width))
    setter.add_wide(measurements(words, width))
    setter.add_wide(reduction(outcome, words, width))
    setter.add_wide(ledger(outcome, words, width))
    setter.add_wide(comfort_table(outcome, comfort, words, width))
    shown = listed_over(over)
    rest = [finding for finding in findings if not any(finding is said for said in shown)]
    _set_findings_and_map(setter, rest, words, sheets)
    if setter.squares_due:
        setter.turn()
        _add_map(setter, sheets)
    return setter.pages


def squares_in_front(choice: PrintChoice, sheets: SheetMap) -> bool:
    """Whether the test squares stand on the second page: the same printer and paper as the sheets."""
    return sheets.squares is None and choice.name in ("A4", "Letter")


def _set_findings_and_map(
    setter: Setter, findings: Sequence[Finding], words: Heading, sheets: SheetMap
) -> None:
    """The map at the right of the findings where both begin on this page; else it heads the next one."""
    mapped = _put_map_beside(setter, findings, words, sheets)
    for number, finding in enumerate(findings):
        block = finding_block(finding, words, setter.width)
        if block.height + (0.0 if number else HEADING) > setter.room:
            setter.turn()
            if not mapped:
                _add_map(setter, sheets)
                mapped = True
            setter.add(heading("Findings, continued" if number else "Findings", setter.width), 0.0)
        elif number == 0:
            setter.add(heading("Findings", setter.width), 0.0)
        setter.add(finding_block(finding, words, setter.width), 0.0)
    if not findings:
        setter.add(stack([heading("Findings", setter.width), _nothing_found(setter.width)]))
    if not mapped:
        setter.turn()
        _add_map(setter, sheets)


def _put_map_beside(setter: Setter, findings: Sequence[Finding], words: Heading, sheets: SheetMap) -> bool:
    """Whether the map has room on this page; it is made narrower where that lets the findings fit too."""
    full = setter.width
    chosen: tuple[float, Block] | None = None
    for share in _MAP_SHARES:
        map_width = share * (full - GUTTER)
        drawn = map_block(sheets, map_width, min(_MAP_TALLEST, setter.room))
        if drawn is None:
            continue
        column = full - GUTTER - map_width
        fits = HEADING + sum(finding_block(f, words, column).height for f in findings) <= setter.room
        if chosen is None or fits:
            chosen = map_width, drawn
        if fits:
            break
    if chosen is None:
        return False
    setter.pages[-1].put(setter.left + full - chosen[0], setter.top, chosen[1])
    setter.pages[-1].has_map = True
    setter.width = full - GUTTER - chosen[0]
    return True


def _add_map(setter: Setter, sheets: SheetMap) -> None:
    """The map as large as the column allows, with room left for findings below it where that is no loss."""
    for tallest in (_MAP_LARGE, setter.room):
        drawn = map_block(sheets, setter.width, tallest)
        if drawn is not None:
            break
    setter.add(drawn or map_block_of_any_size(sheets, setter.width, setter.room))
    setter.pages[-1].has_map = True


def _nothing_found(width: float) -> Block:
    return paragraph("Nothing more to report.", width, BODY, colour=SOFT)
