"""What the foot and an empty map say in the beads place."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter

from workbench.document import Picture
from workbench.draft import Finding
from workbench.ui.beads.bench import Worked
from workbench.ui.board.lettering import put
from workbench.ui.board.paint_words import missing_words, stop_of
from workbench.ui.look import fonts, look

_HEAVY = ("stop", "over")
_NOTHING = "No panels to bead yet"
_WRAP = int(Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap)


def findings_on_beads(picture: Picture, worked: Worked | None) -> tuple[Finding, ...]:
    """Limits that are passed, then what the plan has to say, then how many it comes to, then the rest."""
    heavy = tuple(finding for finding in picture.findings if finding.severity in _HEAVY)
    light = tuple(finding for finding in picture.findings if finding.severity not in _HEAVY)
    if not picture.current or worked is None:
        return heavy + light
    beading = worked.beading
    if beading is None:
        return (*heavy, _nothing_planned(), *light)
    weighty = tuple(finding for finding in beading.findings if finding.severity != "note")
    notes = tuple(finding for finding in beading.findings if finding.severity == "note")
    return (*heavy, *weighty, _told(worked), *notes, *light)


def _nothing_planned() -> Finding:
    return Finding(
        "note",
        "beads_none",
        "Nothing is beaded yet.",
        remedy="Add a run along an edge or a seam, or a scatter over panels, at the left.",
    )


def _told(worked: Worked) -> Finding:
    """How many, how many strands, how long."""
    assert worked.beading is not None
    count = worked.beading.count
    strands = sum(line.strands for line in count.kinds)
    hours = f", about {count.hours} h to sew on" if count.hours else ""
    return Finding(
        "note",
        "beads_told",
        "{beads} on the garment, {strands} to buy with the reserve{hours}.",
        words={
            "beads": f"{count.total:,} bead{'' if count.total == 1 else 's'}",
            "strands": f"{strands:,} strand{'' if strands == 1 else 's'}",
            "hours": hours,
        },
    )


def paint_nothing(painter: QPainter, picture: Picture, room: QRectF) -> None:
    """A title and what is missing, in the middle of the map."""
    stop, project = stop_of(picture), picture.project
    told = stop.text(project.unit, project.fraction) if stop is not None else ""
    middle = room.center()
    painter.setPen(look().ink)
    put(painter, _NOTHING, middle.x(), middle.y() - 18, fonts().title, "middle")
    painter.setFont(fonts().body)
    painter.setPen(look().soft_ink)
    sentence = missing_words(picture) or told
    painter.drawText(QRectF(middle.x() - 200, middle.y() + 4, 400, 120), _WRAP, sentence)
