"""The books after the shoot: by food and by dish, closing to the cent; what was taken instead."""

from __future__ import annotations

from datetime import date

import pytest

from binder.desktop.money_page.books import CapsAsBought, DishBooks, FoodBooks, closing_words
from binder.desktop.sheet.cell import Mark
from binder.desktop.sheet.sheet import Sight
from binder.figures.shopping import shopping_list
from binder.figures.wrap import shoot_wrap
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.buying import not_to_be_had, take_instead, tick
from binder.kitchen.edits.records import remove
from tests.desktop.money_page.latest import DAY, budget_of
from tests.desktop.sheets import cell_called, is_even

ON = date(2026, 11, 5)


def everything_bought(binder: Binder, more: int = 0) -> Binder:
    """Every pack of the list with a receipt, each at so many cents more than was planned."""
    for item in shopping_list(binder, DAY).items:
        for taken in item.packs:
            food, pack = binder.foods[item.food], taken.priced.pack
            change = tick(
                binder,
                binder.shoots[DAY],
                food,
                pack=pack,
                count=taken.count,
                planned=taken.price,
                paid=taken.price + more,
                on=ON,
            )
            binder = apply(binder, change)
    return binder


@pytest.fixture(scope="module")
def closed(chickpeas: Binder) -> Binder:
    return everything_bought(chickpeas, more=3)


def cents(text: str) -> int:
    return round(float(text.split(maxsplit=1)[0].replace("$", "").replace(",", "")) * 100) if "$" in text else 0


def test_foods_and_dishes_add_up_to_the_same_cent(closed: Binder) -> None:
    latest, sight = budget_of(closed), Sight(closed, DAY)
    for sheet, column in ((FoodBooks(latest), 2), (DishBooks(latest), 2)):
        rows = sheet.rows(sight)
        amounts = [cents(row.cells[column].text) for row in rows]
        assert sum(amounts[:-1]) == amounts[-1] > 9000
        assert is_even(sheet, sight)


def test_a_closed_shoot_says_so_to_the_cent(closed: Binder) -> None:
    wrap = shoot_wrap(closed, DAY)
    over = 3 * len(closed.purchases)
    assert wrap.total.open == 0
    paid, more = f"${wrap.total.paid / 100:.2f}", f"${over / 100:.2f}"
    says = f"The books close: by food and by dish it is {paid}, {more} over beside the plan."
    assert closing_words(closed, wrap) == says


def test_as_planned_is_nothing_beside_the_plan(chickpeas: Binder) -> None:
    exact = everything_bought(chickpeas)
    assert closing_words(exact, shoot_wrap(exact, DAY)).endswith("nothing beside the plan.")
    assert cell_called(FoodBooks(budget_of(exact)), Sight(exact, DAY), "foods:onion", "variance").text == "as planned"


def test_what_is_left_over_has_a_weight_and_a_worth(closed: Binder) -> None:
    sheet, sight = FoodBooks(budget_of(closed)), Sight(closed, DAY)
    salt = cell_called(sheet, sight, "foods:salt", "left")
    assert (salt.text, salt.unit) != ("", "")
    assert cents(cell_called(sheet, sight, "foods:salt", "worth").text) > 0
    worths = [cents(row.cells[6].text) for row in sheet.rows(sight)]
    assert sum(worths[:-1]) == worths[-1]


def test_an_open_list_says_how_much_is_open(chickpeas: Binder) -> None:
    day, tahini = chickpeas.shoots[DAY], chickpeas.foods["tahini"]
    begun = apply(
        chickpeas, tick(chickpeas, day, tahini, pack=chickpeas.packs["pack_tahini"], count=1, planned=749, paid=700)
    )
    wrap = shoot_wrap(begun, DAY)
    assert closing_words(begun, wrap).startswith("$7.00 was paid; $")
    row = cell_called(FoodBooks(budget_of(begun)), Sight(begun, DAY), "foods:onion", "paid")
    assert row.text == "–"


def test_what_was_taken_instead_is_named_and_shown_beside_the_cap(chickpeas: Binder) -> None:
    day, foods = chickpeas.shoots[DAY], chickpeas.foods
    change = take_instead(
        chickpeas,
        day,
        foods["flat_leaf_parsley"],
        instead=foods["cilantro"],
        pack=chickpeas.packs["pack_cilantro"],
        count=9.0,
        planned=447,
        paid=30_000,
        on=ON,
    )
    swapped = apply(chickpeas, change)
    latest, sight = budget_of(swapped), Sight(swapped, DAY)
    assert cell_called(FoodBooks(latest), sight, "foods:flat_leaf_parsley", "note").text == "cilantro instead"
    rows = CapsAsBought(latest).rows(sight)
    assert any("cilantro instead of flat-leaf parsley" in row.cells[5].text for row in rows)
    assert any(row.cells[4].mark is Mark.OVER for row in rows)
    assert is_even(CapsAsBought(latest), sight)


def test_what_was_not_to_be_had_says_so(chickpeas: Binder) -> None:
    gone = apply(
        chickpeas, not_to_be_had(chickpeas, chickpeas.shoots[DAY], chickpeas.foods["tahini"], planned=749, on=ON)
    )
    assert cell_called(FoodBooks(budget_of(gone)), Sight(gone, DAY), "foods:tahini", "note").text == (
        "was not to be had"
    )


def test_a_food_with_neither_price_nor_receipt_keeps_the_books_open(chickpeas: Binder) -> None:
    unpriced = apply(chickpeas, remove("x", chickpeas, chickpeas.packs["pack_tahini"]))
    bought = everything_bought(unpriced)
    wrap = shoot_wrap(bought, DAY)
    assert not wrap.total.open
    says = closing_words(bought, wrap)
    assert says.endswith("was paid; no price and no receipt yet: tahini.")
