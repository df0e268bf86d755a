"""`binder mise`: what to set out."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.settings import SETTINGS_ID, Settings
from binder.kitchen.shoot import Shoot
from tests.cli.conftest import Ask, Run, squeezed, written
from tests.kitchen_binder import small_binder

KEYS = ["station", "dish", "food", "preparation", "amount", "per_build", "builds", "ready_by", "missing"]


def only(items: list[dict[str, Any]], **wanted: str) -> dict[str, Any]:
    (item,) = (item for item in items if all(item[key] == value for key, value in wanted.items()))
    return item


def test_json_has_exactly_the_keys_that_programs_rely_on(ask: Ask, bean_day: Path) -> None:
    answer = ask("mise", bean_day)
    assert list(answer) == ["binder", "shoot", "currency", "items"]
    assert all(list(item) == KEYS for item in answer["items"])
    assert all(list(item["amount"]) == ["grams", "measure"] for item in answer["items"])


def test_json_gives_each_build_and_all_together(ask: Ask, bean_day: Path) -> None:
    onion = only(ask("mise", bean_day)["items"], food="onion")
    assert (onion["station"], onion["dish"], onion["preparation"]) == ("stove", "Onion flatbread", "chopped")
    assert onion["amount"] == {"grams": 480.0, "measure": "3 cups"}
    assert onion["per_build"] == [
        {"build": "hero", "grams": 240.0, "measure": "1½ cups"},
        {"build": "swap-out", "grams": 240.0, "measure": "1½ cups"},
    ]
    assert (onion["builds"], onion["ready_by"], onion["missing"]) == (2, "2026-12-03T08:00:00", [])


def test_json_says_why_something_is_not_weighed(ask: Ask, bean_day: Path) -> None:
    salt = only(ask("mise", bean_day)["items"], food="salt", dish="Bean spread", station="front")
    assert salt["amount"] == {"grams": None, "measure": "to taste"}
    assert salt["missing"] == ["salt has no amount."]


def test_json_says_what_a_weight_lacks(ask: Ask, tmp_path: Path) -> None:
    line = replace(small_binder().lines["spread/1/2"], unit="bunch")
    items = ask("mise", written(small_binder(line), tmp_path / "a.json"))["items"]
    assert "Cannot convert 1 bunch of tahini" in only(items, food="tahini", station="blender")["missing"][0]


def test_json_of_a_recipe_counted_in_portions_says_that_it_is_measured(ask: Ask, tmp_path: Path) -> None:
    line = replace(small_binder().lines["bread/2/1"], low=2, high=2, unit="portion")
    items = ask("mise", written(small_binder(line), tmp_path / "a.json"))["items"]
    spread = only(items, food="Bean spread", dish="Onion flatbread")
    assert (spread["amount"]["grams"], spread["missing"]) == (None, ["Bean spread is measured, not weighed."])


def test_json_of_a_shoot_without_a_date_has_no_time(ask: Ask, tmp_path: Path) -> None:
    undated = small_binder(replace(small_binder().shoots["day"], on=None))
    flour = only(ask("mise", written(undated, tmp_path / "a.json"))["items"], food="flour")
    assert (flour["ready_by"], flour["missing"]) == (None, ["The shoot has no date or no call time: add them."])


def test_the_table_goes_by_station_and_dish(run: Run, bean_day: Path) -> None:
    shown = run("mise", bean_day).stdout
    assert "\nstove · 2 Onion flatbread\nflour " in shown
    assert "\nmade ahead: Bean spread\n" in shown
    assert "onion, chopped 240 g · 1½ cups 2 480 g · 3 cups" in squeezed(shown)
    assert max(map(len, shown.splitlines())) <= 80


def test_builds_of_different_size_are_shown_each(run: Run, tmp_path: Path) -> None:
    build = replace(small_binder().builds["bread-swap"], portions=1)
    shown = run("mise", written(small_binder(build), tmp_path / "a.json")).stdout
    assert "hero 250 g · swap-out 125 g" in shown


def test_a_shoot_with_nothing_to_set_out_says_so(run: Run, tmp_path: Path) -> None:
    empty: Binder = binder_of([Settings(id=SETTINGS_ID, name="Empty"), Shoot(id="day", name="Day")])
    result = run("mise", written(empty, tmp_path / "a.json"))
    assert result.exit_code == 0
    assert "nothing to set out" in result.stdout
