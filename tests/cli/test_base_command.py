"""`binder base`: how far the base ingredient goes."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from binder.kitchen.amount_text import grams_text
from tests.cli.conftest import Ask, Run, squeezed, written
from tests.kitchen_binder import small_binder

KEYS = ["binder", "shoot", "currency", "base", "grams_there_are", "grams_needed", "forms", "dishes", "verdict"]
KEYS += ["bottleneck", "repairs", "missing"]

NEEDED = grams_text(750 / 1.05 / 2)
"""Dried beans: 750 g cooked, from which come 1.05 of what is soaked, and that is twice the dried."""


def test_json_has_exactly_the_keys_that_programs_rely_on(ask: Ask, bean_day: Path) -> None:
    answer = ask("base", bean_day)
    assert list(answer) == KEYS
    assert all(list(form) == ["name", "grams_made", "grams_used", "grams_left"] for form in answer["forms"])
    assert all(list(dish) == ["number", "grams_by_form"] for dish in answer["dishes"])


def test_json_agrees_with_a_balance_by_hand(ask: Ask, bean_day: Path) -> None:
    """Cooked: 300 g a spread, twice, and half of one in the bread: 750 g, of 750 / 1.05 / 2 g dried."""
    answer = ask("base", bean_day)
    assert (answer["base"], answer["grams_there_are"], answer["verdict"]) == ("beans, dried", 1000.0, "enough")
    assert answer["grams_needed"] == pytest.approx(750 / 1.05 / 2)
    assert answer["bottleneck"] == "cooked beans"
    assert answer["repairs"] == answer["missing"] == []
    assert answer["dishes"][0] == {"number": 1, "grams_by_form": {"cooked beans": 600.0, "bean liquid": 160.0}}


def test_json_of_each_form_adds_up(ask: Ask, bean_day: Path) -> None:
    for form in ask("base", bean_day)["forms"]:
        assert form["grams_made"] == pytest.approx(form["grams_used"] + form["grams_left"])


def test_json_says_what_would_repair_a_shortage(ask: Ask, troubled_day: Path) -> None:
    answer = ask("base", troubled_day)
    assert answer["verdict"] == "short"
    assert "Leave out one swap-out of dish 1, Bean spread." in answer["repairs"]
    assert answer["repairs"][-1] == "Have 57 g more beans, dried, worth $0.23."


def test_json_of_a_shoot_without_a_base_keeps_its_keys(ask: Ask, tmp_path: Path) -> None:
    baseless = small_binder(replace(small_binder().shoots["day"], base=None))
    answer = ask("base", written(baseless, tmp_path / "a.json"))
    assert list(answer) == KEYS
    assert (answer["base"], answer["grams_needed"], answer["verdict"]) == (None, None, "unknown")
    assert answer["missing"] == ["The shoot has no base ingredient: choose one."]


def test_json_of_an_amount_that_cannot_be_weighed_is_null_with_its_reason(ask: Ask, tmp_path: Path) -> None:
    bunches = replace(small_binder().shoots["day"], base_amount=2, base_unit="bunch")
    answer = ask("base", written(small_binder(bunches), tmp_path / "a.json"))
    assert (answer["grams_there_are"], answer["verdict"]) == (None, "unknown")
    assert "Cannot convert 1 bunch of beans, dried" in answer["missing"][0]


def test_the_tables_show_forms_conversions_and_dishes(run: Run, bean_day: Path) -> None:
    shown = squeezed(run("base", bean_day).stdout)
    assert f"beans, dried: there is 1 kg, needed {NEEDED}. ○ enough" in shown
    assert "bean liquid 571 g 200 g 0 g 371 g" in shown
    assert f"Soak beans, dried {NEEDED} Dec 2, 2026, 6:30 PM" in shown
    assert "2 Onion flatbread cooked beans 150 g" in shown


def test_without_a_date_the_tables_say_how_long_before_call_something_starts(run: Run, tmp_path: Path) -> None:
    undated = small_binder(replace(small_binder().shoots["day"], on=None))
    shown = squeezed(run("base", written(undated, tmp_path / "a.json")).stdout)
    assert f"Soak beans, dried {NEEDED} 13 h 30 min before call" in shown


def test_the_tables_mark_a_shortage_and_say_what_to_do(run: Run, troubled_day: Path) -> None:
    result = run("base", troubled_day)
    assert result.exit_code == 0
    assert f"needed {NEEDED}. ◣ short" in result.stdout
    assert "◣ cooked beans is what runs out" in result.stdout
    assert "\n→ Have 57 g more beans, dried, worth $0.23.\n" in result.stdout


def test_a_shoot_without_a_base_says_so(run: Run, tmp_path: Path) -> None:
    baseless = small_binder(replace(small_binder().shoots["day"], base=None))
    assert "no base ingredient" in run("base", written(baseless, tmp_path / "a.json")).stdout
