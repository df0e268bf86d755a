"""`binder shop`: what to buy."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from binder.exchange.shopping_file import shopping_content
from binder.kitchen.budget import BudgetLine
from binder.kitchen.buying import Trip
from binder.kitchen.price import Store
from tests.cli.conftest import Ask, Run, squeezed, written
from tests.exchange import buying_day
from tests.kitchen_binder import small_binder

KEYS = [
    "binder", "shoot", "currency", "items", "trips", "order_ahead", "spend", "deposits", "proven_optimal", "objective",
    "bound", "missing", "clashes",
]  # fmt: skip
ITEM_KEYS = ["food", "section", "grams_needed", "grams_at_home", "grams_left_over", "packs", "missing"]
PACK_KEYS = [
    "label", "count", "grams", "by_weight", "price", "bundle", "cost", "deposit", "store", "date", "price_date",
]  # fmt: skip


def test_json_has_exactly_the_keys_that_programs_rely_on(ask: Ask, bean_day: Path) -> None:
    answer = ask("shop", bean_day)
    assert list(answer) == KEYS
    assert all(list(item) == ITEM_KEYS for item in answer["items"])
    packs = [pack for item in answer["items"] for pack in item["packs"]]
    assert all(list(pack) == PACK_KEYS for pack in packs)
    assert [list(trip) for trip in answer["trips"]] == [["date", "store", "cost", "foods"]]


def test_json_spend_is_the_sum_of_the_packs(ask: Ask, bean_day: Path) -> None:
    answer = ask("shop", bean_day)
    packs = [pack for item in answer["items"] for pack in item["packs"]]
    assert sum(pack["count"] * Decimal(pack["price"]) for pack in packs) == Decimal(answer["spend"])
    assert sum(Decimal(pack["cost"]) for pack in packs) == Decimal(answer["spend"])
    assert sum(Decimal(trip["cost"]) for trip in answer["trips"]) == Decimal(answer["spend"])
    assert (answer["spend"], answer["bound"], answer["objective"]) == ("23.30", "23.30", "23.30")
    assert answer["proven_optimal"] is True


def test_json_says_on_which_day_a_pack_is_fetched_and_when_its_price_was_asked(ask: Ask, bean_day: Path) -> None:
    answer = ask("shop", bean_day)
    beans = next(item for item in answer["items"] if item["food"] == "beans, dried")
    assert beans["grams_needed"] == 1000.0
    (pack,) = beans["packs"]
    # Soaking starts on the evening before the shoot of 3 December, so the beans may be fetched that day.
    assert (pack["date"], pack["price_date"]) == ("2026-12-02", "2026-11-02")
    assert (pack["label"], pack["count"], pack["price"], pack["store"]) == ("1000 g", 1, "4.00", "Corner Larder")
    assert [(trip["date"], trip["store"]) for trip in answer["trips"]] == [("2026-12-02", "Corner Larder")]


def test_json_of_a_shoot_without_a_date_has_trips_without_days(ask: Ask, tmp_path: Path) -> None:
    undated = small_binder(replace(small_binder().shoots["day"], on=None))
    answer = ask("shop", written(undated, tmp_path / "a.json"))
    assert [trip["date"] for trip in answer["trips"]] == [None]
    assert {pack["date"] for item in answer["items"] for pack in item["packs"]} == {None}


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


def test_the_table_goes_by_trip_and_section_and_ends_at_the_till(run: Run, bean_day: Path) -> None:
    shown = run("shop", bean_day).stdout
    assert "\nWed, Dec 2, 2026 · Corner Larder · $23.30\n" in shown
    assert "\ntins and jars\ntahini" in shown
    assert "tahini 150 g 1 × 300 g $6.00 150 g Nov 2, 2026" in squeezed(shown)
    assert shown.endswith("At the till: $23.30. No cheaper whole packs would do.\nBudget: $50.00. ○ within\n")
    assert max(map(len, shown.splitlines())) <= 80


@pytest.fixture
def busy_day(tmp_path: Path) -> Path:
    return written(buying_day.busy_day(), tmp_path / "busy day.json")


def test_what_is_ordered_ahead_stands_on_top_with_its_day(run: Run, ask: Ask, busy_day: Path) -> None:
    shown = squeezed(run("shop", busy_day).stdout)
    assert "Sat, Nov 28, 2026 beans, dried 4 × 250 g, sack Market Hall Wed, Dec 2, 2026" in shown
    assert shown.index("Order ahead") < shown.index("Market Hall · $14.00")
    assert ask("shop", busy_day)["order_ahead"] == [
        {"food": "beans, dried", "by": "2026-11-28", "date": "2026-12-02", "store": "Market Hall"}
    ]


def test_sections_stand_in_the_order_one_walks_through_the_store(run: Run, busy_day: Path) -> None:
    shown = run("shop", busy_day).stdout
    places = [shown.index(f"\n{section}\n") for section in ("baking", "oils and vinegars", "produce", "tins and jars")]
    assert places == sorted(places)


def test_counters_offers_deposits_ticks_and_the_pantry_are_said(run: Run, busy_day: Path) -> None:
    shown = squeezed(run("shop", busy_day).stdout)
    assert "onion 533 g 534 g at the $0.96 0.7 g Nov 2, 2026\ncounter\n" in shown
    assert "beans, dried 1 kg 4 × 250 g, sack; 3 for $14.00 0 g Nov 2, 2026\n$10.00\n" in shown
    assert "$0.25 deposit" in shown
    assert "Deposits beside that: $0.25, which come back with the empties." in shown
    assert "flour ✓ bought" in shown
    assert "tahini 150 g 1 × 300 g $6.00 250 g Nov 2, 2026\n100 g at home\n" in shown
    assert "\nsalt 7 g 1 kg\n" in shown


def test_json_says_counters_offers_deposits_and_the_pantry(ask: Ask, busy_day: Path) -> None:
    answer = ask("shop", busy_day)
    items = {item["food"]: item for item in answer["items"]}
    assert items["salt"]["packs"] == []
    assert items["salt"]["missing"] == []
    assert items["tahini"]["grams_at_home"] == 100.0
    (onion,) = items["onion"]["packs"]
    assert (onion["by_weight"], onion["count"]) == (True, 1)
    assert 0 <= onion["grams"] - items["onion"]["grams_needed"] < 1
    (beans,) = items["beans, dried"]["packs"]
    assert (beans["count"], beans["price"], beans["cost"]) == (4, "4.00", "14.00")
    assert beans["bundle"] == {"count": 3, "price": "10.00"}
    assert (items["olive oil"]["packs"][0]["deposit"], answer["deposits"]) == ("0.25", "0.25")


def test_a_bound_on_the_shoots_terms_is_not_said_to_be_the_tills(run: Run, ask: Ask, tmp_path: Path) -> None:
    file = written(small_binder(Store(id="corner", name="Corner Larder", trip_cost=500)), tmp_path / "a.json")
    answer = ask("shop", file)
    assert (answer["spend"], answer["objective"], answer["bound"]) == ("23.30", "28.30", "28.30")
    assert "On the shoot's terms (trips, stores, waste) nothing would do better." in " ".join(
        run("shop", file).stdout.split()
    )


def test_what_is_fetched_too_late_is_named(run: Run, ask: Ask, tmp_path: Path) -> None:
    late = small_binder(Trip(id="t", shoot="day", store="corner", on=date(2026, 12, 3)))
    file = written(late, tmp_path / "a.json")
    assert "△ beans, dried is fetched on" in run("shop", file).stdout
    assert len(ask("shop", file)["clashes"]) == 6


@pytest.mark.parametrize("name", ["list.csv", "list.xlsx", "LIST.TXT"])
def test_the_list_is_written_as_a_file(run: Run, busy_day: Path, tmp_path: Path, name: str) -> None:
    (tmp_path / name).write_bytes(b"the list of last time")
    result = run("shop", busy_day, "--to", tmp_path / name)
    assert (result.exit_code, result.stderr) == (0, "")
    assert " ".join(result.stdout.split()) == f"Wrote the shopping list of Bean day to {tmp_path / name}."
    # A workbook says when it was made, so no two are the same to the byte.
    assert len((tmp_path / name).read_bytes()) == pytest.approx(
        len(shopping_content(buying_day.busy_day(), "day", tmp_path / name)), abs=64
    )
    assert sorted(one.name for one in tmp_path.iterdir()) == sorted(["busy day.json", name])


def test_programs_are_told_which_file_was_written(ask: Ask, busy_day: Path, tmp_path: Path) -> None:
    answer = ask("shop", busy_day, "--to", tmp_path / "list.csv")
    assert answer == {"binder": "Bean day", "shoot": "Bean day", "file": str(tmp_path / "list.csv")}


def test_a_kind_of_file_that_is_none_is_wrong_usage(run: Run, busy_day: Path, tmp_path: Path) -> None:
    result = run("shop", busy_day, "--to", tmp_path / "list.pdf")
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr == "A shopping list is written as .csv, .xlsx or .txt: end “list.pdf” so.\n"


def test_a_list_that_cannot_be_written_is_one_line(run: Run, busy_day: Path, tmp_path: Path) -> None:
    result = run("shop", busy_day, "--to", tmp_path / "no folder" / "list.csv")
    assert (result.exit_code, result.stdout, result.stderr.count("\n")) == (3, "", 1)


def test_a_budget_that_is_passed_is_marked(run: Run, tmp_path: Path) -> None:
    poor = small_binder(replace(small_binder().shoots["day"], budget=2000))
    assert "Budget: $20.00. ◣ over" in run("shop", written(poor, tmp_path / "a.json")).stdout


def test_a_missing_price_is_named_and_the_till_is_not_known(run: Run, troubled_day: Path) -> None:
    shown = run("shop", troubled_day).stdout
    assert "sumac 1 g ◌ not known" in squeezed(shown)
    assert "◌ No price for sumac: add one." in shown
    assert "At the till: not known; $23.30 for what has a price." in shown
    assert "Budget: $50.00. ◌ not known" in shown


def test_what_is_not_food_counts_against_the_budget_too(run: Run, tmp_path: Path) -> None:
    hire = BudgetLine(id="hire", shoot="day", name="Kitchen for a day", rate=3000)
    shown = run("shop", written(small_binder(hire), tmp_path / "hire.json")).stdout
    assert "Budget: $50.00; with all that is not food $53.30 is expected. ◣ over" in " ".join(shown.split())
