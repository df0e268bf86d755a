"""Where the base is short: what runs out, and changes that each alone mend it."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.figures.base import BaseVerdict, base_balance
from binder.figures.base_repairs import Repair, RepairKind, base_repairs, bottleneck
from binder.figures.checks import shoot_checks
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.edits.records import set_fields
from binder.kitchen.edits.shoots import remove_build, set_dish
from binder.kitchen.shoot import Build, BuildKind
from tests.kitchen_binder import small_binder
from tests.large_shoot import Size, large_shoot


def short_binder(grams: float = 300) -> Binder:
    """The small binder needs 750 / 1.05 / 2 = 357.14 g of beans."""
    shoot = replace(small_binder().shoots["day"], base_amount=grams, base_unit="g")
    return small_binder(
        shoot, Build(id="spread-spare", dish="dish-spread", position=2, kind=BuildKind.SPARE, portions=1)
    )


def test_the_bottleneck_is_the_form_that_drives_the_need() -> None:
    # With the spare of one portion: 825 g cooked, 392.86 g of beans; 300 g give 630 g cooked, so 195 g are short.
    found = bottleneck(short_binder(), "day")
    assert found is not None
    assert found.form == "cooked"
    assert found.short == pytest.approx(195, abs=0.01)
    assert found.base == pytest.approx(825 / 1.05 / 2 - 300)
    assert found.says == "cooked beans is what runs out: 195 g short, which takes 93 g more beans, dried."


def test_the_liquid_can_be_the_bottleneck_too() -> None:
    binder = short_binder()
    thirsty = apply(binder, set_fields("Edit", binder.lines["spread/1/3"], low=700.0, high=700.0))
    found = bottleneck(thirsty, "day")
    assert found is not None
    assert found.form == "liquid"


def mended(binder: Binder, repair: Repair) -> Binder:
    if repair.kind is RepairKind.BUILD:
        return apply(binder, remove_build(binder, binder.builds[repair.build or ""]))
    if repair.kind is RepairKind.PORTIONS:
        return apply(binder, set_dish(binder, binder.dishes[repair.dish or ""], portions=repair.portions))
    shoot = binder.shoots["day"]
    return apply(binder, set_fields("Edit", shoot, base_amount=shoot.base_amount + (repair.grams or 0.0)))


@given(st.floats(60, 390))
def test_every_repair_tried_makes_the_base_go_round(grams: float) -> None:
    binder = short_binder(grams)
    repairs = base_repairs(binder, "day")
    assert repairs[-1].kind is RepairKind.BUY
    for repair in repairs:
        balance = base_balance(mended(binder, repair), "day")
        assert balance is not None
        assert balance.verdict is BaseVerdict.ENOUGH


def test_the_smallest_cut_comes_first_and_portions_are_the_most_that_fit() -> None:
    binder = short_binder(370)  # 22.86 g short
    repairs = base_repairs(binder, "day")
    frees = [repair.frees for repair in repairs[:-1]]
    assert frees == sorted(frees)
    assert repairs[0].build == "spread-spare"
    for repair in repairs:
        if repair.kind is RepairKind.PORTIONS:
            more = apply(
                binder, set_dish(binder, binder.dishes[repair.dish or ""], portions=(repair.portions or 0) + 1)
            )
            balance = base_balance(more, "day")
            assert balance is not None
            assert balance.verdict is BaseVerdict.SHORT


def test_nothing_is_repaired_that_is_not_broken() -> None:
    assert base_repairs(small_binder(), "day") == ()
    assert bottleneck(small_binder(), "day") is None


def test_the_checks_name_the_form_and_the_repair() -> None:
    says = next(check.says for check in shoot_checks(short_binder(370), "day") if check.kind == "short of base")
    assert "cooked beans is what runs out" in says
    assert "Leave out one spare of dish 1, Bean spread." in says
    assert "Have 23 g more beans, dried" in says


def test_of_a_large_shoot_by_two_ways_a_dozen_repairs_are_enough_and_each_mends_it() -> None:
    binder = large_shoot(Size(dishes=12, kilograms=24.2))
    balance = base_balance(binder, "day")
    assert balance is not None
    assert balance.verdict is BaseVerdict.SHORT
    repairs = base_repairs(binder, "day")
    assert 2 <= len(repairs) <= 13
    frees = [repair.frees for repair in repairs[:-1]]
    assert frees == sorted(frees)
    for repair in repairs[:-1]:
        after = base_balance(mended(binder, repair), "day")
        assert after is not None
        assert after.verdict is BaseVerdict.ENOUGH


def test_a_dish_for_a_million_does_not_make_the_repairs_wait() -> None:
    crowd = replace(small_binder().dishes["dish-spread"], portions=1e6)
    repairs = base_repairs(small_binder(crowd, replace(small_binder().shoots["day"], base_amount=1000)), "day")
    cut = next(one for one in repairs if one.kind is RepairKind.PORTIONS and one.dish == "dish-spread")
    # 1000 kg of beans are 2100 kg cooked; the bread takes 150 g, and two builds take 75 g a portion each.
    assert cut.portions == (1_000_000 * 2 * 1.05 - 150) // 150
