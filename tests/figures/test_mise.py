"""Mise en place: what stands where, for every build."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

import pytest

from binder.figures.mise import made_ahead, mise_list, unnamed_station
from tests.kitchen_binder import small_binder


def test_every_line_stands_at_its_station_once_for_each_build_that_reaches_it() -> None:
    items = {(item.for_what, item.food): item for item in mise_list(small_binder(), "day") if item.dish}
    assert items["Bean spread", "tahini"].count == 2
    assert items["Bean spread", "olive oil"].count == 1  # the swap-out stops before it is dressed
    assert items["Onion flatbread", "Bean spread"].count == 1
    assert items["Bean spread", "tahini"].station == "blender"


def test_amounts_are_for_one_build_and_in_all_weight_first() -> None:
    tahini = next(item for item in mise_list(small_binder(), "day") if item.food == "tahini" and item.dish)
    assert tahini.builds[0].amount.both == "60 g · ¼ cup"
    assert tahini.total.both == "120 g · ½ cup"
    assert tahini.total.grams == pytest.approx(120)


def test_a_smaller_tasting_is_weighed_smaller() -> None:
    small = small_binder()
    binder = small_binder(replace(small.builds["spread-swap"], portions=1))
    tahini = next(item for item in mise_list(binder, "day") if item.food == "tahini" and item.dish)
    assert [build.amount.grams for build in tahini.builds] == pytest.approx([60, 15])
    assert tahini.total.grams == pytest.approx(75)


def test_what_dishes_are_made_from_comes_first_in_the_amount_they_need() -> None:
    assert made_ahead(small_binder(), "day") == pytest.approx({"spread": 0.5})
    first = mise_list(small_binder(), "day")[0]
    assert first.station == "made ahead: Bean spread"
    cooked = next(item for item in mise_list(small_binder(), "day") if item.food == "cooked beans" and not item.dish)
    assert cooked.total.grams == pytest.approx(150)


def test_a_range_is_set_out_as_a_range() -> None:
    liquid = next(item for item in mise_list(small_binder(), "day") if item.food == "bean liquid" and item.dish)
    assert liquid.builds[0].amount.weight == "60 g – 80 g"


def test_ready_by_call_time() -> None:
    assert {item.ready_by for item in mise_list(small_binder(), "day")} == {datetime(2026, 12, 3, 8, 0)}  # noqa: DTZ001


def test_a_step_without_a_station_is_filed_by_itself() -> None:
    binder = small_binder(replace(small_binder().steps["bread/2"], station=""))
    assert unnamed_station() in {item.station for item in mise_list(binder, "day")}


def test_to_taste_is_set_out_too() -> None:
    salt = next(item for item in mise_list(small_binder(), "day") if item.food == "salt" and item.dish)
    assert salt.total.measure == "to taste"
