"""Everything the window can be told to do, once, for menus, toolbar and keys alike."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from PySide6.QtCore import QEvent, QObject, QSize, Qt
from PySide6.QtGui import QAction, QActionGroup, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QApplication, QLineEdit, QMainWindow, QMenu, QToolBar, QToolButton, QWidget

from workbench.frozen import dataclass
from workbench.ui.look import icon

Keys = QKeySequence.StandardKey | str | None


@dataclass(frozen=True)
class Deed:
    """How one action is named and reached."""

    name: str
    text: str
    """In a menu, with the letter that picks it."""
    keys: Keys = None
    drawing: str = ""
    short: str = ""
    """On the toolbar."""
    group: str = ""
    """Actions of one group exclude each other, with ``?`` none need be on; ``*`` is a plain on and off."""


_STANDARD = QKeySequence.StandardKey
DEEDS = (
    Deed("new_under_bust", "&Under-bust bodice", _STANDARD.New),
    Deed("new_over_bust", "&Over-bust bodice", "Ctrl+Shift+N"),
    Deed("shapes", "S&hapes…", "Ctrl+Shift+A", "shapes", "Shapes"),
    Deed("keep_shape", "&Keep its shape…"),
    Deed("book", "Client &book", "Ctrl+Shift+B", "book", "Client book"),
    Deed("open", "&Open…", _STANDARD.Open, "open", "Open"),
    Deed("save", "&Save", _STANDARD.Save, "save", "Save"),
    Deed("save_as", "Save &as…", "Ctrl+Shift+S"),
    Deed("versions", "Earlier &versions…"),
    Deed("print", "&Print to true size…", _STANDARD.Print, "print", "Print"),
    Deed("export", "E&xport…", "Ctrl+Shift+E", "export", "Export"),
    Deed("print_inside", "Print the &inside sheet…"),
    Deed("print_silhouette", "Print the silhoue&tte…"),
    Deed("print_card", "Print the cli&ent’s card…"),
    Deed("close", "&Close the project", _STANDARD.Close),
    Deed("quit", "&Quit", "Ctrl+Q"),
    Deed("undo", "&Undo", _STANDARD.Undo, "undo", "Undo"),
    Deed("redo", "&Redo", _STANDARD.Redo, "redo", "Redo"),
    Deed("draft", "&Draft", "Ctrl+1", group="place"),
    Deed("pieces", "&Pieces", "Ctrl+2", group="place"),
    Deed("beads", "&Beads", "Ctrl+3", group="place"),
    Deed("cloth", "&Cloth", "Ctrl+4", group="place"),
    Deed("quote", "&Quote", "Ctrl+5", group="place"),
    Deed("marking", "&Marking", "Ctrl+6", group="place"),
    Deed("sewing", "&Sewing", "Ctrl+7", group="place"),
    Deed("fittings", "&Fittings", "Ctrl+8", group="place"),
    Deed("take_most", "Take the &most that keeps every limit", "Ctrl+M"),
    Deed("apart", "Panels laid &apart", "F5", "apart", "Apart", "layout"),
    Deed("block", "Panels on the &block", "F6", "block", "Block", "layout"),
    Deed("both", "Both &halves", "F7", "both", "Halves", "layout"),
    Deed("fit", "&Fit the drawing to the window", "Ctrl+0", "fit", "Fit"),
    Deed("grid", "&Grid", "Ctrl+G", group="*"),
    Deed("allowance", "&Seam allowance", "Ctrl+E", group="*"),
    Deed("flare", "Flare of the s&eams", "Ctrl+Shift+F", "flare", "", "*"),
    Deed("ledger", "&Ledger table", "F8", "ledger", "Ledger", "*"),
    Deed("comfort", "&Comfort", "F9", "comfort", "Comfort", "?side"),
    Deed("worn", "&Worn, on her body", "F11", "worn", "Worn", "?side"),
    Deed("wish", "Pict&ures of the wish", "F10", "pictures", "Pictures", "?side"),
    Deed("halves", "The &other half, turned over", "Ctrl+H", "both", "Other half", "*"),
    Deed("lists", "L&ists", "Ctrl+L", "lists", "Lists", "*"),
    Deed("better", "Find a better &plan", "Ctrl+B", "better", "Better plan"),
    Deed("compare", "Compare wa&ys to cut", "Ctrl+T", "compare", "Compare", "*"),
    Deed("client_page", "The clien&t’s page", "Ctrl+Shift+T", "client_page", "Client’s page", "*"),
    Deed("next_step", "Ne&xt step", "Ctrl+J", "next_step", "Next step"),
    Deed("system", "As the s&ystem has it", group="look"),
    Deed("light", "&Light", group="look"),
    Deed("dark", "&Dark", group="look"),
    Deed("help", "&Help", _STANDARD.HelpContents),
    Deed("words", "&Words of the trade"),
    Deed("keys", "&Keys and gestures", "Ctrl+F1"),
    Deed("guide", "&Guide for a new client"),
    Deed("cautions", "&Cautions"),
    Deed("about", "&About"),
)
PlaceName = Literal["draft", "pieces", "beads", "cloth", "quote", "marking", "sewing", "fittings"]
PLACES: tuple[PlaceName, ...] = (
    *("draft", "pieces", "beads", "cloth"),
    *("quote", "marking", "sewing", "fittings"),
)
"""The places of the window, in the order of the job; each is an action that turns to it."""
SideName = Literal["comfort", "worn", "wish"]
SIDES: tuple[SideName, ...] = ("comfort", "worn", "wish")
"""What can stand beside the panels, at most one at a time."""
WITH_PROJECT = (
    "save",
    "save_as",
    "versions",
    "keep_shape",
    "print",
    "print_card",
    "print_silhouette",
    "export",
    "close",
    "take_most",
    "fit",
    "guide",
    *PLACES,
)
"""Actions that mean something in any place, but only while a project is open."""
IN_PLACE: Mapping[PlaceName, tuple[str, ...]] = {
    "draft": ("apart", "block", "both", "grid", "allowance", "flare", "ledger", *SIDES),
    "pieces": ("halves", "lists"),
    "beads": ("lists",),
    "cloth": ("better", "compare"),
    "quote": ("client_page", "print_inside"),
    "marking": (),
    "sewing": ("next_step",),
    "fittings": (),
}
"""Actions that mean something in one place."""
_BY_ICON = ("undo", "redo")
"""On the toolbar without a word: everybody knows the two arrows, and a small laptop has room for the rest."""
_ALWAYS = ("open", "save", "undo", "redo", "-")
TOOLS: Mapping[PlaceName, tuple[str, ...]] = {
    "draft": (*_ALWAYS, "shapes", "-", "apart", "block", "both", "-", "fit", "ledger", *SIDES, "-", "print"),
    "pieces": (*_ALWAYS, "halves", "-", "fit", "lists", "-", "print"),
    "beads": (*_ALWAYS, "fit", "lists", "-", "print"),
    "cloth": (*_ALWAYS, "better", "-", "fit", "compare", "-", "print"),
    "quote": (*_ALWAYS, "client_page", "-", "print"),
    "marking": (*_ALWAYS, "export", "-", "print"),
    "sewing": (*_ALWAYS, "next_step", "-", "print"),
    "fittings": (*_ALWAYS, "fit", "-", "print"),
}
"""On the toolbar of each place after *New*, a dash for a divider."""


class Actions(QObject):
    """The actions by name."""

    def __init__(self, window: QMainWindow) -> None:
        super().__init__(window)
        self._groups: dict[str, QActionGroup] = {}
        self.by_name = {deed.name: self._made(deed, window) for deed in DEEDS}
        self.show_icons()

    def __getitem__(self, name: str) -> QAction:
        return self.by_name[name]

    def _made(self, deed: Deed, window: QMainWindow) -> QAction:
        action = QAction(deed.text, window)
        if deed.short:
            action.setIconText(deed.short)
        if deed.keys is not None:
            action.setShortcut(QKeySequence(deed.keys))
        if deed.group:
            action.setCheckable(True)
        if deed.group not in ("", "*"):
            self._group(deed.group).addAction(action)
        window.addAction(action)
        return action

    def _group(self, name: str) -> QActionGroup:
        if name not in self._groups:
            self._groups[name] = QActionGroup(self)
            if name.startswith("?"):
                self._groups[name].setExclusionPolicy(QActionGroup.ExclusionPolicy.ExclusiveOptional)
        return self._groups[name]

    def name_of(self, action: QObject) -> str:
        """The name of one of the actions; empty for anything else."""
        return next((name for name, known in self.by_name.items() if known is action), "")

    def show_icons(self) -> None:
        """Draw the icons in the ink of the look on show."""
        for deed in DEEDS:
            if deed.drawing:
                action = self.by_name[deed.name]
                action.setIcon(icon(deed.drawing))
                action.setIconVisibleInMenu(False)

    def show_undo(self, undo_name: str | None, redo_name: str | None) -> None:
        """Say in the menu what would be undone and done again."""
        for name, word, step in (("undo", "&Undo", undo_name), ("redo", "&Redo", redo_name)):
            action = self.by_name[name]
            action.setEnabled(step is not None)
            action.setText(f"{word} {step[0].lower()}{step[1:]}" if step else word)
            action.setIconText(word.replace("&", ""))
            action.setToolTip(action.text().replace("&", ""))

    def show_at_work(self, at_work: bool, place: PlaceName = "draft") -> None:
        """Switch off what needs a project while there is none, and what belongs to another place."""
        for name in WITH_PROJECT:
            self.by_name[name].setEnabled(at_work)
        for name in {name for names in IN_PLACE.values() for name in names}:
            self.by_name[name].setEnabled(at_work and name in IN_PLACE[place])


class Menus:
    """The menu bar, with the two menus of files that others fill."""

    def __init__(self, window: QMainWindow, actions: Actions) -> None:
        self._window, self._actions = window, actions
        file = self._menu("&File")
        self.new = file.addMenu("&New")
        self._fill(self.new, "new_under_bust new_over_bust")
        self._fill(file, "shapes book open")
        self.recent = file.addMenu("Open &recent")
        self.demos = file.addMenu("&Demos")
        self._fill(file, "- save save_as versions keep_shape -")
        self._fill(file, "print print_inside print_silhouette print_card export - close quit")
        self._fill(self._menu("&Edit"), "undo redo - take_most")
        self._fill(self._menu("&Place"), " ".join(PLACES))
        view = self._menu("&View")
        self._fill(view, "fit -")
        self._fill(view, "apart block both grid allowance flare ledger comfort worn wish -")
        self._fill(view, "halves lists - better compare - client_page - next_step -")
        self._fill(view.addMenu("Light o&r dark"), "system light dark")
        self._fill(self._menu("&Help"), "help words keys - guide - cautions about")

    def _menu(self, title: str) -> QMenu:
        return self._window.menuBar().addMenu(title)

    def _fill(self, menu: QMenu, names: str) -> None:
        for name in names.split():
            if name == "-":
                menu.addSeparator()
            else:
                menu.addAction(self._actions[name])


class Tools(QToolBar):
    """The toolbar: icons with words, in the order of the job; what belongs to one place is there alone."""

    def __init__(self, window: QMainWindow, actions: Actions, menus: Menus) -> None:
        super().__init__("Tools", window)
        self._actions = actions
        self._place: PlaceName | None = None
        self.setObjectName("tools")
        self.setMovable(False)
        self.setIconSize(QSize(20, 20))
        self.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self.setContextMenuPolicy(Qt.ContextMenuPolicy.PreventContextMenu)
        self._new = self._new_button(menus)
        self.addWidget(self._new)
        # Qt's own, which opens what has no room; its name and its drawing are of no use to anybody
        self._more = self.findChild(QToolButton, "qt_toolbar_ext_button")
        if self._more is not None:
            self._more.setAccessibleName("More tools")
        self.show_place("draft")
        self.show_icons()
        window.addToolBar(self)

    def _new_button(self, menus: Menus) -> QToolButton:
        """The one button that is a menu and no action."""
        new = QToolButton()
        new.setObjectName("new")
        new.setText("New")
        new.setAccessibleName("New project")
        new.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        new.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        new.setMenu(menus.new)
        return new

    def show_place(self, place: PlaceName) -> None:
        """Put the tools of a place after *New*, and take those of another off."""
        if place == self._place:
            return
        self._place = place
        for action in self.actions()[1:]:
            self.removeAction(action)
            if action.isSeparator():
                action.deleteLater()
        for name in TOOLS[place]:
            if name == "-":
                self.addSeparator()
            else:
                self.addAction(self._actions[name])
        for button in self.findChildren(QToolButton):
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        for name in _BY_ICON:
            arrow = self.widgetForAction(self._actions[name])
            if isinstance(arrow, QToolButton):
                arrow.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonIconOnly)
                arrow.setAccessibleName(self._actions[name].iconText())

    def show_icons(self) -> None:
        """Draw the icons of the buttons that are no actions in the ink of the look on show."""
        self._new.setIcon(icon("new"))
        if self._more is not None:
            self._more.setIcon(icon("more", 12))


class UndoKeys(QObject):
    """Gives the undo and redo keys to the window while a field has nothing of its own to undo.

    A line edit claims these keys even when its text is as it was shown, and as the focus is
    nearly always in a field, nothing could be undone from the keyboard. The filter sits on
    the field that has the focus only: on the whole program it would be run for every event.
    """

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        application = QApplication.instance()
        if isinstance(application, QApplication):
            application.focusChanged.connect(self.on_focus_changed)

    def on_focus_changed(self, old: QWidget | None, new: QWidget | None) -> None:
        """Follow the focus."""
        if isinstance(old, QLineEdit):
            old.removeEventFilter(self)
        if isinstance(new, QLineEdit):
            new.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Let the key through to the window where the field has no use for it."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            spare = isinstance(watched, QLineEdit) and self._is_spare(watched, event)
            if spare:
                event.ignore()
            return spare
        return False

    @staticmethod
    def _is_spare(field: QLineEdit, event: QKeyEvent) -> bool:
        undo = event.matches(QKeySequence.StandardKey.Undo) and not field.isUndoAvailable()
        redo = event.matches(QKeySequence.StandardKey.Redo) and not field.isRedoAvailable()
        return undo or redo
