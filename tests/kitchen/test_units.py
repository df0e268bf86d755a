"""What cooks write for units, and what the program takes it for. Values: NIST Handbook 44 Appendix C."""

from __future__ import annotations

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from binder.kitchen.settings import Measures
from binder.kitchen.units import Dimension, UnknownUnitError, canonical_unit, unit, unit_values

US, METRIC, IMPERIAL = Measures.US_CUSTOMARY, Measures.METRIC, Measures.IMPERIAL

SPELLINGS = {
    "g": "g G g. gm gms gr gram grams Gram gramme grammes",
    "kg": "kg KG Kg. kgs kilo kilos kilogram kilograms",
    "mg": "mg milligram milligrams",
    "oz": "oz OZ Oz. ozs ounce ounces",
    "lb": "lb lb. lbs LBS lbs. pound Pounds #",
    "ml": "ml mL ML ml. mls cc millilitre millilitres milliliter milliliters",
    "cl": "cl cL centilitre centiliters",
    "dl": "dl dL decilitre deciliters",
    "l": "l L litre Litres liter liters ltr",
    "cup": "cup cups Cup CUPS cup. c C c. C.",
    "tbsp": "tbsp tbsps Tbsp Tbsp. TBSP tablespoon Tablespoons tbs Tbs Tbs. TBS tbl tblsp T T. Tb Tb.",
    "tsp": "tsp tsps Tsp Tsp. TSP teaspoon Teaspoons t t.",
    "pint": "pint pints Pint pt pt. pts PT",
    "quart": "quart quarts qt qt. qts QT",
    "gallon": "gallon gallons gal gal. gals",
    "pinch": "pinch Pinches",
    "dash": "dash dashes",
    "clove": "clove cloves",
    "each": "each ea ea. whole piece pieces pc pcs",
    "bunch": "bunch bunches",
    "leaf": "leaf leaves",
    "loaf": "loaf loaves",
    "package": "package packages pkg pkg. pack packs",
    "can": "can cans",
    "tin": "tin tins",
}
SPELLINGS_OF_SEVERAL_WORDS = {
    "fl oz": ("fl oz", "fl. oz", "fl. oz.", "Fl Oz", "FL. OZ.", "floz", "fluid ounce", "Fluid  Ounces", "fl ounces"),
    "us cup": ("us cup", "US cups", "us c", " us  cup "),
    "us fl oz": ("US fl. oz.", "us fluid ounces"),
    "metric cup": ("metric cup", "Metric Cups"),
    "imperial pint": ("imperial pint", "Imperial pints", "imperial pt."),
    "au tbsp": ("au tbsp", "AU tablespoons"),
    "label cup": ("label cup", "label cups"),
    "label oz": ("label ounces",),
}
EVERY_SPELLING = [
    *((spelling, key) for key, spellings in SPELLINGS.items() for spelling in spellings.split()),
    *((spelling, key) for key, spellings in SPELLINGS_OF_SEVERAL_WORDS.items() for spelling in spellings),
]


@pytest.mark.parametrize(("spelling", "key"), EVERY_SPELLING)
def test_a_cooks_spelling_means_the_unit_it_always_means(spelling: str, key: str) -> None:
    assert unit(spelling, US).key == key


@pytest.mark.parametrize("key", unit_values())
def test_every_key_of_the_table_is_itself_a_spelling(key: str) -> None:
    dimension, value, _source = unit_values()[key]
    found = unit(key, US)
    assert (found.key, found.dimension, found.factor) == (key, dimension, value)


def test_capital_and_small_t_are_a_tablespoon_and_a_teaspoon() -> None:
    assert unit("T", US).factor == pytest.approx(3 * unit("t", US).factor, rel=1e-12)


def test_a_pint_is_never_a_metric_point_and_a_pinch_never_a_small_inch() -> None:
    assert unit("pt", US).factor == pytest.approx(473.176473, rel=1e-12)
    assert unit("pinch", US).dimension is Dimension.VOLUME


@pytest.mark.parametrize(
    ("written", "dimension", "value"),
    [
        ("(14 oz) can", Dimension.WEIGHT, 14 * 28.349523125),
        ("(14 ounce) cans", Dimension.WEIGHT, 14 * 28.349523125),
        ("(14.5 oz.) Can", Dimension.WEIGHT, 14.5 * 28.349523125),
        ("(14½ oz) can", Dimension.WEIGHT, 14.5 * 28.349523125),
        ("(400 g) tin", Dimension.WEIGHT, 400.0),
        ("(400g) tins", Dimension.WEIGHT, 400.0),
        ("(1 1/2 lb) bag", Dimension.WEIGHT, 1.5 * 453.59237),
        ("(12 fl. oz.) bottle", Dimension.VOLUME, 12 * 29.5735295625),
        ("(1 quart) carton", Dimension.VOLUME, 946.352946),
    ],
)
def test_a_container_of_a_stated_size_has_that_size(written: str, dimension: Dimension, value: float) -> None:
    found = unit(written, US)
    assert found.dimension is dimension
    assert found.factor == pytest.approx(value, rel=1e-12)


def test_a_stated_size_in_pints_follows_the_binders_measures() -> None:
    assert unit("(1 pint) tub", US).factor == pytest.approx(473.176473, rel=1e-12)
    assert unit("(1 pint) tub", IMPERIAL).factor == pytest.approx(568.26125, rel=1e-12)


def test_a_foods_own_piece_is_a_unit_of_that_food_only() -> None:
    assert unit("nests", US, pieces=frozenset({"nest"})).key == "nest"
    with pytest.raises(UnknownUnitError):
        unit("nests", US)


@pytest.mark.parametrize(
    ("mistyped", "meant"),
    [
        ("tabelspoon", "tbsp"),
        ("teasspoon", "tsp"),
        ("cupz", "cup"),
        ("galon", "gallon"),
        ("litrs", "l"),
        ("cloove", "clove"),
    ],
)
def test_a_unit_no_one_knows_is_refused_with_the_three_nearest(mistyped: str, meant: str) -> None:
    with pytest.raises(UnknownUnitError) as refused:
        unit(mistyped, US)
    assert refused.value.text == mistyped
    assert refused.value.nearest[0] == meant
    assert len(set(refused.value.nearest)) == 3
    assert all(canonical_unit(near) == near for near in refused.value.nearest)
    assert all(near in str(refused.value) for near in (mistyped, *refused.value.nearest))


CONTAINERS = st.text("0123456789 ./½,()oztglbcan#", max_size=12).map(lambda inside: f"({inside} oz) can")


@given(st.text(max_size=30) | CONTAINERS)
@example("(0 oz) can")
@example("(1/0 oz) can")
@example("(0." + "0" * 30 + "1 oz) can")
@example("(1,5,3 oz) can")
def test_whatever_is_typed_is_a_unit_of_some_size_or_unknown(text: str) -> None:
    if canonical_unit(text) is None and text.strip():
        with pytest.raises(UnknownUnitError):
            unit(text, METRIC)
    else:
        assert unit(text, METRIC).factor >= 1e-9  # a millionth of the smallest unit, a milligram
