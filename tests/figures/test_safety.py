"""Allergens, cautions and temperatures follow from the foods and steps."""

from __future__ import annotations

from dataclasses import replace

from binder.figures.safety import doneness_needed, recipe_allergens, step_cautions
from binder.kitchen.conversion import Addition, Conversion, Outcome
from binder.kitchen.food import Food
from binder.kitchen.recipe import Heat, Line
from binder.kitchen.settings import SETTINGS_ID, AllergenScheme, SafetyRules, Settings
from tests.kitchen_binder import small_binder


def test_allergens_come_up_from_the_recipes_within() -> None:
    groups = {one.group: one.foods for one in recipe_allergens(small_binder(), "bread")}
    assert groups == {"sesame": ("tahini",), "wheat": ("flour",)}


def test_each_scheme_names_them_its_own_way() -> None:
    # 21 U.S.C. 321(qq) lists wheat; Regulation (EU) No 1169/2011, Annex II, cereals containing gluten and sesame seeds.
    eu = small_binder(Settings(id=SETTINGS_ID, name="b", allergens=AllergenScheme.EU_FOURTEEN))
    assert {one.group for one in recipe_allergens(eu, "bread")} == {"cereals containing gluten", "sesame seeds"}


def test_what_a_form_was_made_from_counts() -> None:
    salty = small_binder(Food(id="salt", name="salt", allergens=("celery",)))
    eu = replace(salty.settings, allergens=AllergenScheme.EU_FOURTEEN)
    groups = {one.group for one in recipe_allergens(small_binder(eu, salty.foods["salt"]), "bread")}
    assert "celery" in groups  # through the salt that the beans are cooked with


def test_poultry_asks_for_74_degrees_at_the_core() -> None:
    # USDA FSIS, Safe Minimum Internal Temperature Chart: all poultry 165 °F, 73.9 °C.
    chicken = Food(id="chicken", name="chicken thigh", doneness="poultry", temperature_control=True)
    line = Line(id="c", step="spread/1", food="chicken", low=100, high=100, unit="g")
    binder = small_binder(chicken, line)
    (needed,) = doneness_needed(binder, "spread")
    assert round(needed.rule.celsius or 0) == 74
    assert not needed.stated
    cooked = small_binder(chicken, line, replace(binder.steps["spread/1"], heat=Heat.CORE, celsius=74))
    assert doneness_needed(cooked, "spread")[0].stated
    cool = small_binder(chicken, line, replace(binder.steps["spread/1"], heat=Heat.CORE, celsius=63))
    assert not doneness_needed(cool, "spread")[0].stated


def test_165_fahrenheit_is_enough_though_the_chart_rounds_it_up_to_74() -> None:
    chicken = Food(id="chicken", name="chicken thigh", doneness="poultry")
    line = Line(id="c", step="spread/1", food="chicken", low=100, high=100, unit="g")
    binder = small_binder(chicken, line)
    cooked = small_binder(chicken, line, replace(binder.steps["spread/1"], heat=Heat.CORE, celsius=(165 - 32) * 5 / 9))
    assert doneness_needed(cooked, "spread")[0].stated


def test_an_oven_at_180_says_nothing_of_the_core() -> None:
    chicken = Food(id="chicken", name="chicken thigh", doneness="poultry")
    line = Line(id="c", step="spread/1", food="chicken", low=100, high=100, unit="g")
    binder = small_binder(chicken, line)
    oven = small_binder(chicken, line, replace(binder.steps["spread/1"], heat=Heat.OVEN, celsius=180))
    assert not doneness_needed(oven, "spread")[0].stated


def test_the_chosen_rules_come_first_and_the_home_chart_fills_in() -> None:
    rules = Settings(id=SETTINGS_ID, name="b", safety=SafetyRules.FDA_FOOD_CODE)
    chicken = Food(id="chicken", name="chicken thigh", doneness="poultry")
    line = Line(id="c", step="spread/1", food="chicken", low=100, high=100, unit="g")
    (needed,) = doneness_needed(small_binder(rules, chicken, line), "spread")
    assert needed.rule.rules is SafetyRules.FDA_FOOD_CODE


def test_hazards_bring_their_caution_with_its_source() -> None:
    (caution,) = step_cautions(small_binder().steps["bread/1"])
    assert caution.hazard == "hot_oil"
    assert caution.text
    assert caution.source


def test_the_allergens_of_every_way_to_a_form_count() -> None:
    binder = small_binder(
        Food(id="brine", name="fish brine", allergens=("fish",)),
        Conversion(id="brined", takes="soaked", name="Cook in brine"),
        Outcome(id="brined/1", conversion="brined", position=9, form="cooked", ratio=1.0),
        Addition(id="brined/2", conversion="brined", food="brine", ratio=0.5),
    )
    assert "fish" in {one.group for one in recipe_allergens(binder, "spread")}
