"""XLSX files for tests: whole ones as openpyxl writes them, and parts laid by hand where something is to be wrong."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Iterable, Mapping

import openpyxl

_RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
_PACKAGE = "http://schemas.openxmlformats.org/package/2006/relationships"
_MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"

PARTS = {
    "_rels/.rels": (
        f'<Relationships xmlns="{_PACKAGE}">'
        f'<Relationship Id="r1" Type="{_RELATIONS}/officeDocument" Target="xl/workbook.xml"/></Relationships>'
    ),
    "xl/workbook.xml": (
        f'<workbook xmlns="{_MAIN}" xmlns:r="{_RELATIONS}">'
        '<sheets><sheet name="Prices" sheetId="1" r:id="r1"/></sheets></workbook>'
    ),
    "xl/_rels/workbook.xml.rels": (
        f'<Relationships xmlns="{_PACKAGE}">'
        f'<Relationship Id="r1" Type="{_RELATIONS}/worksheet" Target="worksheets/sheet1.xml"/>'
        f'<Relationship Id="r2" Type="{_RELATIONS}/sharedStrings" Target="sharedStrings.xml"/>'
        f'<Relationship Id="r3" Type="{_RELATIONS}/styles" Target="/xl/styles.xml"/></Relationships>'
    ),
    "xl/worksheets/sheet1.xml": f'<worksheet xmlns="{_MAIN}"><sheetData/></worksheet>',
}
"""The least that a workbook is made of, by name."""


def sheet_of(rows: str) -> str:
    """The part of a sheet with these rows."""
    return f'<worksheet xmlns="{_MAIN}"><sheetData>{rows}</sheetData></worksheet>'


def zipped(parts: Mapping[str, str | bytes], *, method: int = zipfile.ZIP_DEFLATED) -> bytes:
    """A zip file of parts."""
    written = io.BytesIO()
    with zipfile.ZipFile(written, "w", method) as archive:
        for name, content in parts.items():
            archive.writestr(name, content)
    return written.getvalue()


def by_hand(*, method: int = zipfile.ZIP_DEFLATED, **changed: str | bytes) -> bytes:
    """The least workbook with some parts changed: `sheet`, `texts`, `styles`, `book`."""
    names = {
        "sheet": "xl/worksheets/sheet1.xml",
        "texts": "xl/sharedStrings.xml",
        "styles": "xl/styles.xml",
        "book": "xl/workbook.xml",
    }
    return zipped({**PARTS, **{names[key]: content for key, content in changed.items()}}, method=method)


def workbook(rows: Iterable[Iterable[object]], *, formats: Mapping[str, str] | None = None) -> bytes:
    """A workbook of one sheet as openpyxl writes it; `formats` are number formats by cell."""
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    for row in rows:
        sheet.append(list(row))
    for cell, code in (formats or {}).items():
        sheet[cell].number_format = code
    return saved(book)


def saved(book: openpyxl.Workbook) -> bytes:
    written = io.BytesIO()
    book.save(written)
    return written.getvalue()
