"""The larder as the program reads it: into a binder, and out of what a cook types."""

from __future__ import annotations

import pytest

from binder.figures.weight import grams_of
from binder.kitchen.amount import Amount
from binder.kitchen.binder import Binder, binder_of
from binder.kitchen.change import apply, joined
from binder.kitchen.edits.foods import adopt_food
from binder.kitchen.edits.recipes import understood
from binder.kitchen.errors import BinderError
from binder.kitchen.larder import reference_larder
from binder.kitchen.name_book import name_book
from binder.kitchen.settings import SETTINGS_ID, Settings


def empty_binder() -> Binder:
    return binder_of([Settings(id=SETTINGS_ID, name="Larder day")])


def binder_with(*keys: str) -> Binder:
    binder = empty_binder()
    return apply(binder, joined("Bring foods", [adopt_food(binder, key) for key in keys]))


def test_a_binder_takes_every_food_of_the_larder_with_its_measures() -> None:
    larder = reference_larder()
    binder = binder_with(*larder.foods)
    assert {food.id for food in binder.foods.values()} == set(larder.foods)
    assert len(binder.measures) == sum(map(len, larder.measures.values()))


def test_every_name_finds_its_food() -> None:
    book = name_book(empty_binder())
    lost = []
    for food in reference_larder().foods.values():
        for name in (food.name, *food.other_names):
            found = book.find(name)
            if found is None or found.key != food.id:
                lost.append((name, food.id, found))
    assert lost == []


@pytest.mark.parametrize(
    ("count", "unit", "food", "preparation", "grams"),
    [
        (1.5, "cup", "onion", "finely chopped", 240),  # 1.5 x 160, NDB 11282
        (2, "", "onion", "", 220),  # 2 x 110, NDB 11282
        (2, "", "garlic", "crushed", 6),  # 2 x 3, NDB 11215
        (12, "", "mint", "leaves, torn", 1.8),  # 12 x 0.3 / 2, NDB 02065
        (0.5, "cup", "red_pepper", "diced", 74.5),  # 0.5 x 149, NDB 11821
        (0.25, "cup", "tahini", "", 60),  # 4 tbsp x 15, NDB 12166
        (3, "tsp", "cumin_seeds", "toasted", 6.3),  # 3 x 2.1, NDB 02014
        (1, "fl oz", "lemon_juice", "", 30.5),  # NDB 09152
        (2, "tbsp", "sugar", "", 25),  # 2 x 200 / 16, NDB 19335
    ],
)
def test_a_cooks_measure_becomes_grams(count: float, unit: str, food: str, preparation: str, grams: float) -> None:
    binder = binder_with(food)
    assert grams_of(binder, binder.foods[food], count, unit, preparation) == pytest.approx(grams, rel=0.01)


@pytest.mark.parametrize(
    ("text", "amount", "unit", "food", "preparation"),
    [
        ("1 1/2 cups chopped onion", 1.5, "cup", "onion", "chopped"),
        ("1½ c. red onions, thinly sliced", 1.5, "cup", "red_onion", "thinly sliced"),
        ("2 cloves garlic, minced", 2, "clove", "garlic", "minced"),
        ("2 garlic cloves, crushed", 2, "", "garlic", "crushed"),
        ("2 large garlic cloves", 2, "large", "garlic", ""),
        ("4 whole cloves", 4, "", "cloves", ""),
        ("2 tbsp fresh lemon juice", 2, "tbsp", "lemon_juice", ""),
        ("1 lemon, zested", 1, "", "lemon", "zested"),
        ("1 tsp ground cumin", 1, "tsp", "cumin_ground", ""),
        ("1 t cumin seeds, toasted", 1, "tsp", "cumin_seeds", "toasted"),
        ("½ tsp freshly ground black pepper", 0.5, "tsp", "black_pepper", "freshly ground"),
        ("1 red bell pepper, cut into strips", 1, "", "red_pepper", "cut into strips"),
        ("¼ tsp cayenne pepper", 0.25, "tsp", "cayenne", ""),
        ("1 bunch parsley, leaves picked", 1, "bunch", "parsley", "leaves picked"),
        ("1 bunch fresh coriander", 1, "bunch", "cilantro", ""),
        ("1 tsp coriander seeds", 1, "tsp", "coriander_seeds", ""),
        ("10 mint leaves, torn", 10, "", "mint", "leaves, torn"),
        ("4 sprigs thyme", 4, "sprig", "thyme", ""),
        ("1 tsp dried thyme", 1, "tsp", "thyme_dried", ""),
        ("3 spring onions, thinly sliced", 3, "", "scallion", "thinly sliced"),
        ("2 aubergines, cubed", 2, "", "eggplant", "cubed"),
        ("500 g waxy potatoes, peeled", 500, "g", "waxy_potato", "peeled"),
        ("1 T extra-virgin olive oil", 1, "tbsp", "olive_oil", ""),
        ("250 g plain flour, sifted", 250, "g", "all_purpose_flour", "sifted"),
        ("1 cup besan", 1, "cup", "chickpea_flour", ""),
        ("1 cup packed brown sugar", 1, "cup", "brown_sugar", "packed"),
        ("½ tsp cream of tartar", 0.5, "tsp", "cream_of_tartar", ""),
        ("100 g dark chocolate, chopped", 100, "g", "dark_chocolate", "chopped"),
        ("2 tbsp toasted sesame seeds", 2, "tbsp", "sesame_seeds", "toasted"),
        ("1/4 cup pine nuts, toasted", 0.25, "cup", "pine_nuts", "toasted"),
        ("2 bay leaves", 2, "", "bay_leaf", ""),
        ("1 cup icing sugar, sifted", 1, "cup", "powdered_sugar", "sifted"),
        ("2 green chillies, seeded", 2, "", "green_chili", "seeded"),
        ("250 g chickpeas, dried", 250, "g", "chickpeas_dried", ""),
        ("100 g rocket", 100, "g", "arugula", ""),
    ],
)
def test_a_typed_line_finds_its_food(text: str, amount: float, unit: str, food: str, preparation: str) -> None:
    meant = understood(empty_binder(), text)
    assert meant.amount == Amount(amount, amount, unit)
    assert (meant.source.key, meant.preparation) == (food, preparation)


@pytest.mark.parametrize("text", ["1 tsp coriander", "salt and pepper", "6 cloves"])
def test_a_line_that_could_be_either_is_refused_in_a_sentence(text: str) -> None:
    with pytest.raises(BinderError, match=r"\.$"):
        understood(empty_binder(), text)
