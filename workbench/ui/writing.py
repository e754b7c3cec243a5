"""Printing from the cloth and quote places: one file, written beside the window."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, QUrl
from PySide6.QtGui import QDesktopServices

from workbench import sheets
from workbench.body import Body
from workbench.document import FileTrouble, Picture, write_whole
from workbench.ui.asking import Asking
from workbench.ui.desk import Desk
from workbench.ui.files import Files, plain_name
from workbench.ui.job import Job

Make = Callable[[Picture], bytes]


def lay_pdf(picture: Picture) -> bytes:
    """The lay plans of all cloths; PrintError where there are none, or one that is kept is stale."""
    from workbench.document import printed_lays  # paper is not needed before the first print

    if picture.body is None or not picture.current:
        raise sheets.PrintError("There is no draft yet, so there is no lay plan to print.")
    stale = [lay.cloth.name for lay in picture.lays if lay.state == "stale"]
    if stale:
        raise sheets.PrintError(
            f"The plan kept for {' and '.join(stale)} is stale: lay it anew before it is printed."
        )
    return printed_lays(picture, picture.lays)


def quote_pdf(picture: Picture) -> bytes:
    """The client's page; PrintError where there is no draft to draw."""
    quote, body, outcome = picture.quote if picture.current else None, picture.body, picture.outcome
    if quote is None or body is None or outcome is None:
        raise sheets.PrintError("There is no draft yet, so there is no quote to print.")
    words, torso = _heading(picture, body), picture.project.torso
    return sheets.print_quote(quote, words, outcome, _paper(picture), picture.cutting, torso)


def silhouette_pdf(picture: Picture) -> bytes:
    """Her as she will look, from four sides; PrintError where there is no draft."""
    if picture.body is None or picture.outcome is None or not picture.current:
        raise sheets.PrintError("There is no draft yet, so there is no silhouette to print.")
    words, torso = _heading(picture, picture.body), picture.project.torso
    return sheets.print_silhouette(picture.outcome, torso, words, _paper(picture), picture.cutting)


def inside_pdf(picture: Picture) -> bytes:
    """The inside sheet; PrintError where there is no draft."""
    quote, body = picture.quote if picture.current else None, picture.body
    if quote is None or body is None:
        raise sheets.PrintError("There is no draft yet, so there is no inside sheet to print.")
    return sheets.print_inside_sheet(quote, _heading(picture, body), picture.project.quoting, _paper(picture))


def beads_pdf(picture: Picture) -> bytes:
    """The counted lists of beads and the map at true size; PrintError where there is no draft."""
    from workbench.document import printed_beads  # likewise

    if not picture.current:
        raise sheets.PrintError("There is no draft yet, so there is nothing to bead.")
    return printed_beads(picture, picture.project.paper)


def order_pdf(picture: Picture) -> bytes:
    """The sewing order; PrintError where there is no draft."""
    from workbench.document import printed_order  # likewise

    if not picture.current:
        raise sheets.PrintError("There is no draft yet, so there is no sewing order to print.")
    return printed_order(picture)


def card_pdf(picture: Picture) -> bytes:
    """The client's card; PrintError where there is no draft."""
    from workbench.document import printed_card  # likewise

    if not picture.current:
        raise sheets.PrintError("There is no draft yet, so there is no card to print.")
    return printed_card(picture)


def _heading(picture: Picture, body: Body) -> sheets.Heading:
    from workbench.document import heading_of  # likewise

    return heading_of(picture.project, body)


def _paper(picture: Picture) -> str:
    name = picture.project.paper.name
    return name if name in sheets.QUOTE_PAPERS else sheets.QUOTE_PAPERS[0]


class Writing(QObject):
    """Asks where to, writes, and opens what was written; says in one sentence why it could not."""

    def __init__(self, desk: Desk, files: Files, asking: Asking, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk, self._files, self._asking = desk, files, asking
        self._job: Job | None = None
        self._path = Path()

    def write(self, make: Make, what: str) -> None:
        """Write one PDF; ``what`` is added to the name of the project."""
        self.wait()
        wanted = self._files.folder_of_prints() / f"{plain_name(self._files.name)} {what}.pdf"
        path = self._asking.where_to_print(wanted)
        if path is None:
            return
        picture, self._path = self._desk.picture, path
        self._job = Job(lambda: write_whole(path, make(picture)), self)
        self._job.finished.connect(self.show_written)
        self._job.start()

    def wait(self) -> None:
        """Until what is being written is written."""
        if self._job is not None:
            self._job.wait()

    def show_written(self) -> None:
        """Open the file, or say why there is none."""
        job, self._job = self._job, None
        if job is None:
            return
        if job.error is None:
            QDesktopServices.openUrl(QUrl.fromLocalFile(str(self._path)))
        elif isinstance(job.error, (sheets.PrintError, FileTrouble, ValueError)):
            self._asking.tell("Not printed", str(job.error))
        else:
            raise job.error
        job.deleteLater()
