"""The style sheet: how stock controls are dressed, all from the colours of the look."""

from __future__ import annotations

from PySide6.QtWidgets import QApplication

from workbench.ui.look import Look, Scheme, fonts, show_look

_SHEET = """
QMainWindow::separator { background: %hairline; width: 1px; height: 1px; }
QSplitter::handle { background: %hairline; }
QSplitter::handle:hover { background: %selected; }

QMenuBar { background: %ground; padding: 2px 8px; border: none; }
QMenuBar::item { padding: 4px 8px; border-radius: 4px; background: transparent; }
QMenuBar::item:selected { background: %selected_fill; color: %ink; }
QMenu { background: %field; color: %ink; border: 1px solid %rule; padding: 4px; }
QMenu::item { padding: 5px 24px 5px 10px; border-radius: 4px; }
QMenu::item:selected { background: %selected_fill; color: %ink; }
QMenu::item:disabled { color: %rule; }
QMenu::separator { height: 1px; background: %hairline; margin: 4px 8px; }

QToolBar {
    background: %ground; border: none; border-bottom: 1px solid %hairline; padding: 2px 6px; spacing: 2px;
}
QToolBar::separator { background: %hairline; width: 1px; margin: 6px 4px; }
QToolBar QToolButton {
    border: 1px solid transparent; border-radius: 4px; padding: 4px 5px; color: %ink;
}
QToolBar QToolButton#qt_toolbar_ext_button { padding: 0; border-color: %hairline; }
QToolBar QToolButton:hover { background: %field; }
QToolBar QToolButton:pressed, QToolBar QToolButton:checked {
    background: %selected_fill; border-color: %selected;
}
QToolBar QToolButton:checked:disabled {
    background: transparent; border-color: transparent; color: %rule;
}
QToolBar QToolButton:focus { border-color: %selected; }
QToolBar QToolButton:disabled { color: %rule; }
QToolBar QToolButton::menu-indicator { image: none; }

QPushButton {
    background: %field; color: %ink; border: 1px solid %rule; border-radius: 4px; padding: 5px 14px;
}
QPushButton:hover { border-color: %selected; }
QPushButton:focus { border: 1px solid %selected; background: %selected_fill; }
QPushButton:pressed { background: %selected_fill; }
QPushButton:disabled { color: %rule; border-color: %hairline; background: %ground; }
QPushButton:default { background: %selected; color: %on_selected; border-color: %selected; }
QPushButton:default:disabled { background: %ground; color: %rule; border-color: %hairline; }
QPushButton#quiet {
    background: transparent; border: 1px solid transparent; color: %selected; padding: 5px 8px;
}
QPushButton#quiet:hover, QPushButton#quiet:focus {
    background: %selected_fill; border-color: %selected;
}
QPushButton#row {
    background: transparent; border: 1px solid transparent; text-align: left; padding: 6px 8px;
}
QPushButton#row:hover, QPushButton#row:focus {
    background: %selected_fill; border-color: %selected;
}

QDialogButtonBox { dialogbuttonbox-buttons-have-icons: 0; }

QFrame#sheet { background: %field; border: 1px solid %rule; }
QScrollArea { background: transparent; border: none; }
QToolTip { background: %field; color: %ink; border: 1px solid %rule; padding: 4px; }

QScrollBar:vertical { background: transparent; width: 10px; margin: 0; }
QScrollBar:horizontal { background: transparent; height: 10px; margin: 0; }
QScrollBar::handle {
    background: %rule; border-radius: 3px; margin: 2px; min-height: 28px; min-width: 28px;
}
QScrollBar::handle:hover { background: %soft_ink; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
"""

_ROLES = (
    "selected_fill",
    "on_selected",
    "selected",
    "soft_ink",
    "hairline",
    "ground",
    "field",
    "rule",
    "ink",
)
"""A name that begins with another comes before it."""


def style_sheet(shown: Look) -> str:
    """The sheet with every ``%role`` replaced by that colour of the look."""
    sheet = _SHEET
    for role in _ROLES:
        sheet = sheet.replace(f"%{role}", getattr(shown, role).name())
    return sheet


def dress(scheme: Scheme) -> None:
    """Put a look on show in every window: palette, type and style sheet."""
    shown = show_look(scheme)
    application = QApplication.instance()
    if isinstance(application, QApplication):
        application.setFont(fonts().body)
        application.setStyleSheet(style_sheet(shown))
