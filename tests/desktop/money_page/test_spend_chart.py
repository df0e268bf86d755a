"""Where the money goes: bars on one scale, each beside its number, the whole beside the budget."""

from __future__ import annotations

import pytest

from binder.desktop.money_page.spend_chart import SpendChart
from binder.desktop.pictures.cost_bar import CostBar
from binder.desktop.sheet.sheet import Sight
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.money import add_budget_line
from binder.kitchen.edits.records import remove
from binder.kitchen.edits.shoots import set_shoot
from tests.desktop.money_page.latest import DAY, budget_of
from tests.desktop.sheets import cell_called, is_even, row_called


def chart(binder: Binder) -> SpendChart:
    return SpendChart(budget_of(binder))


def bar(binder: Binder, key: str) -> CostBar:
    picture = cell_called(chart(binder), Sight(binder, DAY), key, "bar").picture
    assert isinstance(picture, CostBar)
    return picture


def test_the_bars_are_on_one_scale_and_add_up_to_the_whole(chickpeas: Binder) -> None:
    rows = chart(chickpeas).rows(Sight(chickpeas, DAY))
    parts = [picture.cost for row in rows[1:] if isinstance(picture := row.cells[1].picture, CostBar)]
    assert sum(part or 0 for part in parts) == pytest.approx(bar(chickpeas, "whole").cost)
    assert parts == sorted(parts, key=lambda part: -(part or 0))
    amounts = [round(float(row.cells[2].text.lstrip("$")) * 100) for row in rows]
    assert sum(amounts[1:]) == amounts[0] == 9122
    assert is_even(chart(chickpeas), Sight(chickpeas, DAY))


def test_the_budget_is_a_notch_in_the_whole(chickpeas: Binder) -> None:
    whole = bar(chickpeas, "whole")
    assert whole.cap is not None
    assert whole.cost is not None
    assert whole.cost / whole.cap == pytest.approx(9122 / 9000)
    free = apply(chickpeas, set_shoot(chickpeas.shoots[DAY], budget=None))
    assert bar(free, "whole").cap is None
    assert row_called(chart(free), Sight(free, DAY), "whole").cells[0].text == "in all"


def test_own_lines_go_together_by_their_heading(chickpeas: Binder) -> None:
    day = chickpeas.shoots[DAY]
    grown = apply(chickpeas, add_budget_line(chickpeas, day, "gas", heading="Gas", rate=500, actual=700)[0])
    grown = apply(grown, add_budget_line(grown, day, "more gas", heading="Gas", rate=300)[0])
    row = row_called(chart(grown), Sight(grown, DAY), "heading:Gas")
    assert row.cells[2].text == "$10.00"
    assert row.cells[2].tip == "$8.00 was planned"
    drawn = bar(grown, "heading:Gas")
    assert drawn.cap is not None
    assert drawn.cost is not None
    assert drawn.cap / drawn.cost == pytest.approx(0.8)


def test_where_nothing_is_spent_nothing_is_drawn(chickpeas: Binder) -> None:
    bare = apply(chickpeas, remove("x", chickpeas, *chickpeas.dishes.values()))
    bare = apply(bare, set_shoot(bare.shoots[DAY], base=None))
    assert chart(bare).rows(Sight(bare, DAY)) == []


def test_where_a_price_is_missing_the_whole_is_only_what_is_known_of_it(chickpeas: Binder) -> None:
    lacking = apply(chickpeas, remove("x", chickpeas, chickpeas.packs["pack_tahini"]))
    whole = row_called(chart(lacking), Sight(lacking, DAY), "whole")
    assert whole.cells[0].text == "known, beside the budget of $90.00"
