"""The chooser of shapes: cards at the left, the one picked in full at the right."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QDialog, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from workbench.document import FileTrouble
from workbench.styles import KeptShape, TriedOn, begun_from, drawn_shapes, own_shapes, remove_shape, try_on
from workbench.ui.desk import Desk
from workbench.ui.form.choice import Choice
from workbench.ui.look import GRID, fonts
from workbench.ui.room import open_at
from workbench.ui.styles.cards import Card, CardList
from workbench.ui.styles.detail import Detail
from workbench.ui.styles.garment import frame_of, sides_of
from workbench.ui.styles.questions import ShapeQuestions
from workbench.ui.styles.save import SaveShape

_KINDS = (("all", "All"), ("under_bust", "Under-bust"), ("over_bust", "Over-bust"), ("hers", "Yours"))
_NONE_KEPT = "You have kept no shape yet. “Keep this project’s shape…” keeps the one you are working on."
_NONE = "There is no shape of this kind."
_INVENTED = "All drawn on an invented body"


class StyleChooser(QDialog):
    """Picks a shape for the project on the desk, or for a new one.

    ``folder`` is where shapes of hers are kept; None keeps none. ``at_work`` says whether there is
    a project on the desk to use a shape for.
    """

    new_wanted = Signal(object)
    """A :class:`Project` in the shape picked, with nothing measured: to be put on the desk."""

    def __init__(
        self,
        desk: Desk,
        folder: Path | None = None,
        parent: QWidget | None = None,
        *,
        at_work: bool = True,
        questions: ShapeQuestions | None = None,
    ) -> None:
        super().__init__(parent)
        self._desk, self._folder, self._at_work = desk, folder, at_work
        self._questions = questions or ShapeQuestions()
        self.setWindowTitle("Shapes")
        self.kinds = Choice("Which shapes", _KINDS)
        self.kinds.show_value("all")
        self.cards, self.detail = CardList(self._card), Detail()
        self.empty, self.trouble, self.body = QLabel(), QLabel(), QLabel()
        self.use, self.new = QPushButton("Use this shape"), QPushButton("New project from it")
        self.keep, self.remove = QPushButton("Keep this project’s shape…"), QPushButton("Remove…")
        self.shut = QPushButton("Close")
        self._arrange()
        self._connect()
        open_at(self, 270 * GRID, 160 * GRID)
        self.show_kind()
        self.cards.setFocus()

    # --- how it is put together ------------------------------------------------------------

    def _arrange(self) -> None:
        for label in (self.empty, self.trouble, self.body):
            label.setTextFormat(Qt.TextFormat.PlainText)
            label.setWordWrap(label is not self.body)
            label.setFont(fonts().small)
        self.empty.setFont(fonts().body)
        self.use.setDefault(True)
        self.use.setVisible(self._at_work)
        self.keep.setVisible(self._at_work and self._folder is not None)
        self.remove.setObjectName("quiet")
        self.new.setAccessibleDescription("A project for somebody new, with nothing measured yet")
        self.detail.setFixedWidth(98 * GRID)
        both = QHBoxLayout()
        both.setSpacing(4 * GRID)
        both.addLayout(self._left(), 1)
        both.addWidget(self.detail)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(4 * GRID, 4 * GRID, 4 * GRID, 4 * GRID)
        whole.setSpacing(3 * GRID)
        whole.addLayout(both, 1)
        whole.addLayout(self._buttons())

    def _left(self) -> QVBoxLayout:
        head = QHBoxLayout()
        head.addWidget(self.kinds)
        head.addStretch(1)
        head.addWidget(self.body)
        left = QVBoxLayout()
        left.setSpacing(3 * GRID)
        left.addLayout(head)
        left.addWidget(self.empty)
        left.addWidget(self.cards, 1)
        left.addWidget(self.trouble)
        return left

    def _buttons(self) -> QHBoxLayout:
        line = QHBoxLayout()
        line.setSpacing(2 * GRID)
        for button in (self.keep, self.remove):
            line.addWidget(button)
        line.addStretch(1)
        for button in (self.use, self.new, self.shut):
            line.addWidget(button)
        return line

    def _connect(self) -> None:
        self.kinds.chosen.connect(self.show_kind)
        self.cards.currentRowChanged.connect(self.show_chosen)
        self.cards.itemActivated.connect(self.on_activated)
        self.use.clicked.connect(self.on_use)
        self.new.clicked.connect(self.on_new)
        self.keep.clicked.connect(self.on_keep)
        self.remove.clicked.connect(self.on_remove)
        self.shut.clicked.connect(self.reject)

    # --- what is shown ---------------------------------------------------------------------

    @property
    def tried(self) -> TriedOn | None:
        """The shape that is picked, tried on."""
        card = self.cards.chosen_card()
        return card.tried if card is not None else None

    def show_kind(self, _kind: object = None, pick: str = "") -> None:
        """Show the shapes of the kind that is in, with the project’s own picked where it has one."""
        kind = self.kinds.value
        own = own_shapes(self._folder) if self._folder is not None else None
        hers = own.shapes if own is not None else ()
        shapes = [shape for shape in (*hers, *drawn_shapes(self._desk.project.unit)) if _is_of(shape, kind)]
        self._show_troubles(own.troubles if own is not None else ())
        self.cards.show_shapes(shapes, pick or self._desk.project.style_name)
        self.empty.setText("" if shapes else _NONE_KEPT if kind == "hers" else _NONE)
        self.empty.setVisible(not shapes)
        self.cards.setVisible(bool(shapes))
        self.show_chosen()

    def _show_troubles(self, troubles: Sequence[str]) -> None:
        more = f" And {len(troubles) - 1} more cannot be read." if len(troubles) > 1 else ""
        self.trouble.setText(f"{troubles[0]}{more}" if troubles else "")
        self.trouble.setVisible(bool(troubles))

    def show_chosen(self) -> None:
        """Show the shape that is picked in full, and what can be done with it."""
        card = self.cards.chosen_card()
        self.detail.show_card(card)
        self.body.setText("" if card is None or card.tried.on_her else _INVENTED)
        self.use.setEnabled(card is not None and not card.tried.why_not)
        self.new.setEnabled(card is not None)
        self.remove.setVisible(card is not None and card.tried.shape.path is not None)

    def _card(self, shape: KeptShape) -> Card:
        tried = try_on(shape, self._desk.project)
        body = tried.picture.body
        assert body is not None  # it is hers, or the invented one
        return Card(tried, sides_of(tried.picture), frame_of(body))

    # --- what she does ---------------------------------------------------------------------

    def on_activated(self) -> None:
        """A double click, or Enter on a card, uses it."""
        if self._at_work:
            self.on_use()
        else:
            self.on_new()

    def on_use(self) -> None:
        """Give the project this shape, as one step to undo."""
        tried = self.tried
        if tried is None or tried.why_not:
            return
        if tried.project != self._desk.project:
            self._desk.apply(f"Use the shape “{tried.shape.name}”", tried.project)
        self.accept()

    def on_new(self) -> None:
        """Begin another project in this shape."""
        shape = self.cards.chosen
        if shape is not None:
            project = self._desk.project
            self.accept()
            self.new_wanted.emit(begun_from(shape, project.unit, project.fraction))

    def on_keep(self) -> None:
        """Keep the shape of the project on the desk, and show it among hers."""
        if self._folder is None:
            return
        dialog = SaveShape(self._desk, self._folder, self, questions=self._questions)
        if dialog.exec() and dialog.kept is not None:
            self.kinds.show_value("hers")
            self.show_kind(pick=dialog.kept.name)
        dialog.deleteLater()

    def on_remove(self) -> None:
        """Take a shape of hers away, once she has said so."""
        shape = self.cards.chosen
        if shape is None or not self._questions.remove(shape.name, self):
            return
        try:
            remove_shape(shape)
        except FileTrouble as trouble:
            self._questions.tell("The shape was not removed", str(trouble), self)
        self.show_kind()


def _is_of(shape: KeptShape, kind: object) -> bool:
    if kind == "hers":
        return shape.path is not None
    return kind in ("all", shape.project.design.style)
