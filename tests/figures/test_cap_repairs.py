"""Repairs of a dish over its cap: each does what it says, is the smallest of its kind, and can be undone.

By hand, a portion of the spread: 15 g tahini at 2 cents, 25.67568 g beans at 0.4, 6.6540 g oil at 2, 0.51351 g salt at
0.2: 30 + 10.27027 + 13.30809 + 0.10270 = 53.68106 cents.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from binder.figures.cap_candidate import CapRepairKind
from binder.figures.cap_repairs import CapRepair, cap_repairs, cap_standing
from binder.figures.cost import Verdict, dish_cost
from binder.kitchen.binder import Binder, binder_of, every_record
from binder.kitchen.change import apply
from binder.kitchen.cooks_steps import measures_below
from binder.kitchen.food import Food, Section
from binder.kitchen.price import Pack, Quote
from binder.kitchen.recipe import Line
from binder.kitchen.record import Record
from binder.kitchen.shoot import CapBasis
from tests.figures.test_worked_examples import one_food
from tests.kitchen_binder import small_binder
from tests.samples.opened import cost_of, sample, stops
from tests.strategies import binders

SPREAD = 53.68106


def capped(cap: int, *others: Record, basis: CapBasis = CapBasis.USED) -> Binder:
    """The small binder with a cap on the spread."""
    small = small_binder(*others)
    dish = replace(small.dishes["dish-spread"], cap=cap)
    return small_binder(*others, dish, replace(small.shoots["day"], cap_basis=basis))


def of_kind(binder: Binder, kind: CapRepairKind) -> list[CapRepair]:
    return [repair for repair in cap_repairs(binder, "dish-spread") if repair.kind is kind]


def pail(price: int = 800, on: date = date(2026, 10, 1)) -> list[Record]:
    """A kilogram of tahini whose price is older than the jar's, so that the jar is the one chosen."""
    return [
        Pack(id="pail", food="tahini", store="corner", label="1 kg pail", size=1, unit="kg"),
        Quote(id="pail/1", pack="pail", price=price, on=on),
    ]


def test_the_sum_at_the_head_of_this_file() -> None:
    assert dish_cost(small_binder(), "dish-spread").per_portion == pytest.approx(SPREAD, abs=1e-5)


def test_a_dish_within_its_cap_needs_no_repair() -> None:
    assert cap_repairs(small_binder(), "dish-spread") == ()
    assert cap_repairs(capped(54), "dish-spread") == ()


def test_a_dish_of_unknown_cost_has_no_repair() -> None:
    gone = replace(small_binder().packs["pack-oil"], on_sale=False)
    assert cap_repairs(capped(1, gone), "dish-spread") == ()


def test_another_pack_comes_first_and_says_where_and_for_how_much() -> None:
    first = cap_repairs(capped(40, *pail()), "dish-spread")[0]
    assert first.kind is CapRepairKind.PACK
    assert first.says == "Buy tahini as 1 kg pail at Corner Larder for $8.00: $0.36 a portion."
    assert first.cost == pytest.approx(SPREAD - 15 * (2 - 0.8), abs=1e-5)
    assert first.saves == pytest.approx(18)
    assert first.place.id == "pail"


def test_a_pack_that_does_not_do_is_not_proposed() -> None:
    assert of_kind(capped(40, *pail(price=1500)), CapRepairKind.PACK) == []


def test_less_of_a_line_is_rounded_down_to_a_measure() -> None:
    # 8.68 cents over 45 are 34.7 of the 120 that four spoons cost: 2.84 spoons would do, and half spoons there are.
    tahini = of_kind(capped(45), CapRepairKind.LESS)[0]
    assert tahini.says == "Take 2½ tbsp of tahini instead of 4 tbsp: $0.42 a portion."
    assert tahini.cost == pytest.approx(SPREAD - 30 * 1.5 / 4, abs=1e-5)
    assert apply(capped(45), tahini.change).lines["spread/1/2"].high == 2.5


def test_never_under_half() -> None:
    # Half the tahini saves 15 cents, half the oil 6.65: below 38.68 neither does.
    assert of_kind(capped(39), CapRepairKind.LESS)
    assert of_kind(capped(38), CapRepairKind.LESS) == []


def test_a_range_keeps_its_lower_end_where_it_can() -> None:
    ranged = Line(id="spread/1/2", step="spread/1", position=1, food="tahini", low=2, high=4, unit="tbsp")
    repair = of_kind(capped(45, ranged), CapRepairKind.LESS)[0]
    after = apply(capped(45, ranged), repair.change).lines["spread/1/2"]
    assert (after.low, after.high) == (2, 2.5)


def test_two_lines_of_one_food_are_told_apart_by_their_step() -> None:
    more = Line(id="x", step="spread/2", position=2, food="tahini", low=2, high=2, unit="tbsp")
    says = [repair.says for repair in of_kind(capped(62, more), CapRepairKind.LESS)]
    assert any("in step 1" in text for text in says)
    assert any("in step 2" in text for text in says)


def test_more_portions_are_the_fewest_that_do() -> None:
    # 4 x 53.68 = 214.7 cents: five portions of 42.94, six of 35.79.
    (five,) = of_kind(capped(43), CapRepairKind.PORTIONS)
    assert five.says == "Divide Bean spread into 5 portions instead of 4: $0.429 a portion."
    assert five.cost == pytest.approx(4 * SPREAD / 5, abs=1e-5)
    (six,) = of_kind(capped(42), CapRepairKind.PORTIONS)
    assert six.cost == pytest.approx(4 * SPREAD / 6, abs=1e-5)
    assert of_kind(capped(26), CapRepairKind.PORTIONS) == []  # more than twice as many are not proposed


def sunflower(**fields: Any) -> list[Record]:  # noqa: ANN401 - any field of a food
    return [
        Food(id="sun", name="sunflower oil", section=Section.OILS_AND_VINEGARS, density=0.9, **fields),
        Pack(id="sun/1", food="sun", label="1 l", size=1, unit="l"),
        Quote(id="sun/1/1", pack="sun/1", price=270, on=date(2026, 11, 1)),
    ]


def test_another_food_of_the_kind_says_its_price() -> None:
    (swap,) = of_kind(capped(45, *sunflower()), CapRepairKind.SWAP)
    assert swap.says == "Take sunflower oil ($2.70 for 1 l) instead of olive oil: $0.42 a portion."
    assert swap.cost == pytest.approx(SPREAD - 6.65404 * (2 - 0.3), abs=1e-4)
    assert apply(capped(45, *sunflower()), swap.change).lines["spread/2/1"].food == "sun"


@pytest.mark.parametrize(
    "fields", [{"allergens": ("peanuts",)}, {"temperature_control": True}, {"doneness": "poultry"}, {"free": True}]
)
def test_no_swap_brings_an_allergen_or_a_caution(fields: dict[str, object]) -> None:
    assert of_kind(capped(45, *sunflower(**fields)), CapRepairKind.SWAP) == []


def test_a_swap_may_carry_what_the_dish_carries_already() -> None:
    assert of_kind(capped(45, *sunflower(allergens=("sesame",))), CapRepairKind.SWAP)


def test_the_lowest_price_ever_asked_says_when_that_was() -> None:
    old = Quote(id="old", pack="pack-tahini", price=300, on=date(2025, 12, 1))
    (repair,) = of_kind(capped(45, old), CapRepairKind.QUOTE)
    assert repair.says == "Have tahini as 300 g for $3.00 again, as on Dec 1, 2025: $0.39 a portion."
    assert of_kind(capped(45, replace(old, price=600)), CapRepairKind.QUOTE) == []


def test_the_mousse_of_the_chickpea_day_is_mended_by_its_first_repair() -> None:
    binder = sample("chickpeas")
    assert stops(binder) == [("over cap", "5 Midnight Mousse")]
    repairs = cap_repairs(binder, cost_of(binder, 5).dish)
    assert [repair.kind for repair in repairs[:3]] == [CapRepairKind.PACK, CapRepairKind.LESS, CapRepairKind.PORTIONS]
    assert "4¾ oz of dark chocolate" in repairs[1].says
    assert stops(apply(binder, repairs[0].change)) == []


def test_whole_packs_are_counted_as_packs() -> None:
    # Whole packs of the spread are 2000 cents over four: a smaller tin of oil at 300 takes 600 off.
    tin = [
        Pack(id="tin", food="oil", label="50 ml", size=50, unit="ml"),
        Quote(id="tin/1", pack="tin", price=300, on=date(2026, 11, 2)),
    ]
    assert dish_cost(capped(1, basis=CapBasis.WHOLE_PACKS), "dish-spread").per_portion == 500
    assert dish_cost(capped(1, *tin, basis=CapBasis.WHOLE_PACKS), "dish-spread").per_portion == 350
    pinned = replace(small_binder().quotes["quote-oil"], pinned=True)
    first = cap_repairs(capped(360, *tin, pinned, basis=CapBasis.WHOLE_PACKS), "dish-spread")[0]
    assert (first.kind, first.cost) == (CapRepairKind.PACK, 350)


@given(st.integers(1, 53), st.sampled_from(CapBasis), st.integers(1, 900))
def test_each_repair_does_what_it_says_and_can_be_undone(cap: int, basis: CapBasis, pail_price: int) -> None:
    binder = capped(cap, *pail(pail_price), *sunflower(), basis=basis)
    kinds = list(CapRepairKind)
    repairs = cap_repairs(binder, "dish-spread")
    assert [repair.kind for repair in repairs] == sorted((one.kind for one in repairs), key=kinds.index)
    for repair in repairs:
        after = apply(binder, repair.change)
        cost = dish_cost(after, "dish-spread")
        assert cost.verdict is Verdict.WITHIN
        assert cost.per_portion == repair.cost
        assert apply(after, repair.change.inverse()) == binder


@settings(suppress_health_check=[HealthCheck.too_slow])
@given(binders())
def test_in_any_binder_a_repair_brings_its_dish_within(binder: Binder) -> None:
    for dish in binder.dishes:
        standing = cap_standing(binder, dish)
        assert not (standing.repairs and standing.break_even)
        for repair in standing.repairs:
            assert dish_cost(apply(binder, repair.change), dish).verdict is Verdict.WITHIN


@given(st.integers(20, 53))
def test_less_is_as_little_less_as_does(cap: int) -> None:
    for repair in of_kind(capped(cap), CapRepairKind.LESS):
        line = capped(cap).lines[repair.place.id]
        kept = apply(capped(cap), repair.change).lines[line.id].high or 0
        assert kept >= (line.high or 0) / 2
        for more in measures_below(line.high or 0, line.unit, least=kept):
            if more > kept:
                tried = capped(cap, replace(line, low=min(line.low or 0, more), high=more))
                assert dish_cost(tried, "dish-spread").verdict is Verdict.OVER


def test_a_dish_within_says_its_headroom_and_what_each_food_may_cost() -> None:
    standing = cap_standing(capped(60), "dish-spread")
    assert standing.headroom == pytest.approx(60 - SPREAD, abs=1e-5)
    assert standing.repairs == ()
    tahini = standing.break_even[0]
    assert tahini.name == "tahini"
    assert tahini.price_at_cap == pytest.approx(600 * (30 + 60 - SPREAD) / 30, abs=1e-3)
    assert cap_standing(capped(40), "dish-spread").break_even == ()


def plate(price: int, portions: float, cap: int, basis: CapBasis) -> Binder:
    """A dish of one food bought for it: a pack at a price, used whole."""
    binder = one_food(edible=1, portions=portions, pack=(1, "lb", price))
    small = small_binder()
    shoot = replace(small.shoots["day"], base=None, cap=cap, cap_basis=basis)
    dish = replace(small.dishes["dish-spread"], recipe="r", portions=portions)
    return binder_of([*every_record(binder), shoot, dish])


def test_food_cost_per_cent_as_published() -> None:
    # Example 42 [OP]: a plate that costs 4.00 at a menu price of 16 is 25 %.
    standing = cap_standing(plate(400, 1, 1600, CapBasis.USED), "dish-spread")
    assert standing.part_of_cap == pytest.approx(0.25)
    assert standing.headroom == pytest.approx(1200)


def test_so_much_over_so_many_covers_as_published() -> None:
    # Example 43 [MID]: 9500 over 325 covers is 29.23 each, here as whole packs over portions.
    cost = dish_cost(plate(950_000, 325, 10_000, CapBasis.WHOLE_PACKS), "dish-spread")
    assert round(cost.per_portion or 0) == 2923
