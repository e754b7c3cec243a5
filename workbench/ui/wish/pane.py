"""The pictures of the wish: one in full, its note, and how it lies behind the panels."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import (
    QDragEnterEvent,
    QDropEvent,
    QGuiApplication,
    QHideEvent,
    QIcon,
    QKeySequence,
    QShortcut,
    QShowEvent,
)
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QListView,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from workbench.document import MOST_PICTURES, Picture, Project, WishPicture, remove_wish, set_wish_note
from workbench.ui.board.behind import decoded
from workbench.ui.board.tracing import tracing_of
from workbench.ui.desk import Desk
from workbench.ui.form.note import Note
from workbench.ui.form.prose import ProseRow, Written
from workbench.ui.look import GRID, fonts
from workbench.ui.plain import plain_tip
from workbench.ui.wish.behind_box import BehindBox
from workbench.ui.wish.picture_view import PictureView
from workbench.ui.wish.taking import NOTHING_COPIED, AskFiles, Taking, ask_files, with_picture

WIDTH = 80 * GRID
_THUMB = 15 * GRID
_NONE = (
    "No pictures yet.\n\nAdd what she has brought, drop it here, or paste it. It is copied into the "
    "project and made small; where and when it was taken is left out."
)
_READING = "Reading …"
_FRAMED = """
QListWidget { background: transparent; }
QListWidget::item { border: 2px solid transparent; border-radius: 4px; padding: 2px; }
QListWidget::item:selected { border-color: palette(highlight); background: transparent; }
"""


class WishPane(QWidget):
    """Shows the pictures of the project on the desk; nothing is decoded while the pane is hidden."""

    def __init__(self, desk: Desk, parent: QWidget | None = None, *, asking: AskFiles = ask_files) -> None:
        super().__init__(parent)
        self._desk, self._asking = desk, asking
        self._chosen = ""
        self._listed: tuple[WishPicture, ...] | None = None
        self.taking = Taking(desk, self)
        self.thumbs, self.view = _thumbs(), PictureView()
        self.add, self.paste, self.remove = QPushButton("Add…"), QPushButton("Paste"), QPushButton("Remove")
        self.none, self.trouble = QLabel(_NONE), Note()
        self.behind = BehindBox(desk)
        self.note = ProseRow(
            desk, Written("pictures.note", "Note", "Note of a picture", self._note, self._noted)
        )
        self._arrange()
        self._connect()

    def _arrange(self) -> None:
        self.setMinimumWidth(WIDTH)
        self.setAcceptDrops(True)
        self.none.setWordWrap(True)
        self.none.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.note.prose.setFixedHeight(12 * GRID)
        self.note.column.setContentsMargins(0, 0, 0, 0)
        self.add.setAccessibleName("Add pictures")
        self.paste.setAccessibleName("Paste a picture")
        self.remove.setAccessibleName("Remove this picture")
        self.remove.setObjectName("quiet")
        buttons = QHBoxLayout()
        buttons.setSpacing(2 * GRID)
        for button in (self.add, self.paste):
            buttons.addWidget(button)
        buttons.addStretch(1)
        buttons.addWidget(self.remove)
        column = QVBoxLayout(self)
        column.setContentsMargins(3 * GRID, 2 * GRID, 3 * GRID, 3 * GRID)
        column.setSpacing(2 * GRID)
        column.addLayout(buttons)
        column.addWidget(self.trouble)
        column.addWidget(self.none, 1)
        column.addWidget(self.thumbs)
        column.addWidget(self.view, 1)
        column.addWidget(self.note)
        column.addWidget(self.behind)

    def _connect(self) -> None:
        self.add.clicked.connect(self.on_add)
        self.paste.clicked.connect(self.on_paste)
        self.remove.clicked.connect(self.on_remove)
        self.thumbs.currentRowChanged.connect(self.on_picked)
        self.taking.taken.connect(self.on_taken)
        self.taking.refused.connect(self.show_trouble)
        self.taking.busy_changed.connect(self.show_busy)
        self.behind.points_wanted.connect(self.view.want_points)
        self.view.measured.connect(self.behind.show_points)
        self.view.left.connect(self.behind.stop_measuring)
        self._desk.drafted.connect(self.show_picture)
        keys = QShortcut(QKeySequence(QKeySequence.StandardKey.Paste), self)
        keys.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        keys.activated.connect(self.on_paste)

    # --- what is shown ---------------------------------------------------------------------

    @property
    def chosen(self) -> WishPicture | None:
        """The picture that is shown in full."""
        return with_picture(self._desk.project, self._chosen)

    def show_picture(self, picture: Picture) -> None:
        """Show the pictures of a project; a draft that leaves them alone costs nothing."""
        if not self.isVisible():
            return
        project = picture.project
        if project.pictures != self._listed:
            self._list(project)
        self._show_chosen(project)

    def _list(self, project: Project) -> None:
        self._listed = project.pictures
        blocked = self.thumbs.blockSignals(True)
        self.thumbs.clear()
        for each in project.pictures:
            self.thumbs.addItem(_thumb(each))
        self.thumbs.blockSignals(blocked)

    def _show_chosen(self, project: Project) -> None:
        chosen = with_picture(project, self._chosen)
        self._chosen = chosen.name if chosen is not None else ""
        there = chosen is not None
        self.none.setVisible(not there)
        for part in (self.thumbs, self.view, self.note, self.behind, self.remove):
            part.setVisible(there)
        self.thumbs.setVisible(len(project.pictures) > 1)
        if chosen is not None:
            blocked = self.thumbs.blockSignals(True)
            self.thumbs.setCurrentRow(project.pictures.index(chosen))
            self.thumbs.blockSignals(blocked)
        self.view.show_wish(chosen)
        self.note.show_picture(self._desk.picture)
        self.behind.show_wish(chosen, project)
        self.show_busy()

    def show_busy(self) -> None:
        """No more is taken in while something is, or where there is no room."""
        busy = self.taking.busy
        room = len(self._desk.project.pictures) < MOST_PICTURES
        self.add.setText(_READING if busy else "Add…")
        for button in (self.add, self.paste):
            button.setEnabled(room and not busy)
            button.setToolTip("" if room else f"At most {MOST_PICTURES} pictures can be kept.")

    def show_trouble(self, sentence: str) -> None:
        """Say why a picture was not taken in, or nothing."""
        self.trouble.show_words(sentence, "attend" if sentence else None)

    # --- what she does ---------------------------------------------------------------------

    def on_add(self) -> None:
        """Ask for files and take them in."""
        self.taking.take_files(self._asking(self))

    def on_paste(self) -> None:
        """Take in what was copied."""
        if self.add.isEnabled() and not self.taking.take_mime(QGuiApplication.clipboard().mimeData()):
            self.show_trouble(NOTHING_COPIED)

    def on_taken(self, name: str) -> None:
        """Show the one that was added last."""
        self._chosen = name

    def on_picked(self, row: int) -> None:
        """Show another one in full."""
        pictures = self._desk.project.pictures
        if 0 <= row < len(pictures):
            self._chosen = pictures[row].name
            self._show_chosen(self._desk.project)

    def on_remove(self) -> None:
        """Take the picture out of the project; undo has it back."""
        chosen = self.chosen
        if chosen is not None:
            self._desk.apply("Remove picture", remove_wish(self._desk.project, chosen.name))

    def _note(self, project: Project) -> str:
        chosen = with_picture(project, self._chosen)
        return chosen.note if chosen is not None else ""

    def _noted(self, project: Project, text: str) -> Project:
        return set_wish_note(project, self._chosen, text) if project.pictures else project

    # --- events ----------------------------------------------------------------------------

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with what was done while the pane was hidden."""
        super().showEvent(event)
        self.show_picture(self._desk.picture)

    def hideEvent(self, event: QHideEvent) -> None:
        """Nothing stays in the hand that cannot be seen to be."""
        super().hideEvent(event)
        self.behind.stop_measuring()
        tracing_of(self._desk).set_moving(False)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Files and pictures may be let go here."""
        if self.add.isEnabled() and (event.mimeData().hasUrls() or event.mimeData().hasImage()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Take in what is let go."""
        if self.taking.take_mime(event.mimeData()):
            event.acceptProposedAction()
        else:
            self.show_trouble("What was dropped is no picture.")


def _thumbs() -> QListWidget:
    made = QListWidget()
    made.setAccessibleName("Pictures")
    made.setViewMode(QListView.ViewMode.IconMode)
    made.setFlow(QListView.Flow.LeftToRight)
    made.setWrapping(False)
    made.setMovement(QListView.Movement.Static)
    made.setIconSize(QSize(_THUMB, _THUMB))
    made.setGridSize(QSize(_THUMB + 2 * GRID, _THUMB + 2 * GRID))
    made.setFixedHeight(_THUMB + 6 * GRID)
    made.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    made.setFrameShape(QListWidget.Shape.NoFrame)
    made.setFont(fonts().small)
    made.setStyleSheet(_FRAMED)
    return made


def _thumb(picture: WishPicture) -> QListWidgetItem:
    keep, smooth = Qt.AspectRatioMode.KeepAspectRatio, Qt.TransformationMode.SmoothTransformation
    item = QListWidgetItem(QIcon(decoded(picture).scaled(2 * _THUMB, 2 * _THUMB, keep, smooth)), "")
    item.setToolTip(plain_tip(picture.name))
    said = f"{picture.name}. {picture.note}" if picture.note else picture.name
    item.setData(Qt.ItemDataRole.AccessibleTextRole, said)
    return item
