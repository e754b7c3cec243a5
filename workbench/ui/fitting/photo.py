"""The picture of a fitting: one of those kept in the project."""

from __future__ import annotations

from base64 import b64decode
from binascii import Error

from PySide6.QtCore import Qt
from PySide6.QtGui import QImage, QPixmap
from PySide6.QtWidgets import QLabel, QWidget

from workbench.document import Picture, set_fitting
from workbench.ui.desk import Desk
from workbench.ui.fitting.bench import FittingBench
from workbench.ui.fitting.pick import Pick
from workbench.ui.form.row import EDGE, Row
from workbench.ui.look import GRID

_TALLEST = 60 * GRID
_NONE = "No picture"


class PhotoRow(Row):
    """Which picture it is, and the picture."""

    def __init__(self, desk: Desk, bench: FittingBench) -> None:
        super().__init__("fitting.picture", "Picture")
        self._desk, self._bench = desk, bench
        self._shown: str | None = None
        self.pick = Pick("Picture of the fitting", self)
        self.photo = QLabel(self)
        self.photo.setAlignment(Qt.AlignmentFlag.AlignLeft)
        self.line.addWidget(self.pick, 2)
        self.column.addWidget(self.photo)
        self.column.setContentsMargins(EDGE, GRID, EDGE, GRID)
        self.pick.chosen.connect(self.on_chosen)

    def show_picture(self, picture: Picture) -> None:
        """Show which it is; one that is no longer kept is named all the same."""
        fitting, kept = self._bench.fitting, picture.project.pictures
        name = fitting.picture if fitting is not None else ""
        options: list[tuple[object, str]] = [("", _NONE), *((one.name, one.name) for one in kept)]
        if name and name not in [one.name for one in kept]:
            options.append((name, f"{name} (no longer kept)"))
        self.pick.show_options(options, name)
        self.pick.setEnabled(len(options) > 1)
        found = next((one for one in kept if one.name == name), None)
        self._show_photo(found.jpeg if found is not None else "", name)
        self.say("" if kept or name else "Pictures are added where the wish is shown.")

    def _show_photo(self, jpeg: str, name: str) -> None:
        if jpeg == self._shown:
            return
        self._shown = jpeg
        image = _image(jpeg)
        self.photo.setVisible(image is not None)
        if image is not None:
            wide = max(self.width() - 2 * EDGE, 60 * GRID)
            size = image.size().scaled(wide, _TALLEST, Qt.AspectRatioMode.KeepAspectRatio)
            smooth = Qt.TransformationMode.SmoothTransformation
            self.photo.setPixmap(QPixmap.fromImage(image.scaled(size, mode=smooth)))
            self.photo.setAccessibleName(f"Picture: {name}")

    def on_chosen(self, name: object) -> None:
        """Take another one."""
        changed = set_fitting(self._desk.project, self._bench.number, picture=str(name))
        self._desk.apply("Picture of a fitting", changed)

    def target(self) -> QWidget | None:
        """The list."""
        return self.pick


def _image(jpeg: str) -> QImage | None:
    """The picture; None where there is none, or none that can be shown."""
    try:
        image = QImage.fromData(b64decode(jpeg, validate=True), b"JPEG")
    except (Error, ValueError):
        return None
    return None if image.isNull() else image
