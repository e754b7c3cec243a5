"""The form of the fittings place: which fitting, then all that was written down at it."""

from __future__ import annotations

from datetime import date

from workbench.document import Picture, add_fitting
from workbench.draft import Place
from workbench.ui.desk import Desk
from workbench.ui.fitting.bench import Compared, FittingBench
from workbench.ui.fitting.cards import FittingList
from workbench.ui.fitting.sections import TheFitting, TheOpening, WhatWasPinned
from workbench.ui.form.row import Row
from workbench.ui.form.sections_form import OneOrAllForm


class FittingForm(OneOrAllForm):
    """The fitting, its opening, what was pinned; nothing of it before there is a fitting."""

    def __init__(self, desk: Desk, bench: FittingBench) -> None:
        self._bench = bench
        self.list = FittingList(bench)
        self.opening = TheOpening(desk, bench)
        self.pinned = WhatWasPinned(desk, bench)
        sections = (TheFitting(desk, bench), self.opening, self.pinned)
        super().__init__(desk, sections, self.pinned, below=self.list)
        self.list.add.clicked.connect(self.on_add)
        bench.shown.connect(self.show_picture)
        bench.worked_out.connect(self.show_compared)
        bench.fitting_shown.connect(self.on_shown)

    def show_picture(self, picture: Picture) -> None:
        """Show the list, and the fitting that is picked in it."""
        self.list.show_picture(picture)
        there = self._bench.fitting is not None
        for section in self.sections:
            section.setVisible(there)
        self.search.setEnabled(there)
        self.all.setEnabled(there)
        if there:
            super().show_picture(picture)

    def show_compared(self, compared: Compared) -> None:
        """Show what the opening says."""
        self.opening.show_compared(compared)
        self.show_picture(compared.picture)

    def row_at(self, place: Place | None) -> Row | None:
        """A line that a finding names, its fitting put on show."""
        if not self._bench.in_sight or place is None:
            return None
        parts = (place.field or "").split(".")
        if parts[0] == "fittings" and len(parts) > 1 and int(parts[1]) != self._bench.number:
            self._bench.show_fitting(int(parts[1]))
        return super().row_at(place)

    def on_shown(self, _number: int) -> None:
        """Hold on to nothing that was typed for another fitting."""
        self.begin_anew()

    def on_add(self) -> None:
        """Add a fitting of today, and look at it."""
        try:
            changed = add_fitting(self._desk.project, date.today().isoformat())
        except ValueError as error:
            self._desk.refuse("fittings", str(error))
            return
        self._desk.apply("Add a fitting", changed)
        self._desk.now()
        self._bench.show_fitting(len(changed.fittings) - 1)
