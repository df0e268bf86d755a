from __future__ import annotations

from dataclasses import replace

import pytest

from binder.figures.budget import shoot_budget
from binder.figures.money_parts import money_parts
from binder.figures.not_known import not_known_text
from binder.figures.old_prices import as_of_text, asked_text, prices_in_use
from binder.paper.print_set import SheetKind
from tests.paper.day_example import day_binder
from tests.paper.example import SHOOT, full_binder
from tests.paper.said import money_said, words_of, words_of_day


@pytest.mark.parametrize("paper", ["a4", "4x6"])
def test_every_line_has_what_was_planned_committed_paid_and_expected(paper: str) -> None:
    words, binder = words_of_day(SheetKind.BUDGET, paper), day_binder()
    budget = shoot_budget(binder, SHOOT)
    taxes = () if budget.tax_contained else budget.tax
    for row in (*budget.rows, *taxes):
        assert row.name in words
        amounts = row.amounts
        for minor in (amounts.planned, amounts.committed, amounts.actual, amounts.expected):
            if minor is not None:
                assert money_said(binder, minor) in words


def test_the_total_stands_against_what_is_allowed() -> None:
    words, binder = words_of_day(SheetKind.BUDGET), day_binder()
    budget = shoot_budget(binder, SHOOT)
    assert budget.allowed is not None
    assert budget.room is not None
    assert f"the budget of {money_said(binder, budget.allowed)}" in words
    assert money_said(binder, abs(budget.room)) in words


def test_a_budget_with_a_price_missing_names_what_is_missing_and_shows_no_total() -> None:
    words, binder = words_of(full_binder(), SheetKind.BUDGET), full_binder()
    missing = shoot_budget(binder, SHOOT).missing
    assert missing
    assert not_known_text(binder, missing) in words
    assert "within the budget" not in words
    assert "over the budget" not in words


def test_where_the_money_goes_is_shown_part_by_part_and_each_heading_once() -> None:
    words, binder = words_of_day(SheetKind.BUDGET), day_binder()
    parts = money_parts(shoot_budget(binder, SHOOT))
    chart = words[words.index("Where the money goes") :]
    for part in parts:
        assert f"{part.name} {money_said(binder, part.expected)}" in chart
    assert words.count("Contingency and tax") <= 1


def test_what_is_not_all_known_has_no_chart() -> None:
    assert "Where the money goes" not in words_of(full_binder(), SheetKind.BUDGET)


def test_the_days_of_the_prices_are_said_and_those_that_will_be_too_old_one_by_one() -> None:
    binder = full_binder()
    fresh = replace(binder.shoots[SHOOT], quote_days=10_000)
    strict = replace(fresh, quote_days=0)
    said = []
    for shoot in (fresh, strict):
        asked = binder.with_tables({"shoots": binder.shoots.with_changes([(SHOOT, shoot)])})
        words, prices = words_of(asked, SheetKind.BUDGET), prices_in_use(asked, SHOOT)
        assert as_of_text(asked, prices, shoot.quote_days) in words
        said.append([asked_text(asked, one) in words for one in prices if one.too_old])
    assert said[0] == []
    assert said[1]
    assert all(said[1])
