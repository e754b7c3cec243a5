"""The cloth place: cloths at the left, the pieces on one of them in the middle, other ways at the right."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.cloth import FIRST_SECONDS, LayError
from workbench.document import Picture, Session
from workbench.draft import Finding
from workbench.ui.cloth.answer import AnswerBar
from workbench.ui.cloth.bench import ClothBench, OnShow, Worked
from workbench.ui.cloth.canvas import ClothCanvas
from workbench.ui.cloth.cards import ClothCards
from workbench.ui.cloth.compare_pane import WIDTH, ComparePane
from workbench.ui.cloth.edits import keeping, laid_round, pinned_in
from workbench.ui.cloth.findings import findings_on_cloth
from workbench.ui.cloth.form import ClothForm
from workbench.ui.cloth.lays import Lay, alike, lay_of
from workbench.ui.cloth.search import LONGER_SECONDS, Progress, Search
from workbench.ui.desk import Desk
from workbench.ui.place import PlacePage, hairline
from workbench.ui.sentence import Foot


class ClothPlace(PlacePage):
    """Answers at a glance: how much do I buy, and does it fit what I have?

    Nothing is worked out while it is out of sight.
    """

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.bench = ClothBench(desk, self)
        self.search = Search(self)
        self.form = ClothForm(desk, self.bench)
        self.cards = ClothCards(self.bench)
        self.answer = AnswerBar()
        self.canvas = ClothCanvas(desk, self.bench)
        self.compare = ComparePane(desk, self.bench)
        self.foot = Foot(desk, findings_of=self._findings)
        self._session: Session | None = None
        self._searched: tuple[Finding, ...] = ()
        self._assemble()
        self._connect()

    def _assemble(self) -> None:
        middle = QWidget()
        column = QVBoxLayout(middle)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.answer)
        column.addWidget(hairline())
        column.addWidget(self.canvas, 1)
        self._edge = hairline(upright=True)
        beside = QHBoxLayout()
        beside.setSpacing(0)
        beside.addWidget(middle, 1)
        beside.addWidget(self._edge)
        beside.addWidget(self.compare)
        self.compare.setFixedWidth(WIDTH)
        self.arrange(self.form, self.cards, hairline(), beside, self.foot)
        self.begin_at(self.canvas)

    def _connect(self) -> None:
        self.bench.laid.connect(self.show_laid)
        self.bench.worked_out.connect(self.show_worked)
        self.search.moved.connect(self.show_progress)
        self.search.ended.connect(self.on_ended)
        self.answer.seek.clicked.connect(self.seek)
        self.answer.stop.clicked.connect(self.search.stop)
        self.answer.more.clicked.connect(self.keep_improving)
        self.answer.anew.clicked.connect(self.lay_anew)
        self.canvas.handled.connect(self.search.stop)
        self.canvas.menu.anew.triggered.connect(self.lay_anew)

    def has(self, field: str) -> bool:
        """Whether a field, as findings name it, is one of this place's."""
        return any(section.has(field) for section in self.form.sections)

    def fit(self) -> None:
        """Show all of the cloth that is used."""
        self.canvas.fit()

    def switches(self) -> Mapping[str, Callable[[bool], None]]:
        """The table of other ways."""
        return {"compare": self.set_compare_shown}

    def deeds(self) -> Mapping[str, Callable[[], None]]:
        """Seek a better plan for the cloth on show."""
        return {"better": self.seek}

    def rest(self) -> None:
        """End the search, and keep its plan."""
        self.search.stop()

    def set_compare_shown(self, on: bool) -> None:
        """Show or hide the table of other ways."""
        self.compare.setVisible(on)
        self._edge.setVisible(on)
        self.compare.set_in_sight(on and self.bench.in_sight)

    # --- what is shown -------------------------------------------------------------------

    def show_laid(self, shown: OnShow) -> None:
        """Another plan is in sight; a search for other pieces or another cloth is over."""
        if self.search.running and not self._goes_on(shown):
            self.search.stop()
        elif not self.search.running:
            self.answer.show_state(shown, self._progress_for(shown.lay))

    def show_worked(self, worked: Worked) -> None:
        """Say in the foot what follows from all plans."""
        self.foot.show_picture(worked.picture)

    def show_progress(self, progress: Progress) -> None:
        """Draw the best plan so far."""
        self.canvas.show_progress(progress)
        self.answer.show_state(self.bench.shown, progress)

    def _goes_on(self, shown: OnShow) -> bool:
        """Whether a search still looks for what is on show."""
        return self._session is self._desk.session and alike(shown.lay, self.search.lay)

    def _progress_for(self, lay: Lay | None) -> Progress | None:
        """The last search, where it was for these pieces on this cloth."""
        return self.search.progress if alike(lay, self.search.lay) else None

    def _findings(self, picture: Picture) -> Sequence[Finding]:
        still = alike(self._lay(), self.search.lay)
        return findings_on_cloth(picture, self.bench.worked, self._searched if still else ())

    # --- what she does -------------------------------------------------------------------

    def seek(self) -> None:
        """Seek a better plan for the cloth on show."""
        self._seek(FIRST_SECONDS, again=False)

    def keep_improving(self) -> None:
        """Seek on for longer."""
        self._seek(LONGER_SECONDS, again=True)

    def _seek(self, seconds: float, *, again: bool) -> None:
        lay = self.bench.shown.lay if self.bench.shown is not None else None
        if lay is None or lay.valid is None or not lay.copies:
            return
        self._session, self._searched = self._desk.session, ()
        try:
            if again:
                self.search.go_on(lay, seconds)
            else:
                self.search.start(lay, seconds)
        except LayError as error:
            self._searched = (error.finding,)
            self.foot.show_picture(self._desk.picture)

    def on_ended(self, progress: Progress) -> None:
        """Keep what was found: one step to undo."""
        self.canvas.show_progress(None)
        self._searched = progress.findings
        better = progress.found or (self.search.lay is not None and self.search.lay.stale)
        if better and self._still_meant(progress):
            self._desk.apply(f"Lay plan of {progress.cloth}", keeping(self._desk.project, progress.best))
            self._desk.now()
        self.answer.show_state(self.bench.shown, self._progress_for(self._lay()))
        self.foot.show_picture(self._desk.picture)

    def _still_meant(self, progress: Progress) -> bool:
        """Whether the project still has that cloth, and the same pieces to lay on it."""
        cloth = next((each for each in self._desk.project.cloths if each.name == progress.cloth), None)
        if cloth is None or self._session is not self._desk.session:
            return False
        valid = lay_of(self._desk.picture, cloth).valid
        return valid is not None and valid.made_from == progress.best.made_from

    def _lay(self) -> Lay | None:
        return self.bench.shown.lay if self.bench.shown is not None else None

    def lay_anew(self) -> None:
        """Lay all of it the plain way, round what is pinned."""
        lay = self._lay()
        if lay is None or lay.plan is None:
            return
        self.search.stop()
        try:
            plan = laid_round(lay, pinned_in(lay.plan))
        except LayError as error:
            self._desk.refuse(
                "cloths", error.finding.text(self._desk.project.unit, self._desk.project.fraction)
            )
            return
        self._desk.apply(f"Lay {lay.cloth.name} anew", keeping(self._desk.project, plan))
        self._desk.now()

    # --- events ----------------------------------------------------------------------------

    def set_in_sight(self, in_sight: bool) -> None:
        """Work out what is looked at; what a search has found is kept when nobody looks any longer."""
        if not in_sight:
            self.search.stop()
        self.bench.set_in_sight(in_sight)
        if in_sight:
            # what led here may have been picked before there was anything to show it
            self.form.show_selected(self._desk.selection)
        self.compare.set_in_sight(in_sight and self.compare.isVisible())
