"""The sample of four chickens against sums done by hand, from the numbers that stand in it.

Amounts, measure weights, trim yields, ratios and prices below are written out as the sample has them; what is done with
them is plain arithmetic. Money is cents; weights are grams.
"""

from __future__ import annotations

import pytest

from binder.figures.base import base_balance
from binder.figures.base_repairs import base_repairs
from binder.figures.cost import Verdict, shoot_costs
from binder.figures.leads import shoot_leads
from binder.figures.safety import doneness_needed, foods_in_recipe, recipe_allergens
from binder.figures.shopping import shopping_list
from binder.kitchen.recipe import Heat
from binder.kitchen.settings import AllergenScheme, Measures
from tests.samples.opened import cost_of, sample, shoot_of, stops, till_receipt, with_less_base

BIRDS = sample("four_birds")
SHOOT = shoot_of(BIRDS)

# NIST Handbook 44, Appendix C: the larder's spoons and cups are US ones
CUP, TABLESPOON, TEASPOON, FLUID_OUNCE = 236.5882365, 236.5882365 / 16, 236.5882365 / 48, 236.5882365 / 8

# --- what a gram of each cut costs: the joint's cost by shares, the others' by weight
BIRD = 899 / 1800
BREAST, LEG, WING = BIRD * 0.44 / 0.25, BIRD * 0.36 / 0.31, BIRD * 0.09 / 0.11
CARCASS, SKIN = BIRD * 0.08 / 0.28, BIRD * 0.03 / 0.04
FAT = CRACKLING = SKIN / (0.50 + 0.25)
ONION, CARROT, CELERIAC = 279 / 2000, 129 / 1000, 179 / (450 / 0.86)  # a root is 450 g peeled
STOCK_POT = CARCASS + 0.12 * ONION + 0.10 * CARROT + 0.08 * CELERIAC + 0.0005 * 119 / 5 + 0.001 * 249 / 50
STOCK = PICKED_MEAT = STOCK_POT / (1.60 + 0.12)

BUTTER = 199 / 250
MILK = 15 / TABLESPOON * 125 / (1000 * 244 / CUP)  # a millilitre: by the spoon in a recipe, by the cup in the carton
BIRD_SALT = (60 * 45 / 500 + 10 * 179 / 50 + 4 * 249 / 50 + 3 * 149 / 15) / 77


def test_its_settings() -> None:
    settings = BIRDS.settings
    assert (settings.measures, settings.currency, settings.locale) == (Measures.METRIC, "EUR", "de_DE")
    assert settings.allergens is AllergenScheme.EU_FOURTEEN


def test_cost_of_the_wings_by_hand() -> None:
    batch = (
        4 * 98 * WING
        + 8 * BIRD_SALT
        + 65 * 3 / 40  # a clove is 3 of the 40 g of a bulb
        + 10 * 4.5 / TEASPOON * 249 / (750 * 218 / CUP)  # 10 ml of oil by the teaspoon; the bottle by the cup
        + 30 * 690 / 500
        + 15 * 189 / 200
        + 55 / 4  # the juice of a quarter lemon
        + 3 * 169 / 200
    )
    assert cost_of(BIRDS, 1).per_portion == pytest.approx(batch / 4)


def test_cost_of_the_legs_by_hand() -> None:
    batch = (
        4 * 277 * LEG
        + 12 * BIRD_SALT
        + 20 * FAT
        + 200 / 0.901 * ONION
        + 100 / 0.82 * CARROT
        + 10 * 89 / 1000
        + 250 * 379 / 750  # cider: a third of the bottle
        + 200 * STOCK  # a gram a millilitre
        + 4 * 119 / 17  # four sprigs of a gram; a bunch is 17 g
        + 300 / 0.781 * 299 / 1500
        + 15 * BUTTER
        + 20 * 219 / 210
        + 80 * 15 / TABLESPOON * 115 / 200  # cream by the spoon, sold by weight
        + 5 * 119 / 55
    )
    assert cost_of(BIRDS, 5).per_portion == pytest.approx(batch / 4)


def test_cost_of_the_breast_by_hand() -> None:
    batch = (
        800 / 0.813 * 329 / 2000
        + 10 * 45 / 500
        + 150 * MILK
        + (50 + 20 + 20) * BUTTER
        + 2.2 / TEASPOON * 0.308057599609375 * 229 / 35  # a pinch of nutmeg: a sixteenth of a US teaspoon
        + 300 / 0.75 * 129 / 500
        + 4 * 222 * BREAST
        + 10 * BIRD_SALT
        + 15 * FAT
        + 150 * STOCK
        + 55 / 4
        + 3 * 119 / 25
    )
    assert cost_of(BIRDS, 4).per_portion == pytest.approx(batch / 4)


def test_nothing_stops_the_shoot() -> None:
    assert stops(BIRDS) == []
    assert {cost.verdict for cost in shoot_costs(BIRDS, SHOOT)} == {Verdict.WITHIN}


# --- the birds

LEGS, BREASTS, WINGS = 8 * 277, (2 * 2 + 4) * 222, 8 * 98
DUMPLINGS = 1 + 1 + 1 + 0.5 + 0.5  # hero, two swap-outs, a small spare and two plates to taste
BROTHS = 1 + 1 + 0.5  # of these the hero, one swap-out and the tasting come into the broth
STOCK_USED = BROTHS * 800 + 2 * 250 + 150 + 2 * 200  # terrine twice, jus once, legs twice
FAT_USED = DUMPLINGS * 10 + 15 + 2 * 20  # breast once, legs twice
CARCASS_USED, SKIN_USED = STOCK_USED / 1.60, FAT_USED / 0.50


def test_base_balance_by_hand() -> None:
    balance = base_balance(BIRDS, SHOOT)
    assert balance is not None
    wanted = [LEGS / 0.31, BREASTS / 0.25, WINGS / 0.11, CARCASS_USED / 0.28, SKIN_USED / 0.04]
    needed = LEGS / 0.31
    assert max(wanted) == needed  # the legs run out first
    assert balance.there_is == 7200
    assert balance.needed == pytest.approx(needed)
    left = {form.form: form.left for form in balance.forms}
    assert left["bird_leg"] == pytest.approx(0, abs=1e-6)
    assert left["bird_breast"] == pytest.approx(needed * 0.25 - BREASTS)
    assert left["bird_wing"] == pytest.approx(needed * 0.11 - WINGS)
    assert left["bird_carcass"] == pytest.approx(needed * 0.28 - CARCASS_USED)
    assert left["bird_skin_and_fat"] == pytest.approx(needed * 0.04 - SKIN_USED)
    assert left["bird_picked_meat"] == pytest.approx(CARCASS_USED * 0.12 - BROTHS * 90)
    assert left["bird_crackling"] == pytest.approx(SKIN_USED * 0.25 - 1.5 * 12)


def test_cuts_of_a_bird_are_as_many_as_it_has() -> None:
    for part in ("bird_leg", "bird_breast", "bird_wing"):
        grams = BIRDS.measures.where("food", part)[0].grams
        (outcome,) = BIRDS.outcomes.where("form", part)
        assert 2 * grams == pytest.approx(1800 * outcome.ratio, rel=0.02), part


def test_a_hundred_grams_less_makes_the_legs_short() -> None:
    short = with_less_base(BIRDS, 100)
    assert ("short of base", "whole chicken") in stops(short)
    assert base_repairs(short, SHOOT)


def test_nothing_of_the_joint_is_made_from_nothing() -> None:
    for conversion in BIRDS.conversions.values():
        taken = 1 + sum(addition.ratio for addition in BIRDS.additions.where("conversion", conversion.id))
        assert sum(outcome.ratio for outcome in BIRDS.outcomes.where("conversion", conversion.id)) <= taken


def test_the_stock_is_on_the_day_before() -> None:
    stock = next(lead for lead in shoot_leads(BIRDS, SHOOT) if lead.conversion == "simmer_stock")
    assert stock.starts is not None
    assert stock.starts.date().isoformat() == "2026-12-15"
    assert 12 <= stock.starts.hour <= 18


# --- the till

BIRD_SALT_BATCHES = (2 * 8 + BROTHS * 6 + 10 + 2 * 12) / 77  # wings, broths, breast, legs
DRESSING_BATCHES = 90 / 120  # only the hero terrine is turned out
A_PINCH = 2.2 / TEASPOON * 0.308057599609375

RECEIPT: dict[str, tuple[float, list[tuple[float, int]]]] = {
    "all_purpose_flour": (2 * 10, []),  # at home
    "apple": (300 / 0.781, [(1, 240)]),  # a kilogram from the farm, against the bag for 299
    "bay_leaf": (2 * 0.2 + CARCASS_USED * 0.0005, []),  # at home
    "black_pepper": (BIRD_SALT_BATCHES * 4, []),  # at home
    "black_peppercorns": (CARCASS_USED * 0.001, [(1, 249)]),
    "bread_roll": (DUMPLINGS * 150, [(14, 14 * 35)]),  # of 45 g
    "butter": (2 * (50 + 20) + 20 + 15, [(1, 199)]),
    "canola_oil": (2 * 10 * 4.5 / TEASPOON + DRESSING_BATCHES * 80 * 4.5 / TEASPOON, [(1, 249)]),
    "carrot": ((BROTHS * 100 + 2 * 100) / 0.82 + CARCASS_USED * 0.10, [(1, 129)]),
    "celeriac": (CARCASS_USED * 0.08, [(1, 179)]),
    "chicken_whole": (7200, [(4, 4 * 899)]),
    "chives": (1.5 * 5 + 3, [(1, 119)]),
    "cider": (2 * 250 * 29.8 / FLUID_OUNCE, [(1, 379)]),
    "egg": (DUMPLINGS * 50 / 0.88, [(1, 240)]),  # six from the farm, against ten for 299
    "garlic": (2 * 3 / 0.87, [(1, 65)]),
    "gelatine_leaf": (2 * 4 * 2, [(1, 129)]),
    "heavy_cream": (80 * 15 / TABLESPOON, [(1, 115)]),
    "honey": (30, [(1, 690)]),
    "leek": (
        (2 * 260 + 2 * 300) / 0.75,
        [(1494, 385)],
    ),  # loose at 129 for 500 g, against bundles of a kilogram for 280
    "lemon": (58 / 0.53 * (0.25 + 2 * 0.5 + 0.25), [(2, 2 * 55)]),
    "milk": (DUMPLINGS * 110 * 15 / TABLESPOON + 2 * 150 * 15 / TABLESPOON, [(1, 125)]),
    "mustard_dijon": (15 + DRESSING_BATCHES * 20, [(1, 189)]),
    "mustard_wholegrain": (20, [(1, 219)]),
    "nutmeg_ground": (DUMPLINGS * A_PINCH + 2 * A_PINCH, [(1, 229)]),
    "onion": ((DUMPLINGS * 40 + 2 * 200) / 0.901 + CARCASS_USED * 0.12, [(1, 190)]),
    "paprika": (BIRD_SALT_BATCHES * 10, [(1, 179)]),
    "parsley": ((DUMPLINGS * 10 + 5) / 0.95, [(1, 119)]),
    "russet_potato": (2 * 800 / 0.813, [(1, 329)]),
    "salt": (
        DUMPLINGS * 3 + BROTHS * 15 + 2 * 15 + 2 * 3 + 2 * 10 + BIRD_SALT_BATCHES * 60 + DRESSING_BATCHES * 2,
        [(1, 45)],
    ),
    "sesame_seeds": (3, [(1, 169)]),
    "tarragon": ((2 * 8 + DRESSING_BATCHES * 5) / 0.65, [(2, 254)]),  # the second at half price
    "thyme": (2 * 4 / 0.68, [(1, 119)]),
    "thyme_dried": (BIRD_SALT_BATCHES * 3, [(1, 149)]),
    "white_wine_vinegar": ((2 * 10 + DRESSING_BATCHES * 20) * 5 / TEASPOON, []),  # at home
}
"""Grams needed of each food, and the packs that cover what is not at home: how many or how heavy, and their cost."""


def test_shopping_and_its_spend_by_hand() -> None:
    bought = shopping_list(BIRDS, SHOOT)
    receipt = till_receipt(bought)
    assert set(receipt) == set(RECEIPT)
    for food, (grams, packs) in RECEIPT.items():
        assert receipt[food][0] == pytest.approx(grams), food
        assert receipt[food][1] == packs, food
    assert bought.spend == sum(price for _grams, packs in RECEIPT.values() for _count, price in packs)


# --- the kitchen


def test_every_dish_is_of_chicken_and_says_the_core_temperature_of_poultry() -> None:
    for dish in BIRDS.dishes.values():
        assert "chicken_whole" in {food.id for food in foods_in_recipe(BIRDS, dish.recipe)}
        rules = [needed for needed in doneness_needed(BIRDS, dish.recipe) if needed.rule.category == "poultry"]
        assert rules
        assert all(needed.stated for needed in rules)
        core = [step.celsius for step in BIRDS.steps.where("recipe", dish.recipe) if step.heat is Heat.CORE]
        # USDA FSIS, Cook to a Safe Minimum Internal Temperature chart: 74 °C / 165 °F
        assert [celsius for celsius in core if celsius is not None and celsius >= 74] == core


def test_the_core_is_probed_after_it_is_cooked_and_before_it_is_served() -> None:
    for dish in BIRDS.dishes.values():
        steps = BIRDS.steps.where("recipe", dish.recipe)
        (probe,) = [step.position for step in steps if step.heat is Heat.CORE]
        assert 0 < probe < steps[-1].position, dish.recipe


def test_picked_meat_of_the_day_before_is_reheated() -> None:
    (line,) = BIRDS.lines.where("food", "bird_picked_meat")
    assert "reheating" in BIRDS.steps[line.step].hazards


def test_allergens_of_each_dish() -> None:
    carried = {
        dish.recipe: {one.group for one in recipe_allergens(BIRDS, dish.recipe)} for dish in BIRDS.dishes.values()
    }
    sulphites, gluten = "sulphur dioxide and sulphites", "cereals containing gluten"
    assert carried == {
        "gilded_wings": {"mustard", "sesame seeds", sulphites},
        "bone_broth": {"celery", gluten, "eggs", "milk"},
        "silver_terrine": {"celery", "mustard", sulphites},
        "gold_backed_breast": {"celery", "milk"},
        "cider_house_legs": {"celery", gluten, "milk", "mustard", sulphites},
    }
