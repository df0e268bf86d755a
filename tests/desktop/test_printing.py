"""What is sent to a printer is every page, on paper of its own size."""

from __future__ import annotations

from pathlib import Path

import pytest
from pypdf import PdfReader
from PySide6.QtCore import QBuffer, QByteArray, QIODevice
from PySide6.QtPdf import QPdfDocument
from PySide6.QtPrintSupport import QPrinter
from PySide6.QtWidgets import QApplication

from binder.desktop.printing import Wanted, print_document
from binder.kitchen.binder import Binder
from binder.paper.print_set import SheetKind, sheet_bytes


@pytest.fixture
def pages(qapp: QApplication, chickpeas: Binder) -> QPdfDocument:
    document = QPdfDocument(qapp)
    buffer = QBuffer(document)
    buffer.setData(QByteArray(sheet_bytes(chickpeas, "day", SheetKind.CARDS, "a6")))
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    document.load(buffer)
    return document


def printed(pages: QPdfDocument, path: Path, first: int, last: int, wanted: Wanted | None = None) -> PdfReader:
    printer = QPrinter(QPrinter.PrinterMode.ScreenResolution)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(path))
    printer.setFromTo(first, last)
    if wanted is not None and wanted.order is None:
        printer.setPrintRange(QPrinter.PrintRange.CurrentPage)
    print_document(printer, pages, wanted)
    return PdfReader(path)


def test_every_page_is_printed_on_its_own_paper(pages: QPdfDocument, tmp_path: Path) -> None:
    paper = printed(pages, tmp_path / "out.pdf", 1, pages.pageCount())
    assert len(paper.pages) == pages.pageCount() > 1
    asked = pages.pagePointSize(0)
    box = paper.pages[0].mediabox
    assert float(box.width) == pytest.approx(asked.width(), abs=1)
    assert float(box.height) == pytest.approx(asked.height(), abs=1)


def test_only_the_pages_asked_for_are_printed(pages: QPdfDocument, tmp_path: Path) -> None:
    assert len(printed(pages, tmp_path / "out.pdf", 2, 3).pages) == 2


def test_pages_are_printed_as_often_as_wanted(pages: QPdfDocument, tmp_path: Path) -> None:
    assert len(printed(pages, tmp_path / "out.pdf", 0, 0, Wanted((0, 1, 0, 1, 3))).pages) == 5


def test_the_page_looked_at_is_printed_alone(pages: QPdfDocument, tmp_path: Path) -> None:
    assert len(printed(pages, tmp_path / "out.pdf", 0, 0, Wanted(None, 2)).pages) == 1


def test_pages_that_are_gone_are_not_wanted(pages: QPdfDocument) -> None:
    count = pages.pageCount()
    assert Wanted((0, count, count + 5)).pages(count) == (0,)
