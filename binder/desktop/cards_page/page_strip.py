"""The pages as small pictures, one under the other: press one to look at it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QAbstractListModel, QModelIndex, QPersistentModelIndex, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QImage, QPainter, QPen
from PySide6.QtPdf import QPdfPageRenderer
from PySide6.QtWidgets import QAbstractItemView, QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from binder.desktop.pictures.state_mark import draw_mark
from binder.desktop.sheet.cell import Mark
from binder.desktop.spacing import characters, space, step
from binder.desktop.theme import tokens_for
from binder.desktop.typeface import small
from binder.kitchen.wording import _

if TYPE_CHECKING:
    from collections.abc import Mapping

    from PySide6.QtPdf import QPdfDocument

    from binder.desktop.cards_page.preview import Preview

Index = QModelIndex | QPersistentModelIndex


class PageStrip(QListView):
    """Follows the preview, and leads it; a page with a fault has its mark."""

    chosen = Signal(int)
    """A page is wanted, counted from 0."""

    def __init__(self, preview: Preview, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._preview = preview
        self.setAccessibleName(_("Pages"))
        self.setProperty("lies", "ground")
        self.setFixedWidth(characters(self.font(), 15))
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.pictures = PagePictures(preview.pages, self)
        self.pictures.width = self.width() - space(self, 8)
        self.pictures.ratio = self.devicePixelRatioF()
        self.setModel(self.pictures)
        self._delegate = _PageDelegate(self)
        self.setItemDelegate(self._delegate)
        preview.loaded.connect(self.pictures.follow)
        preview.drawn.connect(self.pictures.draw)
        preview.page_changed.connect(self._follow)
        self.selectionModel().currentChanged.connect(self._choose)

    def mark_pages(self, marks: Mapping[int, Mark]) -> None:
        """Mark pages, counted from 0."""
        self.pictures.mark(marks)

    def _follow(self) -> None:
        index = self.pictures.index(self._preview.page)
        if index.isValid() and index != self.currentIndex():
            self.setCurrentIndex(index)

    def _choose(self, index: Index) -> None:
        if index.isValid() and index.row() != self._preview.page:
            self.chosen.emit(index.row())


class PagePictures(QAbstractListModel):
    """A row a page. A picture is drawn beside the window when it is first asked for; the old one stands in meanwhile.

    Only one page is drawn at a time, so pictures wait until the page looked at is there.

    `width` is that of a picture in pixels of the window, `ratio` how many dots of the screen a pixel has.
    """

    def __init__(self, pages: QPdfDocument, parent: QWidget) -> None:
        super().__init__(parent)
        self._pages = pages
        self.width, self.ratio = 100, 1.0
        self._count = 0
        self._waits = False
        self._pictures: dict[int, QImage] = {}
        self._asked: dict[int, int] = {}
        self._fresh: set[int] = set()
        self._marks: dict[int, Mark] = {}
        self._renderer = QPdfPageRenderer(self)
        self._renderer.setRenderMode(QPdfPageRenderer.RenderMode.MultiThreaded)
        self._renderer.setDocument(pages)
        self._renderer.pageRendered.connect(self._take)

    def follow(self) -> None:
        """The pages are others, or as many others."""
        count = self._pages.pageCount()
        self._asked, self._fresh, self._waits = {}, set(), True
        if count > self._count:
            self.beginInsertRows(QModelIndex(), self._count, count - 1)
            self._count = count
            self.endInsertRows()
        elif count < self._count:
            self.beginRemoveRows(QModelIndex(), count, self._count - 1)
            self._count = count
            self._pictures = {page: picture for page, picture in self._pictures.items() if page < count}
            self.endRemoveRows()
        self._tell_all()

    def draw(self) -> None:
        """The page looked at is there: pictures are drawn from here on."""
        if self._waits:
            self._waits = False
            self._tell_all()

    def mark(self, marks: Mapping[int, Mark]) -> None:
        """Mark pages."""
        if dict(marks) != self._marks:
            self._marks = dict(marks)
            self._tell_all()

    def _tell_all(self) -> None:
        if self._count:
            self.dataChanged.emit(self.index(0), self.index(self._count - 1))

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - as Qt has it
        return 0 if parent.isValid() else self._count

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        page = index.row()
        mark = self._marks.get(page, Mark.NONE)
        if role == Qt.ItemDataRole.DisplayRole:
            return str(page + 1)
        if role == Qt.ItemDataRole.AccessibleTextRole:
            says = _("page {number}, with a fault") if mark else _("page {number}")
            return says.format(number=page + 1)
        if role == Qt.ItemDataRole.UserRole:
            return mark
        if role == Qt.ItemDataRole.DecorationRole:
            self._ask(page)
            return self._pictures.get(page)
        return None

    def size(self, page: int) -> QSize:
        """How large the picture of a page is, in pixels."""
        points = self._pages.pagePointSize(page)
        tall = points.height() / points.width() if points.width() else 1.4
        return QSize(self.width, max(1, round(self.width * tall)))

    def _ask(self, page: int) -> None:
        if not self._waits and page not in self._asked and page not in self._fresh:
            self._asked[page] = self._renderer.requestPage(page, self.size(page) * self.ratio)

    def _take(self, page: int, _size: QSize, picture: QImage, _options: object, request: int) -> None:
        if self._asked.get(page) == request:
            del self._asked[page]
            self._fresh.add(page)
            self._pictures[page] = picture
            self.dataChanged.emit(self.index(page), self.index(page))


class _PageDelegate(QStyledItemDelegate):
    """A white sheet with its number under it; the page looked at has a frame."""

    def __init__(self, strip: PageStrip) -> None:
        super().__init__(strip)
        self._strip = strip

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        picture = self._strip.pictures.size(index.row())
        return QSize(picture.width(), picture.height() + space(self._strip, 8))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        tokens, font = tokens_for(self._strip.palette()), small(self._strip.font())
        box = QRectF(option.rect)
        picture = self._strip.pictures.size(index.row())
        sheet = QRectF(0, box.top() + step(font, 2), picture.width(), picture.height())
        sheet.moveCenter(QRectF(box.left(), sheet.top(), box.width(), sheet.height()).center())
        painter.fillRect(sheet, Qt.GlobalColor.white)
        drawn = index.data(Qt.ItemDataRole.DecorationRole)
        if isinstance(drawn, QImage):
            painter.drawImage(sheet, drawn)
        current = bool(option.state & QStyle.StateFlag.State_Selected)
        painter.setPen(QPen(tokens.colour("accent" if current else "line"), 2 if current else 1))
        painter.drawRect(sheet)
        foot = QRectF(box.left(), sheet.bottom(), box.width(), box.bottom() - sheet.bottom())
        painter.setFont(font)
        painter.setPen(tokens.colour("ink" if current else "quiet"))
        painter.drawText(foot, int(Qt.AlignmentFlag.AlignCenter), str(index.data(Qt.ItemDataRole.DisplayRole)))
        mark = index.data(Qt.ItemDataRole.UserRole)
        if mark:
            side = step(font, 3)
            place = QRectF(sheet.right() - side, foot.center().y() - side / 2, side, side)
            draw_mark(painter, place, Mark(mark), tokens)
