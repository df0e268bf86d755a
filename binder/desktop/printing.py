"""The pages of a PDF, drawn on a printer: what was previewed is what prints."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QMarginsF, QRectF, QSize
from PySide6.QtGui import QPageLayout, QPageSize, QPainter

if TYPE_CHECKING:
    from PySide6.QtPdf import QPdfDocument
    from PySide6.QtPrintSupport import QPrinter

_DOTS = 300
"""Dots an inch that pages are drawn with: enough for hairlines and small type."""

_POINTS = 72


def print_document(printer: QPrinter, pages: QPdfDocument) -> None:
    """Draw the pages the printer was asked for, each on paper of its own size."""
    first = max(1, printer.fromPage())
    last = printer.toPage() or pages.pageCount()
    wanted = range(first - 1, min(last, pages.pageCount()))
    painter = QPainter()
    for place, page in enumerate(wanted):
        _take_paper(printer, pages, page)
        if place == 0:
            painter.begin(printer)
        else:
            printer.newPage()
        points = pages.pagePointSize(page)
        dots = QSize(round(points.width() / _POINTS * _DOTS), round(points.height() / _POINTS * _DOTS))
        painter.drawImage(QRectF(printer.pageLayout().fullRectPixels(printer.resolution())), pages.render(page, dots))
    painter.end()


def _take_paper(printer: QPrinter, pages: QPdfDocument, page: int) -> None:
    points = pages.pagePointSize(page)
    size = QPageSize(points, QPageSize.Unit.Point)
    printer.setPageLayout(QPageLayout(size, QPageLayout.Orientation.Portrait, QMarginsF()))
    printer.setFullPage(True)
