"""Comfort: the draft held against the limits that were set for this client.

The check compares numbers with those limits and says so. It never calls a figure
harmless, never changes the draft, and never stays silent about a limit that is passed.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import floor
from typing import Literal

from workbench.body import LEVEL_LABEL, Body, LevelName, Limits
from workbench.draft.design import Design
from workbench.draft.result import Draft, Finding, Level, LineName, Outcome, Place, Severity
from workbench.frozen import dataclass

Status = Literal["within", "near", "over"]

_HAIR = 1e-6
"""mm: sums of fractions of an inch are off by less (own choice)."""
NEAR_EDGE_MM = 6.35
"""An edge this close to its limit is near it: a quarter inch, twice what a hand draft is good to
(common practice, no source)."""


@dataclass(frozen=True)
class Judgement:
    """One level against its limit, as worn and with the laces drawn together."""

    level: LevelName
    most: float | None
    """Largest reduction round the body, mm, that keeps the limit here; None where there is no limit."""
    reason: str
    """Which limit that is, for a sentence: ``your 10 % at the waist``."""
    status: Status
    shut_status: Status
    fitted: float = 0.0
    """What fittings took in here, mm round the body: of the reduction, but not to be designed."""


@dataclass(frozen=True)
class Comfort:
    """The judgement of every level, the findings in order of weight, and the most that keeps every limit."""

    judgements: tuple[Judgement, ...]
    findings: tuple[Finding, ...]
    largest_reduction: float
    """mm at the waist, round the body, under the rule of the design; negative asks for ease.

    That much can be designed: what fittings took in comes on top of it.
    """

    def at(self, level: LevelName) -> Judgement:
        """The judgement of one level; KeyError where this style has none."""
        for judgement in self.judgements:
            if judgement.level == level:
                return judgement
        raise KeyError(level)


_WEIGHT: dict[Severity, int] = {"stop": 0, "over": 1, "near": 2, "attend": 3, "note": 4}
"""The order in which findings are told; own choice."""


def by_weight(findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """The same findings, the most important first."""
    return tuple(sorted(findings, key=lambda finding: _WEIGHT[finding.severity]))


def comfort_of(outcome: Outcome, limits: Limits) -> Comfort:
    """The outcome held against the limits she set; works without a draft, then without the edges."""
    judgements = tuple(_judged(level, outcome.body, limits) for level in outcome.levels)
    largest = _largest(outcome, judgements)
    findings = (
        *_level_findings(outcome, judgements, largest),
        *_breath_note(outcome.body, limits),
        *_one_figure_note(outcome),
        *(_edge_findings(outcome.draft, outcome, limits) if outcome.draft else ()),
    )
    return Comfort(judgements, by_weight(findings), largest)


def take_the_most(design: Design, comfort: Comfort, step: float) -> Design:
    """The design with the largest waist reduction that keeps every limit, in whole steps (mm).

    Levels with a limit and a figure of their own are lowered to it where they pass it.
    """
    kept = {"waist": _whole_steps(comfort.largest_reduction, step)}
    for judgement in comfort.judgements:
        shared = design.rule == "one_figure" and judgement.level == "underbust"
        if judgement.level != "waist" and judgement.most is not None and not shared:
            most = _whole_steps(judgement.most - judgement.fitted, step)
            kept[judgement.level] = min(design.reductions.at(judgement.level), most)
    return replace(design, reductions=replace(design.reductions, **kept))


def _whole_steps(mm: float, step: float) -> float:
    """The length rounded down to whole steps; a hair short of one counts as it."""
    return floor((mm + 0.5 * _HAIR) / step) * step


def _judged(level: Level, body: Body, limits: Limits) -> Judgement:
    most, reason = _most_at(level, body, limits)
    if most is None:
        return Judgement(level.name, None, "", "within", "within")
    shut = level.body - level.fabric
    share = limits.near_share
    as_worn, laced_shut = _status(level.reduction, most, share), _status(shut, most, share)
    return Judgement(level.name, most, reason, as_worn, laced_shut, level.fitted)


def _status(reduction: float, most: float, near_share: float) -> Status:
    if reduction > most + _HAIR:
        return "over"
    return "near" if reduction > 0 and reduction > near_share * most else "within"


def _most_at(level: Level, body: Body, limits: Limits) -> tuple[float | None, str]:
    if level.name == "waist":
        return _most_at_waist(level, body, limits)
    if level.name == "underbust":
        return level.body - least_rib_girth(body, limits), _breath_reason(limits)
    if level.name == "top_hip":
        return limits.top_hip_reduction_mm, "your limit at the top hip"
    return None, ""


def _most_at_waist(level: Level, body: Body, limits: Limits) -> tuple[float, str]:
    """Standing, and seated where that girth was taken: the tighter of the two counts."""
    kept = 1 - limits.waist_percent / 100
    standing = level.body * (1 - kept)
    seated = body.taken("seated_waist_girth")
    if seated is not None and level.body - kept * seated < standing:
        return level.body - kept * seated, f"your {limits.waist_percent:g} % of her seated waist"
    return standing, f"your {limits.waist_percent:g} %"


def _breath_reason(limits: Limits) -> str:
    return f"the {100 * limits.breathing_share:g} % of her breath to be left free"


def breath(body: Body, limits: Limits) -> tuple[float, float, bool]:
    """Girth at full exhale and full inhale in mm, and whether either was assumed.

    A resting girth is taken to lie midway between them (an assumption, no source).
    """
    out, full, wide = (
        body.taken("underbust_exhale"),
        body.taken("underbust_inhale"),
        limits.breathing_assumed_mm,
    )
    if out is not None and full is not None:
        return out, full, False
    if out is not None:
        return out, out + wide, True
    if full is not None:
        return full - wide, full, True
    rest = body.value("underbust_girth")
    return rest - 0.5 * wide, rest + 0.5 * wide, True


def least_rib_girth(body: Body, limits: Limits) -> float:
    """Smallest finished underbust girth, mm, that leaves the wanted part of her breath free."""
    out, full, _ = breath(body, limits)
    return out + limits.breathing_share * (full - out)


def _largest(outcome: Outcome, judgements: tuple[Judgement, ...]) -> float:
    """Under one figure the reduction serves both girths, so the tighter of the two limits counts."""
    counted = ("waist", "underbust") if outcome.design.rule == "one_figure" else ("waist",)
    rooms = []
    for judgement in judgements:
        if judgement.level in counted and judgement.most is not None:
            level = outcome.level(judgement.level)
            rooms.append(level.reckoned - (level.body - judgement.most))
    return min(rooms)


_FIGURE = "{level}: {reduction} round the body ({quarter} a quarter, {percent} %)"
_SENTENCES: dict[Status, str] = {
    "over": f"{_FIGURE} is above the limit you set: {{reason}} allows {{most}}.",
    "near": f"{_FIGURE} is near the limit you set: {{reason}} allows {{most}}.",
    "within": f"{_FIGURE}, within {{reason}}.",
}


def _level_findings(outcome: Outcome, judgements: tuple[Judgement, ...], largest: float) -> Iterator[Finding]:
    shut = []
    for level, judgement in zip(outcome.levels, judgements, strict=True):
        if judgement.most is None:
            continue
        if judgement.status != "within" or level.name == "waist":
            yield _as_worn(level, judgement, judgement.most, largest, outcome.design)
        if judgement.shut_status == "over" and judgement.status != "over":
            shut.append(level)
    if shut:
        yield _laced_shut(shut, outcome.design.opening_mm)


_BESIDES = {
    True: ", besides the {fitted} that fittings took in",
    False: ", besides the {fitted} that fittings let out",
}


def _as_worn(level: Level, judgement: Judgement, most: float, largest: float, design: Design) -> Finding:
    severity: Severity = "note" if judgement.status == "within" else judgement.status
    # a level with a figure of its own is not helped by anything that is done at the waist
    at_waist = level.name == "waist" or (level.name == "underbust" and design.rule == "one_figure")
    percent = f"{level.percent:.1f}".replace("-", "\N{MINUS SIGN}")
    besides = _BESIDES[level.fitted > 0] if level.fitted else ""
    return Finding(
        severity,
        f"{level.name}_{judgement.status}",
        _SENTENCES[judgement.status],
        {
            "reduction": level.reduction,
            "quarter": 0.25 * level.reduction,
            "most": most,
            "largest": largest,
            "fitted": abs(level.fitted),
        },
        {"level": LEVEL_LABEL[level.name], "percent": percent, "reason": judgement.reason},
        Place(level=level.name, field=f"reductions.{level.name}"),
        f"The most that keeps every limit is {{largest}} at the waist{besides}." if at_waist else "",
        value_mm=level.reduction,
        limit_mm=most,
        at_most=("most", "largest"),
    )


def _laced_shut(levels: list[Level], opening: float) -> Finding:
    """One sentence for all levels that only the planned opening keeps within their limit."""
    figures = {f"at_{level.name}": level.fabric for level in levels}
    said = [f"{{at_{level.name}}} at the {LEVEL_LABEL[level.name].lower()}" for level in levels]
    listed = said[0] if len(said) == 1 else f"{', '.join(said[:-1])} and {said[-1]}"
    return Finding(
        "note",
        "levels_laced_shut",
        f"Laced shut she would be held to {listed}: above the limit you set.",
        {**figures, "opening": opening},
        place=Place(level=levels[0].name, field="opening_mm"),
        remedy="Keep the planned opening of {opening} when lacing.",
        value_mm=levels[0].body - levels[0].fabric,
    )


def _breath_note(body: Body, limits: Limits) -> Iterator[Finding]:
    if breath(body, limits)[2]:
        yield Finding(
            "note",
            "breath_assumed",
            "Her full breath was not measured: {assumed} between full exhale and full inhale is assumed.",
            {"assumed": limits.breathing_assumed_mm},
            place=Place(field="measurements.underbust_inhale"),
            remedy="Take both girths under the bust.",
        )


def _one_figure_note(outcome: Outcome) -> Iterator[Finding]:
    for level in outcome.levels:
        hidden = level.body - level.reckoned - level.fitted
        if hidden > 0.5:
            yield Finding(
                "attend",
                "one_figure_hides",
                "One figure for waist and underbust holds the {level} tighter than it seems: "
                "by {real}, not {said}.",
                {"real": level.reduction, "said": level.reduction - hidden},
                {"level": LEVEL_LABEL[level.name].lower()},
                Place(level=level.name, field="rule"),
                "Give each its own figure to choose.",
                value_mm=level.reduction,
            )


def _edge_findings(draft: Draft, outcome: Outcome, limits: Limits) -> Iterator[Finding]:
    """Hem and neckline against lap, thigh, underarm and nape."""
    side = outcome.design.front.panel_count
    body = outcome.body
    lap, thigh = body.taken("waist_to_lap"), body.taken("waist_to_thigh")
    if lap is not None:
        room = lap - limits.lap_clearance_mm + draft.hem.seam_walks[0]
        yield from _edge("hem", 0, "lap", room, limits.lap_clearance_mm, "Raise the hem at the centre front.")
    if thigh is not None:
        room = thigh - limits.thigh_clearance_mm + draft.hem.seam_walks[side]
        yield from _edge("hem", side, "thigh", room, limits.thigh_clearance_mm, "Raise the hem at the side.")
    room = body.value("underarm_to_waist") - limits.underarm_clearance_mm - draft.neckline.seam_walks[side]
    yield from _edge(
        "neckline", side, "underarm", room, limits.underarm_clearance_mm, "Lower it at the side."
    )
    nape = body.value("nape_to_waist") - draft.neckline.seam_walks[-1]
    if nape < 0:
        yield from _edge(
            "neckline", len(draft.neckline.seam_walks) - 1, "nape", nape, 0.0, "Lower it at the back."
        )


_EDGE_SENTENCES = {
    "lap": "Seated, the front of the hem",
    "thigh": "Seated, the hem at the side",
    "underarm": "Under the arm, the neckline",
    "nape": "At the centre back, the neckline",
}


def _edge(
    line: LineName, seam: int, what: str, room: float, clearance: float, remedy: str
) -> Iterator[Finding]:
    if room >= NEAR_EDGE_MM:
        return
    over = room < -_HAIR
    left = clearance + room
    ending = (
        f"leaves {{left}} to the {what}, less than the {{clearance}} you set."
        if left >= 0
        else f"passes the {what} by {{past}}; you set a clearance of {{clearance}}."
    )
    if not over:
        ending = f"leaves {{left}} to the {what}, close to the {{clearance}} you set."
    yield Finding(
        "over" if over else "near",
        f"{line}_{what}",
        f"{_EDGE_SENTENCES[what]} {ending}",
        {"left": left, "past": max(-left, 0.0), "clearance": clearance},
        place=Place(line=line, seam=seam),
        remedy=remedy,
        value_mm=left,
        limit_mm=clearance,
        at_most=("left",),
    )
