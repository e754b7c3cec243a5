"""What the chooser says of a shape."""

from __future__ import annotations

from workbench.document import STYLE_WORDS
from workbench.styles import KeptShape, TriedOn

HERS = "yours"
STAYS = "How far she is drawn in, the opening and her limits stay as they are."


def said_panels(shape: KeptShape) -> str:
    """``3 + 3 panels a side``, and whether it is one of hers."""
    front, back = shape.panels
    return f"{front} + {back} panels a side" + (f" · {HERS}" if shape.path is not None else "")


def said_kind(shape: KeptShape) -> str:
    """Style, panels and how it closes in front."""
    project = shape.project
    front, back = shape.panels
    closes = "opens in front with a busk" if project.making.front == "busk" else "cut on the fold in front"
    panels = f"{front} panels in the front half, {back} in the back half"
    return f"{STYLE_WORDS[project.design.style]} · {panels} · {closes}"


def spoken(shape: KeptShape) -> str:
    """All that a card shows, for a screen reader."""
    front, back = shape.panels
    panels = f"{front} panels in the front half, {back} in the back half"
    purpose = f"{shape.name}. {shape.purpose}" if shape.purpose else f"{shape.name}."
    return f"{purpose} {panels}{', one of yours' if shape.path is not None else ''}"


def said_whose(tried: TriedOn) -> str:
    """Whose body it is drawn on."""
    if tried.on_her:
        return "Drawn on the measurements of this project."
    return (
        f"Drawn on an invented body. {tried.missing} "
        "Once she is measured, use the shape again: it is then put in proportion to her."
    )


def said_findings(tried: TriedOn) -> str:
    """Why it cannot be used, or what has to give and what to look at, a line each."""
    if not tried.on_her:
        return ""
    if tried.why_not:
        return f"It cannot be drafted on her: {tried.why_not}"
    parts = []
    for heading, lines in (("What has to give", tried.gave), ("To look at", tried.to_look_at)):
        if lines:
            parts.append("\n".join((heading, *(f"•  {line}" for line in lines))))
    return "\n\n".join(parts)
