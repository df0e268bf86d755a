"""Pages of paper on screen: the very bytes that are printed and saved."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, Qt
from PySide6.QtPdf import QPdfDocument
from PySide6.QtPdfWidgets import QPdfView

from binder.desktop.spacing import space
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget


class Preview(QPdfView):
    """Shows a document's pages one under the other; new bytes keep the place that was looked at."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName(_("Preview"))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.content = b""
        self.pages = QPdfDocument(parent)
        self._buffer = QBuffer(parent)
        self.setDocument(self.pages)
        self.setPageMode(QPdfView.PageMode.MultiPage)
        self.setZoomMode(QPdfView.ZoomMode.FitInView)
        self.setPageSpacing(space(self, 3))

    def show_pages(self, content: bytes) -> None:
        """Show the pages of a PDF."""
        if content == self.content:
            return
        at = self.verticalScrollBar().value()
        self.content = content
        self.pages.close()
        self._buffer.close()
        self._buffer.setData(QByteArray(content))
        self._buffer.open(QIODevice.OpenModeFlag.ReadOnly)
        self.pages.load(self._buffer)
        self.verticalScrollBar().setValue(at)

    def fit_width(self, *, wide: bool) -> None:
        """As wide as the page has room for, or each page whole."""
        self.setZoomMode(QPdfView.ZoomMode.FitToWidth if wide else QPdfView.ZoomMode.FitInView)
