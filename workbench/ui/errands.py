"""What the user asks of the program as a whole: each action of the menus, answered."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction, QGuiApplication

from workbench.body import step_mm
from workbench.document import Project, Session, new_project, take_the_most
from workbench.ui.files import settle
from workbench.ui.look import Scheme
from workbench.ui.style import dress
from workbench.ui.writing import (
    Writing,
    beads_pdf,
    card_pdf,
    inside_pdf,
    lay_pdf,
    order_pdf,
    quote_pdf,
    silhouette_pdf,
)

if TYPE_CHECKING:
    from workbench.ui.export_choices import Kind
    from workbench.ui.window import Window

TAKE_MOST = "Most that keeps every limit"
_SCHEMES: tuple[Scheme, ...] = ("system", "light", "dark")


class Errands(QObject):
    """Runs them for one window."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self._window = window
        self.writing = Writing(window.desk, window.files, window.asking, self)
        for name, told in {
            "new_under_bust": self.on_new_under_bust,
            "new_over_bust": self.on_new_over_bust,
            "open": window.files.open,
            "shapes": self.on_shapes,
            "keep_shape": self.on_keep_shape,
            "save": window.files.save,
            "save_as": window.files.save_as,
            "print": self.on_print,
            "print_inside": self.on_print_inside,
            "print_card": self.on_print_card,
            "print_silhouette": self.on_print_silhouette,
            "export": self.on_export,
            "book": window.show_book,
            "close": self.on_close_project,
            "undo": self.on_undo,
            "redo": self.on_redo,
            "take_most": self.on_take_most,
            "apart": self.on_apart,
            "block": self.on_block,
            "both": self.on_both,
            "system": self.on_scheme_picked,
            "light": self.on_scheme_picked,
            "dark": self.on_scheme_picked,
            "keys": self.on_keys,
            "cautions": self.on_cautions,
            "about": self.on_about,
        }.items():
            window.deeds[name].triggered.connect(told)
        self._connect_files()

    def _connect_files(self) -> None:
        window = self._window
        window.menus.recent.triggered.connect(self.on_recent_picked)
        window.menus.demos.triggered.connect(self.on_demo_picked)
        QGuiApplication.styleHints().colorSchemeChanged.connect(self.on_scheme_picked)

    def on_new_under_bust(self) -> None:
        """Begin an under-bust bodice."""
        self._window.files.new("under_bust")

    def on_new_over_bust(self) -> None:
        """Begin an over-bust bodice."""
        self._window.files.new("over_bust")

    def on_shapes(self) -> None:
        """Choose a shape for the project on the desk, or for a new one."""
        from workbench.ui.styles import StyleChooser

        window = self._window
        settle()
        window.desk.now()
        chooser = StyleChooser(window.desk, self._shapes, window, at_work=window.at_work)
        chooser.new_wanted.connect(self.on_new_wanted)
        chooser.exec()
        chooser.deleteLater()

    def on_new_wanted(self, project: Project) -> None:
        """Put a project that was begun from a shape on the desk."""
        if self._window.files.may_leave():
            self._window.files.put(project, None)

    def on_keep_shape(self) -> None:
        """Keep the shape of the project on the desk among hers."""
        from workbench.ui.styles import SaveShape

        settle()
        if self._shapes is not None:
            dialog = SaveShape(self._window.desk, self._shapes, self._window)
            dialog.exec()
            dialog.deleteLater()

    @property
    def _shapes(self) -> Path | None:
        """The folder of the shapes she keeps; None where nothing is kept."""
        return self._window.data / "shapes" if self._window.data is not None else None

    def on_recent_picked(self, action: QAction) -> None:
        """Open a recent file."""
        self._window.files.open_path(Path(action.data()))

    def on_demo_picked(self, action: QAction) -> None:
        """Open a demo."""
        self._window.files.open_demo(Path(action.data()))

    def on_close_project(self) -> None:
        """Let the project go and turn to the welcome page."""
        window = self._window
        if window.files.may_leave():
            window.desk.open_session(Session(new_project(unit=window.desk.project.unit)))
            window.show_welcome()

    def on_undo(self) -> None:
        """Take back the last step; what is still being typed becomes that step."""
        settle()
        self._window.desk.undo()

    def on_redo(self) -> None:
        """Do again what was taken back."""
        self._window.desk.redo()

    def on_take_most(self) -> None:
        """Take the largest reduction that keeps every limit, in whole steps of her unit."""
        settle()
        desk = self._window.desk
        comfort = desk.picture.comfort
        if comfort is not None:
            step = step_mm(desk.project.unit, desk.project.fraction)
            desk.apply(TAKE_MOST, take_the_most(desk.project, comfort, step))

    def on_print(self) -> None:
        """Print what belongs to the place: pieces at true size, lay plans, the client's page."""
        from workbench.ui.print_dialog import PrintDialog

        window = self._window
        settle()
        window.desk.now()
        if window.place == "cloth":
            self.writing.write(lay_pdf, "lay plans")
        elif window.place == "quote":
            self.writing.write(quote_pdf, "quote")
        elif window.place == "sewing":
            self.writing.write(order_pdf, "sewing order")
        elif window.place == "beads":
            self.writing.write(beads_pdf, "beads")
        elif window.place == "marking":
            self._export("guide")
        elif window.desk.picture.current:
            dialog = PrintDialog(window.desk, window.files, window.asking, window)
            dialog.exec()
            dialog.deleteLater()

    def on_print_inside(self) -> None:
        """Write the inside sheet of the quote."""
        settle()
        self._window.desk.now()
        self.writing.write(inside_pdf, "inside sheet")

    def on_print_card(self) -> None:
        """Write the card for her who wears it."""
        settle()
        self._window.desk.now()
        self.writing.write(card_pdf, "card")

    def on_print_silhouette(self) -> None:
        """Write how she looks in it from four sides."""
        settle()
        self._window.desk.now()
        self.writing.write(silhouette_pdf, "silhouette")

    def on_export(self) -> None:
        """Write the project for other programs, a copy shop or a projector, or the guide to mark by."""
        settle()
        self._window.desk.now()
        self._export("guide" if self._window.place == "marking" else "sheet")

    def _export(self, kind: Kind) -> None:
        from workbench.ui.export_dialog import ExportDialog

        window = self._window
        dialog = ExportDialog(window.desk, window.files, window.asking, window, kind)
        dialog.exec()
        dialog.deleteLater()

    def on_apart(self) -> None:
        """Lay the panels apart."""
        self._window.board.set_layout("apart")

    def on_block(self) -> None:
        """Lay the panels on the block."""
        self._window.board.set_layout("block")

    def on_both(self) -> None:
        """Lay out both halves."""
        self._window.board.set_layout("both")

    def on_scheme_picked(self) -> None:
        """Light or dark, as the checked action says or as the system now has it."""
        window = self._window
        scheme: Scheme = next((name for name in _SCHEMES if window.deeds[name].isChecked()), "system")
        window.settings.scheme = scheme
        dress(scheme)

    def on_keys(self) -> None:
        """Show the keys and gestures."""
        from workbench.ui import help_pages  # nobody opens the program to read these

        help_pages.show_keys(self._window)

    def on_cautions(self) -> None:
        """Show the cautions."""
        from workbench.ui import help_pages

        help_pages.show_cautions(self._window)

    def on_about(self) -> None:
        """Show what the program is."""
        from workbench.ui import help_pages

        help_pages.show_about(self._window)
