"""Pictures taken in beside the window: from files, from what is dropped, from what was copied."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QBuffer, QCoreApplication, QIODevice, QMimeData, QObject, Signal
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QFileDialog, QWidget

from workbench.document import MOST_PICTURES as MOST
from workbench.document import FileTrouble, PictureTrouble, Project, WishPicture, add_wish
from workbench.ui.desk import Desk
from workbench.ui.job import Job

PASTED = "Pasted picture"
NOTHING_COPIED = "There is no picture among what was copied."
_MOST_PIXELS = 50_000_000
_KINDS = "Pictures (*.jpg *.jpeg *.png *.webp *.gif *.bmp *.tif *.tiff);;All files (*)"
FILE_KINDS = _KINDS


Then = Callable[[Project, str], Project]
"""What is done in the same step with the last picture that was added, by its name."""
AskFiles = Callable[[QWidget], list[Path]]


def ask_files(parent: QWidget) -> list[Path]:
    """The pictures she picks; none when she thinks better of it."""
    names, _ = QFileDialog.getOpenFileNames(parent, "Add pictures", "", FILE_KINDS)
    return [Path(name) for name in names]


def ask_file(parent: QWidget) -> list[Path]:
    """The one picture she picks; none when she thinks better of it."""
    name, _ = QFileDialog.getOpenFileName(parent, "Add a picture", "", FILE_KINDS)
    return [Path(name)] if name else []


@dataclass(frozen=True)
class Read:
    """What came of reading: pictures, and a sentence for each that is none."""

    pictures: tuple[WishPicture, ...]
    troubles: tuple[str, ...]


class Taking(QObject):
    """Reads one batch at a time; what is read of a project that has left the desk is dropped."""

    taken = Signal(str)
    """The name of the last picture that was added."""
    refused = Signal(str)
    """A sentence for each that was not."""
    busy_changed = Signal()

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._job: Job | None = None
        self._session: object = None
        self._then: Then | None = None
        application = QCoreApplication.instance()
        if application is not None:
            # a thread must not outlive the program
            application.aboutToQuit.connect(self.wait)

    @property
    def busy(self) -> bool:
        """Whether pictures are being read."""
        return self._job is not None

    def take_files(self, paths: Sequence[Path], then: Then | None = None) -> None:
        """Take in the pictures of these files, as many as there is room for; then do as told."""
        wanted = tuple(paths)
        # no more is read than there is room for, however many are dropped
        room = max(MOST - len(self._desk.project.pictures), 0)
        if wanted and not room:
            self.refused.emit(f"There are {MOST} pictures already; remove one first.")
        elif wanted:
            self._begin(lambda: _read_files(wanted[:room], len(wanted) - room), then)

    def take_mime(self, mime: QMimeData | None) -> bool:
        """Take in what was dropped or copied; False where there is no picture in it."""
        if mime is None:
            return False  # an empty clipboard has not even that
        paths = [Path(url.toLocalFile()) for url in mime.urls() if url.isLocalFile()]
        if paths:
            self.take_files(paths)
            return True
        image = mime.imageData() if mime.hasImage() else None
        if not isinstance(image, QImage) or image.isNull():
            return False
        if image.width() * image.height() > _MOST_PIXELS:
            self.refused.emit("The picture has more than 50 million pixels and was not read.")
        else:
            copied = image.copy()
            self._begin(lambda: _read_image(copied))
        return True

    def wait(self) -> None:
        """Let what is being read come to its end."""
        if self._job is not None:
            self._job.wait()

    def _begin(self, work: Callable[[], Read], then: Then | None = None) -> None:
        if self._job is not None:
            self.refused.emit("Pictures are being read already; wait for them.")
            return
        self._session, self._then = self._desk.session, then
        self._job = Job(work, self)
        self._job.finished.connect(self.on_read)
        self.busy_changed.emit()
        self._job.start()

    def on_read(self) -> None:
        """Add what was read, as one step."""
        job, self._job = self._job, None
        self.busy_changed.emit()
        if job is None:
            return
        job.deleteLater()
        if self._desk.session is not self._session:
            return
        if job.error is not None:
            raise job.error
        read = job.result
        assert isinstance(read, Read)
        self._add(read)

    def _add(self, read: Read) -> None:
        project, troubles, added = self._desk.project, list(read.troubles), 0
        for picture in read.pictures:
            try:
                project = add_wish(project, picture)
                added += 1
            except ValueError as error:
                troubles.append(str(error))
        if added:
            name = project.pictures[-1].name
            self._desk.apply(_step(added), self._then(project, name) if self._then is not None else project)
            self.taken.emit(name)
        self.refused.emit(_said(troubles))


def _step(added: int) -> str:
    return "Add picture" if added == 1 else f"Add {added} pictures"


def _said(troubles: Sequence[str]) -> str:
    """The first sentence, and how many more there are."""
    if not troubles:
        return ""
    more = len(troubles) - 1
    return troubles[0] + (f" And {more} more could not be taken in." if more else "")


def _read_files(paths: Sequence[Path], left_out: int) -> Read:
    from workbench.document import read_wish  # the library for pictures is read when one is taken in

    pictures, troubles = [], []
    for path in paths:
        try:
            pictures.append(read_wish(path))
        except FileTrouble as trouble:
            troubles.append(f"{path.name}: {trouble.reason}")
    if left_out > 0:
        troubles.append(f"At most {MOST} pictures can be kept: {left_out} were left out.")
    return Read(tuple(pictures), tuple(troubles))


def _read_image(image: QImage) -> Read:
    from workbench.document import wish_of  # likewise

    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    # without loss and quickly: it is made small at once
    image.save(buffer, "BMP" if not image.hasAlphaChannel() else "PNG")  # type: ignore[call-overload]
    try:
        return Read((wish_of(bytes(buffer.data().data()), PASTED),), ())
    except PictureTrouble as trouble:
        return Read((), (str(trouble),))


def with_picture(project: Project, name: str) -> WishPicture | None:
    """The picture of that name, else the first; None where there is none."""
    named = (picture for picture in project.pictures if picture.name == name)
    return next(named, project.pictures[0] if project.pictures else None)
