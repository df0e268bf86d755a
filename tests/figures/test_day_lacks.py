"""What the day takes for granted, told without planning it."""

from __future__ import annotations

from dataclasses import replace

from binder.figures.checks import Severity, shoot_checks
from binder.figures.day_lacks import day_lacks
from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.day import Person
from binder.kitchen.settings import SETTINGS_ID, Settings
from binder.kitchen.shoot import Shoot
from tests.figures.test_allergen_matrix import shared
from tests.figures.test_day_plan import timed
from tests.kitchen_binder import small_binder

CREW = (
    Person(id="host", shoot="day", name="Ode", on_camera=True),
    Person(id="cook", shoot="day", name="Wren", position=1, skills=("fry",)),
)


def says(binder: Binder) -> dict[str, str]:
    return {lack.kind: lack.says for lack in day_lacks(binder, "day")}


def test_a_day_that_says_everything_lacks_nothing() -> None:
    assert says(timed(*CREW)) == {}


def test_nobody_is_named_or_on_camera() -> None:
    assert "two pairs of hands are assumed" in says(timed())["nobody named"]
    assert "anyone may be filmed" in says(timed(CREW[1]))["nobody on camera"]


def test_steps_without_a_time() -> None:
    lacks = [lack.says for lack in day_lacks(small_binder(*CREW), "day")]
    assert "Bean spread says no time for steps 1 and 2: five minutes of hands each are assumed." in lacks
    one = replace(small_binder().steps["bread/1"], hands_on_minutes=3)
    assert any("Onion flatbread says no time for step 2" in lack.says for lack in day_lacks(small_binder(one), "day"))


def test_a_skill_that_no_one_has() -> None:
    whisk = replace(timed().steps["spread/2"], skill="whisk")
    found = says(timed(*CREW, whisk))["nobody can"]
    assert found == "Nobody in the crew is said to be able to “whisk”, which step 2 of Bean spread asks for."
    assert "nobody can" not in says(timed(*CREW, replace(whisk, skill="Fry")))


def test_a_zone_that_is_none() -> None:
    lost = replace(timed().shoots["day"], zone="Nowhere/Atall")
    assert "“Nowhere/Atall”" in says(timed(*CREW, lost))["zone not known"]
    assert says(timed(*CREW, replace(lost, zone="Europe/Berlin"))) == {}


def test_what_dishes_share_is_among_the_checks() -> None:
    checks = shoot_checks(shared(("blender",), ("blender",)), "day")
    contacts = [check for check in checks if check.kind == "cross-contact"]
    assert [check.place.id for check in contacts] == ["dish-spread", "dish-bread"]
    assert {check.severity for check in contacts} == {Severity.NOTE}


def test_an_empty_shoot_lacks_dishes_and_is_not_asked_for_people() -> None:
    empty = binder_of([Settings(id=SETTINGS_ID, name="Empty"), Shoot(id="day", name="Day")])
    assert day_lacks(empty, "day") == ()
