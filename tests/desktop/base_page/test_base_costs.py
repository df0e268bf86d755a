"""The cost of the base adds up to the coin, whichever way it is split."""

from __future__ import annotations

from dataclasses import replace

import pytest

from binder.desktop.base_page.base_costs import BaseCosts
from binder.desktop.base_page.base_figures import BaseFigures, base_figures
from binder.desktop.latest import Latest
from binder.desktop.sheet.cell import Mark
from binder.desktop.sheet.sheet import Sight
from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.conversion import CostSplit
from tests.desktop.sheets import cell_called, is_even
from tests.kitchen_binder import small_binder, small_records


def costs(binder: Binder) -> BaseCosts:
    latest: Latest[BaseFigures] = Latest(base_figures(binder, "day"))
    return BaseCosts(latest)


def cents(text: str) -> int:
    return round(float(text.replace("$", "")) * 100)


@pytest.mark.parametrize("split", list(CostSplit))
def test_dishes_and_what_is_left_add_up_to_all_of_it(split: CostSplit) -> None:
    small = small_binder()
    share = 0.9 if split is CostSplit.SHARES else None
    binder = small_binder(
        replace(small.conversions["cook"], split=split), replace(small.outcomes["cook/cooked"], cost_share=share)
    )
    sight = Sight(binder, "day")
    shown = {row.key: row.cells[2].text for row in costs(binder).rows(sight) if row.key != "modes"}
    total = shown.pop("total")
    assert total == "$4.00"
    assert sum(cents(text) for text in shown.values()) == cents(total)
    assert f"Cook: {split.value}" in cell_called(costs(binder), sight, "modes", "name").text
    assert is_even(costs(binder), sight)


def test_without_a_price_the_reason_leads_to_where_it_is_mended() -> None:
    binder = binder_of([record for record in small_records() if record.id != "quote-beans"])
    (row,) = costs(binder).rows(Sight(binder, "day"))
    assert row.cells[1].mark is Mark.UNKNOWN
    assert row.cells[1].leads_to is not None


def test_without_a_base_there_is_nothing_to_show() -> None:
    binder = small_binder(replace(small_binder().shoots["day"], base=None))
    assert costs(binder).rows(Sight(binder, "day")) == []
