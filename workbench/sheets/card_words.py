"""What the client's card says, in sentences that follow from how her bodice is made.

Lacing and care are common practice, no source. Nothing here judges a figure: it is held
against the limit that was set, and questions of health go to a doctor.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from workbench.draft import Comfort, Outcome
from workbench.pieces import Cutting, Making

FIRST_WEARS_MM = 25.4
"""How much wider than planned the back is left the first few times; common practice, no source."""


@dataclass(frozen=True)
class CardLine:
    """A sentence with its lengths in mm, and whether it must not be overlooked."""

    sentence: str
    lengths: Mapping[str, float] = field(default_factory=dict)
    strong: bool = False


def putting_on(making: Making, opening_mm: float) -> Iterator[CardLine]:
    """How it is put on and closed, step by step."""
    under = "Wear a thin smooth layer under it, without folds."
    if making.opening.closing == "side_zip":
        yield CardLine(
            f"{under} Open the zip to its stop, step in, and bring it to your waist before you close it."
        )
        yield CardLine(
            "Close the zip standing, and let out your breath first; never force it over a fold of cloth."
        )
        return
    how = "then close the busk from the second stud down" if making.front == "busk" else "and step in"
    yield CardLine(
        f"{under} Loosen the cord until the back stands {{wide}} open, {how}.",
        {"wide": making.opening.step_in_gap_mm},
    )
    yield CardLine(
        "Set the waist of the bodice on your own waist before you pull: it does not move down later."
    )
    yield CardLine(
        "Pull up the slack from the top down and from the hem up, a little at a time, towards the waist."
    )
    yield CardLine(
        "The two back edges should stand parallel, {gap} apart when it is laced as planned. "
        "A gap that is wider at one end says that it must be let out there: tell your dressmaker.",
        {"gap": opening_mm},
    )
    yield CardLine(
        "The first few times lace it loosely, about {more} wider than planned, and wear it only a "
        "short while at home.",
        {"more": FIRST_WEARS_MM},
        strong=True,
    )
    yield CardLine(
        "Tie the loops in a bow, never in a knot, so that anybody can undo it at once.", strong=True
    )


def taking_off(making: Making) -> Iterator[CardLine]:
    """How to get out of it, slowly and in a hurry."""
    if making.opening.closing == "side_zip":
        yield CardLine("Open the zip all the way before you step out.")
        return
    if making.front == "busk":
        yield CardLine("Loosen the back all the way first; only then open the busk: under tension it bends.")
    else:
        yield CardLine("Undo the bow and open the cord from the waist outwards until you can step out.")
    yield CardLine(
        "In a hurry: undo the bow, pull the two loops at the waist apart, or cut the cord.", strong=True
    )


def figures(outcome: Outcome, comfort: Comfort) -> Iterator[CardLine]:
    """The waist as worn, against the body and the limit that was set."""
    waist = next(level for level in outcome.levels if level.name == "waist")
    yield CardLine(
        "Laced as planned it measures {finished} round the waist; your waist measured {body}.",
        {"finished": waist.finished, "body": waist.body},
    )
    judged = comfort.at("waist")
    if judged.most is None:
        return
    if judged.status == "over":
        yield CardLine(
            "That is {less} less, above the limit of {most} that was set for you: "
            "lace it wider than planned, and not for long.",
            {"less": waist.reduction, "most": judged.most},
            strong=True,
        )
    elif waist.reduction > 0:
        yield CardLine(
            "That is {less} less. The limit that was set for you is {most}: do not lace it further.",
            {"less": waist.reduction, "most": judged.most},
        )
    if judged.shut_status == "over" and judged.status != "over":
        yield CardLine("Laced shut it would be above that limit.", strong=True)


def care(cutting: Cutting, making: Making, beads: bool) -> Iterator[CardLine]:
    """How it is kept, by what is in it."""
    steel = any(bone.stuff != "plastic" for bone in cutting.bones) or making.front == "busk"
    plastic = any(bone.stuff == "plastic" for bone in cutting.bones)
    yield CardLine("Air it after each wearing, open and lying flat, before it is put away.")
    yield CardLine("Keep it flat or hung by two points, never folded across a bone.")
    if steel:
        yield CardLine(
            "Do not soak it: the steel inside rusts. Take out stains with a damp cloth and dry it at once."
        )
    else:
        yield CardLine("Take out stains with a damp cloth; ask before you wash all of it.")
    if plastic:
        yield CardLine("Use a cool iron only: plastic bones take on a bend in the heat and keep it.")
    if beads:
        yield CardLine(
            "Never press on the beads; when one hangs loose, stop wearing it until it is sewn on again."
        )
    yield CardLine(
        "Look along the edges now and then: a bone that shows its end must be put back before it pricks."
    )
