"""A project begun from a shape before anybody was measured: its lines still lie as on the invented body."""

from __future__ import annotations

from collections.abc import Iterable

from workbench.document import Picture
from workbench.draft import Finding, Outcome, Place
from workbench.styles.drawn import drawn_shapes
from workbench.styles.kept import KeptShape

_SAME_MM = 0.5
"""Heights that differ by less are the same to a tape (own choice)."""


def not_yet_hers(picture: Picture, hers: Iterable[KeptShape] = ()) -> tuple[Finding, ...]:
    """A finding where neckline and hem are those of the shape begun from, and the body is another by now.

    Shapes kept by her are looked for in ``hers``, before those that come with the program.
    """
    project, outcome = picture.project, picture.outcome
    if not project.style_name or outcome is None:
        return ()
    shapes = (*hers, *drawn_shapes(project.unit))
    shape = next((shape for shape in shapes if shape.name == project.style_name), None)
    invented = shape.worked_out.outcome if shape is not None else None
    if invented is None or not _lines_alike(outcome, invented) or _heights_alike(outcome, invented):
        return ()
    return (
        Finding(
            "attend",
            "shape_waits",
            "Neckline and hem still lie as on the invented body of the shape “{shape}”.",
            words={"shape": project.style_name},
            place=Place(line="neckline"),
            remedy="Use the shape again: it is then put in proportion to her.",
        ),
    )


def _lines_alike(one: Outcome, other: Outcome) -> bool:
    own = (one.design.neckline, one.design.hem)
    return own == (other.design.neckline, other.design.hem) and own != (None, None)


def _heights_alike(one: Outcome, other: Outcome) -> bool:
    if len(one.levels) != len(other.levels):
        return False
    pairs = zip(one.levels, other.levels, strict=True)
    return all(abs(low.walk - high.walk) <= _SAME_MM for low, high in pairs)
