"""The text of one page, with its pictures fitted to the width there is."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QTimer, QUrl, Signal
from PySide6.QtGui import QPalette, QResizeEvent, QTextDocument
from PySide6.QtWidgets import QFrame, QTextBrowser, QWidget

from workbench.ui.help.drawn import pictures_of
from workbench.ui.help.html import html_of, sheet_of
from workbench.ui.help.pages import Page, pages
from workbench.ui.look import GRID, fonts, look

_WIDEST = 190 * GRID
"""No line of words is longer: the eye loses its way back."""
_NARROWEST = 60 * GRID
_REST_MS = 120
"""After which the hand that drags the edge is taken to rest, and the page is laid out anew."""


class HelpView(QTextBrowser):
    """Shows pages by name; what a link leads to is for whoever owns it."""

    wanted = Signal(str)
    """A link was followed: ``page`` or ``page#anchor``."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._page: Page | None = None
        self._width = 0
        self._text: QTextDocument | None = None
        self.setOpenLinks(False)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setLineWrapMode(QTextBrowser.LineWrapMode.FixedPixelWidth)
        self.anchorClicked.connect(self.on_anchor)
        self._settle = QTimer(self)
        self._settle.setSingleShot(True)
        self._settle.setInterval(_REST_MS)
        self._settle.timeout.connect(self.show_fitted)
        self._dress()

    @property
    def page(self) -> Page | None:
        """The page on show."""
        return self._page

    def show_page(self, name: str, anchor: str = "") -> None:
        """Show a page from its head or from an anchor; KeyError for a page that there is not."""
        page = pages()[name]
        if page is not self._page:
            self._page = page
            self.setAccessibleName(f"Help: {page.title}")
            self._set_text()
        self.verticalScrollBar().setValue(0)
        if anchor:
            self.scrollToAnchor(anchor)

    def show_fitted(self) -> None:
        """Lay the page out for the width there is now, with what is read kept in sight."""
        bar = self.verticalScrollBar()
        part = bar.value() / max(bar.maximum(), 1)
        self._set_text()
        bar.setValue(round(part * bar.maximum()))

    def _set_text(self) -> None:
        if self._page is None:
            return
        self._width = self._room()
        document, before = QTextDocument(self), self._text
        document.setDocumentMargin(0)
        document.setDefaultFont(fonts().body)
        document.setDefaultStyleSheet(sheet_of(look()))
        for address, picture in pictures_of(self._page, self._width, self.devicePixelRatioF()):
            document.addResource(QTextDocument.ResourceType.ImageResource.value, QUrl(address), picture)
        document.setHtml(html_of(self._page))
        self.setLineWrapColumnOrWidth(self._width)
        self.setDocument(document)
        self._text = document
        if before is not None:  # the one that a text view begins with is its own to delete
            before.deleteLater()

    def _room(self) -> int:
        return max(min(self.viewport().width() - 2 * GRID, _WIDEST), _NARROWEST)

    def _dress(self) -> None:
        palette = self.palette()
        palette.setColor(QPalette.ColorRole.Base, look().paper)
        self.setPalette(palette)

    def on_anchor(self, address: QUrl) -> None:
        """Pass on where a link leads."""
        self.wanted.emit(address.toString())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Pictures and lines keep to the width."""
        super().resizeEvent(event)
        if self._page is not None and self._room() != self._width:
            self._settle.start()

    def changeEvent(self, event: QEvent) -> None:
        """Colours are part of the text: a change of look sets it again."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.StyleChange and self._page is not None:
            self._dress()
            self._settle.start()
