"""The form of the pieces place: how the bodice is made, in the order in which it is decided."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from workbench.ui.desk import Desk
from workbench.ui.form.sections_form import OneOrAllForm
from workbench.ui.pieces.allowances import Allowances
from workbench.ui.pieces.bench import Bench, Laid, Worked
from workbench.ui.pieces.layers import Layers
from workbench.ui.pieces.section import MakingSection
from workbench.ui.pieces.sections import BackOpening, Bones, Facings, Front, Notches


class MakingForm(OneOrAllForm):
    """The sections of the making; they follow what lies on the bench."""

    sections: tuple[MakingSection, ...]

    def __init__(self, desk: Desk, bench: Bench, parent: QWidget | None = None) -> None:
        kinds = (Layers, Allowances, Notches, Front, BackOpening, Bones, Facings)
        sections = tuple(kind(desk, bench) for kind in kinds)
        super().__init__(desk, sections, sections[0], parent)
        self._made: tuple[object, ...] = ()
        bench.laid.connect(self.show_laid)
        bench.worked_out.connect(self.show_worked)

    def show_laid(self, laid: Laid) -> None:
        """Show what is stored, where any of it is another; what hangs on the draft waits for the hand."""
        project = laid.picture.project
        made = (self._desk.session, project.making, project.unit, project.fraction, laid.name)
        if made != self._made:
            self._made = made
            self.show_picture(laid.picture)

    def show_worked(self, worked: Worked) -> None:
        """Show what follows from it too: a busk that fits, how many eyelets."""
        self.show_picture(worked.picture)
