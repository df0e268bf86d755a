"""What a plan says about safety beside its clocks, each with a source and whom to ask."""

from __future__ import annotations

import pytest

from binder.figures.safety_findings import SafetyFinding, SafetyKind, safety_findings
from binder.kitchen.binder import Binder
from binder.kitchen.conversion import Conversion, Outcome
from binder.kitchen.day import Appliance
from binder.kitchen.food import Food, Keeping
from binder.kitchen.recipe import Heat, Line, Recipe, Step
from binder.kitchen.shoot import Shoot
from tests.figures.pinned_day import DAY, pinned_day, planned_day

DEFERENCE = "Follow your local food code and your own food-safety lead."


def findings(binder: Binder, kind: SafetyKind) -> list[SafetyFinding]:
    every = safety_findings(binder, "day", planned_day(binder))
    assert all(one.says.endswith(DEFERENCE) for one in every)
    return [one for one in every if one.kind is kind]


def test_a_clock_that_runs_out_is_a_finding_and_one_that_does_not_is_none() -> None:
    (finding,) = findings(pinned_day([("09:00", {})], close="11:30"), SafetyKind.OUT_OF_COLD)
    assert finding.over
    assert not findings(pinned_day([("09:00", {})], close="10:30"), SafetyKind.OUT_OF_COLD)


def test_cooked_food_that_is_chilled_has_two_stages() -> None:
    """FDA Food Code 3-501.14: from 57 to 21 °C within two hours, to 5 °C within six in all."""
    cooked = {"heat": Heat.PAN, "celsius": 96.0, "waiting_minutes": 20.0}
    chilled = {"heat": Heat.CHILL, "waiting_minutes": 60.0}
    (finding,) = findings(pinned_day([("09:00", cooked), ("09:40", chilled)]), SafetyKind.COOLING)
    assert not finding.over
    limits = "cool from 57 °C / 135 °F to 21 °C / 70 °F by 11:25 and to 5 °C / 41 °F by 15:25 (FDA Food Code"
    assert finding.says.startswith(f"1 Custard (hero): {limits}")
    (late,) = findings(pinned_day([("08:00", cooked), ("10:31", chilled)]), SafetyKind.COOLING)
    assert late.over


def test_a_conversion_that_must_be_cooled_says_within_how_long() -> None:
    base = (
        Food(id="stock", name="stock", form_of="milk", temperature_control=True),
        Conversion(id="boil", takes="milk", name="Boil", hands_on_minutes=5, lead_minutes=30, hazards=("cooling",)),
        Outcome(id="boil/1", conversion="boil", form="stock", ratio=1),
        Line(id="s1/stock", step="s1", food="stock", low=100, high=100, unit="g"),
    )
    day = Shoot(id="day", name="Pinned", on=DAY, base="milk", base_amount=1, base_unit="kg")
    (finding,) = findings(pinned_day([("10:00", {"foods": ()})], day, *base), SafetyKind.COOLING)
    assert "within 2 h and to 5 °C / 41 °F within 6 h in all" in finding.says


@pytest.mark.parametrize(
    ("grams", "by", "water"),
    [(400, "2 Dec", "30 min"), (2000, "2 Dec", "2 h 30 min"), (4000, "30 Nov", "4 h 30 min")],
)
def test_what_is_frozen_thaws_by_its_weight(grams: float, by: str, water: str) -> None:
    """USDA FSIS: a day in the refrigerator for every 4 lb, up to 5 lb in that time; half an hour a pound in water."""
    fish = Food(id="fish", name="fish", keeping=Keeping.FROZEN, temperature_control=True)
    line = Line(id="s1/fish", step="s1", food="fish", low=grams, high=grams, unit="g")
    (finding,) = findings(pinned_day([("10:00", {})], fish, line), SafetyKind.THAWING)
    assert f"into the refrigerator by 10:00 on {by} 2026" in finding.says
    assert f"in cold water for {water}" in finding.says
    assert not finding.over


def test_peas_from_the_freezer_need_no_thawing() -> None:
    peas = Food(id="peas", name="peas", keeping=Keeping.FROZEN)
    line = Line(id="s1/peas", step="s1", food="peas", low=100, high=100, unit="g")
    assert not findings(pinned_day([("10:00", {})], peas, line), SafetyKind.THAWING)


def raw_then_ready(*others: object, later_heat: Heat | None = None) -> Binder:
    """A bird is cut on a board, fried, and served on the same board."""
    steps = [
        ("09:00", {"hazards": ("raw_poultry",), "equipment": ("Board",), "title": "Cut"}),
        ("09:20", {"heat": Heat.PAN}),
        ("09:40", {"equipment": ("board",), "title": "Carve", "heat": later_heat}),
    ]
    return pinned_day(steps, *others, close="10:00")  # type: ignore[arg-type]


def test_raw_food_before_what_is_eaten_as_it_is() -> None:
    (finding,) = findings(raw_then_ready(), SafetyKind.RAW_FIRST)
    assert finding.over
    assert finding.says.startswith(
        "“board” has had raw food on it (Cut of dish 1 (hero), 09:00) "
        "when it is used for Carve of dish 1 (hero) at 09:40"
    )
    assert "USDA FSIS" in finding.says


def test_a_board_that_is_washed_or_a_step_that_is_cooked_after_is_no_finding() -> None:
    washed = Appliance(id="board", shoot="day", name="board", change_minutes=5)
    assert not findings(raw_then_ready(washed), SafetyKind.RAW_FIRST)
    assert not findings(raw_then_ready(later_heat=Heat.PAN), SafetyKind.RAW_FIRST)


def test_reheating_once_is_kept_in_mind_and_twice_is_too_often() -> None:
    once = [("09:00", {"hazards": ("reheating",), "heat": Heat.CORE, "celsius": 74.0})]
    (finding,) = findings(pinned_day(once, close="10:00"), SafetyKind.REHEATING)
    assert not finding.over
    assert "only once" in finding.says
    inner = (
        Recipe(id="base", name="Base", grams=100),
        Step(id="base/1", recipe="base", title="Warm up", hands_on_minutes=20, hazards=("reheating",)),
        Line(id="base/milk", step="base/1", food="milk", low=100, high=100, unit="g"),
        Line(id="s1/base", step="s1", made="base", low=100, high=100, unit="g"),
    )
    once = [("09:00", {"hazards": ("reheating",), "heat": Heat.CORE, "celsius": 74.0})]
    by_where = {one.where: one.over for one in findings(pinned_day(once, *inner), SafetyKind.REHEATING)}
    assert by_where == {"Base": False, "1 Custard": True}


def test_core_temperatures_of_one_rule_stand_together() -> None:
    birds = [Food(id=key, name=key, doneness="poultry") for key in ("duck", "goose")]
    lines = [Line(id=f"s1/{bird.id}", step="s1", food=bird.id, low=1, high=1, unit="g") for bird in birds]
    (finding,) = findings(pinned_day([("09:00", {})], *birds, *lines), SafetyKind.DONENESS)
    assert finding.over  # no step says so
    assert finding.says.startswith("1 Custard: duck and goose: cook to 74 °C / 165 °F at the core (USDA FSIS")
    probed = [("09:00", {"heat": Heat.CORE, "celsius": 74.0})]
    (stated,) = findings(pinned_day(probed, *birds, *lines), SafetyKind.DONENESS)
    assert not stated.over
