"""Pages of paper on screen: the very bytes that are printed and saved."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QPointF, Qt, QTimer, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QPainter, QPaintEvent, QPixmap, QResizeEvent, QWheelEvent
from PySide6.QtPdf import QPdfDocument, QPdfPageRenderer
from PySide6.QtPdfWidgets import QPdfView

from binder.desktop.spacing import space
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtWidgets import QWidget

_CLOSER = 1.2
_LEAST, _MOST = 0.1, 8.0
"""How small and how large a page is shown, as parts of its size on paper."""

_POINTS = 72
_HELD = 400
"""Milliseconds that the old pages stand in for the new at most."""


class Preview(QPdfView):
    """Shows a document's pages one under the other; new bytes keep the place that was looked at."""

    page_changed = Signal()
    """Another page is looked at."""
    zoomed = Signal()
    """Pages are shown larger or smaller."""
    loaded = Signal()
    """There are other pages."""
    drawn = Signal()
    """The page looked at is drawn, or takes too long to wait for."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName(_("Preview"))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.content = b""
        self.pages = QPdfDocument(parent)
        self._buffer = QBuffer(parent)
        self._before = QPixmap()
        self._patience = QTimer(self)
        self._patience.setObjectName("the old pages of the preview")
        self._patience.setSingleShot(True)
        self._patience.setInterval(_HELD)
        self._patience.timeout.connect(self._let_go)
        self.setDocument(self.pages)
        self.setPageMode(QPdfView.PageMode.MultiPage)
        self.setZoomMode(QPdfView.ZoomMode.FitInView)
        self.setPageSpacing(space(self, 3))
        self.pageNavigator().currentPageChanged.connect(self._tell_page)
        self._renderer = self.findChild(QPdfPageRenderer)
        if self._renderer is not None:
            self._renderer.pageRendered.connect(self._drawn)

    def show_pages(self, content: bytes) -> None:
        """Show the pages of a PDF; the old ones stay in sight until the new are drawn."""
        if content == self.content:
            return
        if self.content and self.isVisible():
            self._before = self.viewport().grab()
        down, across = self.verticalScrollBar().value(), self.horizontalScrollBar().value()
        self.content = content
        self.pages.close()
        self._buffer.close()
        self._buffer.setData(QByteArray(content))
        self._buffer.open(QIODevice.OpenModeFlag.ReadOnly)
        self.pages.load(self._buffer)
        self.verticalScrollBar().setValue(down)
        self.horizontalScrollBar().setValue(across)
        self.loaded.emit()
        self.page_changed.emit()
        if self.isVisible():
            self._patience.start()
        else:
            self._let_go()

    # Which page

    @property
    def page(self) -> int:
        """The page looked at, counted from 0."""
        return self.pageNavigator().currentPage()

    def go_to_page(self, page: int) -> None:
        """Bring a page into sight, the first or the last where there is none so far."""
        wanted = min(max(page, 0), max(self.pages.pageCount() - 1, 0))
        self.pageNavigator().jump(wanted, QPointF(), 0.0)

    def _tell_page(self) -> None:
        self.page_changed.emit()

    # How large

    @property
    def shown_factor(self) -> float:
        """How large pages are shown, 1 as on paper."""
        if self.zoomMode() is QPdfView.ZoomMode.Custom or not self.pages.pageCount():
            return self.zoomFactor()
        size, margins = self.pages.pagePointSize(self.page), self.documentMargins()
        dots = self.screen().logicalDotsPerInch() / _POINTS
        room = self.viewport().size()
        wide = (room.width() - margins.left() - margins.right()) / (size.width() * dots)
        if self.zoomMode() is QPdfView.ZoomMode.FitToWidth:
            return wide
        return min(wide, (room.height() - self.pageSpacing()) / (size.height() * dots))

    def look_closer(self) -> None:
        """Show pages larger."""
        self._zoom(_CLOSER)

    def look_farther(self) -> None:
        """Show pages smaller."""
        self._zoom(1 / _CLOSER)

    def _zoom(self, by: float) -> None:
        page, factor = self.page, min(max(self.shown_factor * by, _LEAST), _MOST)
        self.setZoomMode(QPdfView.ZoomMode.Custom)
        self.setZoomFactor(factor)
        self.go_to_page(page)
        self.zoomed.emit()

    def fit_page(self) -> None:
        """Each page whole."""
        self._fit(QPdfView.ZoomMode.FitInView)

    def fit_width(self) -> None:
        """As wide as the page has room for."""
        self._fit(QPdfView.ZoomMode.FitToWidth)

    def _fit(self, mode: QPdfView.ZoomMode) -> None:
        page = self.page
        self.setZoomMode(mode)
        self.go_to_page(page)
        self.zoomed.emit()

    # Keys, wheel and paint

    def keyPressEvent(self, event: QKeyEvent) -> None:
        keys: dict[Qt.Key, Callable[[], None]] = {
            Qt.Key.Key_Plus: self.look_closer,
            Qt.Key.Key_Equal: self.look_closer,
            Qt.Key.Key_Minus: self.look_farther,
            Qt.Key.Key_W: self.fit_width,
            Qt.Key.Key_P: self.fit_page,
            Qt.Key.Key_PageDown: lambda: self.go_to_page(self.page + 1),
            Qt.Key.Key_PageUp: lambda: self.go_to_page(self.page - 1),
            Qt.Key.Key_Home: lambda: self.go_to_page(0),
            Qt.Key.Key_End: lambda: self.go_to_page(self.pages.pageCount() - 1),
        }
        done = keys.get(Qt.Key(event.key()))
        with_control = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        if done is not None and not with_control:
            done()
        else:
            super().keyPressEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.look_closer() if event.angleDelta().y() > 0 else self.look_farther()
            event.accept()
        else:
            super().wheelEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._let_go()
        self.zoomed.emit()

    def hideEvent(self, event: QHideEvent) -> None:
        self._let_go()
        super().hideEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if not self._before.isNull():
            QPainter(self.viewport()).drawPixmap(0, 0, self._before)

    def _drawn(self, page: int) -> None:
        if page == self.page and self._patience.isActive():
            self._let_go()

    def _let_go(self) -> None:
        """The new pages are there: the old ones are needed no longer."""
        self._patience.stop()
        self.drawn.emit()
        if not self._before.isNull():
            self._before = QPixmap()
            self.viewport().update()
