"""Pages as pictures for a tablet: the same pages that are printed, as PNG."""

from __future__ import annotations

from pathlib import PurePath
from typing import TYPE_CHECKING

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QSize, Qt
from PySide6.QtGui import QImage, QPainter
from PySide6.QtPdf import QPdfDocument

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

LONG_SIDE = 2400
"""Pixels of a page's longer side: as many as common tablets show. Common practice, no source."""


def page_picture(pages: QPdfDocument, page: int) -> bytes:
    """A page as a PNG, black on white, counted from 0."""
    points = pages.pagePointSize(page)
    dots = LONG_SIDE / max(points.width(), points.height(), 1.0)
    size = QSize(max(1, round(points.width() * dots)), max(1, round(points.height() * dots)))
    picture = QImage(size, QImage.Format.Format_RGB32)
    picture.fill(Qt.GlobalColor.white)
    painter = QPainter(picture)
    painter.drawImage(0, 0, pages.render(page, size))
    painter.end()
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    picture.save(buffer, "PNG")  # type: ignore[call-overload]
    return bytes(buffer.data().data())


def every_picture(content: bytes, reached: Callable[[float], None]) -> Iterator[bytes]:
    """All pages of a PDF as PNG, one after another, in whichever thread asks; `reached` is told how far it is."""
    buffer = QBuffer()
    buffer.setData(QByteArray(content))
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    pages = QPdfDocument()
    pages.load(buffer)
    for page in range(pages.pageCount()):
        reached(page / pages.pageCount())
        yield page_picture(pages, page)
    pages.close()


def picture_name(sheet: str, page: int, count: int) -> str:
    """The name of a page's picture after its sheet's file: `station-cards-03.png`; the page is counted from 0."""
    digits = max(2, len(str(count)))
    return f"{PurePath(sheet).stem}-{page + 1:0{digits}d}.png"
