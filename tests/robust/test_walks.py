"""Edits, gestures, undo, redo, save and open in any order, against a plain list of projects."""

from __future__ import annotations

import os
import traceback
from collections.abc import Iterator
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory

import numpy as np
import pytest

from tests.document import example
from tests.robust import SEED, how_many
from tests.robust.edits import edited
from tests.robust.samples import DEMOS, full_project
from tests.robust.tally import row
from workbench.document import Picture, Project, Session, picture_of, read_project, to_bytes, write_project

_STEPS = (5, 40)
_LOOKED_AT = 8
"""Of so many walks one is looked at all along: what pictures lend each other must be as if made anew."""
_MEMORY = Path("/dev/shm")


class PlainDesk:
    """What a desk should do, without any cleverness: a list of projects, a place in it, and the file."""

    def __init__(self, project: Project) -> None:
        self.all, self.at = [project], 0
        self.saved = project

    @property
    def project(self) -> Project:
        return self.all[self.at]

    def edit(self, project: Project) -> None:
        if project != self.project:
            self.all[self.at + 1 :] = [project]
            self.at += 1

    def move(self, by: int) -> None:
        self.at = min(max(self.at + by, 0), len(self.all) - 1)


class Walk:
    """One walk, step by step, with the session and the plain desk beside each other."""

    def __init__(self, dice: Random, path: Path) -> None:
        self.dice, self.path = dice, path
        start = dice.choice([example(), full_project(), *(read_project(demo) for demo in DEMOS)])
        write_project(start, path)
        self.session, self.plain = Session(start, path), PlainDesk(start)
        self.trail: list[str] = []

    def step(self) -> None:
        acts = (
            self.edit,
            self.edit,
            self.edit,
            self.drag,
            self.undo,
            self.undo,
            self.redo,
            self.save,
            self.open,
        )
        act = self.dice.choice(acts)
        self.trail.append(act.__name__)
        act()
        session, plain = self.session, self.plain
        assert session.project == plain.project
        assert session.unsaved == (plain.project != plain.saved)
        assert (session.undo_name is None) == (plain.at == 0)
        assert (session.redo_name is None) == (plain.at == len(plain.all) - 1)

    def edit(self) -> None:
        name, project = edited(self.session.project, self.dice)
        self.trail[-1] = name
        self.session.apply(name, project)
        self.plain.edit(project)

    def drag(self) -> None:
        self.session.begin("drag")
        for _ in range(self.dice.randrange(4)):
            self.session.preview(edited(self.session.project, self.dice)[1])
        end = self.dice.choice([self.session.commit, self.session.cancel, self.session.undo])
        if end == self.session.commit:
            self.plain.edit(self.session.project)
        end()

    def undo(self) -> None:
        self.session.undo()
        self.plain.move(-1)

    def redo(self) -> None:
        self.session.redo()
        self.plain.move(1)

    def save(self) -> None:
        write_project(self.session.project, self.path)
        self.session.mark_saved(self.path)
        self.plain.saved = self.plain.project
        assert self.path.read_bytes() == to_bytes(self.plain.project)

    def open(self) -> None:
        project = read_project(self.path)
        assert project == self.plain.saved
        self.session, self.plain = Session(project, self.path), PlainDesk(project)

    def look(self) -> None:
        """Work out everything as panes do, so that the next picture has something to be lent."""
        picture = self.session.picture
        _ = (picture.all_findings, picture.lays, picture.quote, picture.sewing)


@pytest.fixture
def place(tmp_path: Path) -> Iterator[Path]:
    """Where saves are quick, if there is such a place: nothing here is shown by waiting for a disk."""
    if not os.access(_MEMORY, os.W_OK):
        yield tmp_path
        return
    with TemporaryDirectory(dir=_MEMORY) as folder:
        yield Path(folder)


def test_walks(place: Path) -> None:
    tally, looks = row("walks of edit, undo, redo, save, open"), row("pictures against new ones")
    steps = 0
    for number in range(how_many("walks")):
        dice = Random(f"{SEED} walk {number}")
        walk = Walk(dice, place / "a.bodice")
        looked_at = number % _LOOKED_AT == 0
        try:
            for _ in range(dice.randint(*_STEPS)):
                walk.step()
                if looked_at:
                    walk.look()
            unlike = _unlike(walk.session.picture) if looked_at else ""
            walk.save()
            walk.open()
        except Exception as error:  # whatever it is, it is what this looks for
            where = traceback.extract_tb(error.__traceback__)[-1]
            tally.fall(f"no. {number}, after {walk.trail}: {type(error).__name__}: {error} in {where}")
            continue
        steps += len(walk.trail)
        tally.note("held")
        if looked_at:
            (looks.fall if unlike else looks.note)(f"no. {number}: {unlike}" if unlike else "alike")
    tally.figures["steps"] = str(steps)
    tally.check()
    looks.check()


def _unlike(picture: Picture) -> str:
    """What differs between a picture that grew out of others and one made from nothing."""
    fresh = picture_of(picture.project)
    if picture.findings != fresh.findings:
        return "findings"
    if not picture.current:
        return ""
    if not _same_pieces(picture, fresh):
        return "pieces"
    for name in ("all_findings", "cloth_findings", "quote", "sewing"):
        if getattr(picture, name) != getattr(fresh, name):
            return name
    plans = [(lay.plan, lay.state) for lay in picture.lays], [(lay.plan, lay.state) for lay in fresh.lays]
    return "" if plans[0] == plans[1] else "lays"


def _same_pieces(one: Picture, other: Picture) -> bool:
    assert one.cutting is not None
    assert other.cutting is not None
    pairs = zip(one.cutting.pieces, other.cutting.pieces, strict=True)
    return all(np.array_equal(a.cut, b.cut) and np.array_equal(a.stitch, b.stitch) for a, b in pairs)
