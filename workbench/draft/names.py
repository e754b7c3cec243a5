"""Names of panels, seams and levels as they are said in sentences, and the finding that stops a draft."""

from __future__ import annotations

from workbench.body import LEVEL_LABEL, LevelName
from workbench.draft.design import Design
from workbench.draft.result import Finding, Place

Findings = tuple[Finding, ...]


def panel_name(index: int, design: Design) -> str:
    """``Front 1`` at the centre front, ``Back 1`` beyond the side seam."""
    front = design.front.panel_count
    return f"Front {index + 1}" if index < front else f"Back {index - front + 1}"


def seam_name(index: int, design: Design) -> str:
    """Seams are counted like panels; the one between front and back is the side seam."""
    front = design.front.panel_count
    if index == 0:
        return "centre front"
    if index == design.panel_count:
        return "centre back"
    if index == front:
        return "side seam"
    return f"front seam {index}" if index < front else f"back seam {index - front}"


def low_label(level: LevelName) -> str:
    """A level's name in the middle of a sentence."""
    return LEVEL_LABEL[level].lower()


def stop(code: str, sentence: str, place: Place, remedy: str, **values: float | str) -> Finding:
    """A finding that stops the draft; lengths are floats, words are strings."""
    lengths = {name: value for name, value in values.items() if isinstance(value, float)}
    words = {name: value for name, value in values.items() if isinstance(value, str)}
    return Finding("stop", code, sentence, lengths, words, place, remedy)
