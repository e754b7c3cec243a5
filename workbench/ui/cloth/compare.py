"""Other ways to cut the cloth on show, laid side by side beside the window."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from workbench.body import say_with_unit
from workbench.cloth import Case, Cloth, Row, compare, say_money
from workbench.document import Picture, Project, set_allowance_of, set_cloth
from workbench.pieces import Cutting, cutting_of
from workbench.ui.cloth.rows import INCH, WIDTHS

_HAIR = 0.05
Change = Callable[[Project], Project]


@dataclass(frozen=True)
class Other:
    """One way to cut, and the edit that would choose it; None for the way it is now."""

    label: str
    group: str
    change: Change | None
    step_name: str = ""


@dataclass(frozen=True)
class Told:
    """A row of the table in words."""

    other: Other
    length: str
    buy: str
    used: str
    cost: str
    trouble: str = ""


def others_of(project: Project, cloth: Cloth) -> tuple[Other, ...]:
    """The ways worth comparing, in groups: as it is, laid, width, nap, allowances."""
    return (Other("As it is", "", None), *_others(project, cloth))


def _others(project: Project, cloth: Cloth) -> Iterator[Other]:
    folded = cloth.laid == "folded"
    if cloth.remnant is None:
        yield _of_cloth(
            cloth, "Single" if folded else "Folded", "Laid", laid="single" if folded else "folded"
        )
        for mm, text in WIDTHS[project.unit]:
            if abs(mm - cloth.width_mm) > _HAIR:
                yield _of_cloth(cloth, f"{text} {project.unit} wide", "Width", width_mm=mm)
    either = cloth.run == "one_way"
    label = "Either way" if either else "One way"
    yield _of_cloth(cloth, label, "Nap or print", run="either_way" if either else "one_way")
    usual = (INCH, 1.5 * INCH) if project.unit == "in" else (25.0, 40.0)
    for mm in usual:
        said = say_with_unit(mm, project.unit, project.fraction)
        yield Other(f"Seams {said}", "Allowance", _seams(mm), "Allowance of the seams")


def _of_cloth(cloth: Cloth, label: str, group: str, **changes: Any) -> Other:
    def change(project: Project) -> Project:
        return set_cloth(project, cloth.name, **changes)

    return Other(label, group, change, group)


def _seams(mm: float) -> Change:
    def change(project: Project) -> Project:
        return set_allowance_of(project, "seam", mm)

    return change


def told_of(picture: Picture, cloth: Cloth, other: Other) -> Told | None:
    """One way laid the plain way; None where there is nothing to lay. Takes some hundredths of a second."""
    project = other.change(picture.project) if other.change is not None else picture.project
    cutting = _cutting(picture, project)
    if cutting is None:
        return None
    [row] = compare([Case(other.label, cutting, project.cloth(cloth.name))])
    return _in_words(row, other, project)


def _cutting(picture: Picture, project: Project) -> Cutting | None:
    if project.making == picture.project.making:
        return picture.cutting
    return cutting_of(picture.good, project.making) if picture.good is not None else None


def _in_words(row: Row, other: Other, project: Project) -> Told:
    if row.plan is None or row.buy is None:
        told = row.trouble.text(project.unit, project.fraction) if row.trouble is not None else ""
        return Told(other, "does not fit", "", "", "", told)
    length = say_with_unit(row.plan.length_mm, project.unit, project.fraction)
    bought = row.buy.length_mm > 0
    cost = say_money(row.buy.cost, project.quoting.currency) if row.buy.cost is not None and bought else ""
    words = row.buy.words if bought else "none"
    if row.plan.left_over:
        words = "too small"
    return Told(other, length, words, f"{100 * row.plan.utilisation:.0f} %", cost or "–")


def as_text(cloth: str, rows: tuple[Told, ...]) -> str:
    """The table as text, columns apart by tabs."""
    lines = [f"{cloth}: other ways to cut it", "way\tlength\tto buy\tused\tcost"]
    lines += ["\t".join((row.other.label, row.length, row.buy, row.used, row.cost)) for row in rows]
    return "\n".join(lines) + "\n"
