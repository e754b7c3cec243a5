"""The shape: style, panels, where every seam stands and leans, neckline and hem."""

from __future__ import annotations

from PySide6.QtWidgets import QPushButton, QWidget

from workbench.document import (
    Picture,
    quarter_of,
    set_panels,
    set_style,
    set_through_bust_point,
    style_line_again,
)
from workbench.draft import FEWEST_PANELS, MOST_PANELS, LineName, Place, QuarterName, Style
from workbench.ui.desk import Desk
from workbench.ui.form.choice import Choice
from workbench.ui.form.field import FigureRow
from workbench.ui.form.figures import Stored
from workbench.ui.form.kinds import PartKind, in_words
from workbench.ui.form.row import Row, found_about
from workbench.ui.form.seam_place import SeamPlace, freed, places_on_block, seam_label, seam_number
from workbench.ui.form.section import Heading, Section
from workbench.ui.look import GRID
from workbench.ui.marks import Mark

NARROW = 19 * GRID
MOST_SEAMS = MOST_PANELS - 1
STYLES = (("under_bust", "Under-bust"), ("over_bust", "Over-bust"))
_UPRIGHT = 0.5
"""A lean of less mm than this is none."""


class SeamRow(FigureRow):
    """Where one seam stands and how it leans, with what that comes to on the cloth."""

    def __init__(self, desk: Desk, quarter: QuarterName, place: int) -> None:
        self.seam_place, self.quarter, self.place_in_quarter = SeamPlace(quarter, place), quarter, place
        label, where = seam_label(quarter, place), self.seam_place
        name, kind = f"{quarter}.seams", PartKind()
        stands = Stored(name, f"{label}, stands at", f"{label} place", kind, where.middle, where.put_middle)
        leans = Stored(name, f"{label}, leans by", f"{label} lean", kind, where.lean, where.put_lean)
        super().__init__(desk, stands, leans, label=label, width=NARROW)
        self.words = f"{self.words} place stands leans"

    def show_picture(self, picture: Picture) -> None:
        """Show it where there is such a seam."""
        seam = self.seam_place.seam(picture.project)
        self.show_wanted(seam is not None)
        if seam is None:
            return
        number = seam_number(picture.project.design, self.quarter, self.place_in_quarter)
        self.place = Place(field=self.name, seam=number)
        self.fields[0].setEnabled(not seam.through_bust_point)
        super().show_picture(picture)
        if seam.through_bust_point and picture.outcome is not None:
            # The stored place only counts once the seam is let go; what is shown is where it stands.
            foot, top = places_on_block(seam, self.quarter, picture.outcome)
            middle = 0.5 * (foot + top) / picture.outcome.blocks[self.quarter]
            self.fields[0].show_value(
                ("through the bust point", middle), PartKind().say(middle, picture.project)
            )

    def remark(self, picture: Picture) -> tuple[str, Mark | None]:
        """How far from its centre line it stands on the cloth, foot and top."""
        seam, outcome = self.seam_place.seam(picture.project), picture.outcome
        if seam is None or outcome is None:
            return "", None
        foot, top = places_on_block(seam, self.quarter, outcome)
        project, lean = picture.project, top - foot
        said = f"{in_words(foot, project)} from the centre {self.quarter}"
        if abs(lean) > _UPRIGHT:
            way = "to the side" if lean > 0 else f"to the centre {self.quarter}"
            said = f"Foot {said}, top {in_words(abs(lean), project)} further {way}"
        return f"{said}, through the bust point" if seam.through_bust_point else said, None


class ChoiceRow(Row):
    """A label and a choice beside it."""

    def __init__(self, desk: Desk, name: str, label: str, options: tuple[tuple[object, str], ...]) -> None:
        super().__init__(name, label)
        self.desk = desk
        self.choice = Choice(label, options)
        self.line.addWidget(self.choice)
        self.choice.chosen.connect(self.on_chosen)

    def on_chosen(self, value: object) -> None:
        """Store it."""
        raise NotImplementedError

    def target(self) -> QWidget | None:
        """The button that is in."""
        return self.choice.button(self.choice.value)


class StyleRow(ChoiceRow):
    """Under-bust or over-bust."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk, "style", "Style", STYLES)

    def on_chosen(self, value: object) -> None:
        """Store it."""
        style: Style = "over_bust" if value == "over_bust" else "under_bust"
        self.desk.apply("Style", set_style(self.desk.project, style))

    def show_picture(self, picture: Picture) -> None:
        """Show which it is."""
        self.choice.show_value(picture.project.design.style)


class PanelsRow(ChoiceRow):
    """How many panels a quarter has."""

    def __init__(self, desk: Desk, quarter: QuarterName) -> None:
        counts = tuple((count, str(count)) for count in range(FEWEST_PANELS, MOST_PANELS + 1))
        super().__init__(desk, f"{quarter}.panels", f"Panels in the {quarter} half", counts)
        self.quarter = quarter

    def on_chosen(self, value: object) -> None:
        """Store it."""
        if isinstance(value, int):
            changed = set_panels(self.desk.project, self.quarter, value)
            self.desk.apply(f"Panels in the {self.quarter}", changed)

    def show_picture(self, picture: Picture) -> None:
        """Show how many."""
        self.choice.show_value(quarter_of(picture.project.design, self.quarter).panel_count)
        self.say(*found_about(self.name, picture))


class BustPointRow(ChoiceRow):
    """Which front seam goes through the bust point."""

    def __init__(self, desk: Desk) -> None:
        numbers = tuple((number, str(number)) for number in range(1, MOST_SEAMS + 1))
        options: tuple[tuple[object, str], ...] = ((0, "None"), *numbers)
        super().__init__(desk, "bust_point", "Front seam through the bust point", options)

    def on_chosen(self, value: object) -> None:
        """Store it; a seam that is let go stays where it was on the cloth."""
        project, picture = self.desk.project, self.desk.picture
        if isinstance(value, int) and value:
            changed = set_through_bust_point(project, value, True)
        else:
            changed = freed(project, picture.outcome)
        self.desk.apply("Seam through the bust point", changed)

    def show_picture(self, picture: Picture) -> None:
        """Show which it is."""
        seams = picture.project.design.front.seams
        through = next((number for number, seam in enumerate(seams, 1) if seam.through_bust_point), 0)
        self.choice.show_offered(1 + len(seams))
        self.choice.show_value(through)


class LineRow(Row):
    """Whether the neckline or the hem is the style's or her own, and a way back."""

    def __init__(self, desk: Desk, line: LineName) -> None:
        super().__init__(f"line.{line}", line.capitalize())
        self._desk, self._line = desk, line
        self.words = f"{line} line of the style own points"
        self.button = QPushButton("Line of the style", self)
        self.button.setAccessibleName(f"Line of the style for the {line}")
        self.line.addWidget(self.button)
        self.button.clicked.connect(self.on_clicked)

    def show_picture(self, picture: Picture) -> None:
        """Show whose it is."""
        design = picture.project.design
        points = design.neckline if self._line == "neckline" else design.hem
        self.button.setEnabled(points is not None)
        own = f"{self._line.capitalize()}: her own, {len(points)} points" if points else ""
        self.show_label(own or f"{self._line.capitalize()}: line of the style")

    def on_clicked(self) -> None:
        """Go back to the line of the style."""
        changed = style_line_again(self._desk.project, self._line)
        self._desk.apply(f"Line of the style for the {self._line}", changed)

    def target(self) -> QWidget | None:
        """The button."""
        return self.button


class Shape(Section):
    """The third section."""

    title = "Shape"

    def fill(self) -> None:
        """Style and panels, the seams of either half, the two lines."""
        self.add(StyleRow(self.desk))
        for quarter in _QUARTERS:
            self.add(PanelsRow(self.desk, quarter))
        for quarter in _QUARTERS:
            self.add(Heading(f"{quarter.capitalize()} seams", "Stands at", "Leans by", width=NARROW))
            for place in range(MOST_SEAMS):
                self.add(SeamRow(self.desk, quarter, place))
            if quarter == "front":
                self.add(BustPointRow(self.desk))
        self.add(Heading("Lines"))
        for line in _LINES:
            self.add(LineRow(self.desk, line))

    def summary(self, picture: Picture) -> str:
        """Style and panels."""
        design = picture.project.design
        style = dict(STYLES)[design.style]
        return f"{style}, {design.front.panel_count} + {design.back.panel_count} panels"

    def has(self, field: str) -> bool:
        """Style, panels, places of seams, lines."""
        return field in ("style", "front.panels", "back.panels", "front.seams", "back.seams", "bust_point")

    def row_of(self, field: str, seam: int | None) -> Row | None:
        """Seams share the name of their field, and are told apart by their number."""
        design = self.desk.project.design
        for row in self.rows:
            if isinstance(row, SeamRow) and field == row.name and seam is not None:
                if seam_number(design, row.quarter, row.place_in_quarter) == seam and row.wanted:
                    return row
            elif row.name == field and not isinstance(row, SeamRow):
                return row
        return None


_QUARTERS: tuple[QuarterName, QuarterName] = ("front", "back")
_LINES: tuple[LineName, LineName] = ("neckline", "hem")
