from __future__ import annotations

import pytest

from binder.figures.wrap import shoot_wrap
from binder.paper.print_set import SheetKind
from tests.paper.day_example import day_binder
from tests.paper.example import SHOOT
from tests.paper.said import money_said, words_of_day


@pytest.mark.parametrize("paper", ["a4", "4x6"])
def test_what_was_paid_stands_against_what_was_planned_food_by_food(paper: str) -> None:
    words, binder = words_of_day(SheetKind.WRAP, paper), day_binder()
    wrap = shoot_wrap(binder, SHOOT)
    assert wrap.foods
    for one in wrap.foods:
        assert one.receipt.name in words
        assert money_said(binder, one.account.planned) in words
        assert money_said(binder, one.account.paid) in words
    assert f"Not closed yet: {money_said(binder, wrap.total.open)} is still open." in words
    assert money_said(binder, wrap.worth) in words
