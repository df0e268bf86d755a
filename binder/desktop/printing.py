"""The pages of a PDF, drawn on a printer: what was previewed is what prints."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QMarginsF, QRectF, QSize
from PySide6.QtGui import QPageLayout, QPageSize, QPainter

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtPdf import QPdfDocument
    from PySide6.QtPrintSupport import QPrinter

_DOTS = 300
"""Dots an inch that pages are drawn with: enough for hairlines and small type."""

_POINTS = 72


@dataclass(frozen=True)
class Wanted:
    """Which pages are wanted of a document, counted from 0, each as often as it is named; None: each once.

    `shown` is the page that was looked at.
    """

    order: tuple[int, ...] | None = None
    shown: int = 0

    def pages(self, count: int) -> tuple[int, ...]:
        """The pages, of a document that has so many."""
        every = range(count) if self.order is None else self.order
        return tuple(page for page in every if page < count)


def print_document(printer: QPrinter, pages: QPdfDocument, wanted: Wanted | None = None) -> None:
    """Draw the pages the printer was asked for among those wanted, each on paper of its own size."""
    asked = _asked(printer, pages, wanted or Wanted())
    painter = QPainter()
    for place, page in enumerate(asked):
        _take_paper(printer, pages, page)
        if place == 0:
            painter.begin(printer)
        else:
            printer.newPage()
        points = pages.pagePointSize(page)
        dots = QSize(round(points.width() / _POINTS * _DOTS), round(points.height() / _POINTS * _DOTS))
        painter.drawImage(QRectF(printer.pageLayout().fullRectPixels(printer.resolution())), pages.render(page, dots))
    if asked:
        painter.end()


def _asked(printer: QPrinter, pages: QPdfDocument, wanted: Wanted) -> Sequence[int]:
    """The pages that were chosen in the dialog: all, from one to another, or the one that was looked at."""
    if printer.printRange() == printer.PrintRange.CurrentPage:
        return (wanted.shown,)
    order = wanted.pages(pages.pageCount())
    first = max(1, printer.fromPage())
    return order[first - 1 : printer.toPage() or len(order)]


def _take_paper(printer: QPrinter, pages: QPdfDocument, page: int) -> None:
    points = pages.pagePointSize(page)
    size = QPageSize(points, QPageSize.Unit.Point)
    printer.setPageLayout(QPageLayout(size, QPageLayout.Orientation.Portrait, QMarginsF()))
    printer.setFullPage(True)
