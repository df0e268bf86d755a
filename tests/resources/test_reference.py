"""The reference tables against the publications that they restate, each named beside its figures."""

from __future__ import annotations

import csv
import functools
import io

import pint
import pytest

from binder.kitchen.paths import reference_folder
from binder.kitchen.reference import allergens, cautions, doneness, doneness_table
from binder.kitchen.settings import AllergenScheme, Measures, SafetyRules
from binder.kitchen.units import Dimension, source_of, unit, unit_values

US, METRIC, IMPERIAL = Measures.US_CUSTOMARY, Measures.METRIC, Measures.IMPERIAL

KEYS = {
    "units.csv": ("key",),
    "allergens.csv": ("code",),
    "doneness.csv": ("rule_set", "category"),
    "cautions.csv": ("hazard",),
    "time_limits.csv": ("key",),
}


def rows(name: str) -> list[dict[str, str]]:
    with (reference_folder() / name).open(encoding="utf-8", newline="") as table:
        return list(csv.DictReader(table, strict=True))


# Tables


@pytest.mark.parametrize("name", KEYS)
def test_every_row_of_a_table_is_whole_and_says_where_it_comes_from(name: str) -> None:
    for row in rows(name):
        assert None not in row, row
        assert None not in row.values(), row
        assert row["source"].strip(), row
        assert all(value == value.strip() for value in row.values()), row


@pytest.mark.parametrize("name", KEYS)
def test_no_key_stands_twice_or_is_empty(name: str) -> None:
    keys = [tuple(row[column] for column in KEYS[name]) for row in rows(name)]
    assert all(all(key) for key in keys)
    assert len(set(keys)) == len(keys)


@pytest.mark.parametrize("name", KEYS)
def test_a_table_is_plain_csv_that_any_reader_writes_back_alike(name: str) -> None:
    written = (reference_folder() / name).read_bytes().decode("utf-8")
    again = io.StringIO()
    csv.writer(again, lineterminator="\n").writerows(csv.reader(io.StringIO(written, newline=""), strict=True))
    assert again.getvalue() == written


def test_the_folder_holds_no_table_that_is_not_tested_here() -> None:
    assert {path.name for path in reference_folder().glob("*.csv")} == set(KEYS)


# Units against their definitions

INCH_IN_MILLIMETRES = 25.4
POUND_IN_GRAMS = 453.59237
US_GALLON = 231 * (INCH_IN_MILLIMETRES / 10) ** 3  # cubic centimetres: NIST Handbook 44 Appendix C
IMPERIAL_GALLON = 4546.09  # millilitres: Weights and Measures Act 1985

FROM_DEFINITIONS = {
    "g": 1.0,
    "kg": 1000.0,
    "mg": 1 / 1000,
    "oz": POUND_IN_GRAMS / 16,
    "lb": POUND_IN_GRAMS,
    "ml": 1.0,
    "cl": 10.0,
    "dl": 100.0,
    "l": 1000.0,
    "us gallon": US_GALLON,
    "us quart": US_GALLON / 4,
    "us pint": US_GALLON / 8,
    "us cup": US_GALLON / 16,
    "us fl oz": US_GALLON / 128,
    "us tbsp": US_GALLON / 256,
    "us tsp": US_GALLON / 768,
    "imperial gallon": IMPERIAL_GALLON,
    "imperial quart": IMPERIAL_GALLON / 4,
    "imperial pint": IMPERIAL_GALLON / 8,
    "imperial cup": IMPERIAL_GALLON / 16,
    "imperial fl oz": IMPERIAL_GALLON / 160,
    "pinch": US_GALLON / 768 / 16,  # common kitchen convention
    "dash": US_GALLON / 768 / 8,  # common kitchen convention
}

IN_PINT = {
    "g": "gram",
    "kg": "kilogram",
    "mg": "milligram",
    "oz": "avoirdupois_ounce",
    "lb": "avoirdupois_pound",
    "ml": "milliliter",
    "cl": "centiliter",
    "dl": "deciliter",
    "l": "liter",
    "us gallon": "gallon",
    "us quart": "quart",
    "us pint": "pint",
    "us cup": "cup",
    "us fl oz": "fluid_ounce",
    "us tbsp": "tablespoon",
    "us tsp": "teaspoon",
    "imperial gallon": "imperial_gallon",
    "imperial quart": "imperial_quart",
    "imperial pint": "imperial_pint",
    "imperial cup": "imperial_cup",
    "imperial fl oz": "imperial_fluid_ounce",
}


@functools.cache
def registry() -> pint.UnitRegistry[float]:
    return pint.UnitRegistry()


@pytest.mark.parametrize("key", FROM_DEFINITIONS)
def test_a_unit_has_the_value_its_definition_gives(key: str) -> None:
    assert unit_values()[key][1] == pytest.approx(FROM_DEFINITIONS[key], rel=1e-12, abs=0)


@pytest.mark.parametrize("key", IN_PINT)
def test_a_unit_has_the_value_an_independent_library_gives(key: str) -> None:
    dimension, value, _source = unit_values()[key]
    small = "gram" if dimension is Dimension.WEIGHT else "milliliter"
    theirs = registry().Quantity(1.0, IN_PINT[key]).to(small).magnitude
    assert value == pytest.approx(theirs, rel=1e-9, abs=0)


def test_every_unit_called_exact_is_held_against_a_definition() -> None:
    exact = {row["key"] for row in rows("units.csv") if row["exactness"] == "exact"}
    assert exact <= FROM_DEFINITIONS.keys()
    assert {row["exactness"] for row in rows("units.csv")} == {"exact", "by rule", "convention"}


@pytest.mark.parametrize(
    ("key", "dimension", "value"),
    [
        ("label tsp", "volume", 5),
        ("label tbsp", "volume", 15),
        ("label cup", "volume", 240),
        ("label fl oz", "volume", 30),
        ("label oz", "weight", 28),
    ],
)
def test_nutrition_label_measures_are_those_of_21_cfr_101_9_b_5_viii(key: str, dimension: str, value: float) -> None:
    assert unit_values()[key][:2] == (dimension, value)
    assert "21 CFR 101.9(b)(5)(viii)" in unit_values()[key][2]


@pytest.mark.parametrize(
    ("key", "value"), [("metric cup", 250), ("metric tbsp", 15), ("metric tsp", 5), ("au tbsp", 20)]
)
def test_metric_spoons_and_cups_are_those_sold(key: str, value: float) -> None:
    """Standards Australia AS 1325 and the spoons sold elsewhere, from memory."""
    assert unit_values()[key][1] == value


@pytest.mark.parametrize(
    ("larger", "count", "smaller"),
    [
        ("tbsp", 3, "tsp"),
        ("fl oz", 2, "tbsp"),
        ("cup", 8, "fl oz"),
        ("cup", 16, "tbsp"),
        ("cup", 48, "tsp"),
        ("pint", 2, "cup"),
        ("quart", 2, "pint"),
        ("quart", 4, "cup"),
        ("gallon", 4, "quart"),
        ("lb", 16, "oz"),
    ],
)
def test_household_measures_relate_as_in_nist_sp_430(larger: str, count: int, smaller: str) -> None:
    """NIST SP 430, Household Weights and Measures, Table 1; quart and gallon: NIST Handbook 44 Appendix C."""
    assert unit(larger, US).factor == pytest.approx(count * unit(smaller, US).factor, rel=1e-12)


@pytest.mark.parametrize(
    ("key", "rounded"),
    [("us tsp", 4.9), ("us tbsp", 15), ("us fl oz", 30), ("us cup", 237), ("us pint", 473), ("us quart", 946)],
)
def test_us_measures_round_to_the_millilitres_nist_sp_430_prints(key: str, rounded: float) -> None:
    assert round(unit_values()[key][1], 1 if key == "us tsp" else 0) == rounded


def test_an_imperial_pint_has_twenty_fluid_ounces_and_a_us_pint_sixteen() -> None:
    assert unit("pint", IMPERIAL).factor == pytest.approx(20 * unit("fl oz", IMPERIAL).factor, rel=1e-12)
    assert unit("pint", US).factor == pytest.approx(16 * unit("fl oz", US).factor, rel=1e-12)


@pytest.mark.parametrize("word", ["fl oz", "pint", "quart", "gallon"])
def test_where_the_metric_system_has_no_unit_the_imperial_one_is_taken_and_the_table_says_so(word: str) -> None:
    (row,) = [row for row in rows("units.csv") if row["key"] == f"metric {word}"]
    assert float(row["grams_or_millilitres"]) == unit(word, IMPERIAL).factor
    assert "the metric system has none" in row["name"]


@pytest.mark.parametrize("measures", Measures)
@pytest.mark.parametrize("word", ["cup", "tbsp", "tsp", "fl oz", "pint", "quart", "gallon"])
def test_every_system_has_every_cooks_measure_with_a_source(measures: Measures, word: str) -> None:
    assert unit(word, measures).dimension is Dimension.VOLUME
    assert source_of(word, measures)


@pytest.mark.parametrize("measures", Measures)
def test_measures_of_a_system_grow_from_spoon_to_gallon(measures: Measures) -> None:
    sizes = [unit(word, measures).factor for word in ("tsp", "tbsp", "fl oz", "cup", "pint", "quart", "gallon")]
    assert sizes == sorted(set(sizes))


# Allergens

# 21 U.S.C. 321(qq): FALCPA 2004 (Pub. L. 108-282, Title II) and, for sesame, the FASTER Act 2021 (Pub. L. 117-11)
US_NINE = {
    "milk",
    "eggs",
    "fish",
    "crustacean shellfish",
    "tree nuts",
    "wheat",
    "peanuts",
    "soybeans",
    "sesame",
}
# Regulation (EU) No 1169/2011, Annex II
EU_FOURTEEN = {
    "cereals containing gluten",
    "crustaceans",
    "eggs",
    "fish",
    "peanuts",
    "soybeans",
    "milk",
    "nuts",
    "celery",
    "mustard",
    "sesame seeds",
    "sulphur dioxide and sulphites",
    "lupin",
    "molluscs",
}


def groups(scheme: AllergenScheme) -> set[str]:
    return {allergen.group(scheme) for allergen in allergens().values()} - {""}


def codes_in(group: str, scheme: AllergenScheme) -> set[str]:
    return {code for code, allergen in allergens().items() if allergen.group(scheme) == group}


def test_the_us_groups_are_the_nine_of_the_law() -> None:
    assert groups(AllergenScheme.US_NINE) == US_NINE
    assert len(US_NINE) == 9


def test_the_eu_groups_are_the_fourteen_of_annex_ii() -> None:
    assert groups(AllergenScheme.EU_FOURTEEN) == EU_FOURTEEN
    assert len(EU_FOURTEEN) == 14


def test_every_allergen_is_in_an_eu_group_and_has_a_name() -> None:
    for allergen in allergens().values():
        assert allergen.eu_group in EU_FOURTEEN or allergen.code == "pine_nuts"  # Annex II does not list them
        assert allergen.name


def test_nuts_are_the_eight_kinds_of_annex_ii_and_all_tree_nuts_in_the_us() -> None:
    eight = {"almonds", "hazelnuts", "walnuts", "cashews", "pecans", "brazil_nuts", "pistachios", "macadamias"}
    assert codes_in("nuts", AllergenScheme.EU_FOURTEEN) == eight
    assert codes_in("tree nuts", AllergenScheme.US_NINE) == eight | {"pine_nuts"}


def test_of_the_cereals_with_gluten_the_us_law_lists_wheat_only() -> None:
    cereals = {"wheat", "rye", "barley", "oats"}
    assert codes_in("cereals containing gluten", AllergenScheme.EU_FOURTEEN) == cereals
    assert codes_in("wheat", AllergenScheme.US_NINE) == {"wheat"}
    assert {code for code in cereals if allergens()[code].us_group} == {"wheat"}


def test_molluscs_are_no_crustacean_shellfish() -> None:
    assert codes_in("crustacean shellfish", AllergenScheme.US_NINE) == {"crustaceans"}
    assert allergens()["molluscs"].us_group == ""


# Safe core temperatures

# USDA FSIS and FoodSafety.gov, Cook to a Safe Minimum Internal Temperature chart: degrees Fahrenheit and Celsius as
# printed there and the rest in minutes; None where it gives a sign to look for instead.
USDA_FSIS_CHART: dict[str, tuple[int, int, int] | None] = {
    "poultry": (165, 74, 0),
    "ground_poultry": (165, 74, 0),
    "whole_meat": (145, 63, 3),
    "ground_meat": (160, 71, 0),
    "pork_whole": (145, 63, 3),
    "ham_raw": (145, 63, 3),
    "rabbit_venison": (160, 71, 0),
    "fish": (145, 63, 0),
    "shellfish": None,
    "molluscs": None,
    "eggs": None,
    "egg_dishes": (160, 71, 0),
    "leftovers": (165, 74, 0),
    "casseroles": (165, 74, 0),
}

# FDA Food Code 3-401.11(A), as adopted in Minn. R. 4626.0340; leftovers 3-403.11(A), from memory
FOOD_CODE = {
    "fish": (145, 63),
    "whole_meat": (145, 63),
    "pork_whole": (145, 63),
    "eggs": (145, 63),
    "ground_meat": (155, 68),
    "egg_dishes": (155, 68),
    "poultry": (165, 74),
    "ground_poultry": (165, 74),
    "leftovers": (165, 74),
}


def test_the_home_chart_is_whole() -> None:
    assert {key for rules, key in doneness_table() if rules is SafetyRules.USDA_FSIS} == USDA_FSIS_CHART.keys()


@pytest.mark.parametrize("category", USDA_FSIS_CHART)
def test_a_food_is_cooked_to_what_the_usda_fsis_chart_says(category: str) -> None:
    rule, chart = doneness(SafetyRules.USDA_FSIS, category), USDA_FSIS_CHART[category]
    assert rule is not None
    if chart is None:
        assert (rule.fahrenheit, rule.celsius) == (None, None)
        assert rule.sign
    else:
        fahrenheit, celsius, rest = chart
        assert (rule.fahrenheit, rule.celsius) == (fahrenheit, celsius)
        assert rule.hold == (f"rest {rest} minutes" if rest else "")


@pytest.mark.parametrize("category", FOOD_CODE)
def test_retail_rules_are_those_of_the_food_code(category: str) -> None:
    rule = doneness(SafetyRules.FDA_FOOD_CODE, category)
    assert rule is not None
    assert rule.rules is SafetyRules.FDA_FOOD_CODE
    assert (rule.fahrenheit, rule.celsius) == FOOD_CODE[category]


def test_ground_meat_differs_at_home_and_in_retail() -> None:
    home, retail = doneness(SafetyRules.USDA_FSIS, "ground_meat"), doneness(SafetyRules.FDA_FOOD_CODE, "ground_meat")
    assert home is not None
    assert retail is not None
    assert (home.fahrenheit, retail.fahrenheit) == (160, 155)


def test_what_the_food_code_does_not_name_falls_back_to_the_home_chart_and_says_so() -> None:
    rule = doneness(SafetyRules.FDA_FOOD_CODE, "casseroles")
    assert rule is not None
    assert rule.rules is SafetyRules.USDA_FSIS
    assert "USDA FSIS" in rule.source


def test_a_category_no_one_knows_has_no_temperature() -> None:
    assert doneness(SafetyRules.USDA_FSIS, "gravel") is None


@pytest.mark.parametrize("row", rows("doneness.csv"), ids=lambda row: f"{row['rule_set']}-{row['category']}")
def test_both_scales_agree_to_the_degree_or_a_sign_stands_instead(row: dict[str, str]) -> None:
    if row["celsius"]:
        assert round((float(row["fahrenheit"]) - 32) * 5 / 9) == float(row["celsius"])
    else:
        assert row["fahrenheit"] == ""
        assert row["sign"]


# Time limits


def limit(key: str) -> tuple[str, str]:
    (row,) = [row for row in rows("time_limits.csv") if row["key"] == key]
    return row["minutes"], row["celsius"]


def test_cooling_has_the_two_stages_of_food_code_3_501_14() -> None:
    """57 to 21 °C within 2 hours, and 57 to 5 °C within a total of 6: the second is the whole, not a further 6."""
    assert limit("cooling_stage_1") == ("120", "21")
    assert limit("cooling_total") == ("360", "5")
    assert limit("cooling_from_room") == ("240", "5")


@pytest.mark.parametrize(
    ("key", "minutes", "celsius"),
    [
        ("two_hour", "120", "4"),  # USDA FSIS
        ("one_hour_hot_day", "60", "32"),  # USDA FSIS: 90 °F
        ("time_control", "240", ""),  # FDA Food Code 3-501.19(B)
        ("time_control_cold", "360", "21"),  # FDA Food Code 3-501.19(C)
        ("hot_hold", "", "57"),  # FDA Food Code 3-501.16(A)(1): 135 °F
        ("cold_hold", "", "5"),  # FDA Food Code 3-501.16(A)(2): 41 °F
        ("leftovers", "4320", "4"),  # USDA FSIS: 3 to 4 days
        ("egg_storage", "", "7"),  # FDA Food Code 3-501.14(D): 45 °F
        ("thaw_cold_water", "30", ""),  # USDA FSIS: 30 minutes a pound
        ("thaw_refrigerator_large", "1440", "4"),  # USDA FSIS: 24 hours for 4 to 5 lb
    ],
)
def test_holding_and_thawing_limits_are_those_published(key: str, minutes: str, celsius: str) -> None:
    assert limit(key) == (minutes, celsius)


def test_every_limit_is_a_time_or_a_temperature_of_a_named_rule_set() -> None:
    for row in rows("time_limits.csv"):
        assert row["minutes"] or row["celsius"], row
        assert row["minutes"] == "" or int(row["minutes"]) > 0
        assert row["celsius"] == "" or -40 < float(row["celsius"]) < 100
        assert row["rule_set"] in {"usda_fsis", "fda_food_code", "uk_fsa"}


# Cautions

HAZARDS = {
    "hot_oil",
    "hot_sugar",
    "sharp_blade",
    "steam",
    "raw_egg",
    "raw_poultry",
    "raw_meat",
    "raw_fish",
    "raw_shellfish",
    "raw_flour",
    "raw_pulses",
    "open_flame",
    "hot_oven",
    "hot_surface",
    "hot_liquid_blender",
    "alcohol_flame",
    "pressure",
    "cooling",
    "reheating",
    "thawing",
    "soaking",
}


def test_every_hazard_a_step_can_name_has_a_caution() -> None:
    assert cautions().keys() == HAZARDS


@pytest.mark.parametrize("hazard", sorted(HAZARDS))
def test_a_caution_is_one_or_two_sentences_that_fit_a_station_card(hazard: str) -> None:
    caution = cautions()[hazard]
    assert caution.text.endswith(".")
    assert caution.text.count(". ") <= 1
    assert len(caution.text) <= 240
    assert 0 < len(caution.title) <= 30


def test_a_fire_of_oil_is_never_met_with_water() -> None:
    """NFPA cooking fire advice, from memory."""
    assert all(word in cautions()["hot_oil"].text for word in ("never water", "lid on", "heat off"))


@pytest.mark.parametrize(
    ("hazard", "degrees"),
    [
        ("raw_poultry", "74 °C / 165 °F"),
        ("raw_meat", "71 °C / 160 °F"),
        ("raw_meat", "63 °C / 145 °F"),
        ("reheating", "74 °C / 165 °F"),
        ("cooling", "57 to 21 °C (135 to 70 °F) within 2 hours"),
        ("cooling", "5 °C / 41 °F within 6 hours in all"),
    ],
)
def test_a_caution_says_the_degrees_of_the_tables(hazard: str, degrees: str) -> None:
    assert degrees in cautions()[hazard].text
