"""Packs, and what was asked for them when."""

from __future__ import annotations

from datetime import date

import pytest

from binder.desktop.larder_page.food_packs import ADD_PACK, FoodPacks, cell_of_pack, cell_of_quote
from binder.desktop.sheet.sheet import Sight
from binder.figures.price import chosen_pack
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.errors import BinderError
from binder.kitchen.price import Pack, Quote
from binder.kitchen.record import fields_of
from tests.desktop.sheets import after_typing, cell_called, is_even

PACKS, ROW = FoodPacks(), "packs:pack_tahini"


@pytest.fixture
def tahini(chickpeas: Binder) -> Sight:
    return Sight(chickpeas, "day", "foods:tahini")


def test_a_pack_says_size_store_price_date_and_what_it_comes_to(tahini: Sight) -> None:
    shown = [cell.text for cell in PACKS.rows(tahini)[0].cells]
    assert shown == ["16 oz", "", "Market hall", "$7.49", "Oct 13, 2026", "$7.49 a lb", "yes"]
    assert is_even(PACKS, tahini)


def test_a_price_is_changed_or_with_a_date_added(tahini: Sight) -> None:
    changed = after_typing(PACKS, tahini, ROW, "price", "8.10")
    assert [quote.price for quote in changed.quotes.where("pack", "pack_tahini")] == [810]
    added = after_typing(PACKS, tahini, ROW, "price", "8.10 on 2026-11-02")
    assert {(quote.price, quote.on) for quote in added.quotes.where("pack", "pack_tahini")} == {
        (749, date(2026, 10, 13)),
        (810, date(2026, 11, 2)),
    }
    rows = PACKS.rows(Sight(added, "day", "foods:tahini"))
    assert [row.key.partition(":")[0] for row in rows] == ["packs", "terms", "history", "quotes", "add"]
    assert rows[0].cells[3].text == "$8.10"
    today = after_typing(PACKS, tahini, ROW, "price", "9 today")
    assert len(today.quotes.where("pack", "pack_tahini")) == 2


def test_an_older_price_is_pinned_before_a_newer_one(tahini: Sight) -> None:
    binder = after_typing(PACKS, tahini, ROW, "price", "8.10 on 2026-11-02")
    sight = Sight(binder, "day", "foods:tahini")
    pinned = after_typing(PACKS, sight, "quotes:quote_tahini", "pinned", "pinned")
    chosen = chosen_pack(pinned, "tahini")
    assert getattr(chosen, "price", None) == 749
    again = Sight(pinned, "day", "foods:tahini")
    assert cell_called(PACKS, again, ROW, "pinned").text == "pinned"
    free = after_typing(PACKS, again, ROW, "pinned", "not pinned")
    assert getattr(chosen_pack(free, "tahini"), "price", None) == 810


@pytest.mark.parametrize(
    ("text", "size", "unit", "price", "store"),
    [
        ("1 lb for 3.49 at Corner grocer", 1.0, "lb", 349, "Corner grocer"),
        ("250 g for $2", 250.0, "g", 200, None),
        ("1 jar", 1.0, "jar", None, None),
        ("6 for 3 at A new place", 6.0, "each", 300, "A new place"),
    ],
)
def test_a_pack_is_typed_whole(
    tahini: Sight, text: str, size: float, unit: str, price: int | None, store: str | None
) -> None:
    binder = after_typing(PACKS, tahini, ADD_PACK, "size", text)
    (pack,) = [one for one in binder.packs.values() if one.id not in tahini.binder.packs]
    assert (pack.food, pack.size, pack.unit) == ("tahini", size, unit)
    assert (binder.stores[pack.store].name if pack.store else None) == store
    assert [quote.price for quote in binder.quotes.where("pack", pack.id)] == ([price] if price is not None else [])


@pytest.mark.parametrize(
    ("column", "text", "field", "value"),
    [
        ("size", "1 lb", "unit", "lb"),
        ("label", "jar", "label", "jar"),
        ("store", "corner grocer", "store", "corner"),
        ("store", "", "store", None),
    ],
)
def test_typing_edits_the_pack(tahini: Sight, column: str, text: str, field: str, value: object) -> None:
    assert getattr(after_typing(PACKS, tahini, ROW, column, text).packs["pack_tahini"], field) == value


def test_a_new_store_is_made_with_the_same_change(tahini: Sight) -> None:
    binder = after_typing(PACKS, tahini, ROW, "store", "The mill")
    assert binder.stores[binder.packs["pack_tahini"].store or ""].name == "The mill"


@pytest.mark.parametrize(
    ("column", "text"),
    [("price", "cheap"), ("price", "-1"), ("on", ""), ("on", "soon"), ("size", "big"), ("pinned", "x")],
)
def test_what_cannot_be_is_refused(tahini: Sight, column: str, text: str) -> None:
    with pytest.raises(BinderError):
        PACKS.edit(tahini, ROW, column, text)


def test_packs_go_with_their_prices_and_prices_alone(tahini: Sight) -> None:
    gone = PACKS.remove(tahini, [ROW, "quotes:quote_tahini"])
    assert gone is not None
    assert gone.label == "Remove a pack"
    assert "quote_tahini" not in apply(tahini.binder, gone).quotes


def test_every_field_of_a_pack_and_of_its_prices_has_a_cell(tahini: Sight) -> None:
    binder = after_typing(PACKS, tahini, ROW, "price", "8.10 on 2026-11-02")
    sight = Sight(binder, "day", "foods:tahini")
    for field in {field.name for field in fields_of(Pack)} - {"id", "food"}:
        at = cell_of_pack("pack_tahini", field)
        assert cell_called(PACKS, sight, at.row, at.column).edit is not None, field
    for field in {field.name for field in fields_of(Quote)} - {"id", "pack"}:
        chosen, older = cell_of_pack("pack_tahini", field), cell_of_quote("quote_tahini", field)
        assert cell_called(PACKS, sight, chosen.row, chosen.column).edit is not None, field
        assert cell_called(PACKS, sight, older.row, older.column).edit is not None, field
