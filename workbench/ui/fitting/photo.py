"""The picture of a fitting: one of those kept in the project, or one that is added here."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from workbench.document import MOST_PICTURES, Picture, WishPicture, set_fitting
from workbench.ui.board.behind import decoded
from workbench.ui.desk import Desk
from workbench.ui.fitting.bench import FittingBench
from workbench.ui.fitting.pick import Pick
from workbench.ui.form.row import EDGE, Row
from workbench.ui.look import GRID
from workbench.ui.wish.taking import AskFiles, Taking, ask_file

_TALLEST = 60 * GRID
_NONE = "No picture"


class PhotoRow(Row):
    """Which picture it is, and the picture."""

    def __init__(self, desk: Desk, bench: FittingBench, *, asking: AskFiles = ask_file) -> None:
        super().__init__("fitting.picture", "Picture")
        self.asking = asking
        self.taking = Taking(desk, self)
        self.add = QPushButton("Add a picture…", self)
        self._desk, self._bench = desk, bench
        self._shown: str | None = None
        self.pick = Pick("Picture of the fitting", self)
        self.photo = QLabel(self)
        self.photo.setAlignment(Qt.AlignmentFlag.AlignLeft)
        self.line.addWidget(self.pick, 2)
        self.column.addWidget(self.add)
        self.column.addWidget(self.photo)
        self.column.setContentsMargins(EDGE, GRID, EDGE, GRID)
        self.words = "picture photo add a picture"
        self.pick.chosen.connect(self.on_chosen)
        self.add.clicked.connect(self.on_add)
        self.taking.refused.connect(self.show_trouble)
        self.taking.busy_changed.connect(self.show_busy)

    def show_picture(self, picture: Picture) -> None:
        """Show which it is; one that is no longer kept is named all the same."""
        fitting, kept = self._bench.fitting, picture.project.pictures
        name = fitting.picture if fitting is not None else ""
        options: list[tuple[object, str]] = [("", _NONE), *((one.name, one.name) for one in kept)]
        if name and name not in [one.name for one in kept]:
            options.append((name, f"{name} (no longer kept)"))
        self.pick.show_options(options, name)
        self.pick.setVisible(len(options) > 1)
        self.show_busy()
        found = next((one for one in kept if one.name == name), None)
        self._show_photo(found)

    def show_busy(self) -> None:
        """One is read at a time, and no more are kept than there is room for."""
        busy, full = self.taking.busy, len(self._desk.project.pictures) >= MOST_PICTURES
        self.add.setText("Reading …" if busy else "Add a picture…")
        self.add.setEnabled(not busy and not full)
        self.add.setToolTip(
            f"{MOST_PICTURES} pictures are kept already: remove one beside the draft first." if full else ""
        )

    def show_trouble(self, sentence: str) -> None:
        """Say why it was not taken in, or nothing."""
        self.say(sentence, "attend" if sentence else None)

    def _show_photo(self, wish: WishPicture | None) -> None:
        jpeg = wish.jpeg if wish is not None else ""
        if jpeg == self._shown:
            return
        self._shown = jpeg
        whole = decoded(wish) if wish is not None else QPixmap()
        self.photo.setVisible(not whole.isNull())
        if wish is not None and not whole.isNull():
            wide = max(self.width() - 2 * EDGE, 60 * GRID)
            size = whole.size().scaled(wide, _TALLEST, Qt.AspectRatioMode.KeepAspectRatio)
            # as many pixels as the screen has, or it is soft on a fine one
            fine = self.devicePixelRatioF()
            shown = whole.scaled(size * fine, mode=Qt.TransformationMode.SmoothTransformation)
            shown.setDevicePixelRatio(fine)
            self.photo.setPixmap(shown)
            self.photo.setAccessibleName(f"Picture: {wish.name}")

    def on_add(self) -> None:
        """Ask for a file, keep its picture in the project, and take it for the fitting on show now."""
        number = self._bench.number
        self.taking.take_files(
            self.asking(self), lambda project, name: set_fitting(project, number, picture=name)
        )

    def on_chosen(self, name: object) -> None:
        """Take another one."""
        changed = set_fitting(self._desk.project, self._bench.number, picture=str(name))
        self._desk.apply("Picture of a fitting", changed)

    def target(self) -> QWidget | None:
        """The list."""
        return self.pick
