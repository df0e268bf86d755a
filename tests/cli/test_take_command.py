"""`binder take`: can we do one more?"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tests.cli.conftest import Ask, Run, written
from tests.kitchen_binder import small_binder


def test_json_has_exactly_the_keys_that_programs_rely_on(ask: Ask, bean_day: Path) -> None:
    answer = ask("take", bean_day, "--dish", 1)
    assert list(answer) == ["binder", "shoot", "currency", "builds_possible", "limited_by", "missing"]


def test_json_agrees_with_a_count_by_hand(ask: Ask, bean_day: Path) -> None:
    """Tahini: a pack of 300 g, 60 g a spread, of which two and a half are on the list: 150 g left, two spreads."""
    answer = ask("take", bean_day, "--dish", 1)
    assert (answer["builds_possible"], answer["limited_by"]) == (2, "tahini")


def test_a_take_from_a_later_step_needs_only_what_comes_then(ask: Ask, bean_day: Path) -> None:
    """Dressing a spread takes 2 tbsp of oil, of which 410 g are left, at 13.3 g each."""
    answer = ask("take", bean_day, "--dish", 1, "--from", 2)
    assert (answer["builds_possible"], answer["limited_by"]) == (15, "olive oil")


def test_what_the_next_one_costs_is_said_where_asked_for(run: Run, ask: Ask, bean_day: Path) -> None:
    assert ask("take", bean_day, "--dish", 1, "--till")["next_costs"] == "6.00"
    assert "The one after that: $6.00 at the till." in run("take", bean_day, "--dish", 1, "--till").stdout


def test_a_sentence_says_how_many_and_what_stops_the_next(run: Run, bean_day: Path) -> None:
    shown = run("take", bean_day, "--dish", 1).stdout
    assert shown.endswith("1 Bean spread: 2 more could be made. What runs out then is tahini.\n")


def test_a_count_that_is_not_known_is_null_with_its_reason(ask: Ask, run: Run, tmp_path: Path) -> None:
    unsaid = replace(small_binder().recipes["spread"], portions=None)
    file = written(small_binder(unsaid), tmp_path / "a.json")
    answer = ask("take", file, "--dish", 1)
    assert answer["builds_possible"] is None
    assert answer["missing"] == ["Bean spread does not say how many portions it yields: add it."]
    assert "not known how many more could be made" in run("take", file, "--dish", 1).stdout


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["--dish", 3], "The shoot has no dish 3: its dishes are numbered from 1 to 2.\n"),
        (["--dish", 1, "--from", 0], "The dish has no step 0: its steps are numbered from 1 to 2.\n"),
    ],
)
def test_a_dish_or_step_that_is_not_there_is_wrong_usage(
    run: Run, bean_day: Path, arguments: list[object], says: str
) -> None:
    result = run("take", bean_day, *arguments)
    assert (result.exit_code, result.stderr) == (2, says)
