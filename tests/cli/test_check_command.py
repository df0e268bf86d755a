"""`binder check`: what needs someone, the worst first."""

from __future__ import annotations

from dataclasses import replace
from datetime import time
from pathlib import Path

from tests.cli.conftest import Run, written
from tests.figures.test_clash_words import two_heats
from tests.kitchen_binder import small_binder


def test_a_shoot_that_is_well_ends_with_0(run: Run, bean_day: Path) -> None:
    result = run("check", bean_day)
    assert result.exit_code == 0
    assert result.stdout.endswith("\nNothing stops the shoot.\n")
    assert "· note 1 Bean spread contains sesame. Tell everyone who tastes." in result.stdout


def test_a_shoot_that_is_stopped_ends_with_1_and_says_why_first(run: Run, troubled_day: Path) -> None:
    result = run("check", troubled_day)
    assert result.exit_code == 1
    assert result.stderr == ""
    findings = [line for line in result.stdout.splitlines() if line[:2] in {"◣ ", "△ ", "· "}]
    assert findings[0].startswith("◣ stop 1 Bean spread is over its cap: $0.54 a portion (used cost), the cap is")
    assert [line[0] for line in findings] == sorted((line[0] for line in findings), key="◣△·".index)
    assert result.stdout.endswith("\n4 things stop the shoot.\n")


def test_a_warning_alone_does_not_fail(run: Run, tmp_path: Path) -> None:
    poor = small_binder(replace(small_binder().shoots["day"], budget=2000))
    result = run("check", written(poor, tmp_path / "a.json"))
    assert result.exit_code == 0
    assert "△ warn The shopping comes to $23.30 at the till" in result.stdout


def test_json_has_exactly_the_keys_that_programs_rely_on_and_the_same_exit_code(run: Run, troubled_day: Path) -> None:
    import json

    result = run("check", troubled_day, "--json")
    answer = json.loads(result.stdout)
    assert result.exit_code == 1
    assert list(answer) == ["binder", "shoot", "currency", "checks"]
    assert all(list(check) == ["kind", "where", "severity", "says"] for check in answer["checks"])
    severities = [check["severity"] for check in answer["checks"]]
    assert severities == sorted(severities, key=["stop", "warn", "note"].index)
    assert severities.count("stop") == 4
    assert answer["checks"][0]["kind"] == "over cap"
    assert answer["checks"][0]["where"] == "1 Bean spread"


def test_the_day_is_planned_and_checked_unless_that_is_left_out(run: Run, tmp_path: Path) -> None:
    hot = written(two_heats(time(11, 15)), tmp_path / "hot.json")
    result = run("check", hot)
    assert result.exit_code == 1
    assert "◣ stop There is no plan, because these cannot all be had:" in " ".join(result.stdout.split())
    without = run("check", hot, "--no-plan")
    assert "There is no plan" not in without.stdout


def test_how_long_planning_may_take_stands_in_the_help(run: Run) -> None:
    assert "up to 3 seconds, and up to twice that again" in " ".join(
        run("check", "--help").stdout.replace("│", " ").split()
    )
