"""The chickpea sample against sums done by hand, from the numbers that stand in it.

Amounts, measure weights, trim yields, ratios and prices below are written out as the sample has them; what is done with
them is plain arithmetic. Money is cents; weights are grams.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from binder.figures.base import base_balance
from binder.figures.base_repairs import base_repairs
from binder.figures.cap_repairs import cap_repairs
from binder.figures.cost import Verdict, shoot_costs
from binder.figures.leads import shoot_leads
from binder.figures.safety import recipe_allergens
from binder.figures.shopping import shopping_list
from binder.figures.temperature_text import fahrenheit
from binder.kitchen.change import apply
from binder.kitchen.recipe import Heat
from binder.kitchen.settings import AllergenScheme, Measures, SafetyRules
from tests.samples.opened import cost_of, sample, shoot_of, stops, till_receipt, with_less_base, with_records

CHICKPEAS = sample("chickpeas")
SHOOT = shoot_of(CHICKPEAS)

# NIST Handbook 44, Appendix C
OUNCE, POUND = 28.349523125, 453.59237
CUP = 236.5882365
TABLESPOON, TEASPOON = CUP / 16, CUP / 48

# --- what a gram costs, by the newest quote of each food and of two as new the cheaper pack
DRIED = 399 / 1000  # 1 kg bag
SALT = 399 / (3 * POUND)
SOAKED = DRIED / 2.0
# a gram of soaked chickpeas with 0.004 g of salt gives 1.05 g cooked and 0.80 g of liquid: the cost goes by weight
COOKED = LIQUID = (SOAKED + 0.004 * SALT) / (1.05 + 0.80)
FLOUR = GRITS = DRIED / (0.93 + 0.05)
OLIVE_OIL = 1299 / (25.4 * 2 * 13.5)  # 25.4 fl oz; two tablespoons of 13.5 g in each
PEPPER, CHILI = 159 / OUNCE, 129 / OUNCE
GARLIC_CLOVE = 79 * 3 / 40  # a head is 40 g of peeled garlic, a clove 3 g

SPICE_BATCH = (2 * 6 * 95 + 2 * 5 * 85 + 6.8 * 139 + 2 * 2.3 * 159 + 0.5 * 1.8 * 119) / OUNCE
SPICE_SPOON = SPICE_BATCH * TABLESPOON / 75  # the batch is 75 ml
RED_OIL_BATCH = 5 * 13.5 * OLIVE_OIL + GARLIC_CLOVE + SPICE_SPOON * 2 / 3 + 0.5 * 1.8 * CHILI
RED_OIL_SPOON = RED_OIL_BATCH * TABLESPOON / 70


def test_its_settings() -> None:
    settings = CHICKPEAS.settings
    assert (settings.measures, settings.currency, settings.locale) == (Measures.US_CUSTOMARY, "USD", "en_US")
    assert (settings.allergens, settings.safety) == (AllergenScheme.US_NINE, SafetyRules.USDA_FSIS)


def test_cost_of_the_mousse_by_hand() -> None:
    batch = (
        5 * 449 / 3.5  # ounces of chocolate from bars of 3.5 oz
        + CUP / 2 * LIQUID  # half a cup, a gram a millilitre
        + 0.25 * 3 * 169 / OUNCE  # cream of tartar, 3 g a teaspoon
        + 2 * 12.5 * 349 / (4 * POUND)  # sugar, 12.5 g a tablespoon
        + 0.5 * 4.2 * 899 / (2 * 2 * 13)  # vanilla, 4.2 g a teaspoon; 2 fl oz are four tablespoons of 13 g
        + 2 * 99 / 9  # a teaspoon of zest is 2 g; one orange gives 9 g
        + 0.125 * 2.5 * 649 / (8.5 * OUNCE)  # flaky salt, 2.5 g a teaspoon
    )
    cost = cost_of(CHICKPEAS, 5)
    assert cost.per_portion == pytest.approx(batch / 4)
    assert cost.cap == 175
    assert 175 < batch / 4 < 182


def test_cost_of_the_flatbread_by_hand() -> None:
    batch = (
        1.25 * 92 * FLOUR
        + 3.5 * SALT
        + 4 * 13.5 * OLIVE_OIL
        + 0.5 * 10 * GRITS  # a teaspoon and a half; 10 g a tablespoon
        + 0.5 * 115 / 0.901 * 149 / POUND  # red onion, sliced, of which 90.1 % is left when trimmed
        + 0.7 / 0.65 * 249 / (0.75 * OUNCE)  # rosemary
        + RED_OIL_SPOON
        + 0.25 * 2.3 * PEPPER
    )
    assert cost_of(CHICKPEAS, 4).per_portion == pytest.approx(batch / 4)


def test_cost_of_the_dip_by_hand() -> None:
    batch = (
        0.5 * 240 * 1199 / (32 * OUNCE)  # tahini from the tub, whose quote is the newer
        + 69  # the juice of one lemon
        + GARLIC_CLOVE
        + 0.5 * 3.5 * SALT
        + 1.5 * 164 * COOKED
        + CUP / 4 * LIQUID
        + 2 * RED_OIL_SPOON
        + 60 / 16 * 149 / 55  # a tablespoon of parsley, chopped (60 g a cup); a bunch is 55 g of leaves
    )
    assert cost_of(CHICKPEAS, 1).per_portion == pytest.approx(batch / 4)


def test_one_dish_is_over_its_cap_and_nothing_else_stops_the_shoot() -> None:
    assert stops(CHICKPEAS) == [("over cap", "5 Midnight Mousse")]
    verdicts = [cost.verdict for cost in shoot_costs(CHICKPEAS, SHOOT)]
    assert verdicts == [Verdict.WITHIN] * 4 + [Verdict.OVER]


def test_the_first_repair_suggested_is_the_bulk_pack_and_it_brings_the_mousse_under() -> None:
    first = cap_repairs(CHICKPEAS, cost_of(CHICKPEAS, 5).dish)[0]
    repaired = apply(CHICKPEAS, first.change)
    assert first.says.startswith("Buy dark chocolate as 1 lb bag of drops")
    assert cost_of(repaired, 5).per_portion == pytest.approx(first.cost)
    assert first.cost < 175
    assert stops(repaired) == []


def test_a_quarter_ounce_of_chocolate_less_mends_it() -> None:
    (line,) = CHICKPEAS.lines.where("food", "dark_chocolate")
    assert line.high == 5
    assert stops(with_records(CHICKPEAS, replace(line, low=4.75, high=4.75))) == []


def test_the_bulk_pack_of_chocolate_mends_it_too() -> None:
    (drops,) = [pack for pack in CHICKPEAS.packs.where("food", "dark_chocolate") if pack.unit == "lb"]
    (quote,) = CHICKPEAS.quotes.where("pack", drops.id)
    assert stops(with_records(CHICKPEAS, replace(quote, pinned=True))) == []


def test_a_dearer_price_takes_a_dish_over_its_cap() -> None:
    (oil,) = CHICKPEAS.packs.where("food", "neutral_oil")
    quote = max(CHICKPEAS.quotes.where("pack", oil.id), key=lambda one: one.on)
    dearer = with_records(CHICKPEAS, replace(quote, price=quote.price + 100))
    assert ("over cap", "2 Green-Heart Fritters") in stops(dearer)


# --- the bag

COOKED_USED = 1.5 * 164 + 2 * 1.5 * 164  # the dip once; the pot as hero and up to the simmering swap-out
SOAKED_USED = 2 * 1.25 * 170  # fritters: hero, and the swap-out that has been chilled
FLOUR_USED = 3 * 1.25 * 92  # bread: hero, the swap-out that has rested and the one that is baked
GRITS_USED = 2 * 0.5 * 10
LIQUID_USED = (0.25 + 2 * 0.25 + 3 * 0.5) * CUP  # dip; pot twice; mousse for 4 + 4 + 2 + 2
SOAKED_MADE = SOAKED_USED + COOKED_USED / 1.05
NEEDED = SOAKED_MADE / 2.0 + FLOUR_USED / 0.93


def test_base_balance_by_hand() -> None:
    balance = base_balance(CHICKPEAS, SHOOT)
    assert balance is not None
    assert balance.there_is == 1000
    assert balance.needed == pytest.approx(NEEDED)
    made = {form.form: (form.made, form.used, form.left) for form in balance.forms}
    cooked, liquid = COOKED_USED, COOKED_USED / 1.05 * 0.80
    assert made["chickpeas_cooked"] == pytest.approx((cooked, COOKED_USED, 0), abs=1e-6)
    assert made["chickpea_cooking_liquid"] == pytest.approx((liquid, LIQUID_USED, liquid - LIQUID_USED))
    assert made["chickpeas_soaked"] == pytest.approx((SOAKED_MADE, SOAKED_USED, 0), abs=1e-6)
    assert made["chickpea_flour_milled"] == pytest.approx((FLOUR_USED, FLOUR_USED, 0), abs=1e-6)
    grits = FLOUR_USED / 0.93 * 0.05
    assert made["chickpea_grits"] == pytest.approx((grits, GRITS_USED, grits - GRITS_USED))


def test_enough_of_the_bag_is_left_to_be_calm_and_too_little_for_a_mistake() -> None:
    assert 0.05 <= (1000 - NEEDED) / 1000 <= 0.12


def test_a_hundred_grams_less_names_dishes_of_the_shoot_as_repairs() -> None:
    short = with_less_base(CHICKPEAS, 100)
    assert base_repairs(short, SHOOT)
    assert ("short of base", "chickpeas, dried") in stops(short)


def test_soaking_starts_the_evening_before() -> None:
    soak = next(lead for lead in shoot_leads(CHICKPEAS, SHOOT) if lead.conversion == "soak")
    assert soak.starts is not None
    assert soak.starts.date().isoformat() == "2026-12-07"
    assert 17 <= soak.starts.hour <= 21


# --- the till

RED_OIL_BATCHES = 4 * TABLESPOON / 70  # two spoons on the dip, one each on a finished pot and bread
GREEN_SAUCE_BATCHES = CUP / 2 / 120
SPICE_BATCHES = (2 + 2 + RED_OIL_BATCHES * 2 / 3) * TABLESPOON / 75  # a spoon in each fritter mix and pot; red oil

RECEIPT: dict[str, tuple[float, list[tuple[float, int]]]] = {
    "baking_powder": (2 * 4.6, []),  # an ounce is at home
    "black_pepper": (SPICE_BATCHES * 2 * 2.3 + 0.25 * 2.3, [(1, 159)]),
    "carrot": (2 * 0.5 * 128 / 0.82, [(1, 129)]),
    "cayenne": (SPICE_BATCHES * 0.5 * 1.8, [(1, 119)]),
    "celery": (2 * 0.5 * 101 / 0.73, [(1, 199)]),
    "chickpeas_dried": (1000, [(1, 399)]),  # one bag, against three pounds for 657
    "chili_flakes": (RED_OIL_BATCHES * 0.5 * 1.8, [(1, 129)]),
    "cilantro": ((2 * 0.5 * 16 + GREEN_SAUCE_BATCHES * 0.25 * 16) / 0.85, [(1, 99)]),
    "coriander_seeds": (SPICE_BATCHES * 2 * 5, [(1, 85)]),
    "cream_of_tartar": (3 * 0.25 * 3, [(1, 169)]),
    "cumin_seeds": (SPICE_BATCHES * 2 * 6, [(1, 95)]),
    "dark_chocolate": (3 * 5 * OUNCE, [(1, 1149)]),  # 15 oz: a pound of drops, against five bars for 2245
    "feta": (2 / 16 * 150, [(57, 113)]),  # the least the counter cuts is two ounces, against a block for 499
    "flaky_salt": (1.5 * 0.125 * 2.5, []),  # two ounces are at home
    "garlic": (3 * (1 + 2 * 2 + 2 * 3 + RED_OIL_BATCHES + GREEN_SAUCE_BATCHES) / 0.87, [(1, 79)]),
    "kale": (0.5 * 160 / 0.709, [(1, 249)]),
    "kosher_salt": (
        3.5 * (0.5 + 2 * 1 + 0.25 + 2 * 2 + 3 * 1 + GREEN_SAUCE_BATCHES * 0.25) + COOKED_USED / 1.05 * 0.004,
        [],  # half a pound is at home
    ),
    "lemon": (58 / 0.53 * (1 + 1 + GREEN_SAUCE_BATCHES * 0.5), [(3, 3 * 69)]),
    "neutral_oil": (2 * 218, [(1, 499)]),  # only the hero is fried
    "olive_oil": (13.5 * (2 * 3 + 2 * 4 + 2 + RED_OIL_BATCHES * 5), [(1, 1299)]),
    "onion": ((2 * 0.5 + 2 * 1.5) * 160 / 0.901, [(2, 2 * 129)]),  # two nets of a pound, against the bag for 329
    "orange_zest": (1.5 * 2, [(1, 99)]),
    "parsley": ((60 / 16 + 2 * 60 + GREEN_SAUCE_BATCHES * 0.25 * 60) / 0.95, [(3, 2 * 149)]),  # three for two
    "red_onion": (2 * 0.5 * 115 / 0.901, [(128, 42)]),  # loose at 149 a pound
    "red_wine_vinegar": (14.9, [(1, 349)]),
    "rosemary": (2 * 0.7 / 0.65, [(1, 249)]),
    "sesame_seeds": (2 * 9, [(1, 89)]),
    "smoked_paprika": (SPICE_BATCHES * 6.8, [(1, 139)]),  # an ounce from the bin, against the jar for 449
    "sugar": (3 * 2 * 12.5, []),  # a pound is at home
    "tahini": (0.5 * 240 + GREEN_SAUCE_BATCHES * 3 * 15, [(1, 749)]),  # one jar, against the tub for 1199
    "tomato_paste": (2 * 2 * 16, [(1, 129)]),
    "tomatoes_tinned": (2 * 14.5 * OUNCE, [(2, 2 * 169)]),  # two small cans, against two large for 558
    "vanilla_extract": (3 * 0.5 * 4.2, [(1, 899)]),
}
"""Grams needed of each food, and the packs that cover what is not at home: how many or how heavy, and their cost."""


def test_shopping_and_its_spend_by_hand() -> None:
    bought = shopping_list(CHICKPEAS, SHOOT)
    receipt = till_receipt(bought)
    assert set(receipt) == set(RECEIPT)
    for food, (grams, packs) in RECEIPT.items():
        assert receipt[food][0] == pytest.approx(grams), food
        assert receipt[food][1] == packs, food
    assert bought.spend == sum(price for _grams, packs in RECEIPT.values() for _count, price in packs)


def test_both_stores_are_gone_to() -> None:
    stores = {pack.priced.pack.store for item in shopping_list(CHICKPEAS, SHOOT).items for pack in item.packs}
    assert stores == set(CHICKPEAS.stores)


# --- the kitchen


def test_temperatures_are_round_in_fahrenheit() -> None:
    for step in CHICKPEAS.steps.values():
        if step.celsius is not None:
            assert fahrenheit(step.celsius) == pytest.approx(round(fahrenheit(step.celsius)), abs=1e-9)


def test_what_is_fried_is_fried_hot_and_filmed_at_once() -> None:
    (fry,) = [step for step in CHICKPEAS.steps.where("recipe", "green_heart_fritters") if step.heat is Heat.OIL]
    assert fry.celsius is not None
    assert 350 <= round(fahrenheit(fry.celsius), 6) <= 375
    assert fry.hold_minutes == 10
    assert "hot_oil" in fry.hazards


def test_a_spice_mix_is_in_an_oil_that_is_on_a_dip() -> None:
    made = {recipe: _made_in(recipe) for recipe in ("cloud_dip", "red_oil", "brass_spoon_spice")}
    assert made == {"cloud_dip": {"red_oil"}, "red_oil": {"brass_spoon_spice"}, "brass_spoon_spice": set()}


def _made_in(recipe: str) -> set[str]:
    lines = [
        line for step in CHICKPEAS.steps.where("recipe", recipe) for line in CHICKPEAS.lines.where("step", step.id)
    ]
    return {line.made for line in lines if line.made}


def test_allergens_of_each_dish() -> None:
    carried = {
        dish.recipe: {one.group for one in recipe_allergens(CHICKPEAS, dish.recipe)}
        for dish in CHICKPEAS.dishes.values()
    }
    assert carried == {
        "cloud_dip": {"sesame"},
        "green_heart_fritters": {"sesame"},
        "hearth_pot": {"milk"},
        "sun_bread": set(),
        "midnight_mousse": {"soybeans"},
    }
