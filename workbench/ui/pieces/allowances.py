"""Allowances: one for each kind of edge, and one of its own for the edge that is picked."""

from __future__ import annotations

from workbench.document import Picture, Project, set_own_allowance
from workbench.draft import Place
from workbench.pieces import EdgeKind, OwnAllowance, label_of
from workbench.ui.form.kinds import in_words
from workbench.ui.form.section import Heading, Remark
from workbench.ui.marks import Mark
from workbench.ui.pieces.edges import Edge, edge_of, edge_words, kind_of, place_of_edge
from workbench.ui.pieces.figures import Left, making_figure
from workbench.ui.pieces.layers import FROM_PANELS
from workbench.ui.pieces.rows import LeftRow, MakingRow
from workbench.ui.pieces.section import MakingSection

_KINDS: dict[EdgeKind, str] = {
    "seam": "Joining seams",
    "side": "Side seam",
    "centre_back": "Centre back",
    "centre_front": "Centre front",
    "neckline": "Neckline",
    "hem": "Hem",
}
_BOUND = "0 is for an edge that is bound."
_PICK = "Pick an edge of a piece on the table: it can differ from its kind."
_LEFT = "Left empty: as its kind."


class KindRow(MakingRow):
    """The allowance of one kind of edge."""

    def __init__(self, section: MakingSection, kind: EdgeKind) -> None:
        remark = _bound if kind == "hem" else None
        super().__init__(section.desk, making_figure("allowances", kind), _KINDS[kind], remark)
        self._kind = kind

    def show_picture(self, picture: Picture) -> None:
        """A centre front on the fold has no allowance."""
        self.show_wanted(self._kind != "centre_front" or picture.project.making.front == "busk")
        super().show_picture(picture)


class OwnRow(LeftRow):
    """The allowance of the edge that is picked, where it differs from its kind's."""

    def __init__(self, section: MakingSection) -> None:
        self._bench, self._desk = section.bench, section.desk
        name, label = "own_allowance", "Allowance of this edge alone"
        figure = Left(name, label, label, self._stored, self._with, self._usual)
        super().__init__(section.desk, figure, "This edge alone")
        self.words = "own allowance of this edge alone"

    @property
    def edge(self) -> Edge | None:
        """The edge that is picked on the layer on show; None where it can have no allowance of its own."""
        making = self._desk.project.making
        edge = edge_of(self._desk.selection, self._desk.project.design)
        if edge is None or self._bench.layer not in FROM_PANELS:
            return None
        folded = making.front == "fold" and (edge.panel, edge.name) == (0, "left")
        return None if folded else edge

    def show_picture(self, picture: Picture) -> None:
        """Show it for the edge that is picked."""
        edge, design = self.edge, picture.project.design
        # the field is about the edge: whoever goes into it keeps the edge picked
        self.place = place_of_edge(edge) if edge is not None else Place(field=self.name)
        self.field.setEnabled(edge is not None)
        self.show_label(edge_words(edge, design) if edge is not None else "This edge alone")
        super().show_picture(picture)

    def remark(self, picture: Picture) -> tuple[str, Mark | None]:
        """What an empty field means, or what there has to be picked first."""
        return (_LEFT if self.edge is not None else _PICK), None

    def _stored(self, project: Project) -> float | None:
        edge = self.edge
        if edge is None:
            return None
        here = (self._bench.layer, edge.panel, edge.name)
        owns = project.making.own_allowances
        return next((o.allowance_mm for o in owns if (o.layer, o.panel, o.edge) == here), None)

    def _with(self, project: Project, mm: float | None) -> Project:
        edge = self.edge
        if edge is None:
            return project
        return set_own_allowance(project, self._bench.layer, edge.panel, edge.name, mm)

    def _usual(self, project: Project) -> float | None:
        edge = self.edge
        return None if edge is None else project.making.allowances.of(kind_of(edge, project.design))


class Allowances(MakingSection):
    """What is left outside the stitch line."""

    title = "Allowances"
    group = "allowances"

    def fill(self) -> None:
        """A field for each kind of edge, then the edge that is picked, then those that differ."""
        for kind in _KINDS:
            self.add(KindRow(self, kind))
        self.add(Heading("An edge of its own"))
        self.own = self.add(OwnRow(self))
        self._differing = self.add(Remark(""))
        self.desk.selected.connect(self.show_selected)
        self.bench.layer_shown.connect(self.show_layer)

    def show_rows(self, picture: Picture) -> None:
        """Every row, and a list of the edges that differ."""
        super().show_rows(picture)
        owns = picture.project.making.own_allowances
        self._differing.say("\n".join(_own_words(own, picture.project) for own in owns))

    def show_selected(self, _place: Place | None) -> None:
        """Another edge is picked."""
        if self.seen:
            self.own.forget()
            self.own.show_picture(self.desk.picture)

    def show_layer(self, _name: str) -> None:
        """The same edge of another layer."""
        self.show_selected(None)

    def summary(self, picture: Picture) -> str:
        """The joining seams, and how many edges differ."""
        making = picture.project.making
        said = f"{in_words(making.allowances.seam, picture.project)} at seams"
        count = len(making.own_allowances)
        return f"{said}, {count} of their own" if count else said

    def has(self, field: str) -> bool:
        """Kinds of edges, and single ones."""
        return super().has(field) or field == "own_allowance"


def _bound(_picture: Picture) -> str:
    return _BOUND


def _own_words(own: OwnAllowance, project: Project) -> str:
    """``Back 2, right edge (strength layer): 1½ in``."""
    where = edge_words(Edge(own.panel, own.edge), project.design)
    layer = label_of(own.layer, project.making).lower()
    return f"{where}, {layer}: {in_words(own.allowance_mm, project)}"
