from __future__ import annotations

import pypdfium2 as pdfium
import pytest

from binder.figures.flow import base_flow
from binder.figures.portion_text import number_style
from binder.kitchen.amount_text import grams_text
from binder.paper.flow_picture import shown_nodes
from binder.paper.print_set import SheetKind, sheet_bytes
from tests.paper.example import SHOOT, full_binder
from tests.paper.reader import all_words, read_pages


@pytest.mark.parametrize("paper", ["a4", "letter", "4x6"])
def test_every_form_dish_and_band_stands_with_its_grams(paper: str) -> None:
    binder = full_binder()
    words, flow = all_words(sheet_bytes(binder, SHOOT, SheetKind.FLOW, paper)), base_flow(binder, SHOOT)
    for node in shown_nodes(flow).values():
        assert node.name in words
        assert grams_text(node.grams, number_style(binder)) in words
    for band in flow.bands:
        assert band.name in words
        assert grams_text(band.arrives, number_style(binder)) in words


def test_it_lies_on_its_long_side() -> None:
    page, *_others = read_pages(sheet_bytes(full_binder(), SHOOT, SheetKind.FLOW, "a4"))
    assert page.width > page.height


def test_bands_have_edges_that_a_photocopier_keeps() -> None:
    document = pdfium.PdfDocument(sheet_bytes(full_binder(), SHOOT, SheetKind.FLOW, "a4"))
    picture = document[0].render(scale=2.0).to_pil().convert("L")
    column = [
        picture.getpixel((int(picture.width * 0.2), y)) for y in range(picture.height // 6, picture.height * 3 // 4)
    ]
    dark = [at for at, grey in enumerate(column) if isinstance(grey, int) and grey < 150]
    light = [grey for grey in column if isinstance(grey, int) and 200 < grey < 250]
    assert light, "the band's own grey, which is lost"
    assert len(dark) >= 2, "its upper and its lower edge"
    document.close()
