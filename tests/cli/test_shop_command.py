"""`binder shop`: what to buy."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from pathlib import Path

from tests.cli.conftest import Ask, Run, squeezed, written
from tests.kitchen_binder import small_binder

KEYS = ["binder", "shoot", "currency", "items", "spend", "proven_optimal", "bound", "missing"]


def test_json_has_exactly_the_keys_that_programs_rely_on(ask: Ask, bean_day: Path) -> None:
    answer = ask("shop", bean_day)
    assert list(answer) == KEYS
    assert all(list(item) == ["food", "grams_needed", "packs", "missing"] for item in answer["items"])
    packs = [pack for item in answer["items"] for pack in item["packs"]]
    assert all(list(pack) == ["label", "count", "price", "store", "date"] for pack in packs)


def test_json_spend_is_the_sum_of_the_packs(ask: Ask, bean_day: Path) -> None:
    answer = ask("shop", bean_day)
    packs = [pack for item in answer["items"] for pack in item["packs"]]
    assert sum(pack["count"] * Decimal(pack["price"]) for pack in packs) == Decimal(answer["spend"])
    assert (answer["spend"], answer["bound"], answer["proven_optimal"]) == ("23.30", "23.30", True)
    beans = next(item for item in answer["items"] if item["food"] == "beans, dried")
    assert beans["grams_needed"] == 1000.0
    assert beans["packs"] == [
        {"label": "1000 g", "count": 1, "price": "4.00", "store": "Corner Larder", "date": "2026-11-02"}
    ]


def test_json_of_a_food_without_a_price_leaves_the_spend_unknown(ask: Ask, troubled_day: Path) -> None:
    answer = ask("shop", troubled_day)
    assert answer["spend"] is None
    assert answer["bound"] == "23.30"
    assert answer["missing"] == ["No price for sumac: add one."]
    sumac = next(item for item in answer["items"] if item["food"] == "sumac")
    assert (sumac["packs"], sumac["missing"]) == ([], answer["missing"])


def test_a_pack_without_a_label_is_named_by_its_size_and_may_be_from_any_store(ask: Ask, tmp_path: Path) -> None:
    pack = replace(small_binder().packs["pack-onion"], label="", store=None)
    answer = ask("shop", written(small_binder(pack), tmp_path / "a.json"))
    onion = next(item for item in answer["items"] if item["food"] == "onion")
    assert (onion["packs"][0]["label"], onion["packs"][0]["store"]) == ("2 lb", None)


def test_the_table_goes_by_section_and_ends_at_the_till(run: Run, bean_day: Path) -> None:
    shown = run("shop", bean_day).stdout
    assert "\ntins and jars\ntahini" in shown
    assert "tahini 150 g 1 × 300 g Corner Larder · Nov 2, 2026 $6.00 150 g" in squeezed(shown)
    assert shown.endswith("At the till: $23.30. No cheaper whole packs would do.\nBudget: $50.00. ○ within\n")
    assert max(map(len, shown.splitlines())) <= 80


def test_a_budget_that_is_passed_is_marked(run: Run, tmp_path: Path) -> None:
    poor = small_binder(replace(small_binder().shoots["day"], budget=2000))
    assert "Budget: $20.00. ◣ over" in run("shop", written(poor, tmp_path / "a.json")).stdout


def test_a_missing_price_is_named_and_the_till_is_not_known(run: Run, troubled_day: Path) -> None:
    shown = run("shop", troubled_day).stdout
    assert "sumac 1 g ◌ not known" in squeezed(shown)
    assert "◌ No price for sumac: add one." in shown
    assert "At the till: not known; $23.30 for what has a price." in shown
    assert "Budget: $50.00. ◌ not known" in shown
