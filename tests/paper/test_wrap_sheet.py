from __future__ import annotations

from dataclasses import replace

import pytest

from binder.figures.receipts import food_receipts
from binder.figures.wrap import shoot_wrap
from binder.kitchen.buying import Purchase
from binder.paper.print_set import SheetKind
from tests.paper.day_example import day_binder
from tests.paper.example import SHOOT, full_binder
from tests.paper.said import money_said, words_of, words_of_day


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


def test_the_basis_of_what_a_portion_cost_is_named() -> None:
    binder = day_binder()
    assert shoot_wrap(binder, SHOOT).caps
    assert "A portion as things were bought: used cost" in words_of_day(SheetKind.WRAP)


def test_a_food_with_neither_price_nor_receipt_keeps_the_books_open() -> None:
    binder = full_binder()
    purchase = Purchase(id="all", shoot=SHOOT, food=next(iter(binder.foods)), paid=100)
    binder = binder.with_tables({"purchases": binder.purchases.with_changes([(purchase.id, purchase)])})
    for receipt in food_receipts(binder, SHOOT):
        if receipt.planned is not None and not receipt.purchases:
            settled = replace(purchase, id=receipt.food, food=receipt.food, paid=receipt.planned)
            binder = binder.with_tables({"purchases": binder.purchases.with_changes([(settled.id, settled)])})
    wrap = shoot_wrap(binder, SHOOT)
    assert wrap.not_planned
    assert not wrap.total.open
    words = words_of(binder, SheetKind.WRAP)
    assert "Not closed yet: no price and no receipt for" in words
    assert "Closed: everything" not in words
