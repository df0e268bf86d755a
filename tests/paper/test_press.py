"""What a PDF says of itself, read with another reader than the one that reads its pages."""

from __future__ import annotations

from io import BytesIO

import pypdf
import pytest

from binder.paper.print_set import SheetKind, sheet_bytes
from tests.paper.example import SHOOT, full_binder, metric_binder


def _reader(kind: SheetKind, paper: str | None = None) -> pypdf.PdfReader:
    return pypdf.PdfReader(BytesIO(sheet_bytes(full_binder(), SHOOT, kind, paper)), strict=True)


@pytest.mark.parametrize("kind", list(SheetKind))
def test_a_document_has_a_title_no_author_and_the_binders_language(kind: SheetKind) -> None:
    reader = _reader(kind)
    assert reader.metadata is not None
    assert str(reader.metadata.title).endswith("· Episode four")
    assert not reader.metadata.author
    assert str(reader.root_object["/Lang"]) == "en-US"
    assert "/DisplayDocTitle" in str(reader.root_object["/ViewerPreferences"])


def test_the_language_is_that_of_the_binders_locale() -> None:
    reader = pypdf.PdfReader(BytesIO(sheet_bytes(metric_binder(), SHOOT, SheetKind.BASE)))
    assert str(reader.root_object["/Lang"]) == "de-DE"


def test_the_outline_has_an_entry_for_each_dish_on_its_first_card() -> None:
    reader = _reader(SheetKind.CARDS, "a6")
    entries = [entry for entry in reader.outline if not isinstance(entry, list)]
    assert [entry.title for entry in entries] == [
        "1 Chickpea and chicken stew with charred chilli",
        "2 Warm chickpea salad",
        "A Charred chilli paste",
    ]
    for entry in entries:
        page = reader.pages[reader.get_destination_page_number(entry) or 0].extract_text()
        assert page.startswith(str(entry.title).split()[0])


@pytest.mark.parametrize("kind", list(SheetKind))
def test_every_face_is_embedded(kind: SheetKind) -> None:
    fonts = [
        font.get_object()
        for page in _reader(kind).pages
        for font in page["/Resources"]["/Font"].values()  # type: ignore[index]
    ]
    drawn = [font for font in fonts if font["/BaseFont"] != "/Helvetica"]  # ReportLab declares it, no text is set in it
    assert drawn
    for font in drawn:
        assert "/FontFile2" in font["/FontDescriptor"]
        assert "SourceSansPro" in font["/BaseFont"]


def test_another_reader_finds_the_same_words() -> None:
    text = " ".join(page.extract_text() for page in _reader(SheetKind.SHOPPING).pages)
    for said in ("chickpeas, dried", "1 × 1 kg bag", "$4.59", "Quayside Market"):
        assert said in " ".join(text.split())
