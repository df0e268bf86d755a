"""The list of foods."""

from __future__ import annotations

import pytest

from binder.desktop.larder_page.food_list import ADD_FOOD, FoodList, food_row
from binder.desktop.sheet.cell import Mark
from binder.desktop.sheet.sheet import Sight
from binder.kitchen.binder import Binder, binder_of, every_record
from binder.kitchen.change import Change, Edit, apply
from binder.kitchen.edits.records import remove, with_values
from binder.kitchen.larder import reference_larder
from binder.kitchen.record import Record
from binder.kitchen.settings import Measures
from tests.desktop.sheets import after_typing, cell_called, is_even

LIST = FoodList()


def test_the_binders_foods_stand_by_name_with_the_price_chosen(chickpeas: Binder) -> None:
    sight = Sight(chickpeas, "day", "")
    names = [row.cells[0].text for row in LIST.rows(sight)[:-1]]
    assert names == sorted(names, key=str.casefold)
    cell = cell_called(LIST, sight, "foods:tahini", "price")
    assert (cell.text, cell.unit) == ("$7.49", "/lb")
    assert cell.tip == "Market hall, Tue, Oct 13, 2026"
    assert is_even(LIST, sight)


def test_a_food_without_a_price_is_marked(chickpeas: Binder) -> None:
    binder = apply(chickpeas, remove("", chickpeas, chickpeas.packs["pack_tahini"]))
    cell = cell_called(LIST, Sight(binder, "day", ""), "foods:tahini", "price")
    assert (cell.text, cell.mark) == ("no price", Mark.UNKNOWN)


@pytest.mark.parametrize("what", ["name", "price", "weight", "store", "pack", "form", "measures"])
def test_a_row_follows_all_that_it_shows(chickpeas: Binder, what: str) -> None:
    pack = chickpeas.packs["pack_tahini"]
    quote = max(chickpeas.quotes.where("pack", pack.id), key=lambda one: one.on)
    store = chickpeas.stores[pack.store or ""]
    outcome = next(iter(chickpeas.outcomes.values()))
    edits: dict[str, tuple[Record, dict[str, object]]] = {
        "name": (chickpeas.foods["tahini"], {"name": "sesame paste"}),
        "price": (quote, {"price": quote.price + 100}),
        "weight": (pack, {"size": pack.size * 2}),
        "store": (store, {"name": "Round the corner"}),
        "pack": (pack, {"on_sale": False}),
        "form": (outcome, {"form": "tahini"}),
        "measures": (chickpeas.settings, {"measures": Measures.METRIC}),
    }
    before = food_row(chickpeas, "tahini")
    record, fields = edits[what]
    change = Change("", (Edit(before=record, after=with_values(record, **fields)),))
    after = food_row(apply(chickpeas, change), "tahini")
    anew = binder_of(every_record(apply(chickpeas, change)))
    assert after == food_row(anew, "tahini") != before


def test_forms_and_what_is_free_have_no_price_to_miss(chickpeas: Binder) -> None:
    sight = Sight(chickpeas, "day", "")
    assert cell_called(LIST, sight, "foods:chickpeas_cooked", "price").text == "a form"
    assert cell_called(LIST, sight, "foods:water", "price").text == "free"


def test_looking_for_one_also_looks_through_the_shipped_larder(chickpeas: Binder) -> None:
    sight = Sight(chickpeas, "day", "lentil")
    rows = [row for row in LIST.rows(sight) if row.place is not None]
    assert rows
    assert all(row.place.table == "shipped" and row.place.id in reference_larder().foods for row in rows if row.place)
    assert rows[0].cells[1].leads_to == rows[0].place
    assert is_even(LIST, sight)


@pytest.mark.parametrize("name", ["lentils, brown, dried", "moonberry"])
def test_a_food_is_added_from_the_larder_or_as_ones_own(chickpeas: Binder, name: str) -> None:
    shipped = {food.name: key for key, food in reference_larder().foods.items()}
    binder = after_typing(LIST, Sight(chickpeas, "day", ""), ADD_FOOD, "name", name)
    (added,) = [binder.foods[key] for key in binder.foods if key not in chickpeas.foods]
    assert added.name == name
    assert added.id == shipped.get(name, "moonberry" if name == "moonberry" else added.id)


def test_names_of_the_larder_are_offered(chickpeas: Binder) -> None:
    offered = LIST.offers(Sight(chickpeas, "day", ""), ADD_FOOD, "name", "lentil")
    assert offered
    assert all("lentil" in name for name in offered)


def test_a_food_is_renamed_and_removed(chickpeas: Binder) -> None:
    sight = Sight(chickpeas, "day", "")
    assert after_typing(LIST, sight, "foods:tahini", "name", "sesame paste").foods["tahini"].name == "sesame paste"
    gone = LIST.remove(sight, ["foods:flatbread", ADD_FOOD])
    assert gone is not None
    assert "flatbread" not in apply(chickpeas, gone).foods
