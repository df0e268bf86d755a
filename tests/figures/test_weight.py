"""Weights of amounts: the food's own measures first, then density, never a guess."""

from __future__ import annotations

import pytest

from binder.figures.missing import Missing, MissingKind, is_known
from binder.figures.weight import grams_as_bought, grams_of, grams_per_millilitre
from binder.kitchen.binder import Binder
from binder.kitchen.food import Food, Measure
from binder.kitchen.settings import SETTINGS_ID, Measures, Settings
from tests.kitchen_binder import small_binder


def known(value: float | Missing) -> float:
    assert is_known(value), value
    return value


def weigh(binder: Binder, food: str, count: float, unit: str, preparation: str = "") -> float | Missing:
    return grams_of(binder, binder.foods[food], count, unit, preparation)


def test_a_weight_is_itself() -> None:
    assert known(weigh(small_binder(), "onion", 2, "lb")) == pytest.approx(2 * 453.59237)


def test_the_foods_own_measure_comes_before_its_density() -> None:
    binder = small_binder(Measure(id="oil/tbsp", food="oil", unit="us tbsp", grams=13.5))
    assert known(weigh(binder, "oil", 1, "tbsp")) == pytest.approx(13.5)
    # USDA SR28, NDB 04053: 1 tbsp of olive oil weighs 13.5 g.


def test_density_where_there_is_no_measure() -> None:
    # A US cup is 236.5882365 ml: NIST Handbook 44, Appendix C.
    assert known(weigh(small_binder(), "oil", 1, "cup")) == pytest.approx(0.9 * 236.5882365)


def test_the_measure_of_the_preparation_asked_for() -> None:
    assert known(weigh(small_binder(), "onion", 1.5, "cup", "chopped")) == pytest.approx(240)
    assert known(weigh(small_binder(), "onion", 1, "cup", "finely chopped")) == pytest.approx(160)


def test_a_cup_of_something_prepared_another_way_is_not_guessed() -> None:
    lacking = weigh(small_binder(), "onion", 1, "cup", "sliced")
    assert isinstance(lacking, Missing)
    assert lacking.kind is MissingKind.CONVERSION
    assert "chopped" in lacking.says
    assert lacking.place.id == "onion"


def test_a_piece_of_something_never_weighed_is_not_guessed() -> None:
    lacking = weigh(small_binder(), "tahini", 1, "bunch")
    assert isinstance(lacking, Missing)
    assert "1 bunch of tahini" in lacking.says


def test_counting_takes_the_weight_of_one() -> None:
    assert known(weigh(small_binder(), "onion", 2, "")) == pytest.approx(220)


def test_the_cup_is_the_binders_own_and_the_larders_is_the_us_one() -> None:
    metric = small_binder(Settings(id=SETTINGS_ID, name="m", measures=Measures.METRIC))
    assert known(weigh(metric, "flour", 1, "cup")) == pytest.approx(125 * 250 / 236.5882365)


def test_a_spoon_takes_the_measure_nearest_in_size() -> None:
    # USDA SR28, NDB 01001: a tbsp of butter is 14.2 g, a cup 227 g; 16 of the one are not quite the other.
    binder = small_binder(
        Food(id="butter", name="butter"),
        Measure(id="b/tbsp", food="butter", unit="us tbsp", grams=14.2),
        Measure(id="b/cup", food="butter", unit="us cup", grams=227),
    )
    assert known(weigh(binder, "butter", 1, "tsp")) == pytest.approx(14.2 / 3)
    assert known(weigh(binder, "butter", 0.5, "cup")) == pytest.approx(113.5)


def test_words_of_the_foods_own_count_as_units() -> None:
    binder = small_binder(Measure(id="n", food="onion", unit="ring", grams=10))
    assert known(weigh(binder, "onion", 3, "rings")) == pytest.approx(30)
    assert isinstance(weigh(binder, "tahini", 3, "rings"), Missing)


def test_grams_a_millilitre_of_the_unknown_is_none() -> None:
    binder = small_binder()
    assert grams_per_millilitre(binder, binder.foods["salt"]) is None


@pytest.mark.parametrize("said", ["cloves", "Clove", "clove"])
def test_a_measure_may_be_named_as_a_cook_writes_it(said: str) -> None:
    binder = small_binder(Food(id="garlic", name="garlic"), Measure(id="g", food="garlic", unit=said, grams=5))
    assert known(weigh(binder, "garlic", 3, "cloves")) == pytest.approx(15)


@pytest.mark.parametrize("asked", ["nest", "nests", "Nests"])
def test_a_foods_own_word_is_known_however_it_is_written(asked: str) -> None:
    binder = small_binder(Food(id="noodles", name="noodles"), Measure(id="n", food="noodles", unit="Nest", grams=60))
    assert known(weigh(binder, "noodles", 2, asked)) == pytest.approx(120)


def test_pieces_are_bought_untrimmed() -> None:
    onion = small_binder().foods["onion"]
    assert known(grams_as_bought(small_binder(), onion, 9, "each")) == pytest.approx(9 * 110 / 0.9)
    assert known(grams_as_bought(small_binder(), onion, 2, "kg")) == pytest.approx(2000)
