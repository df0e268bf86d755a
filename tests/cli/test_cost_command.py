"""`binder cost`: what a portion costs, against its cap."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from binder.figures.date_text import date_text
from binder.kitchen.shoot import CapBasis
from tests.cli.conftest import Ask, Run, squeezed, written
from tests.kitchen_binder import small_binder

FIGURES = ["cost_per_portion", "cap", "headroom", "verdict"]
DISH_KEYS = ["number", "name", "portions", "basis", *FIGURES, "missing", "lines"]
LINE_KEYS = ["food", "grams_as_purchased", "cost", "share", "missing"]


def test_json_has_exactly_the_keys_that_programs_rely_on(ask: Ask, bean_day: Path) -> None:
    answer = ask("cost", bean_day)
    assert list(answer) == ["binder", "shoot", "currency", "dishes"]
    assert all(list(dish) == DISH_KEYS for dish in answer["dishes"])
    assert all(list(line) == LINE_KEYS for dish in answer["dishes"] for line in dish["lines"])
    assert (answer["binder"], answer["shoot"], answer["currency"]) == ("Bean day", "Bean day", "USD")


def test_json_figures_agree_with_a_sum_by_hand(ask: Ask, bean_day: Path) -> None:
    """Tahini: 4 tbsp at 15 g in 4 portions, 600 cents for 300 g: 15 g and 30 cents a portion."""
    spread = ask("cost", bean_day)["dishes"][0]
    tahini = next(line for line in spread["lines"] if line["food"] == "tahini")
    assert (tahini["grams_as_purchased"], tahini["cost"]) == (15.0, "0.30")
    costs = [Decimal(line["cost"]) for line in spread["lines"] if line["cost"]]
    assert abs(sum(costs) - Decimal(spread["cost_per_portion"])) < Decimal("1e-9")
    assert Decimal(spread["cap"]) - Decimal(spread["cost_per_portion"]) == Decimal(spread["headroom"])
    assert sum(line["share"] or 0 for line in spread["lines"]) == pytest.approx(1)
    assert spread["verdict"] == "within"


def test_json_gives_null_and_the_reason_for_what_is_not_known(ask: Ask, troubled_day: Path) -> None:
    spread, bread = ask("cost", troubled_day)["dishes"]
    assert spread["verdict"] == "over"
    assert (bread["cost_per_portion"], bread["headroom"], bread["verdict"]) == (None, None, "unknown")
    assert bread["missing"] == ["No price for sumac: add one."]
    salt = next(line for line in spread["lines"] if line["food"] == "salt")
    assert (salt["cost"], salt["missing"]) == (None, ["salt to taste, without an amount: not counted."])


def test_json_of_a_dish_without_a_cap_says_so(ask: Ask, tmp_path: Path) -> None:
    small = small_binder()
    uncapped = small_binder(replace(small.shoots["day"], cap=None), replace(small.dishes["dish-bread"], cap=None))
    dish = ask("cost", written(uncapped, tmp_path / "a.json"))["dishes"][0]
    assert (dish["cap"], dish["headroom"], dish["verdict"]) == (None, None, "unknown")
    assert dish["missing"] == ["No cap: set one for the dish or for the shoot."]
    assert dish["cost_per_portion"] is not None


def test_the_table_reads_at_80_columns(run: Run, bean_day: Path) -> None:
    result = run("cost", bean_day)
    assert result.exit_code == 0
    assert result.stdout == (
        "Bean day · Bean day · Dec 3, 2026 · 8:00 AM\n"
        "\n"
        "#  Dish             Portions  Cost a portion    Cap  Headroom\n"
        f"{'─' * 71}\n"
        "1  Bean spread             4           $0.54  $2.00     $1.46  ○ within\n"
        "2  Onion flatbread         2           $0.99  $1.50     $0.51  ○ within\n"
        "\n"
        "Used cost of 6 portions, every dish made once: $4.12.\n"
        "· 1 Bean spread: salt to taste, without an amount, so not in the cost.\n"
        "· 2 Onion flatbread: salt to taste, without an amount, so not in the cost.\n"
    )


def test_the_table_marks_what_is_over_and_what_is_not_known_by_word_and_shape(run: Run, troubled_day: Path) -> None:
    spread, bread = (line for line in run("cost", troubled_day).stdout.splitlines() if line[:3] in {"1  ", "2  "})
    assert spread.endswith("$0.54  $0.50    −$0.04  ◣ over")
    assert bread.endswith("–  $1.50         –  ◌ not known")


def test_what_lacks_is_named_and_left_out_of_no_sum_unsaid(run: Run, troubled_day: Path) -> None:
    shown = run("cost", troubled_day).stdout
    assert "◌ 2 Onion flatbread: No price for sumac: add one." in shown
    assert "not known; $2.15 without 1 dish." in shown


def test_a_cost_a_hair_over_its_cap_is_not_shown_as_the_cap(run: Run, ask: Ask, tmp_path: Path) -> None:
    """A portion costs 53.68 cents; under a cap of 54 it is within, and the figure beside 53 is over."""
    dish = small_binder().dishes["dish-spread"]
    near = written(small_binder(replace(dish, cap=54)), tmp_path / "near.json")
    assert "$0.537 $0.54 $0.003 ○ within" in squeezed(run("cost", near).stdout)
    assert ask("cost", near)["dishes"][0]["verdict"] == "within"


def test_lines_show_weights_costs_and_shares(run: Run, bean_day: Path) -> None:
    shown = squeezed(run("cost", bean_day, "--lines").stdout)
    assert "tahini 15 g $0.300 56 %" in shown
    assert "not counted" in shown


def test_lines_show_the_price_at_which_the_dish_meets_its_cap(run: Run, ask: Ask, tmp_path: Path) -> None:
    """At the price shown the dish is within its cap, and one cent more puts it over."""
    over = small_binder(replace(small_binder().dishes["dish-spread"], cap=50))
    shown = run("cost", written(over, tmp_path / "over.json"), "--lines").stdout
    row = next(line for line in shown.splitlines() if line.startswith("tahini") and "$6.00" in line)
    assert row.endswith("$5.26")
    for price, verdict in ((526, "within"), (527, "over")):
        asked = small_binder(over.dishes["dish-spread"], replace(over.quotes["quote-tahini"], price=price))
        assert ask("cost", written(asked, tmp_path / "asked.json"))["dishes"][0]["verdict"] == verdict


def test_a_price_that_may_move_says_of_which_day_it_is(run: Run, bean_day: Path) -> None:
    day = date_text(small_binder(), small_binder().quotes["quote-tahini"].on)
    shown = run("cost", bean_day, "--lines").stdout
    assert any("$6.00" in line and day in line for line in shown.splitlines())


def test_costs_on_another_basis_are_not_called_used_cost(run: Run, tmp_path: Path) -> None:
    whole = small_binder(replace(small_binder().shoots["day"], cap_basis=CapBasis.WHOLE_PACKS))
    shown = squeezed(run("cost", written(whole, tmp_path / "whole.json"), "--lines").stdout)
    assert "6 portions, every dish made once:" in shown
    assert "(whole packs over portions)." in shown
    assert "Used cost of" not in shown
    assert "For one portion, used cost" in shown


def test_a_food_whose_price_cannot_mend_it_says_so(run: Run, troubled_day: Path) -> None:
    shown = run("cost", troubled_day, "--lines").stdout
    assert [line for line in shown.splitlines() if line.startswith("salt ") and line.endswith("no price would do")]


def test_money_is_written_as_the_binders_locale_writes_it(run: Run, tmp_path: Path) -> None:
    settings = replace(small_binder().settings, currency="EUR", locale="de_DE")
    shown = run("cost", written(small_binder(settings), tmp_path / "euro.json")).stdout
    assert "0,54 €" in shown
    assert "3. Dez" in shown or "03.12.2026" in shown


def test_the_answer_is_the_same_each_time(run: Run, troubled_day: Path) -> None:
    assert run("cost", troubled_day, "--lines").stdout == run("cost", troubled_day, "--lines").stdout
    assert run("cost", troubled_day, "--json").stdout_bytes == run("cost", troubled_day, "--json").stdout_bytes


def test_markup_and_terminal_commands_in_a_name_are_only_text(run: Run, tmp_path: Path) -> None:
    name = "[red]Beans[/red]\n:boom: <b>hot</b>\u202e"
    dish = replace(small_binder().dishes["dish-spread"], name=name)
    shown = run("cost", written(small_binder(dish), tmp_path / "marked.json")).stdout
    assert "1  [red]Beans[/red] :boom:" in shown
    assert "\u202e" not in shown


def test_a_very_long_name_folds_and_the_numbers_stay_whole(run: Run, tmp_path: Path) -> None:
    dish = replace(small_binder().dishes["dish-spread"], name="bean" * 75, cap=10**9)
    lines = run("cost", written(small_binder(dish), tmp_path / "long.json")).stdout.splitlines()
    assert "$10,000,000.00" in "\n".join(lines)
    table = lines[: next(at for at, line in enumerate(lines) if line.startswith("Used cost"))]
    assert max(map(len, table)) <= 80
