"""Everything that was worked out, as lines to read, in the user's own unit."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from textwrap import wrap

from workbench.body import CAUTIONS, LEVEL_LABEL, LevelName, say_length, say_with_unit
from workbench.document.picture import Picture
from workbench.document.project import Project
from workbench.document.report import area, worked_out
from workbench.document.words import RULE_WORDS, STYLE_WORDS, measurement_words
from workbench.draft import Comfort, Draft, LedgerLine, Outcome, QuarterName, seam_name

WIDTH = 96
_UNIT_AFTER = re.compile(r"(?<=[\d¼-¾⅐-⅞₀-₉]) (?=(?:in|cm|%)(?:\W|$))")
"""The blank between a figure and its unit, which must not be torn apart at the end of a line."""
_KEEP = "\u00a0"
_STATUS_WORDS = {"within": "within", "near": "near your limit", "over": "above the limit you set"}


@dataclass(frozen=True)
class _Said:
    """Lengths as this project shows them."""

    project: Project

    def __call__(self, mm: float) -> str:
        return say_length(mm, self.project.unit, self.project.fraction)

    def unit(self, mm: float) -> str:
        return say_with_unit(mm, self.project.unit, self.project.fraction)


def report_text(picture: Picture) -> str:
    """The report as text, lines of at most 96 characters where words allow; NoDraftError as for the data."""
    body, outcome, comfort, draft = worked_out(picture)
    say = _Said(picture.project)
    lines = [
        *_head(picture.project),
        *_warnings(picture, say),
        *_section("Measurements", _table(measurement_words(picture.project, body), words=(0, 2))),
        *_section("Reduction", _reductions(outcome, comfort, say)),
        *_section(f"Intake a quarter, {_unit(picture.project)}", _ledger(outcome, say)),
        *_section(f"Panels, widths in {_unit(picture.project)}", _panels(draft, outcome, say)),
        *_section("Seams", _seams(draft, say)),
        *_section("What to look at", _findings(picture)),
        *_section("Cautions", _bullets(CAUTIONS)),
    ]
    return "\n".join(line.rstrip() for line in lines) + "\n"


def _unit(project: Project) -> str:
    return "inches" if project.unit == "in" else "centimetres"


def _head(project: Project) -> Iterator[str]:
    client, design = project.client, project.design
    yield client.name or "No client named"
    front, back = design.front.panel_count, design.back.panel_count
    panels = f"{front} panels in the front half, {back} in the back half"
    yield ", ".join(part for part in (STYLE_WORDS[design.style], panels, client.date) if part)
    if client.wish:
        yield from wrap(client.wish, WIDTH)
    if client.invented:
        yield "Name and figures are invented for demonstration."


def _warnings(picture: Picture, say: _Said) -> Iterator[str]:
    """What is above a limit comes before anything else."""
    over = [f for f in picture.findings if f.severity == "over"]
    if over:
        yield ""
        yield "ABOVE THE LIMIT YOU SET"
        yield from _bullets(f.text(say.project.unit, say.project.fraction) for f in over)


def _section(title: str, lines: Iterable[str]) -> Iterator[str]:
    yield ""
    yield title
    yield from (f"  {line}" for line in lines)


def _bullets(sentences: Iterable[str]) -> Iterator[str]:
    for sentence in sentences:
        joined = _UNIT_AFTER.sub(_KEEP, sentence)
        lines = wrap(joined, WIDTH - 4, initial_indent="- ", subsequent_indent="  ")
        yield from (line.replace(_KEEP, " ") for line in lines)


def _table(rows: Sequence[Sequence[str]], words: Sequence[int] = (0,)) -> Iterator[str]:
    """Rows in columns: those that hold words are set to the left, figures to the right."""
    widths = [max(len(row[i]) for row in rows if i < len(row)) for i in range(max(map(len, rows)))]
    for row in rows:
        cells = (
            cell.ljust(width) if i in words else cell.rjust(width)
            for i, (cell, width) in enumerate(zip(row, widths, strict=False))
        )
        yield "  ".join(cells)


def _reductions(outcome: Outcome, comfort: Comfort, say: _Said) -> Iterator[str]:
    rows = [("", "body", "finished", "cloth", "round the body", "a quarter", "%", "limit", "")]
    for level in reversed(outcome.levels):
        judgement = comfort.at(level.name)
        limited = judgement.most is not None
        rows.append(
            (
                LEVEL_LABEL[level.name],
                say(level.body),
                say(level.finished),
                say(level.fabric),
                say(level.reduction),
                say(0.25 * level.reduction),
                f"{level.percent:.1f}".replace("-", "−"),
                say(judgement.most) if judgement.most is not None else "none",
                _STATUS_WORDS[judgement.status] if limited else "",
            )
        )
    yield from _table(rows, words=(0, 8))
    design = outcome.design
    yield f"{RULE_WORDS[design.rule]}; worn open {say.unit(design.opening_mm)} at the centre back."
    most, quarter = say.unit(comfort.largest_reduction), say.unit(0.25 * comfort.largest_reduction)
    yield f"The most that keeps every limit is {most} round the body at the waist, {quarter} a quarter."


def _ledger(outcome: Outcome, say: _Said) -> Iterator[str]:
    quarters: tuple[QuarterName, ...] = ("front", "back")
    for quarter in quarters:
        lines = [line for line in reversed(outcome.ledger) if line.quarter == quarter]
        seams = [seam_name(taking.seam, outcome.design) for taking in lines[0].takings]
        rows = [(quarter, "needed", "placed", *seams), *(_ledger_row(line, say) for line in lines)]
        yield from _table(rows)
    yield "Left + right of a seam, a star where pinned. Rounded here; the parts themselves add up."


def _ledger_row(line: LedgerLine, say: _Said) -> tuple[str, ...]:
    cells = []
    for taking in line.takings:
        sides = f"{say(taking.left)} + {say(taking.right)}{' *' if taking.pinned else ''}"
        cells.append(sides)
    return (LEVEL_LABEL[line.level], say(line.needed), say(line.placed), *cells)


def _panels(draft: Draft, outcome: Outcome, say: _Said) -> Iterator[str]:
    names: list[LevelName] = [level.name for level in reversed(outcome.levels)]
    head = ("", *(LEVEL_LABEL[name].lower() for name in names), "area")
    rows = [
        (panel.name, *(say(panel.widths[name]) for name in names), _area(area(panel), say))
        for panel in draft.panels
    ]
    yield from _table([head, *rows])
    girths = ", ".join(f"{LEVEL_LABEL[name].lower()} {say(draft.tape_girth[name])}" for name in names)
    yield f"Tape round all panels, opening included: {girths}."


def _area(mm2: float, say: _Said) -> str:
    return f"{mm2 / 645.16:.1f} sq in" if say.project.unit == "in" else f"{mm2 / 100:.1f} cm²"


def _seams(draft: Draft, say: _Said) -> Iterator[str]:
    head = ("", "left side", "right side", "neckline angles", "hem angles")
    rows = [
        (
            seam.name,
            say(seam.left_length),
            say(seam.right_length),
            f"{seam.neckline_angle_sum:.1f}°",
            f"{seam.hem_angle_sum:.1f}°",
        )
        for seam in draft.seams
    ]
    yield from _table([head, *rows])


def _findings(picture: Picture) -> Iterator[str]:
    project, body = picture.project, picture.body
    texts = [finding.text(project.unit, project.fraction) for finding in picture.findings]
    checks = [check.text(project.unit, project.fraction) for check in body.checks] if body else []
    yield from _bullets([*texts, *checks] or ["Nothing."])
