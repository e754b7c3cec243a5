"""Help inside the program: pages, their search, why each finding is said and what to do about it.

Nothing here is read before somebody asks for help.
"""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from workbench.ui.help.whys import Why, page_of_code, why_of
from workbench.ui.help.window import HelpWindow

__all__ = ["HelpWindow", "Why", "page_of_code", "show_help", "why_of"]


def show_help(beside: QWidget, link: str = "") -> HelpWindow:
    """The help window of the window that ``beside`` belongs to, turned to ``page`` or ``page#heading``.

    There is one for each window, made when it is first wanted.
    """
    owner = beside.window()
    # a sheet that pops up is gone with the next click
    while owner.windowType() == Qt.WindowType.Popup and (above := owner.parentWidget()) is not None:
        owner = above.window()
    window = owner.findChild(HelpWindow) or HelpWindow(owner)
    if link:
        window.go(link)
    window.show()
    window.raise_()
    window.activateWindow()
    return window
