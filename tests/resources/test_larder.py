"""The larder's tables: whole, of one mind with each other, and true to the publications that they restate."""

from __future__ import annotations

import csv
import functools
import io
from collections import Counter, defaultdict
from pathlib import Path

import pytest

from binder.kitchen.food import Keeping, Section
from binder.kitchen.larder import reference_larder
from binder.kitchen.name_book import singular_words
from binder.kitchen.paths import larder_folder
from binder.kitchen.reference import allergens, doneness_table
from binder.kitchen.units import unit_values

Row = dict[str, str]

COLUMNS = {
    "foods": [
        *("key", "name", "other_names", "section", "keeping", "keeps_days", "keeping_source"),
        *("temperature_control", "temperature_control_source", "allergens", "doneness"),
        *("density_g_per_ml", "density_source", "trim_yield", "yield_source", "staple", "source"),
    ],
    "measures": ["food", "unit", "preparation", "grams", "source"],
}
PUBLICATIONS = (
    "USDA SR28",
    "USDA FoodKeeper",
    "US Armed Forces Recipe Service",
    "Bakery and Business Math",
    "FDA Food Code",
    "from memory",
    "common practice, no source",
    "no trimming",
)
VOLUMES = ["us cup", "us tbsp", "us tsp", "us fl oz", "us pint", "us quart"]
PIECES = {
    *("each", "small", "medium", "large", "jumbo", "slice", "wedge", "strip", "handful", "knob", "cube", "ball"),
    *("clove", "head", "bulb", "stick", "bunch", "stalk", "rib", "spear", "floret", "sprig", "leaf", "ear", "pod"),
    *("fillet", "steak", "rasher", "link", "loaf", "sheet", "pat", "shot", "nest", "block"),
    *("can", "tin", "jar", "tub", "bag", "package", "packet"),
}
PREPARATIONS = {
    *("", "chopped", "sliced", "diced", "cubed", "grated", "shredded", "julienned", "minced", "halved", "quartered"),
    *("mashed", "pureed", "crushed", "crumbled", "ground", "flaked", "balls", "peeled", "pitted", "sprigs", "leaves"),
    *("packed", "sifted", "whipped", "drained", "thawed"),
}


def tables(folder: str) -> list[Path]:
    return sorted((larder_folder() / folder).glob("*.csv"))


@functools.cache
def rows(folder: str) -> list[Row]:
    found: list[Row] = []
    for path in tables(folder):
        with path.open(encoding="utf-8", newline="") as table:
            found += csv.DictReader(table, strict=True)
    return found


def food_row(key: str) -> Row:
    (row,) = [row for row in rows("foods") if row["key"] == key]
    return row


def measure_row(food: str, unit: str, preparation: str = "") -> Row:
    (row,) = [
        row for row in rows("measures") if (row["food"], row["unit"], row["preparation"]) == (food, unit, preparation)
    ]
    return row


def wrong(found: list[Row], keys: tuple[str, ...]) -> list[tuple[str, ...]]:
    """What a failure says: only the cells that tell which rows are wrong."""
    return [tuple(row[key] for key in keys) for row in found]


# Tables


@pytest.mark.parametrize("folder", COLUMNS)
def test_every_table_has_the_columns_the_readme_explains(folder: str) -> None:
    readme = (larder_folder() / "README.md").read_text(encoding="utf-8")
    assert all(f"`{column}`" in readme for column in COLUMNS[folder])
    for path in tables(folder):
        with path.open(encoding="utf-8", newline="") as table:
            assert next(csv.reader(table)) == COLUMNS[folder], path.name


@pytest.mark.parametrize("folder", COLUMNS)
def test_a_table_is_plain_csv_that_any_reader_writes_back_alike(folder: str) -> None:
    for path in tables(folder):
        written = path.read_bytes().decode("utf-8")
        again = io.StringIO()
        csv.writer(again, lineterminator="\n").writerows(csv.reader(io.StringIO(written, newline=""), strict=True))
        assert again.getvalue() == written, path.name


@pytest.mark.parametrize("folder", COLUMNS)
def test_every_row_is_whole(folder: str) -> None:
    for row in rows(folder):
        assert None not in row, row
        assert None not in row.values(), row
        assert all(value == value.strip() for value in row.values()), row


def test_both_folders_hold_the_same_shelves() -> None:
    assert [path.name for path in tables("foods")] == [path.name for path in tables("measures")]


def test_there_are_at_least_three_hundred_foods() -> None:
    assert len(rows("foods")) >= 300


def test_every_value_says_where_it_comes_from() -> None:
    sources = ["keeping_source", "temperature_control_source", "yield_source", "source"]
    for row in rows("foods"):
        said = [row[column] for column in sources] + ([row["density_source"]] if row["density_g_per_ml"] else [])
        assert all(text.startswith(PUBLICATIONS) for text in said), row
        assert bool(row["density_g_per_ml"]) == bool(row["density_source"]), row
    unsourced = [row for row in rows("measures") if not any(word in row["source"] for word in PUBLICATIONS)]
    assert wrong(unsourced, ("food", "unit", "source")) == []


def test_no_source_is_longer_than_a_binder_keeps() -> None:
    for folder, columns in COLUMNS.items():
        for column in (column for column in columns if column.endswith("source")):
            assert max(len(row[column]) for row in rows(folder)) <= 300


# Names


def test_no_key_stands_twice() -> None:
    assert [key for key, count in Counter(row["key"] for row in rows("foods")).items() if count > 1] == []


def test_no_name_belongs_to_two_foods() -> None:
    owners: dict[tuple[str, ...], set[str]] = defaultdict(set)
    for food in reference_larder().foods.values():
        for name in (food.name, *food.other_names):
            owners[singular_words(name)].add(food.id)
    assert {" ".join(words): keys for words, keys in owners.items() if len(keys) > 1} == {}


# Codes


def test_sections_and_keeping_are_those_the_program_has() -> None:
    assert {row["section"] for row in rows("foods")} <= set(Section)
    assert {row["keeping"] for row in rows("foods")} <= set(Keeping)


def test_allergens_and_doneness_are_codes_of_the_reference_tables() -> None:
    categories = {category for _rules, category in doneness_table()} | {""}
    known = set(allergens())
    unknown = [row for row in rows("foods") if row["doneness"] not in categories or allergen_codes(row) - known]
    assert wrong(unknown, ("key", "allergens", "doneness")) == []


def allergen_codes(row: Row) -> set[str]:
    return set(row["allergens"].split(";")) - {""}


@pytest.mark.parametrize(
    ("key", "codes"),
    [
        ("tahini", {"sesame"}),
        ("all_purpose_flour", {"wheat"}),
        ("celery", {"celery"}),
        ("celeriac", {"celery"}),
        ("peanut_butter", {"peanuts"}),
        ("almonds_ground", {"almonds"}),
        ("mustard_powder", {"mustard"}),
        ("malt_vinegar", {"barley"}),
        ("white_wine_vinegar", {"sulphites"}),
        ("zaatar", {"sesame"}),
        ("lupin_flour", {"lupin"}),
        ("rye_flour", {"rye"}),
        ("chickpea_flour", set()),
        ("coconut_desiccated", set()),
    ],
)
def test_a_food_has_the_allergens_of_its_nature(key: str, codes: set[str]) -> None:
    assert allergen_codes(food_row(key)) == codes


def test_yes_and_no_are_the_only_answers() -> None:
    for column in ("temperature_control", "staple"):
        assert {row[column] for row in rows("foods")} == {"yes", "no"}


def test_what_is_raw_and_cooked_to_a_temperature_is_watched_for_safety() -> None:
    unwatched = [row for row in rows("foods") if row["doneness"] and row["temperature_control"] != "yes"]
    assert wrong(unwatched, ("key", "doneness")) == []


@pytest.mark.parametrize("key", ["bean_sprouts", "cantaloupe", "watermelon", "tomato", "baby_spinach"])
def test_sprouts_and_what_needs_it_once_cut_are_watched_for_safety(key: str) -> None:
    """FDA Food Code 1-201.10(B), time/temperature control for safety food, from memory."""
    assert food_row(key)["temperature_control"] == "yes"


# Numbers


def test_days_and_yields_are_sane() -> None:
    for row in rows("foods"):
        assert 0 < int(row["keeps_days"]) <= 3650, row
        assert 0 < float(row["trim_yield"]) <= 1, row
        assert (float(row["trim_yield"]) == 1) or not row["yield_source"].startswith("no trimming"), row


def test_a_density_is_that_of_something_poured_in_a_kitchen() -> None:
    poured = [row for row in rows("foods") if row["density_g_per_ml"]]
    absurd = [row for row in poured if not 0.75 < float(row["density_g_per_ml"]) < 1.5]
    assert wrong(absurd, ("key", "density_g_per_ml")) == []


def test_a_measure_is_of_a_food_of_the_larder_and_stands_once() -> None:
    keys = {row["key"] for row in rows("foods")}
    assert {row["food"] for row in rows("measures")} <= keys
    counted = Counter((row["food"], row["unit"], row["preparation"]) for row in rows("measures"))
    assert [row for row, count in counted.items() if count > 1] == []


def test_units_and_preparations_are_known_words() -> None:
    unknown = [
        row
        for row in rows("measures")
        if row["unit"] not in {*VOLUMES, *PIECES} or row["preparation"] not in PREPARATIONS
    ]
    assert wrong(unknown, ("food", "unit", "preparation")) == []


def test_a_piece_weighs_between_a_peppercorn_and_a_side_of_meat() -> None:
    absurd = [row for row in rows("measures") if row["unit"] in PIECES and not 0.04 <= float(row["grams"]) <= 10_000]
    assert wrong(absurd, ("food", "unit", "grams")) == []


def test_what_fills_a_measure_weighs_between_fronds_and_honey() -> None:
    absurd = [
        row
        for row in rows("measures")
        if row["unit"] in VOLUMES and not 0.03 <= float(row["grams"]) / unit_values()[row["unit"]][1] <= 3
    ]
    assert wrong(absurd, ("food", "unit", "preparation", "grams")) == []


@pytest.mark.parametrize(("larger", "smaller", "count"), [("us cup", "us tbsp", 16), ("us tbsp", "us tsp", 3)])
def test_spoons_and_cups_of_one_preparation_agree_within_a_factor_of_two(larger: str, smaller: str, count: int) -> None:
    grams = {(row["food"], row["preparation"], row["unit"]): float(row["grams"]) for row in rows("measures")}
    far = [
        (food, preparation, whole, grams[food, preparation, smaller])
        for (food, preparation, unit), whole in grams.items()
        if unit == larger and (food, preparation, smaller) in grams
        if not 0.5 <= count * grams[food, preparation, smaller] / whole <= 2
    ]
    assert far == []


def test_small_medium_and_large_pieces_grow() -> None:
    sizes: dict[str, dict[str, float]] = defaultdict(dict)
    for row in rows("measures"):
        if row["unit"] in {"small", "medium", "large"} and not row["preparation"]:
            sizes[row["food"]][row["unit"]] = float(row["grams"])
    for food, grams in sizes.items():
        in_order = [grams[size] for size in ("small", "medium", "large") if size in grams]
        assert in_order == sorted(set(in_order)), food


@pytest.mark.parametrize(
    "key",
    [
        *("onion", "red_onion", "garlic", "shallot", "scallion", "carrot", "celery", "tomato", "cucumber", "potato"),
        *(
            "sweet_potato",
            "red_pepper",
            "eggplant",
            "zucchini",
            "avocado",
            "apple",
            "banana",
            "orange",
            "lemon",
            "lime",
        ),
        *("bay_leaf", "egg", "chicken_thigh", "cinnamon_stick", "star_anise", "gelatine_leaf"),
    ],
)
def test_what_cooks_count_can_be_counted(key: str) -> None:
    assert "each" in {row["unit"] for row in rows("measures") if row["food"] == key}


# USDA National Nutrient Database for Standard Reference, Release 28: grams of one household measure, with the food's
# NDB number and, where the publication weighs another count than one, that count and its grams written out.
SR28_WEIGHTS = [
    ("onion", "us cup", "chopped", 160, "11282"),
    ("onion", "each", "", 110, "11282"),
    ("garlic", "clove", "", 3, "11215"),
    ("carrot", "us cup", "grated", 110, "11124"),
    ("celery", "us cup", "chopped", 101, "11143"),
    ("parsley", "us cup", "chopped", 60, "11297"),
    ("cilantro", "us cup", "", 4 / 0.25, "11165"),
    ("spinach", "us cup", "", 30, "11457"),
    ("tomato", "us cup", "chopped", 180, "11529"),
    ("red_pepper", "us cup", "chopped", 149, "11821"),
    ("cucumber", "us cup", "sliced", 52 / 0.5, "11205"),
    ("potato", "us cup", "diced", 75 / 0.5, "11352"),
    ("basil", "leaf", "", 2.5 / 5, "02044"),
    ("strawberries", "us cup", "sliced", 166, "09316"),
    ("pomegranate", "us cup", "", 87 / 0.5, "09286"),
    ("lemon_juice", "us cup", "", 244, "09152"),
    ("paprika", "us tsp", "", 2.3, "02028"),
    ("cinnamon_ground", "us tbsp", "", 7.8, "02010"),
    ("salt", "us tsp", "", 6, "02047"),
    ("tahini", "us tbsp", "", 15, "12166"),
    ("walnuts", "us cup", "chopped", 117, "12155"),
    ("peanut_butter", "us tbsp", "", 32 / 2, "16398"),
    ("all_purpose_flour", "us cup", "", 125, "20081"),
    ("chickpea_flour", "us cup", "", 92, "16157"),
    ("sugar", "us cup", "", 200, "19335"),
    ("brown_sugar", "us cup", "packed", 220, "19334"),
    ("cream_of_tartar", "us tsp", "", 3, "18373"),
    ("honey", "us cup", "", 339, "19296"),
    ("olive_oil", "us tbsp", "", 13.5, "04053"),
    ("balsamic_vinegar", "us cup", "", 255, "02069"),
]


@pytest.mark.parametrize(("food", "unit", "preparation", "grams", "ndb"), SR28_WEIGHTS)
def test_a_measure_weighs_what_standard_reference_says(
    food: str, unit: str, preparation: str, grams: float, ndb: str
) -> None:
    row = measure_row(food, unit, preparation)
    assert float(row["grams"]) == pytest.approx(grams, rel=1e-9)
    assert row["source"].startswith(f"USDA SR28, NDB {ndb}")


# US Armed Forces Recipe Service (TM 10-412), Section A, factors for converting edible portion weights of foods to as
# purchased weights: as purchased = factor x edible portion.
RECIPE_SERVICE_FACTORS = [
    ("onion", 1.11),  # onions, dry, peeled
    ("scallion", 1.20),  # onions, green, with tops, trimmed
    ("carrot", 1.22),  # peeled
    ("celery", 1.37),  # trimmed
    ("cabbage", 1.25),  # trimmed and cored
    ("potato", 1.23),  # potatoes, white, pared
    ("broccoli", 1.64),  # trimmed
    ("asparagus", 1.89),  # trimmed
    ("cucumber", 1.05),  # unpared
    ("eggplant", 1.03),  # unpared
    ("avocado", 1.45),  # pared and seeded
    ("pineapple", 1.92),  # pared and cored
]
# USDA Standard Reference, Release 28: refuse in percent of what is bought, with the NDB number.
SR28_REFUSE = [
    ("leek", 56, "11246"),
    ("garlic", 13, "11215"),
    ("lemon", 47, "09150"),
    ("orange", 27, "09200"),
    ("red_pepper", 18, "11821"),
    ("spinach", 28, "11457"),
    ("cilantro", 15, "11165"),
    ("mint", 59, "02065"),
    ("pomegranate", 44, "09286"),
    ("butternut_squash", 16, "11485"),
]


@pytest.mark.parametrize(("food", "factor"), RECIPE_SERVICE_FACTORS)
def test_a_yield_is_one_over_the_recipe_services_factor(food: str, factor: float) -> None:
    row = food_row(food)
    assert round(1 / float(row["trim_yield"]), 2) == factor
    assert row["yield_source"].startswith("US Armed Forces Recipe Service (TM 10-412)")


@pytest.mark.parametrize(("food", "refuse", "ndb"), SR28_REFUSE)
def test_a_yield_is_what_the_refuse_of_standard_reference_leaves(food: str, refuse: float, ndb: str) -> None:
    row = food_row(food)
    assert float(row["trim_yield"]) == pytest.approx(1 - refuse / 100, abs=1e-9)
    assert row["yield_source"] == f"USDA SR28 refuse, NDB {ndb}"


def test_the_program_reads_every_row() -> None:
    larder = reference_larder()
    assert list(larder.foods) == [row["key"] for row in rows("foods")]
    read = {measure.id for group in larder.measures.values() for measure in group}
    assert len(read) == len(rows("measures"))
