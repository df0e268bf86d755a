"""Every repair offered is a change that makes the base go round."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.desktop.base_page.repairing import change_of_repair, have_more
from binder.figures.base import BaseVerdict, base_balance
from binder.figures.base_repairs import base_repairs
from binder.kitchen.binder import Binder
from binder.kitchen.change import apply
from binder.kitchen.shoot import Build, BuildKind
from tests.kitchen_binder import small_binder


def short_binder(amount: float, unit: str) -> Binder:
    shoot = replace(small_binder().shoots["day"], base_amount=amount, base_unit=unit)
    return small_binder(shoot, Build(id="spare", dish="dish-spread", position=2, kind=BuildKind.SPARE))


@given(st.floats(30, 490), st.sampled_from(["g", "kg", "oz", "lb"]))
def test_each_repair_made_is_enough_in_any_unit(grams: float, unit: str) -> None:
    per_unit = {"g": 1.0, "kg": 1000.0, "oz": 28.349523125, "lb": 453.59237}[unit]
    binder = short_binder(grams / per_unit, unit)
    for repair in base_repairs(binder, "day"):
        change = change_of_repair(binder, "day", repair)
        after = base_balance(apply(binder, change), "day")
        assert after is not None
        assert after.verdict is BaseVerdict.ENOUGH, change.label


def test_more_of_the_base_keeps_its_unit_and_says_what_it_is() -> None:
    change = have_more(short_binder(0.3, "kg"), "day", 57.2)
    after = apply(short_binder(0.3, "kg"), change).shoots["day"]
    assert after.base_amount == pytest.approx(0.358)
    assert after.base_unit == "kg"
    assert change.label == "Have 57 g more beans, dried"


def test_where_there_was_none_it_is_had_in_grams() -> None:
    change = have_more(short_binder(0, "sackful"), "day", 100)
    after = apply(short_binder(0, "sackful"), change).shoots["day"]
    assert (after.base_amount, after.base_unit) == (100, "g")
