"""What the chickpea sample says of buying, of money and of what may be said on camera, with the sums done by hand."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date

import pytest

from binder.figures.budget import FOOD, shoot_budget
from binder.figures.budget_rows import RowKind
from binder.figures.claims import ClaimVerdict, claim_findings, verdict_text
from binder.figures.price_history import price_history
from binder.figures.shopping import shopping_list
from binder.figures.trips import buying_clashes, trip_plans
from binder.figures.wrap import shoot_wrap
from tests.samples.opened import all_bought, sample, shoot_of, with_records

CHICKPEAS = sample("chickpeas")
SHOOT = shoot_of(CHICKPEAS)

# --- the two trips


def test_the_list_is_bought_in_two_trips_on_the_producers_days() -> None:
    plans = trip_plans(CHICKPEAS, SHOOT)
    assert [(plan.on, plan.store) for plan in plans] == [
        (date(2026, 12, 6), "quillbank_market"),
        (date(2026, 12, 7), "oldbarrow_bulk"),
    ]
    assert sum(plan.price for plan in plans) == shopping_list(CHICKPEAS, SHOOT).spend
    assert buying_clashes(CHICKPEAS, SHOOT) == ()


def test_the_way_through_the_market_ends_at_what_must_stay_cold() -> None:
    market = trip_plans(CHICKPEAS, SHOOT)[0]
    sections = list(dict.fromkeys(line.item.section for line in market.lines))
    assert sections == [section for section in CHICKPEAS.stores["quillbank_market"].sections if section in sections]
    assert (sections[0], sections[-1]) == ("produce", "dairy and eggs")


def test_what_is_at_home_is_not_bought() -> None:
    bought = {item.food: item for item in shopping_list(CHICKPEAS, SHOOT).items}
    at_home = {item.food for item in CHICKPEAS.pantry_items.values()}
    assert at_home == {food for food, item in bought.items() if not item.packs}


def test_the_book_knows_what_was_asked_before() -> None:
    bar = next(pack for pack in CHICKPEAS.packs.where("food", "dark_chocolate") if pack.unit == "oz")
    assert [point.quote.price for point in price_history(CHICKPEAS, bar.id)] == [389, 419, 449]


# --- the budget

HIRE, COOK, ASSISTANT, CLEANING = 48000, 34000, 8.5 * 2200, 2.5 * 2600
PROPS_PLANNED, PROPS_COMMITTED, GAS, DISPOSABLES, TASTING = 8500, 8240, 2 * 1150, 3200, 11 * 450
TILL = 8815
CONTINGENCY = 0.08 * 155000


def test_the_budget_by_hand() -> None:
    budget = shoot_budget(CHICKPEAS, SHOOT)
    taxed = HIRE + PROPS_PLANNED + GAS + DISPOSABLES + TASTING
    own = taxed + COOK + ASSISTANT + CLEANING
    assert budget.of(*FOOD).planned == TILL
    assert budget.of(RowKind.TRIPS).planned == 200 + 600
    assert budget.of(RowKind.OWN).planned == own
    assert [row.amounts.planned for row in budget.tax] == [_rounded(0.02 * TILL), _rounded(0.0825 * taxed)]
    tax = _rounded(0.02 * TILL) + _rounded(0.0825 * taxed)
    assert budget.total.planned == TILL + 800 + own + tax + CONTINGENCY
    assert budget.of(RowKind.OWN).committed == HIRE + COOK + PROPS_COMMITTED


def _rounded(cents: float) -> int:
    return math.floor(cents + 0.5)


# --- what may be said


def test_one_sentence_holds_only_on_a_condition_and_says_so() -> None:
    found = claim_findings(CHICKPEAS, SHOOT)
    (conditional,) = [one for one in found if one.verdict is ClaimVerdict.ONLY_IF]
    assert conditional.says == "Every plate costs less than a dollar seventy-five."
    assert verdict_text(conditional) == "Holds only at today's lowest prices or with the staples free."
    others = [one.verdict for one in found if one is not conditional]
    assert others == [ClaimVerdict.HOLDS, ClaimVerdict.HOLDS, ClaimVerdict.HOLDS, ClaimVerdict.DOES_NOT]


def test_shares_of_packs_and_the_till_are_not_taken_for_each_other() -> None:
    (till,) = [one for one in claim_findings(CHICKPEAS, SHOOT) if one.verdict is ClaimVerdict.DOES_NOT]
    assert till.chosen is not None
    assert till.chosen.figure == TILL + _rounded(0.02 * TILL)


# --- the books after


def test_the_wrap_closes_to_the_cent() -> None:
    bought = all_bought(CHICKPEAS, SHOOT, {"kale": 299, "feta": 131, "parsley": 447})
    wrap = shoot_wrap(bought, SHOOT)
    assert wrap.closes
    assert (wrap.total.planned, wrap.total.open) == (TILL, 0)
    assert wrap.total.paid == TILL + (299 - 249) + (131 - 113) + (447 - 298)
    assert wrap.total.variance == 50 + 18 + 149
    assert sum(one.account.paid for one in wrap.bearers) == wrap.total.paid


def test_a_lost_receipt_stays_open() -> None:
    bought = all_bought(CHICKPEAS, SHOOT, {})
    (kale,) = bought.purchases.where("food", "kale")
    wrap = shoot_wrap(with_records(bought, replace(kale, paid=None)), SHOOT)
    assert wrap.closes
    assert wrap.total.open == 249
    assert wrap.total.paid == pytest.approx(TILL - 249)
