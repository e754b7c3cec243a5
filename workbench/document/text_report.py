"""Everything that was worked out, as lines to read, in the user's own unit."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap

from workbench.body import CAUTIONS, LEVEL_LABEL, LevelName, round_down, say_at_most
from workbench.document.picture import Picture
from workbench.document.project import Project
from workbench.document.report_data import area, cut_out, worked_out
from workbench.document.text_beads import bead_lines
from workbench.document.text_cloth import cloth_lines
from workbench.document.text_lines import WIDTH, Said, bullets, section, table
from workbench.document.text_making import making_lines
from workbench.document.words import RULE_WORDS, STYLE_WORDS, measurement_words
from workbench.draft import Comfort, Draft, LedgerLine, Outcome, QuarterName, seam_name
from workbench.fitting import Fitting

_STATUS_WORDS = {"within": "within", "near": "near your limit", "over": "above the limit you set"}


def report_text(picture: Picture) -> str:
    """The report as text, lines of at most 96 characters where words allow; NoDraftError as for the data."""
    body, outcome, comfort, draft = worked_out(picture)
    say = Said(picture.project)
    lines = [
        *_head(picture.project),
        *_warnings(picture, say),
        *section("Measurements", table(measurement_words(picture.project, body), words=(0, 2))),
        *section("Reduction", _reductions(outcome, comfort, say)),
        *section(f"Intake a quarter, {_unit(picture.project)}", _ledger(outcome, say)),
        *section(f"Panels, widths in {_unit(picture.project)}", _panels(draft, outcome, say)),
        *section("Seams", _seams(draft, say)),
        *_fittings(picture.project, outcome),
        *making_lines(cut_out(picture), say),
        *bead_lines(picture, say),
        *cloth_lines(picture, say),
        *section("What to look at", _findings(picture)),
        *section("Cautions", bullets(CAUTIONS)),
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


def _warnings(picture: Picture, say: Said) -> Iterator[str]:
    """What is above a limit comes before anything else."""
    over = [f for f in picture.findings if f.severity == "over"]
    if over:
        yield ""
        yield "ABOVE THE LIMIT YOU SET"
        yield from bullets(f.text(say.project.unit, say.project.fraction) for f in over)


def _reductions(outcome: Outcome, comfort: Comfort, say: Said) -> Iterator[str]:
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
                say.closely(0.25 * level.reduction),
                f"{level.percent:.1f}".replace("-", "−"),
                say.at_most(judgement.most) if judgement.most is not None else "none",
                _STATUS_WORDS[judgement.status] if limited else "",
            )
        )
    yield from table(rows, words=(0, 8))
    design = outcome.design
    yield f"{RULE_WORDS[design.rule]}; worn open {say.unit(design.opening_mm)} at the centre back."
    unit, fraction = say.project.unit, say.project.fraction
    largest = round_down(comfort.largest_reduction, unit, fraction)
    most, quarter = (say_at_most(mm, unit, fraction) for mm in (largest, 0.25 * largest))
    yield f"The most that keeps every limit is {most} round the body at the waist, {quarter} a quarter."


def _ledger(outcome: Outcome, say: Said) -> Iterator[str]:
    quarters: tuple[QuarterName, ...] = ("front", "back")
    for quarter in quarters:
        lines = [line for line in reversed(outcome.ledger) if line.quarter == quarter]
        seams = [seam_name(taking.seam, outcome.design) for taking in lines[0].takings]
        rows = [(quarter, "needed", "placed", *seams), *(_ledger_row(line, say) for line in lines)]
        yield from table(rows)
    yield "Left + right of a seam, a star where pinned. Rounded here; the parts themselves add up."


def _ledger_row(line: LedgerLine, say: Said) -> tuple[str, ...]:
    cells = []
    for taking in line.takings:
        sides = f"{say(taking.left)} + {say(taking.right)}{' *' if taking.pinned else ''}"
        cells.append(sides)
    return (LEVEL_LABEL[line.level], say.closely(line.needed), say.closely(line.placed), *cells)


def _panels(draft: Draft, outcome: Outcome, say: Said) -> Iterator[str]:
    names: list[LevelName] = [level.name for level in reversed(outcome.levels)]
    head = ("", *(LEVEL_LABEL[name].lower() for name in names), "area")
    rows = [
        (panel.name, *(say(panel.widths[name]) for name in names), _area(area(panel), say))
        for panel in draft.panels
    ]
    yield from table([head, *rows])
    girths = ", ".join(f"{LEVEL_LABEL[name].lower()} {say(draft.tape_girth[name])}" for name in names)
    yield f"Tape round all panels, opening included: {girths}."


def _area(mm2: float, say: Said) -> str:
    return f"{mm2 / 645.16:.1f} sq in" if say.project.unit == "in" else f"{mm2 / 100:.1f} cm²"


def _seams(draft: Draft, say: Said) -> Iterator[str]:
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
    yield from table([head, *rows])


def _fittings(project: Project, outcome: Outcome) -> Iterator[str]:
    """What was pinned at each fitting, and what all that is carried in comes to."""
    if not project.fittings:
        return
    lines: list[str] = []
    for fitting in project.fittings:
        lines += _fitting(fitting, project)
    if not outcome.designed:
        lines.append("Nothing of it is carried into the draft.")
    yield from section("Fittings", lines)


def _fitting(fitting: Fitting, project: Project) -> Iterator[str]:
    from workbench.fitting import change_said, date_said  # likewise

    made_up = f" in {fitting.cloth}" if fitting.cloth else ""
    state = "" if fitting.applied else " (not carried into the draft)"
    yield f"{date_said(fitting.date) or 'Without a date'}{made_up}{state}"
    changes = [
        change_said(change, fitting.panels, project.unit, project.fraction)
        + (f": {change.note}" if change.note else "")
        + ("" if change.on else " (off)")
        for change in fitting.changes
    ]
    yield from bullets(changes or ["Nothing was pinned."])


def _findings(picture: Picture) -> Iterator[str]:
    project, body = picture.project, picture.body
    texts = [finding.text(project.unit, project.fraction) for finding in picture.all_findings]
    checks = [check.text(project.unit, project.fraction) for check in body.checks] if body else []
    yield from bullets([*texts, *checks] or ["Nothing."])
