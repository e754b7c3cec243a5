"""SVG files, read back by svgpathtools and by Python's own XML reader."""

from __future__ import annotations

import re
from dataclasses import replace
from xml.etree import ElementTree

import numpy as np
import pytest
from svgpathtools import parse_path

from tests.exchange.alike import Array, off
from tests.exchange.conftest import exported
from tests.sheets.conftest import HEADING, CutJob
from workbench.exchange import ExportChoice, export
from workbench.pieces import LAYERS

HUNDREDTH = 0.01
SVG = "{http://www.w3.org/2000/svg}"


def groups(data: bytes) -> dict[str, ElementTree.Element]:
    """The groups of the pieces, by key."""
    drawing = ElementTree.fromstring(data).find(f"{SVG}g")
    assert drawing is not None
    return {group.attrib["id"]: group for group in drawing.findall(f"{SVG}g")}


def lines(group: ElementTree.Element, layer: str) -> list[Array]:
    """The paths of one kind in a group, as svgpathtools reads them, y up."""
    found = [part for part in group.findall(f"{SVG}g") if part.get("class") == layer]
    paths = [parse_path(path.attrib["d"]) for part in found for path in part.findall(f"{SVG}path")]
    return [
        np.array([(step.start.real, -step.start.imag) for step in path], dtype=np.float64) for path in paths
    ]


def test_a_unit_is_a_millimetre(cut: CutJob) -> None:
    # SVG 1.1, chapter 7: width and height with their units, over the numbers of the viewBox
    top = ElementTree.fromstring(exported(cut, "svg")).attrib
    wide, high = (float(top[side].removesuffix("mm")) for side in ("width", "height"))
    assert top["viewBox"] == f"0 0 {wide:.4f} {high:.4f}"


@pytest.mark.parametrize("scale", [1.0, 0.5, 0.25])
def test_every_piece_is_a_group_with_its_lines_within_a_hundredth(cut: CutJob, scale: float) -> None:
    found = groups(exported(cut, "svg", layers=LAYERS, scale=scale))
    assert len(found) == len(cut.cutting.pieces)
    for group, piece in zip(found.values(), cut.cutting.pieces, strict=True):
        assert off(piece.cut * scale, lines(group, "cut")) <= HUNDREDTH
        assert off(piece.stitch * scale, lines(group, "stitch")) <= HUNDREDTH
        assert len(lines(group, "notch")) == sum(notch.count for notch in piece.notches)


def test_lengths_are_those_of_the_draft(cut: CutJob) -> None:
    found = groups(exported(cut, "svg"))
    for piece in cut.cutting.layers[0].pieces:
        group = next(
            g for key, g in found.items() if key == f"fashion-{piece.name.lower().replace(' ', '-')}"
        )
        path = next(p for part in group.findall(f"{SVG}g") if part.get("class") == "stitch" for p in part)
        ring = np.concatenate((piece.stitch, piece.stitch[:1]))
        length = float(np.hypot(*np.diff(ring, axis=0).T).sum())
        assert parse_path(path.attrib["d"]).length() == pytest.approx(length, abs=HUNDREDTH)


def test_panels_have_stitch_lines_alone_drawn_unbroken(cut: CutJob) -> None:
    data = exported(cut, "svg", what="panels")
    draft = cut.job.outcome.draft
    assert draft is not None
    for group, panel in zip(groups(data).values(), draft.panels, strict=True):
        assert off(panel.outline, lines(group, "stitch")) <= HUNDREDTH
        assert not lines(group, "cut")
        stitch = next(part for part in group.findall(f"{SVG}g") if part.get("class") == "stitch")
        assert "stroke-dasharray" not in stitch.attrib


def test_nothing_lies_outside_the_page_or_on_something_else(cut: CutJob) -> None:
    data = exported(cut, "svg", layers=LAYERS)
    wide, high = (float(n) for n in ElementTree.fromstring(data).attrib["viewBox"].split()[2:])
    boxes = []
    for group in groups(data).values():
        points = np.concatenate([*lines(group, "cut"), *lines(group, "stitch")])
        boxes.append((*points.min(axis=0), *points.max(axis=0)))
    for left, low, right, top in boxes:
        assert left >= 0
        assert right <= wide
        assert top <= 0
        assert low >= -high
    for number, (left, low, right, top) in enumerate(boxes):
        for other in boxes[number + 1 :]:
            assert other[0] >= right or other[2] <= left or other[1] >= top or other[3] <= low


def test_the_same_pieces_give_the_same_bytes_without_a_date(cut: CutJob) -> None:
    data = exported(cut, "svg")
    assert data == exported(cut, "svg")
    assert not re.search(rb"20\d\d-\d\d-\d\dT", data)


def test_a_client_with_signs_that_xml_cannot_hold_is_named_all_the_same(cut: CutJob) -> None:
    words = replace(HEADING, client="A & <B> \x00\x0b\ud800\uffff “C”")
    data = export(cut.job.outcome, cut.cutting, words, "svg", ExportChoice())
    title = ElementTree.fromstring(data).find(f"{SVG}title")
    assert title is not None
    assert title.text is not None
    assert title.text.startswith("A & <B>")


def test_a_note_at_the_foot_says_how_large_it_is(cut: CutJob) -> None:
    for scale, said in ((1.0, "True to size"), (0.25, "Quarter scale")):
        drawing = ElementTree.fromstring(exported(cut, "svg", scale=scale)).find(f"{SVG}g")
        assert drawing is not None
        note = drawing.findall(f"{SVG}text")[-1].text
        assert note is not None
        assert note.startswith(f"{said}, lengths in millimetres.")
        assert note.endswith("Figures invented for demonstration.")
