"""The price list in the form: a row for everything that is bought besides cloth."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QHBoxLayout, QMenu, QPushButton, QWidget

from workbench.body import read_length, say_exact
from workbench.cloth import NO_PRICE, PriceRow
from workbench.document import Picture, Project, set_bought, set_price_row
from workbench.ui.cloth.figures import NO_PRICE as NO_PRICE_WORDS
from workbench.ui.desk import Desk
from workbench.ui.form.entry import HEIGHT
from workbench.ui.form.field import Field, FigureRow
from workbench.ui.form.kinds import read_number
from workbench.ui.form.row import EDGE
from workbench.ui.look import GRID, fonts
from workbench.ui.quote.figures import Priced
from workbench.ui.tick import Tick

_PRICE, _PACK = 24 * GRID, 27 * GRID
Per = Literal["each", "yard", "metre", "pair", "pack"]
_PERS: dict[Per, str] = {
    "each": "each",
    "pair": "a pair",
    "pack": "a pack",
    "yard": "a yard",
    "metre": "a metre",
}


class PerButton(QPushButton):
    """What a price is for: a button with the few that there are in its menu."""

    chosen = Signal(str)
    """The one she picked."""

    def __init__(self, name: str) -> None:
        super().__init__()
        self._name = name
        self.setObjectName("quiet")
        self.setFixedHeight(HEIGHT)
        # held here and not a child: a menu is a window of its own, and no stop of the tab key
        self.offered = QMenu()
        for per, words in _PERS.items():
            self.offered.addAction(words).setData(per)
        self.setMenu(self.offered)
        self.offered.triggered.connect(self.on_triggered)

    def show_per(self, per: Per) -> None:
        """Show which it is."""
        if self.text() != _PERS[per]:
            self.setText(_PERS[per])
            self.setAccessibleName(f"{self._name} {_PERS[per]}")

    def on_triggered(self, action: QAction) -> None:
        """Say which she picked."""
        self.chosen.emit(action.data())


class Pack:
    """How much is in a pack: a number of what is counted, a length of what is measured."""

    def __init__(self, priced: Priced, label: str) -> None:
        self._priced = priced
        self.name, self.label = f"{priced.name}.pack", f"In a pack of {label}"
        self.step_name = "Size of a pack"

    def stamp(self, _project: Project) -> object:
        """Number and length."""
        row = self._priced.row()
        return (row.pack_count, row.pack_mm) if row is not None else None

    def text(self, project: Project) -> str:
        """``24``, or ``500`` with the unit behind it."""
        row = self._priced.row()
        if row is None:
            return ""
        if row.pack_mm > 0:
            return f"{say_exact(row.pack_mm / self._unit_mm(project) * 25.4, 'in')} {self._unit(project)}"
        return str(row.pack_count)

    def suffix(self, _project: Project) -> str:
        """What it says."""
        return "in a pack"

    def typed(self, project: Project, text: str) -> Project:
        """A plain number counts; one with a unit of length behind it measures."""
        row = self._priced.row()
        if row is None:
            return project
        for unit, mm in (("yd", 914.4), ("m", 1000.0)):
            if text.strip().endswith(unit) and not text.strip().endswith(("mm", "cm")):
                length = read_number(text.strip().removesuffix(unit)) * mm
                return set_price_row(project, replace(row, pack_mm=length, pack_count=1))
        if any(letter.isalpha() for letter in text):
            length = read_length(text, project.unit).mm
            return set_price_row(project, replace(row, pack_mm=length, pack_count=1))
        number = read_number(text)
        if number != int(number):
            raise ValueError("A pack holds a whole number, or a length such as 100 yd or 50 m.")
        return set_price_row(project, replace(row, pack_count=int(number), pack_mm=0.0))

    def moved(self, project: Project, steps: int) -> Project:
        """One more or less of what is counted."""
        row = self._priced.row()
        if row is None or row.pack_mm > 0:
            return project
        return set_price_row(project, replace(row, pack_count=max(row.pack_count + steps, 1)))

    @staticmethod
    def _unit(project: Project) -> str:
        return "m" if project.unit == "cm" else "yd"

    @staticmethod
    def _unit_mm(project: Project) -> float:
        return 1000.0 if project.unit == "cm" else 914.4


class PriceListRow(FigureRow):
    """Name and price; below them what the price is for, and whether it is bought at all."""

    def __init__(self, desk: Desk, priced: Priced, label: str) -> None:
        super().__init__(desk, priced.figure(label), label=label, width=_PRICE)
        self.priced = priced
        self.words = f"price {label}".lower()
        self.per = PerButton(f"Price of {label}")
        self.pack = Field(desk, Pack(priced, label), self, _PACK)
        self.bought = Tick("Bought", self)
        self.bought.setFont(fonts().small)
        self.bought.setAccessibleName(f"{label} is bought")
        below = QHBoxLayout()
        below.setSpacing(2 * GRID)
        below.addWidget(self.bought)
        below.addStretch(1)
        below.addWidget(self.pack)
        below.addWidget(self.per)
        self.column.insertLayout(1, below)
        self.column.setContentsMargins(EDGE, GRID, EDGE, 2 * GRID)
        self.per.chosen.connect(self.on_per)
        self.bought.clicked.connect(self.on_bought)

    def show_picture(self, picture: Picture) -> None:
        """Show what is stored; what is not bought needs no price."""
        row, project = self.priced.row(), picture.project
        if row is None:
            return
        self.show_label(row.name)
        on = row.key not in project.quoting.not_bought
        with QSignalBlocker(self.bought):
            self.bought.setChecked(on)
        self.per.show_per(row.per)
        self.field.show_project(picture, NO_PRICE_WORDS)
        self.pack.show_project(picture)
        for widget in (self.per, self.field):
            widget.setEnabled(on)
        self.pack.setVisible(on and row.per == "pack")
        if not self.trouble:
            self.say("")

    def on_per(self, wanted: str) -> None:
        """The price is for something else."""
        row = self.priced.row()
        per = next(known for known in _PERS if known == wanted)
        if row is not None:
            changed = replace(row, per=per)
            self.desk.apply(f"Price: {row.name}", set_price_row(self.desk.project, changed))

    def on_bought(self, on: bool) -> None:
        """Bought for this bodice, or there already."""
        row = self.priced.row()
        if row is not None:
            self.desk.apply(f"Bought: {row.name}", set_bought(self.desk.project, row.key, on))

    def target(self) -> QWidget | None:
        """The price."""
        return self.field


def of_one_length(row: PriceRow) -> bool:
    """Whether a line is for a bone of one length alone, and has no price of its own."""
    return row.key.startswith("bone/") and row.key.count("/") > 1 and row.price == NO_PRICE
