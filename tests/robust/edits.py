"""One random edit of any kind, as the window would make it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields
from decimal import Decimal
from random import Random
from typing import Any

import workbench.document as document
from tests.document.wish_values import picture
from workbench.body import BY_KEY, LEVELS, LIMIT_TABLE
from workbench.document import BONE_PLACES, CLOTH_ROWS, EDGE_NAMES, MAKING_ROWS, TORSO_TABLE, Project
from workbench.draft import ShapePoint
from workbench.pieces import EDGE_KINDS, LAYERS, Boning, Marks, Opening

Edit = Callable[[Project, Random], Project]

_LENGTHS = ("36", "27 3/4", "31 1/8", "91,5", "24.25", "8½", "", "70", "3⁄4", "rubbish", "-3", "1e9")
_TEXTS = ("Anna (invented)", "", "½ ✓\nsecond line", "<b>&</b>", "x" * 90, "../../up", "\ud800")


def _one(dice: Random, *acts: Callable[[], Project]) -> Project:
    """What one of them does."""
    return dice.choice(acts)()


def _quarter(dice: Random) -> Any:
    return dice.choice(("front", "back"))


def _seam(project: Project, dice: Random) -> int:
    return dice.randrange(0, project.design.panel_count + 1)


def _spread(low: float, high: float, dice: Random) -> float:
    """Mostly within the bounds, sometimes on one of them or beyond."""
    wide = high - low
    return dice.choice(
        [low, high, dice.uniform(low, high), dice.uniform(low - 0.1 * wide, high + 0.1 * wide)]
    )


def _made_of(record: Any, group: str, dice: Random) -> dict[str, Any]:
    """One figure of a group of the making, by its name."""
    keys = [key for held, key in MAKING_ROWS if held == group and key in {f.name for f in fields(record)}]
    key = dice.choice(keys)
    bounds = MAKING_ROWS[group, key]
    return {key: _spread(bounds.low, bounds.high, dice)}


def _line(project: Project, dice: Random) -> Project:
    outcome = document.picture_of(project).outcome
    if outcome is None or outcome.draft is None:
        return project
    line: Any = dice.choice(("neckline", "hem"))
    points = getattr(outcome.draft, line).points
    number, u = dice.randrange(len(points)), dice.uniform(0, project.design.panel_count)
    act = dice.randrange(5)
    if act == 0:
        near = points[number]
        return document.move_point(project, line, number, near.u, near.t + dice.uniform(-60, 60), points)
    if act == 1:
        return document.add_point(project, line, u, points[number].t + dice.uniform(-20, 20), points)
    if act == 2:
        return document.remove_point(project, line, number, points)
    if act == 3:
        return document.toggle_smooth(project, line, number, points)
    return document.style_line_again(project, line)


def _cloth(project: Project, dice: Random) -> Project:
    names = [cloth.name for cloth in project.cloths] or ["none"]
    act, name = dice.randrange(5), dice.choice(names)
    if act == 0:
        return document.add_cloth(project, f"Cloth {dice.randrange(9)}", dice.sample(LAYERS, 1))
    if act == 1 and len(names) > 1:
        return document.remove_cloth(project, name)
    if act == 2:
        return document.set_cloth_layers(project, name, dice.sample(LAYERS, dice.randrange(4)))
    if act == 3:
        key = dice.choice(list(CLOTH_ROWS))
        return document.set_cloth(
            project, name, **{key: _spread(CLOTH_ROWS[key].low, CLOTH_ROWS[key].high, dice)}
        )
    return document.set_cloth(project, name, price=Decimal(dice.randrange(9000)) / 100)


def _seams(project: Project, dice: Random) -> Project:
    where, seam, level = _quarter(dice), _seam(project, dice), dice.choice(LEVELS)
    part = dice.uniform(-0.2, 1.2)
    return _one(
        dice,
        lambda: document.set_pin(project, where, seam, level, dice.choice([None, dice.uniform(-5, 40)])),
        lambda: document.set_level_weight(project, where, seam, level, dice.choice([None, part])),
        lambda: document.set_weight(project, where, seam, part),
        lambda: document.set_left_part(project, where, seam, dice.choice([None, level]), part),
        lambda: document.set_seam_place(project, where, seam, part, part + dice.uniform(-0.1, 0.1)),
        lambda: document.set_through_bust_point(project, seam, dice.random() < 0.5),
        lambda: document.share_evenly(project, where, level),
    )


def _making(project: Project, dice: Random) -> Project:
    layer, making = dice.choice(LAYERS), project.making
    panel = dice.randrange(project.design.panel_count)
    mm = dice.uniform(-2, 60)
    return _one(
        dice,
        lambda: document.set_allowance_of(project, dice.choice(list(EDGE_KINDS)), mm),
        lambda: document.set_own_allowance(project, layer, panel, dice.choice(EDGE_NAMES), mm),
        lambda: document.set_layer_made(project, layer, dice.random() < 0.5),
        lambda: document.set_layer_panel(project, layer, panel, dice.random() < 0.5),
        lambda: document.set_turn(project, layer, dice.uniform(-9, 9)),
        lambda: document.set_front(project, dice.choice(("fold", "busk"))),
        lambda: document.set_busk(project, dice.choice([None, mm * 5])),
        lambda: document.set_bone_place(project, dice.choice(BONE_PLACES), dice.random() < 0.5),
        lambda: document.set_marks(project, **_made_of(Marks(), "marks", dice)),
        lambda: document.set_lacing(project, **_made_of(Opening(), "opening", dice)),
        lambda: document.set_boning(project, **_made_of(Boning(), "boning", dice)),
        lambda: document.set_making(project, **_made_of(making, "", dice)),
    )


def _beads(project: Project, dice: Random) -> Project:
    beads = project.beads
    number = dice.randrange(4)
    points = (ShapePoint(0.3, dice.uniform(-60, 0)), ShapePoint(1.6, dice.uniform(0, 60)))
    return _one(
        dice,
        lambda: document.add_usual_kinds(project),
        lambda: document.add_kind(project),
        lambda: document.set_kind(project, number, size_mm=dice.uniform(0.5, 12)),
        lambda: document.remove_kind(project, number),
        lambda: document.add_run(project, dice.choice(("neckline", "hem", "seam")), seam=number),
        lambda: document.add_run(project, "drawn", points=points),
        lambda: document.set_run(project, number, spacing_mm=dice.uniform(1, 30), rows=number),
        lambda: document.remove_run(project, number) if len(beads.runs) > 1 else project,
        lambda: document.add_scatter(project, (number,)),
        lambda: document.set_scatter(project, number, per_square_inch=dice.uniform(0.2, 6)),
        lambda: document.remove_scatter(project, number),
        lambda: document.set_bands(project, seam_mm=dice.uniform(-1, 20)),
    )


def _fittings(project: Project, dice: Random) -> Project:
    number = dice.randrange(3)
    gap = dice.choice([None, dice.uniform(-5, 150)])
    return _one(
        dice,
        lambda: document.add_fitting(project, dice.choice(["", "2031-05-20", "May"])),
        lambda: document.remove_fitting(project, number),
        lambda: document.set_fitting(project, number, notes=dice.choice(_TEXTS)),
        lambda: document.set_fitting(project, number, applied=dice.random() < 0.5),
        lambda: document.set_gap(project, number, dice.choice(["top", "waist", "hem"]), gap),
    )


def _wishes(project: Project, dice: Random) -> Project:
    name = dice.choice([each.name for each in project.pictures] or ["none"])
    return _one(
        dice,
        lambda: document.add_wish(project, picture(dice.choice("ab"), 8, 6)),
        lambda: document.remove_wish(project, name),
        lambda: document.set_wish_note(project, name, dice.choice(_TEXTS)),
        lambda: document.lay_behind(project, name),
        lambda: document.take_away_behind(project),
        lambda: document.move_behind(project, dice.uniform(-99, 99), dice.uniform(-99, 99)),
        lambda: document.scale_behind(project, dice.uniform(0.001, 60)),
    )


def _taken(project: Project, dice: Random) -> Project:
    number = dice.randrange(3)
    return _one(
        dice,
        lambda: document.measure_anew(project, f"2031-0{1 + dice.randrange(9)}-10"),
        lambda: document.take_back(project, number),
        lambda: document.remove_taken(project, number),
    )


def _quote(project: Project, dice: Random) -> Project:
    amount = Decimal(dice.randrange(-100, 20_000)) / 100
    keys = [row.key for row in project.quoting.prices] or ["busk"]
    return _one(
        dice,
        lambda: document.set_quoting(project, rate=amount),
        lambda: document.set_price(project, dice.choice(keys), dice.choice([None, amount])),
        lambda: document.set_bought(project, dice.choice(keys), dice.random() < 0.5),
        lambda: document.set_currency(project, symbol=dice.choice(["€", "$", "kr", ""])),
    )


def _client(project: Project, dice: Random) -> Project:
    field = dice.choice(["name", "wish", "worn", "notes", "measured_by"])
    return document.set_client(project, **{field: dice.choice(_TEXTS)})


def _measure(project: Project, dice: Random) -> Project:
    return document.set_measurement(project, dice.choice(list(BY_KEY)), dice.choice(_LENGTHS))


def _limit(project: Project, dice: Random) -> Project:
    bounds = dice.choice(LIMIT_TABLE)
    return document.set_limit(project, bounds.key, _spread(bounds.low, bounds.high, dice))


def _torso(project: Project, dice: Random) -> Project:
    bounds = dice.choice(list(TORSO_TABLE))
    return document.set_torso(project, bounds.key, _spread(bounds.low, bounds.high, dice))


def _paper(project: Project, dice: Random) -> Project:
    name = dice.choice(["A4", "Letter", "A3", "A0", "roll"])
    return document.set_paper(project, name=name, margin_mm=dice.uniform(-2, 40))


def _figures(project: Project, dice: Random) -> Project:
    design = document.set_reduction(project, dice.choice(LEVELS), dice.uniform(-40, 120))
    return _one(
        dice,
        lambda: design,
        lambda: document.set_opening(project, dice.uniform(-5, 110)),
        lambda: document.set_front_share(project, dice.uniform(0.4, 0.6)),
        lambda: document.set_rule(project, dice.choice(["one_figure", "own_figure"])),
    )


def _shape(project: Project, dice: Random) -> Project:
    if dice.random() < 0.3:
        return document.set_style(project, dice.choice(["under_bust", "over_bust"]))
    return document.set_panels(project, _quarter(dice), dice.randrange(1, 7))


def _unit(project: Project, dice: Random) -> Project:
    return document.set_unit(project, dice.choice(["in", "cm"]), dice.choice([8, 16]))


def _done(project: Project, dice: Random) -> Project:
    return document.set_done(project, f"step {dice.randrange(5)}", dice.random() < 0.6)


EDITS: tuple[tuple[str, Edit], ...] = (
    ("Figures", _figures), ("Measurement", _measure), ("Shape", _shape), ("Line", _line), ("Seams", _seams),
    ("Making", _making), ("Cloth", _cloth), ("Quote", _quote), ("Beads", _beads), ("Fittings", _fittings),
    ("Pictures", _wishes), ("Days", _taken), ("Client", _client), ("Limit", _limit), ("Torso", _torso),
    ("Paper", _paper), ("Unit", _unit), ("Done", _done),
)  # fmt: skip


def edited(project: Project, dice: Random) -> tuple[str, Project]:
    """The name of an edit and the project after it; the same project where the edit was refused in words."""
    name, edit = dice.choice(EDITS)
    try:
        return name, edit(project, dice)
    except ValueError as refused:
        said = str(refused)
        assert said.endswith("."), said
        assert said[:1].isupper() or not said[:1].isalpha(), said
        return name, project
