"""A store that the binder has not is asked for, or made where that is wanted; once, and only with a price taken."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.exchange.price_list import Fate, PriceList, preview_prices
from binder.exchange.price_stores import StoreReader
from binder.exchange.price_table import price_table
from binder.exchange.table_cell import RefusedRowError
from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.change import apply
from binder.kitchen.errors import BinderError
from binder.kitchen.food import Food
from binder.kitchen.price import Store
from binder.kitchen.settings import SETTINGS_ID, Settings

HEAD = "food,store,pack size,price,date\n"


def larder() -> Binder:
    return binder_of(
        [
            Settings(id=SETTINGS_ID, name="Binder"),
            Food(id="garlic", name="Garlic"),
            Store(id="corner", name="Corner store"),
            Store(id="mill", name="Old mill"),
            Store(id="mill_2", name="Old Mill"),
        ]
    )


def read(*rows: str, new_stores: bool = True, take_good_rows: bool = False) -> PriceList:
    table = price_table((HEAD + "\n".join(rows)).encode())
    return preview_prices(larder(), table, new_stores=new_stores, take_good_rows=take_good_rows)


def test_an_unknown_store_is_named_and_refuses_its_rows() -> None:
    found = read("Garlic,Hill farm,1 lb,3.49,2026-03-01", "Garlic,Corner,1 lb,3.49,2026-03-01", new_stores=False)
    assert found.unknown_stores == ("Hill farm", "Corner")
    assert [row.fate for row in found.rows] == [Fate.REFUSED, Fate.REFUSED]
    assert "no store is called “Hill farm”" in found.rows[0].says


def test_a_new_store_is_made_once_and_with_its_first_pack() -> None:
    found = read(
        "Garlic,Hill farm,1 lb,3.49,2026-03-01",
        "Garlic, hill  FARM,2 lb,5.49,2026-03-01",
        "Garlic,Corner store,1 lb,3.29,2026-03-01",
    )
    assert (found.refused, found.unknown_stores) == ((), ())
    assert found.change is not None
    assert found.rows[0].says.endswith("a new pack at a new store, Hill farm")
    assert found.rows[2].says.endswith("; a new pack")
    binder = apply(larder(), found.change)
    (made,) = [store for key, store in binder.stores.items() if key not in larder().stores]
    assert made.name == "Hill farm"
    assert sorted(pack.store or "" for pack in binder.packs.values()) == ["corner", made.id, made.id]
    assert apply(binder, found.change.inverse()) == larder()


def test_a_row_that_is_refused_leaves_no_store_behind() -> None:
    found = read("Garlic,Hill farm,1 lb,dear,2026-03-01", "Garlic,,1 lb,3.29,2026-03-01", take_good_rows=True)
    assert found.change is not None
    assert apply(larder(), found.change).stores == larder().stores


def test_a_name_that_two_stores_have_is_asked_for_even_then() -> None:
    with pytest.raises(RefusedRowError, match="more than one store is called “old mill”"):
        StoreReader(larder(), makes_new=True).read("old mill")


def test_a_name_too_long_for_a_store_refuses_its_row() -> None:
    with pytest.raises(BinderError, match="name cannot be"):
        StoreReader(larder(), makes_new=True).read("x" * 5000)


@given(st.lists(st.text(st.characters(codec="utf-8", categories=("L", "N")), min_size=1, max_size=8), max_size=12))
def test_any_names_make_as_many_stores_as_there_are_names(names: list[str]) -> None:
    reader = StoreReader(larder(), makes_new=True)
    made = [reader.read(name) for name in names]
    assert all(reader.read(name) is store for name, store in zip(names, made, strict=True))
    assert len({store.id for store in made if store}) == len({" ".join(name.casefold().split()) for name in names})
