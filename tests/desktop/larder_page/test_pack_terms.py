"""The terms a pack is sold on, typed in place beneath it."""

from __future__ import annotations

import pytest

from binder.desktop.larder_page.food_packs import FoodPacks
from binder.desktop.sheet.sheet import Sight
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.records import remove
from binder.kitchen.errors import BinderError
from tests.desktop.sheets import after_typing, cell_called, is_even

PACKS, TERMS, ROW = FoodPacks(), "terms:pack_tahini", "packs:pack_tahini"


@pytest.fixture
def tahini(chickpeas: Binder) -> Sight:
    """A pack of 16 oz at 7.49."""
    return Sight(chickpeas, "day", "foods:tahini")


@pytest.mark.parametrize(
    ("text", "by_weight", "least", "on_sale"),
    [
        ("by weight", True, 0.0, True),
        ("by w", True, 0.0, True),
        ("by weight from 8 oz", True, 8.0, True),
        ("by weight from 4", True, 4.0, True),
        ("by weight from 0.5 lb", True, pytest.approx(8.0), True),
        ("in packs", False, 0.0, True),
        ("not on sale", False, 0.0, False),
        ("not", False, 0.0, False),
    ],
)
def test_how_it_is_sold(tahini: Sight, text: str, by_weight: bool, least: float, on_sale: bool) -> None:
    pack = after_typing(PACKS, tahini, TERMS, "size", text).packs["pack_tahini"]
    assert (pack.by_weight, pack.least, pack.on_sale) == (by_weight, least, on_sale)


def test_what_was_not_on_sale_is_so_again_as_it_was_sold_before(tahini: Sight) -> None:
    weighed = after_typing(PACKS, tahini, TERMS, "size", "by weight from 8 oz")
    gone = after_typing(PACKS, Sight(weighed, "day", "foods:tahini"), TERMS, "size", "not on sale")
    assert cell_called(PACKS, Sight(gone, "day", "foods:tahini"), TERMS, "size").text == "not on sale"
    again = after_typing(PACKS, Sight(gone, "day", "foods:tahini"), TERMS, "size", "by weight from 8 oz")
    assert again == weighed
    other = after_typing(PACKS, Sight(gone, "day", "foods:tahini"), TERMS, "size", "in packs").packs["pack_tahini"]
    assert (other.by_weight, other.on_sale) == (False, True)


@pytest.mark.parametrize("text", ["", "somehow", "in packs from 3 oz", "by weight from 2 cups", "by weight from x"])
def test_how_nothing_is_sold(tahini: Sight, text: str) -> None:
    with pytest.raises(BinderError):
        PACKS.edit(tahini, TERMS, "size", text)


@pytest.mark.parametrize(("text", "deposit"), [("0.25", 25), ("$1", 100), ("", 0)])
def test_a_deposit(tahini: Sight, text: str, deposit: int) -> None:
    assert after_typing(PACKS, tahini, TERMS, "store", text).packs["pack_tahini"].deposit == deposit


@pytest.mark.parametrize(("row", "column"), [(TERMS, "price"), (ROW, "price")])
@pytest.mark.parametrize("text", ["3 for 14.50", "3 for $14.50", "3×14.50", "3 x 14.50"])
def test_an_offer_is_typed_among_the_terms_or_as_the_price(tahini: Sight, row: str, column: str, text: str) -> None:
    binder = after_typing(PACKS, tahini, row, column, text)
    quote = binder.quotes["quote_tahini"]
    assert (quote.bundle_packs, quote.bundle_price, quote.price) == (3, 1450, 749)
    assert cell_called(PACKS, Sight(binder, "day", "foods:tahini"), TERMS, "price").text == "3 for $14.50"
    gone = after_typing(PACKS, Sight(binder, "day", "foods:tahini"), TERMS, "price", "")
    assert gone.quotes["quote_tahini"].bundle_packs is None


@pytest.mark.parametrize("text", ["1 for 3", "three for two", "3 for"])
def test_what_is_no_offer_is_refused(tahini: Sight, text: str) -> None:
    with pytest.raises(BinderError):
        PACKS.edit(tahini, TERMS, "price", text)


def test_the_source_of_a_price_and_offers_of_older_prices(tahini: Sight) -> None:
    newer = after_typing(PACKS, tahini, ROW, "price", "8.10 on 2026-11-02")
    sight = Sight(newer, "day", "foods:tahini")
    sourced = after_typing(PACKS, sight, "quotes:quote_tahini", "store", "a receipt")
    assert sourced.quotes["quote_tahini"].source == "a receipt"
    offered = after_typing(PACKS, sight, "quotes:quote_tahini", "size", "2 for 12")
    assert offered.quotes["quote_tahini"].bundle_price == 1200
    of_chosen = after_typing(PACKS, sight, TERMS, "per_unit", "asked by phone")
    assert [quote.source for quote in of_chosen.quotes.where("pack", "pack_tahini") if quote.price == 810] == [
        "asked by phone"
    ]


def test_what_is_offered_for_editing_is_understood_when_nothing_is_changed(tahini: Sight) -> None:
    binder = after_typing(PACKS, tahini, TERMS, "size", "by weight from 8 oz")
    for at, text in (("store", "0.25"), ("price", "3 for 14.50"), ("per_unit", "phone")):
        binder = after_typing(PACKS, Sight(binder, "day", "foods:tahini"), TERMS, at, text)
    sight = Sight(binder, "day", "foods:tahini")
    for row in PACKS.rows(sight):
        for column, cell in zip(PACKS.columns, row.cells, strict=True):
            if cell.edit and column.id != "pinned":
                assert PACKS.edit(sight, row.key, column.id, cell.edit).empty, (row.key, column.id, cell.edit)
    assert is_even(PACKS, sight)


def test_a_pack_without_a_price_has_no_offer_to_type(tahini: Sight) -> None:
    binder = apply(tahini.binder, remove("", tahini.binder, tahini.binder.quotes["quote_tahini"]))
    sight = Sight(binder, "day", "foods:tahini")
    assert cell_called(PACKS, sight, TERMS, "price").edit is None
    with pytest.raises(BinderError, match="add a price first"):
        PACKS.edit(sight, TERMS, "price", "3 for 4")
    assert is_even(PACKS, sight)


def test_a_pack_goes_also_by_the_row_of_its_terms(tahini: Sight) -> None:
    gone = PACKS.remove(tahini, [ROW, TERMS])
    assert gone is not None
    assert "pack_tahini" not in apply(tahini.binder, gone).packs
