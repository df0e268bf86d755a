"""The shopping list on screen."""

from __future__ import annotations

import pytest

from binder.desktop.buying_sheet import BuyingSheet
from binder.desktop.sheet.cell import Mark
from binder.desktop.sheet.sheet import NotEditableError, Sight
from binder.figures.missing import Place
from binder.figures.shopping import shopping_list
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.records import remove
from tests.desktop.sheets import after_typing, is_even, row_called

BUYING = BuyingSheet()


@pytest.fixture
def day(chickpeas: Binder) -> Sight:
    return Sight(chickpeas, "day")


def test_every_item_stands_under_its_section(day: Sight) -> None:
    keys = [row.key for row in BUYING.rows(day)]
    items = shopping_list(day.binder, "day").items
    assert [key for key in keys if key.startswith("buy:")] == [
        f"buy:{item.food}/{taken.priced.pack.id}" for item in items for taken in item.packs
    ]
    assert (
        keys.index("section:produce") < keys.index("buy:carrot/pack_carrot") < keys.index("section:grains and pulses")
    )
    assert is_even(BUYING, day)


def test_a_row_has_need_packs_price_and_left_over(day: Sight) -> None:
    cells = row_called(BUYING, day, "buy:tomatoes_plum/pack_tomatoes_plum").cells
    assert [cell.text for cell in cells] == [
        "tomatoes, plum",
        "955",
        "3",
        "1 lb",
        "Market hall",
        "$2.49",
        "19 Oct",
        "$7.47",
        "406",
    ]
    assert cells[0].leads_to == Place("foods", "tomatoes_plum")


def test_the_foot_is_the_sum_at_the_till_against_the_budget(day: Sight) -> None:
    total = row_called(BUYING, day, "total")
    assert total.cells[0].text == "At the till, whole packs of a budget of $90.00"
    assert total.cells[7].text == "$91.22"
    assert total.cells[7].mark is Mark.OVER


def test_what_has_no_price_says_so_and_leads_there(day: Sight) -> None:
    binder = apply(day.binder, remove("", day.binder, day.binder.packs["pack_tahini"]))
    sight = Sight(binder, "day")
    cell = row_called(BUYING, sight, "buy:tahini/").cells[3]
    assert (cell.text, cell.leads_to) == ("not known: no price for tahini", Place("foods", "tahini"))
    assert row_called(BUYING, sight, "total").cells[0].text.endswith("and what has no price")
    assert is_even(BUYING, sight)


def test_a_price_is_edited_where_it_is_read(day: Sight) -> None:
    binder = after_typing(BUYING, day, "buy:tahini/pack_tahini", "price", "8.25")
    assert binder.quotes["quote_tahini"].price == 825
    with pytest.raises(NotEditableError):
        BUYING.edit(day, "buy:tahini/pack_tahini", "needed", "1")


def test_no_shoot_nothing_to_buy(chickpeas: Binder) -> None:
    assert BUYING.rows(Sight(chickpeas, None)) == []
    assert BUYING.rows(Sight(Binder(), None)) == []
