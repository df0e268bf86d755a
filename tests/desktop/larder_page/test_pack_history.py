"""A pack's prices over time in the larder."""

from __future__ import annotations

from datetime import date

import pytest

from binder.desktop.larder_page.food_packs import FoodPacks
from binder.desktop.pictures.price_line import PriceLine
from binder.desktop.sheet.sheet import Sight
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.foods import add_quote
from tests.desktop.sheets import is_even, row_called

PACKS, ROW = FoodPacks(), "history:pack_tahini"


def priced(binder: Binder, *prices: tuple[int, date]) -> Sight:
    for price, on in prices:
        binder = apply(binder, add_quote(binder, binder.packs["pack_tahini"], price=price, on=on))
    return Sight(binder, "day", "foods:tahini")


def test_one_price_has_no_history(chickpeas: Binder) -> None:
    assert not any(row.key.startswith("history") for row in PACKS.rows(Sight(chickpeas, "day", "foods:tahini")))


@pytest.mark.parametrize(
    ("price", "says"), [(749, "since Oct 13, 2026"), (899, "up 20%"), (599, "down 20%"), (0, "down 100%")]
)
def test_it_says_how_the_last_price_stands_to_the_first(chickpeas: Binder, price: int, says: str) -> None:
    sight = priced(chickpeas, (price, date(2026, 11, 2)))
    assert row_called(PACKS, sight, ROW).cells[0].text.startswith(says)
    assert is_even(PACKS, sight)


def test_the_chart_has_a_step_for_each_price_by_its_day(chickpeas: Binder) -> None:
    sight = priced(chickpeas, (1498, date(2026, 10, 23)), (749, date(2026, 11, 2)))
    chart = row_called(PACKS, sight, ROW).cells[2]
    assert chart.picture == PriceLine(((0.0, 0.0), (0.5, 1.0), (1.0, 0.0)))
    assert chart.says == "$7.49 on Oct 13, 2026; $14.98 on Oct 23, 2026; $7.49 on Nov 2, 2026"
