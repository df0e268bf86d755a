from __future__ import annotations

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
