"""What the larder says of foods that change by cooking, of what must be cooked, and of what people must be warned of.

Weights of household measures and refuse are those of the USDA National Nutrient Database for Standard Reference,
Release 28 (2015), by NDB number.
"""

from __future__ import annotations

import math

import pytest

from binder.figures.weight import grams_of
from binder.kitchen.binder import binder_of
from binder.kitchen.food import Food, Keeping, Section
from binder.kitchen.larder import reference_larder
from binder.kitchen.name_book import name_book, singular_words
from binder.kitchen.reference import allergens, doneness
from binder.kitchen.settings import SETTINGS_ID, SafetyRules, Settings

FOODS = reference_larder().foods

CUPS_OF_PULSES = [
    # dried, NDB, grams a cup; cooked, NDB, grams a cup
    ("chickpeas", "16056", 200, "16057", 164),
    ("black_beans", "16016", 184, "16017", 185),
    ("kidney_beans", "16032", 184, "16033", 177),
    ("pinto_beans", "16042", 193, "16043", 171),
    ("cannellini_beans", "16049", 202, "16050", 179),
    ("great_northern_beans", "16024", 183, "16025", 177),
    ("navy_beans", "16037", 208, "16038", 182),
    ("butter_beans", "16071", 178, "16072", 188),
    ("fava_beans", "16052", 150, "16053", 170),
    ("mung_beans", "16080", 207, "16081", 202),
    ("lentils", "16069", 192, "16070", 198),
]
CUPS_OF_GRAINS = [
    ("rice_long_grain", "20044", 185, "rice_cooked", "20045", 158),
    ("rice_brown", "20036", 185, "rice_brown_cooked", "20037", 202),
    ("quinoa", "20035", 170, "quinoa_cooked", "20137", 185),
    ("couscous", "20028", 173, "couscous_cooked", "20029", 157),
    ("split_peas", "16085", 197, "split_peas_cooked", "16086", 196),
]
TINS = [
    # drained solids of a can and the whole can in grams; grams a cup of drained solids
    ("chickpeas_tinned", 254, 448, 152),  # NDB 16359, 16058
    ("kidney_beans_tinned", 266, 436, 158),  # NDB 16145, 16034, 16335
    ("pinto_beans_tinned", 258, 442, 169),  # NDB 16345, 16044
]


def cup(key: str) -> tuple[float, str]:
    """Grams of a US cup of a food in its plain state, and the source."""
    (found,) = [m for m in reference_larder().measures[key] if m.unit == "us cup" and not m.preparation]
    return found.grams, found.source


def weighed(key: str, count: float, unit: str) -> float:
    """Grams of an amount of a food, as a binder that has taken it from the larder weighs it."""
    food = FOODS[key]
    binder = binder_of([Settings(id=SETTINGS_ID, name="Test kitchen"), food, *reference_larder().measures[key]])
    grams = grams_of(binder, food, count, unit)
    assert isinstance(grams, float), grams
    return grams


def foods_of(*sections: Section) -> list[Food]:
    return [food for food in FOODS.values() if food.section in sections]


def as_parameters(foods: list[Food]) -> list[object]:
    return [pytest.param(food, id=food.id) for food in foods]


# Pulses and grains


@pytest.mark.parametrize(("pulse", "dried_ndb", "dried", "cooked_ndb", "cooked"), CUPS_OF_PULSES)
def test_a_dried_and_a_cooked_pulse_are_two_foods_with_a_cup_weight_each(
    pulse: str, dried_ndb: str, dried: float, cooked_ndb: str, cooked: float
) -> None:
    dried_cup, dried_source = cup(f"{pulse}_dried")
    cooked_cup, cooked_source = cup(f"{pulse}_cooked")
    assert (dried_cup, cooked_cup) == (dried, cooked)
    assert f"NDB {dried_ndb}" in dried_source
    assert f"NDB {cooked_ndb}" in cooked_source


@pytest.mark.parametrize(("dry", "dry_ndb", "dry_cup", "cooked", "cooked_ndb", "cooked_cup"), CUPS_OF_GRAINS)
def test_a_grain_weighs_one_thing_dry_and_another_cooked(
    dry: str, dry_ndb: str, dry_cup: float, cooked: str, cooked_ndb: str, cooked_cup: float
) -> None:
    for key, ndb, grams in ((dry, dry_ndb, dry_cup), (cooked, cooked_ndb, cooked_cup)):
        found, source = cup(key)
        assert found == grams, key
        assert f"NDB {ndb}" in source, key


COOKED_FRESH = [
    food for food in foods_of(Section.GRAINS_AND_PULSES, Section.MEAT, Section.FISH) if food.id.endswith("_cooked")
]


@pytest.mark.parametrize("cooked", as_parameters(COOKED_FRESH))
def test_what_is_cooked_is_kept_cold_for_days_and_watched(cooked: Food) -> None:
    assert cooked.temperature_control
    assert cooked.keeping is Keeping.CHILLED
    assert cooked.keeps_days is not None
    assert cooked.keeps_days <= 5
    assert not cooked.doneness


@pytest.mark.parametrize("dried", as_parameters([food for food in FOODS.values() if food.id.endswith("_beans_dried")]))
def test_what_is_dried_keeps_in_the_cupboard(dried: Food) -> None:
    assert not dried.temperature_control
    assert dried.keeping is Keeping.CUPBOARD
    assert dried.keeps_days is not None
    assert dried.keeps_days >= 365


@pytest.mark.parametrize("way", ["dried", "cooked", "tinned", "canned"])
def test_a_cook_finds_each_state_of_chickpeas_said_either_way_round(way: str) -> None:
    book = name_book(binder_of([Settings(id=SETTINGS_ID, name="Test kitchen")]))
    key = f"chickpeas_{'tinned' if way == 'canned' else way}"
    for text in (f"{way} chickpeas", f"chickpeas, {way}", f"{way} garbanzo beans"):
        found = book.find(text)
        assert found is not None, text
        assert found.key == key


def test_the_cooking_liquid_of_chickpeas_is_a_food_that_pours_as_water_does() -> None:
    liquid = FOODS["chickpea_cooking_liquid"]
    assert liquid.density == 1.0
    assert liquid.temperature_control
    assert weighed("chickpea_cooking_liquid", 100, "ml") == 100


@pytest.mark.parametrize(("key", "solids", "whole", "cup_grams"), TINS)
def test_a_tin_is_used_by_its_solids_and_bought_by_its_contents(
    key: str, solids: float, whole: float, cup_grams: float
) -> None:
    assert weighed(key, 1, "can") == solids
    assert weighed(key, 1, "can") / FOODS[key].trim_yield == pytest.approx(whole, abs=0.5)
    assert cup(key)[0] == cup_grams


@pytest.mark.parametrize(
    "key", [key for key in FOODS if key.endswith("_beans_tinned") or key in {"chickpeas_tinned", "lentils_tinned"}]
)
def test_the_solids_of_one_tin_ask_for_no_more_than_one_tin_of_400_grams(key: str) -> None:
    purchased = weighed(key, 1, "tin") / FOODS[key].trim_yield
    assert 399 < purchased <= 400 + 1e-9


# Eggs


@pytest.mark.parametrize(
    ("unit", "grams"), [("each", 50), ("small", 38), ("medium", 44), ("large", 50), ("jumbo", 63), ("us cup", 243)]
)
def test_an_egg_that_is_counted_is_the_large_one_that_recipes_mean(unit: str, grams: float) -> None:
    assert weighed("egg", 1, unit) == pytest.approx(grams)  # NDB 01123


def test_a_white_and_a_yolk_make_an_egg() -> None:
    white, yolk = weighed("egg_white", 1, "each"), weighed("egg_yolk", 1, "each")
    assert (white, yolk) == (33, 17)  # NDB 01124, 01125
    assert white + yolk == weighed("egg", 1, "each")


@pytest.mark.parametrize(
    ("key", "refuse", "ndb"), [("egg", 12, "01123"), ("duck_egg", 12, "01138"), ("quail_egg", 8, "01140")]
)
def test_the_shell_of_an_egg_is_bought_and_not_eaten(key: str, refuse: float, ndb: str) -> None:
    assert FOODS[key].trim_yield == pytest.approx(1 - refuse / 100)
    assert f"NDB {ndb}" in FOODS[key].yield_source


# What must be cooked

READY_TO_EAT = {
    "chicken_cooked", "ham_cooked", "prosciutto", "salami", "pepperoni", "chorizo_cured",
    "smoked_salmon", "hot_smoked_salmon", "smoked_trout", "smoked_mackerel",
    "shrimp_cooked", "lobster_meat", "crab_meat",
}  # fmt: skip
"""Cooked, smoked or cured before it is bought. Whatever else stands with meat and fish is raw."""

DRY_CURED = {"salami", "pepperoni", "chorizo_cured"}
"""Dry enough to keep without cold."""

ANIMAL = foods_of(Section.MEAT, Section.FISH)
RAW = [food for food in ANIMAL if food.id not in READY_TO_EAT]
EGGS = [FOODS[key] for key in ("egg", "egg_white", "egg_yolk", "duck_egg", "quail_egg")]


@pytest.mark.parametrize("food", as_parameters([*RAW, *EGGS]))
def test_every_raw_food_of_an_animal_has_a_safe_doneness_and_is_kept_cold(food: Food) -> None:
    rule = doneness(SafetyRules.USDA_FSIS, food.doneness)
    assert rule is not None, f"{food.name}: no doneness"
    assert rule.celsius is not None or rule.sign
    assert food.temperature_control
    assert food.keeping in {Keeping.CHILLED, Keeping.FROZEN}


def test_what_is_ready_to_eat_needs_no_doneness() -> None:
    assert {key for key in READY_TO_EAT if FOODS[key].doneness} == set()
    assert {food.id for food in ANIMAL if not food.temperature_control} == DRY_CURED


@pytest.mark.parametrize(
    ("start", "celsius"),
    [
        ("chicken", 74),
        ("turkey", 74),
        ("duck", 74),
        ("beef", 63),
        ("veal", 63),
        ("lamb", 63),
        ("pork", 63),
        ("ham", 63),
    ],
)
def test_each_animal_is_cooked_as_the_usda_chart_says(start: str, celsius: float) -> None:
    whole = [food for food in RAW if food.id.startswith(f"{start}_") and not food.id.endswith("_ground")]
    assert whole
    for food in whole:
        rule = doneness(SafetyRules.USDA_FSIS, food.doneness)
        assert rule is not None
        assert rule.celsius == celsius, food.name


@pytest.mark.parametrize(
    ("key", "celsius"),
    [
        ("beef_ground", 71),
        ("pork_ground", 71),
        ("lamb_ground", 71),
        ("chicken_ground", 74),
        ("turkey_ground", 74),
        ("sausage_italian", 71),
        ("sausage_pork", 71),
        ("chorizo_fresh", 71),
        ("rabbit", 71),
        ("venison", 71),
    ],
)
def test_ground_meat_sausage_and_game_are_cooked_further_than_a_steak(key: str, celsius: float) -> None:
    rule = doneness(SafetyRules.USDA_FSIS, FOODS[key].doneness)
    assert rule is not None
    assert rule.celsius == celsius


@pytest.mark.parametrize(
    ("key", "sign"),
    [("mussels", "shells open"), ("clams", "shells open"), ("shrimp", "opaque"), ("scallops", "opaque")],
)
def test_shellfish_are_done_by_what_one_sees(key: str, sign: str) -> None:
    rule = doneness(SafetyRules.USDA_FSIS, FOODS[key].doneness)
    assert rule is not None
    assert sign in rule.sign


# What is bought with its bone, and what is trimmed


@pytest.mark.parametrize(
    ("key", "unit", "grams"),
    [
        ("chicken_whole", "each", 920 / 0.68),  # NDB 05006: half a chicken without bone 460 g, bone 32 %
        ("duck_whole", "each", 1268 / 0.72),  # NDB 05139: half a duck 634 g, bone 28 %
        ("pork_chop", "each", 259),  # NDB 10036: raw chop with refuse
        ("lamb_chop", "each", 120),  # NDB 17023: raw chop with refuse
        ("trout", "each", 2 * 79 / 0.47),  # NDB 15240: a fillet 79 g; NDB 15274: refuse 53 %
    ],
)
def test_what_is_cooked_on_the_bone_is_weighed_on_the_bone(key: str, unit: str, grams: float) -> None:
    assert weighed(key, 1, unit) == pytest.approx(grams, abs=0.5)
    assert FOODS[key].trim_yield == 1


@pytest.mark.parametrize(
    ("key", "refuse", "ndb"),
    [
        ("shrimp", 13, "15270"),
        ("beef_chuck", 19, "13815"),
        ("pork_shoulder", 25, "10070"),
        ("pork_belly", 7, "10005"),
        ("lamb_shoulder", 21, "17035"),
    ],
)
def test_what_is_boned_or_peeled_before_it_is_weighed_has_the_refuse_of_sr28(key: str, refuse: float, ndb: str) -> None:
    assert FOODS[key].trim_yield == pytest.approx(1 - refuse / 100)
    assert f"NDB {ndb}" in FOODS[key].yield_source


# What people must be warned of

WHEATEN = {
    "bread", "breadcrumb", "panko", "baguette", "ciabatta", "focaccia", "brioche", "pita", "naan", "flatbread", "bagel",
    "croissant", "bun", "muffin", "crouton", "matzo", "cracker", "biscuit", "tortilla", "wrapper", "pastry", "phyllo",
    "couscous", "bulgur", "semolina", "spaghetti", "linguine", "tagliatelle", "penne", "macaroni", "fusilli",
    "farfalle", "pasta", "orzo", "lasagne", "noodle", "gnocchi",
}  # fmt: skip
"""Words that mean wheat where a name has them."""

NOT_OF_WHEAT = {"rice_noodles", "glass_noodles", "rice_vermicelli", "rice_paper", "tortilla_corn", "tortilla_chips"}
"""Of rice, maize or beans, whatever the word."""


def named_with(words: set[str]) -> list[Food]:
    sold_so = foods_of(Section.BAKERY, Section.GRAINS_AND_PULSES, Section.FROZEN)
    return [food for food in sold_so if words & set(singular_words(food.name))]


@pytest.mark.parametrize("food", as_parameters([food for food in named_with(WHEATEN) if food.id not in NOT_OF_WHEAT]))
def test_every_food_made_of_wheat_says_so(food: Food) -> None:
    assert "wheat" in food.allergens


def test_what_only_sounds_like_wheat_does_not_say_so() -> None:
    assert {key for key in NOT_OF_WHEAT if "wheat" in FOODS[key].allergens} == set()


@pytest.mark.parametrize("food", as_parameters(foods_of(Section.DAIRY_AND_EGGS)))
def test_everything_from_the_dairy_shelf_carries_milk_or_eggs(food: Food) -> None:
    assert food.allergens == (("eggs",) if food in EGGS else ("milk",))


@pytest.mark.parametrize("food", as_parameters(foods_of(Section.FISH)))
def test_everything_from_the_fish_counter_carries_one_of_the_three_kinds(food: Food) -> None:
    assert len({"fish", "crustaceans", "molluscs"} & set(food.allergens)) == 1


@pytest.mark.parametrize(
    ("key", "carried"),
    [
        ("soy_sauce", {"soybeans", "wheat"}),
        ("tamari", {"soybeans"}),
        ("miso", {"soybeans", "barley"}),
        ("tofu_firm", {"soybeans"}),
        ("worcestershire_sauce", {"fish"}),
        ("fish_sauce", {"fish"}),
        ("fish_stock", {"fish", "celery"}),
        ("anchovies", {"fish"}),
        ("oyster_sauce", {"molluscs", "soybeans", "wheat"}),
        ("curry_paste_red", {"crustaceans"}),
        ("mayonnaise", {"eggs", "mustard"}),
        ("stock_cube", {"celery"}),
        ("white_wine", {"sulphites"}),
        ("beer", {"barley"}),
        ("rolled_oats", {"oats"}),
        ("pearl_barley", {"barley"}),
        ("bread_rye", {"wheat", "rye"}),
        ("pasta_fresh", {"wheat", "eggs"}),
        ("puff_pastry", {"wheat", "milk"}),
        ("seitan", {"wheat"}),
        ("chickpeas_dried", set()),
        ("rice_long_grain", set()),
        ("water", set()),
    ],
)
def test_a_food_carries_what_it_is_made_of(key: str, carried: set[str]) -> None:
    assert set(FOODS[key].allergens) == carried
    assert carried <= set(allergens())


# What pours


@pytest.mark.parametrize(
    ("key", "grams", "millilitres"),
    [
        ("milk", 244, 236.588),  # NDB 01077, a cup
        ("heavy_cream", 238, 236.588),  # NDB 01053, a cup
        ("chicken_stock", 249, 236.588),  # NDB 06194, a cup
        ("white_wine", 29.4, 29.5735),  # NDB 14106, a fluid ounce
        ("rum", 27.8, 29.5735),  # NDB 14050, a fluid ounce
        ("soy_sauce", 255, 236.588),  # NDB 16123, a cup
        ("fish_sauce", 18, 14.7868),  # NDB 06179, a tablespoon
    ],
)
def test_a_liquid_weighs_by_the_litre_what_its_measure_weighs(key: str, grams: float, millilitres: float) -> None:
    density = FOODS[key].density
    assert density is not None
    assert math.isclose(density, grams / millilitres, rel_tol=1e-3)


def test_water_weighs_a_gram_a_millilitre_and_costs_nothing() -> None:
    water = FOODS["water"]
    assert (water.density, water.staple, water.free) == (1.0, True, True)
    assert weighed("water", 1, "l") == 1000
