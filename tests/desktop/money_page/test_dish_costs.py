"""What makes up the cost of a dish, and how dear each food may become."""

from __future__ import annotations

import pytest

from binder.desktop.money_page.dish_costs import DishCosts, costs_title
from binder.desktop.pictures.cost_bar import CostBar
from binder.desktop.sheet.cell import Tone
from binder.desktop.sheet.sheet import Sight
from binder.figures.cost import dish_cost
from binder.figures.date_text import date_text
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.foods import set_price
from binder.kitchen.edits.money import set_cap_basis
from binder.kitchen.edits.records import remove
from binder.kitchen.edits.shoots import set_dish
from binder.kitchen.shoot import CapBasis
from tests.desktop.money_page.latest import DAY
from tests.desktop.sheets import cell_called, is_even

SHEET = DishCosts()


def on(binder: Binder, dish: str) -> Sight:
    return Sight(binder, DAY, dish)


def cents(text: str) -> int:
    return round(float(text.lstrip("$")) * 100)


def test_the_costliest_food_comes_first_and_the_bars_follow_the_costs(chickpeas: Binder) -> None:
    rows = SHEET.rows(on(chickpeas, "dish_1"))
    bars = [row.cells[1].picture for row in rows]
    widths = [bar.cost for bar in bars if isinstance(bar, CostBar) and bar.cost is not None]
    assert len(widths) == len(rows) > 3
    assert widths == sorted(widths, reverse=True)
    costs = [float(row.cells[2].text.lstrip("$")) for row in rows]
    total = dish_cost(chickpeas, "dish_1").per_portion
    assert sum(costs) * 100 == pytest.approx(total, abs=0.5 * len(costs))
    assert widths[1] / widths[0] == pytest.approx(costs[1] / costs[0], abs=0.05)
    assert is_even(SHEET, on(chickpeas, "dish_1"))


def test_at_the_price_shown_the_dish_is_still_within_its_cap(chickpeas: Binder) -> None:
    for row in SHEET.rows(on(chickpeas, "dish_3")):
        food, shown = row.key.partition(":")[2], row.cells[7].text
        if not shown.startswith("$"):
            continue
        quote = chickpeas.quotes[f"quote_{food}"]
        met = apply(chickpeas, set_price(chickpeas, quote, cents(shown.replace(",", ""))))
        beyond = apply(chickpeas, set_price(chickpeas, quote, cents(shown.replace(",", "")) + 1))
        assert dish_cost(met, "dish_3").verdict == "within"
        assert dish_cost(beyond, "dish_3").verdict == "over"


def test_every_price_says_of_which_day_it_is(chickpeas: Binder) -> None:
    cell = cell_called(SHEET, on(chickpeas, "dish_1"), "foods:tahini", "as_of")
    assert cell.text == date_text(chickpeas, chickpeas.quotes["quote_tahini"].on)


def test_a_dish_over_its_cap_says_how_cheap_a_food_would_have_to_be(chickpeas: Binder) -> None:
    over = apply(chickpeas, set_dish(chickpeas, chickpeas.dishes["dish_1"], cap=70))
    cell = cell_called(SHEET, on(over, "dish_1"), "foods:tahini", "at_cap")
    assert cell.tone is Tone.STOP
    assert cents(cell.text) < 749
    hopeless = apply(chickpeas, set_dish(chickpeas, chickpeas.dishes["dish_1"], cap=1))
    assert cell_called(SHEET, on(hopeless, "dish_1"), "foods:lemon", "at_cap").text == "–"


def test_whole_packs_have_no_price_to_break_even_at(chickpeas: Binder) -> None:
    whole = apply(chickpeas, set_cap_basis(chickpeas.shoots[DAY], CapBasis.WHOLE_PACKS))
    rows = SHEET.rows(on(whole, "dish_1"))
    assert rows
    assert not any(row.cells[7].text for row in rows)
    assert costs_title(whole, whole.dishes["dish_1"]) == (
        "1 Silky hummus with lemon, by food: whole packs over portions"
    )


def test_of_a_dish_that_cannot_be_costed_nothing_is_drawn(chickpeas: Binder) -> None:
    lacking = apply(chickpeas, remove("x", chickpeas, chickpeas.packs["pack_tahini"]))
    assert SHEET.rows(on(lacking, "dish_1")) == []
    assert SHEET.rows(Sight(chickpeas, DAY, None)) == []
