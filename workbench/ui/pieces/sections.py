"""How it is sewn: notches, front, back opening, bones, facings and binding."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from workbench.document import BONE_PLACES, Picture, Project, set_bone_place, set_busk
from workbench.pieces import BonePlace
from workbench.ui.desk import Desk
from workbench.ui.form.kinds import in_words
from workbench.ui.form.section import Heading
from workbench.ui.pieces.figures import HairKind, Held, Left, TimesKind, making_figure, row_of
from workbench.ui.pieces.rows import CheckRow, ChoiceRow, LeftRow, MakingRow
from workbench.ui.pieces.section import MakingSection

_FRONT_FIELDS = ("making.front", "making.busk_mm")
_NOTCHES = (("slit", "Slit"), ("triangle", "Triangle"))
_FRONTS = (("fold", "Cut on the fold"), ("busk", "Apart, for a busk"))
_CLOSINGS = (("loops", "Loops"), ("eyelets", "Eyelets"), ("side_zip", "Side zip"))
_STUFFS = (("flat_steel", "Flat steel"), ("spiral_steel", "Spiral steel"), ("plastic", "Plastic"))
_PLACES: dict[BonePlace, str] = {
    "seams": "On the seams",
    "mid_panel": "In the middle of each panel",
    "beside_opening": "Beside the opening",
    "centre_front": "At the centre front",
}


class Notches(MakingSection):
    """How the pieces are marked so that they meet."""

    title = "Notches"
    group = "marks"

    def fill(self) -> None:
        """Shape and length, then where they go."""
        self.add(ChoiceRow(self.desk, Held("marks", "style"), "Shape", _NOTCHES))
        self.figure("length_mm", "Length")
        for key, text in (
            ("at_levels", "Where a level crosses a seam"),
            ("at_curves", "At both ends of a curved stretch"),
        ):
            held = Held("marks", key)
            self.add(CheckRow(self.desk, held.name, text, "Notches", held.get, held.put))

    def summary(self, picture: Picture) -> str:
        """Shape and length."""
        marks = picture.project.making.marks
        if not (marks.at_levels or marks.at_curves):
            return "none"
        return f"{marks.style}, {in_words(marks.length_mm, picture.project)}"


class BuskRow(LeftRow):
    """The busk she has; left empty, the longest stock length that fits is taken."""

    def __init__(self, section: MakingSection) -> None:
        self._section = section
        held, label = Held("", "busk_mm"), row_of("", "busk_mm").label
        figure = Left(held.name, label, label, held.get, set_busk, self._fitting)
        super().__init__(section.desk, figure, "Busk", "Left empty: the longest that is sold and fits.")

    def show_picture(self, picture: Picture) -> None:
        """Show it where the front is cut apart."""
        self.show_wanted(picture.project.making.front == "busk")
        super().show_picture(picture)

    def _fitting(self, _project: Project) -> float | None:
        cutting = self._section.bench.cutting
        return cutting.busk_mm if cutting is not None else None


class Front(MakingSection):
    """How the centre front is cut."""

    title = "Front"

    def fill(self) -> None:
        """Fold or busk, and which."""
        self.add(ChoiceRow(self.desk, Held("", "front"), "Centre front", _FRONTS))
        self.add(BuskRow(self))

    def summary(self, picture: Picture) -> str:
        """Fold, or the busk."""
        making = picture.project.making
        if making.front == "fold":
            return "on the fold"
        return f"busk, {in_words(making.busk_mm, picture.project)}" if making.busk_mm else "busk"

    def has(self, field: str) -> bool:
        """The front and its busk."""
        return field in _FRONT_FIELDS


class LacedRow(MakingRow):
    """A figure of the lacing; a zip has none."""

    def show_picture(self, picture: Picture) -> None:
        """Show it where there is a lacing."""
        self.show_wanted(picture.project.making.opening.closing != "side_zip")
        super().show_picture(picture)


@dataclass(frozen=True)
class _Lace:
    key: str
    label: str


_LACES = (
    _Lace("pitch_mm", "Apart"),
    _Lace("waist_pitch_mm", "Apart at the waist"),
    _Lace("end_mm", "First and last from the edge"),
    _Lace("set_in_mm", "Set in from the centre back"),
    _Lace("step_in_gap_mm", "Widest opening to step in by"),
    _Lace("tying_mm", "Cord left for tying"),
)


class BackOpening(MakingSection):
    """How the back closes."""

    title = "Back opening"
    group = "opening"

    def fill(self) -> None:
        """The kind of closing, and the figures of a lacing."""
        self.add(ChoiceRow(self.desk, Held("opening", "closing"), "Closed with", _CLOSINGS))
        for lace in _LACES:
            self.add(LacedRow(self.desk, making_figure("opening", lace.key), lace.label))

    def summary(self, picture: Picture) -> str:
        """What closes it, and how many on either side."""
        closing = dict(_CLOSINGS)[picture.project.making.opening.closing].lower()
        cutting = self.bench.cutting
        laced = cutting.opening if cutting is not None else None
        return f"{closing}, {len(laced.walks)} a side" if laced and laced.walks else closing


class Bones(MakingSection):
    """Where bones lie, what they are, and how they are cut."""

    title = "Bones"
    group = "boning"

    def fill(self) -> None:
        """Places, stuff, then figures."""
        self.add(Heading("Where they lie"))
        for place in BONE_PLACES:
            self.add(_place_row(self.desk, place))
        self.add(ChoiceRow(self.desk, Held("boning", "stuff"), "Made of", _STUFFS))
        self.add(ChoiceRow(self.desk, Held("boning", "opening_stuff"), "Beside the opening", _STUFFS))
        self.figure("width_mm", "Width")
        ease = making_figure("boning", "channel_ease_mm", HairKind())
        self.add(MakingRow(self.desk, ease, "Channel wider by"))
        self.figure("clearance_mm", "Clear of the edge, each end")
        self.figure("steel_step_mm", "Steel is sold by the")
        self.figure("flat_radius_mm", "Flat steel to a radius of")

    def summary(self, picture: Picture) -> str:
        """How many on the whole garment."""
        cutting = self.bench.cutting
        count = sum(bone.count for bone in cutting.bones) if cutting is not None else 0
        return f"{count} bones" if count else "none" if cutting is not None else ""


def _place_row(desk: Desk, place: BonePlace) -> CheckRow:
    return CheckRow(
        desk,
        f"boning.places.{place}",
        _PLACES[place],
        f"Bones {_PLACES[place][0].lower()}{_PLACES[place][1:]}",
        partial(_has_bones, place),
        partial(_with_bones, place),
    )


def _has_bones(place: BonePlace, project: Project) -> bool:
    return place in project.making.boning.places


def _with_bones(place: BonePlace, project: Project, on: bool) -> Project:
    return set_bone_place(project, place, on)


class Facings(MakingSection):
    """What finishes the edges and holds the waist."""

    title = "Facings and binding"

    def fill(self) -> None:
        """Depth, width, joins, and how far a corner runs out."""
        self.figure("facing_depth_mm", "Depth of the facings")
        self.figure("tape_width_mm", "Width of the waist tape")
        self.figure("binding_join_mm", "Binding, for its join")
        corner = making_figure("", "corner_limit", TimesKind())
        self.add(MakingRow(self.desk, corner, "Corner, at most", _corner_words))

    def summary(self, picture: Picture) -> str:
        """The depth of the facings."""
        return f"{in_words(picture.project.making.facing_depth_mm, picture.project)} deep"

    def has(self, field: str) -> bool:
        """Figures of the making itself, but for the front."""
        return field.startswith("making.") and field.count(".") == 1 and field not in _FRONT_FIELDS


def _corner_words(_picture: Picture) -> str:
    return "A sharp corner of the cut line is cut blunt at so many allowances."
